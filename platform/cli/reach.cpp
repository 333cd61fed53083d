#include "core/water/reach.h"

#include "core/recipe/text.h"
#include "core/tying/op_table.h"
#include "core/tying/step_text.h"
#include "core/tying/words.h"
#include "core/water/water_words.h"
#include "platform/cli/commands.h"
#include "platform/cli/files.h"
#include "platform/cli/fishing.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct ReachOptions {
    std::string recipe, size, hook, mass, sink, depth_at, ride, set;
    std::vector<std::string> ladder;
    int turns = 30, most = 8;
    bool lead_free = false, json = false;
    FishingOptions fishing;
};

ReachStock read_stock(const ReachOptions& options) {
    const auto file = find_set(options.set.empty() ? "catalogue" : options.set);
    const std::string text = read_file(file);
    const Result<Recipe> recipe = read_recipe(text);
    if (!recipe.ok()) refuse(file, recipe.error());
    ReachStock stock = stock_of(recipe.value().materials);
    if (stock.beads.empty() && stock.strands.empty()) {
        refuse(file, {ErrorCode::not_found,
                      "there is neither bead, cone nor ballast in this set",
                      "list some under \"materials\", as a recipe does",
                      {0, "materials"}});
    }
    stock.most_turns = options.turns;
    return stock;
}

ReachGoal goal_of(const ReachOptions& options) {
    ReachGoal goal;
    if (!options.mass.empty()) goal.mass = mass_of("mass", options.mass);
    if (!options.sink.empty()) goal.sink = speed_of("sink", options.sink);
    if (!options.depth_at.empty()) {
        const auto colon = options.depth_at.find(':');
        if (colon == std::string::npos) {
            refuse_usage("--depth-at: '" + options.depth_at + "' has no way along",
                         "write depth and drift, such as 1.0m:4m");
        }
        goal.depth = length_of("depth-at", options.depth_at.substr(0, colon));
        goal.along = length_of("depth-at", options.depth_at.substr(colon + 1));
    }
    if (options.ride == "up") goal.ride = Ride::point_up;
    if (options.ride == "down") goal.ride = Ride::point_down;
    goal.lead_free_first = options.lead_free;
    return goal;
}

/// What a way takes, in the words of the set.
struct WayWords {
    std::string bead, ballast;
};

WayWords words_of(const ReachStock& stock, const ReachWay& way) {
    WayWords out;
    if (way.bead != none) out.bead = stock.beads[static_cast<std::size_t>(way.bead)].text;
    if (way.turns > 0) {
        out.ballast = fmt::format("{} of {}", counted(way.turns, "turn", "turns"),
                                  stock.strands[static_cast<std::size_t>(way.strand)].text);
    }
    return out;
}

Json way_json(const ReachStock& stock, const ReachWay& way) {
    const auto id = [](const std::vector<RecipeMaterial>& list, int i) {
        return i == none ? Json() : Json(list[static_cast<std::size_t>(i)].id);
    };
    const WayWords words = words_of(stock, way);
    return {{"bead", id(stock.beads, way.bead)},
            {"bead_text", words.bead},
            {"ballast", id(stock.strands, way.strand)},
            {"turns", way.turns},
            {"ballast_text", words.ballast},
            {"lead", way.has_lead},
            {"mass_mg", mass_json(way.mass)},
            {"sink_m_s",
             {{"value", tidy(way.sink.value.si)},
              {"low", tidy(way.sink.low.si)},
              {"high", tidy(way.sink.high.si)}}},
            {"depth_m", tidy(way.depth.si)},
            {"ride",
             {{"verdict", name(way.ride.verdict)},
              {"delta_mm", tidy(way.ride.delta.si * 1e3)},
              {"doubt_mm", tidy(way.ride.doubt.si * 1e3)}}},
            {"off_goal", tidy(way.distance)},
            {"new_troubles", way.troubles}};
}

void add_row(Table& table, const ReachStock& stock, const ReachWay& way, std::string rung,
             bool depth) {
    const WayWords words = words_of(stock, way);
    table.add(
        {std::move(rung), printable(words.bead), printable(words.ballast), weight_words(way.mass),
         speed_words(way.sink), depth ? fmt::format("{:.2f} m", way.depth.si) : "",
         std::string(name(way.ride.verdict)), fmt::format("{:.0f} %", 100.0 * way.distance),
         way.troubles > 0 ? fmt::format("{} more", way.troubles) : "", way.has_lead ? "lead" : ""},
        way.has_lead ? Colour::yellow : Colour::plain);
}

Table way_table(bool ladder) {
    using Align = Table::Align;
    return Table({{ladder ? "rung, head" : "", Align::left},
                  {"bead", Align::left},
                  {"ballast", Align::left},
                  {"weighs", Align::left},
                  {"sinks, on this tippet", Align::left},
                  {"deep"},
                  {"rides", Align::left},
                  {"off"},
                  {"trouble", Align::left},
                  {"", Align::left}});
}

ExitCode run_ladder(const ReachOptions& options, const Loaded& loaded, const Fly& fly,
                    const ReachStock& stock) {
    Table table = way_table(true);
    Json rungs = Json::array();
    const Fishing fishing = fishing_of(options.fishing);
    for (std::size_t i = 0; i < options.ladder.size(); ++i) {
        ReachGoal goal = goal_of(options);
        goal.mass = mass_of("ladder", options.ladder[i]);
        const ReachFound found =
            or_refuse_option(reach(loaded.pattern, fly.rig, stock, goal, fishing, 1));
        const std::string_view colour = rung_colour(i, options.ladder.size());
        Json rung{{"goal_mg", tidy(goal.mass->si * 1e6)}, {"head", colour}};
        if (found.ways.empty()) {
            rung["way"] = Json();
            table.add({fmt::format("{}, {}", options.ladder[i], colour), "nothing reaches it", "",
                       "", "", "", "", "", "", ""});
        } else {
            rung["way"] = way_json(stock, found.ways.front());
            add_row(table, stock, found.ways.front(),
                    fmt::format("{}, {}", options.ladder[i], colour), false);
        }
        rungs.push_back(std::move(rung));
    }
    if (options.json) {
        print({{"recipe", loaded.pattern.recipe.id},
               {"size", size_words(fly.tied.size).substr(1)},
               {"ladder", std::move(rungs)}});
    } else {
        fmt::print("{}", table.text(terminal()));
    }
    return ExitCode::fine;
}

ExitCode run_reach(const ReachOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    if (loaded.is_words_alone()) {
        refuse_usage("this recipe is words alone: there is nothing to change",
                     "name a recipe with steps, such as weirfoot-jig");
    }
    const Fly fly = run(loaded, size_of(loaded, options.size));
    const ReachStock stock = read_stock(options);
    if (!options.ladder.empty()) return run_ladder(options, loaded, fly, stock);
    const ReachGoal goal = goal_of(options);
    const ReachFound found =
        or_refuse_option(reach(loaded.pattern, fly.rig, stock, goal, fishing_of(options.fishing),
                               static_cast<std::size_t>(options.most)));
    if (options.json) {
        Json ways = Json::array();
        for (const ReachWay& way : found.ways) ways.push_back(way_json(stock, way));
        print({{"recipe", loaded.pattern.recipe.id},
               {"size", size_words(fly.tied.size).substr(1)},
               {"known", until_timed},
               {"combinations", found.combinations},
               {"tied", found.tied},
               {"ways", std::move(ways)}});
        return ExitCode::fine;
    }
    const Terminal to = terminal();
    fmt::print("{}  {}: {} combinations reckoned, {} tied\n",
               to.paint(printable(loaded.pattern.recipe.name), Colour::bold),
               to.paint(size_words(fly.tied.size), Colour::cyan), found.combinations, found.tied);
    if (!found.has_bead && !found.has_ballast) {
        fmt::print("  this recipe has neither bead nor ballast: there is nothing to change\n");
    } else if (!found.has_bead) {
        fmt::print("  this recipe slides on no bead: only ballast varies\n");
    } else if (!found.has_ballast) {
        fmt::print("  this recipe winds no ballast: only beads vary\n");
    }
    if (found.ways.empty()) {
        fmt::print("  nothing in this set reaches it without a finding that stops the fly\n");
        return ExitCode::fine;
    }
    Table table = way_table(false);
    for (const ReachWay& way : found.ways) add_row(table, stock, way, "", goal.depth.has_value());
    fmt::print("{}  sink rates and depths: {}\n", table.text(to), until_timed);
    for (const ReachWay& way : found.ways) {
        if (!way.has_lead) continue;
        fmt::print("  {} {}\n", to.paint("!", Colour::yellow),
                   wrapped(caution_text(Caution::lead), to.width, 4));
        break;
    }
    return ExitCode::fine;
}

} // namespace

void add_reach(const Command& program, Job& job) {
    auto options = std::make_shared<ReachOptions>();
    const Command command = program.command(
        "reach", "Beads and ballast that bring a recipe to a mass, sink rate or depth");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--mass", options->mass, "the mass to reach, such as 180mg");
    command.option("--sink", options->sink, "the sink rate on the tippet, such as 0.4m/s");
    command.option("--depth-at", options->depth_at, "DEPTH:DRIFT, such as 1.0m:4m");
    command.option("--ride", options->ride, "up or down: which way the point must ride")
        .one_of({"up", "down"});
    command.option("--ladder", options->ladder, "masses to reach one by one: 100mg,150mg,250mg")
        .by_commas();
    command.option("--set", options->set, "file of beads and ballast; else the catalogue");
    command.option("--turns", options->turns, "of ballast at most").within(0, 200);
    command.option("--most", options->most, "ways to show").within(1, 50);
    command.flag("--lead-free", options->lead_free, "those without lead first");
    add_fishing(command, options->fishing);
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_reach);
}

} // namespace wrapwright::cli
