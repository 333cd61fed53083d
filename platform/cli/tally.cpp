#include "core/tally/tally.h"

#include "core/stock/table_text.h"
#include "core/tying/words.h"
#include "core/units/number_text.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <charconv>
#include <deque>
#include <memory>

namespace wrapwright::cli {

namespace {

constexpr int most_flies = 100000;

struct TallyOptions {
    std::string recipe, hook;
    std::vector<std::string> flies;
    bool json = false, csv = false;
};

/// What was asked for: so many flies of that size.
struct Order {
    HookSize size;
    int flies = 1;
};

Order read_order(const Loaded& loaded, const std::string& said) {
    const auto equals = said.find('=');
    const std::string number = equals == std::string::npos ? "" : said.substr(equals + 1);
    Order order;
    const auto [end, error] =
        std::from_chars(number.data(), number.data() + number.size(), order.flies);
    if (equals == 0 || number.empty() || error != std::errc() ||
        end != number.data() + number.size() || order.flies < 1 || order.flies > most_flies) {
        refuse_usage("--fly: '" + said + "' does not say how many of which size",
                     "write the size and a whole number up to 100000, such as 14=24");
    }
    order.size = size_of(loaded, said.substr(0, equals));
    return order;
}

/// The flies of an order, tied once for each size.
struct Batch {
    std::deque<Fly> flies; // a deque: growing it moves nothing that `sizes` points to
    std::vector<BatchSize> sizes;
    int count = 0;
};

Batch tie_batch(const Loaded& loaded, const TallyOptions& options) {
    Batch batch;
    const auto add = [&](const Order& order) {
        const Fly& fly = batch.flies.emplace_back(run(loaded, order.size));
        batch.sizes.push_back({&fly.resolved, &fly.tied, order.flies});
        batch.count += order.flies;
    };
    for (const std::string& said : options.flies) add(read_order(loaded, said));
    if (batch.sizes.empty()) add({size_of(loaded, ""), 1});
    return batch;
}

std::string material_name(const Recipe& recipe, const Draw& draw) {
    if (draw.material != none) return material_words(recipe, draw.material);
    return base_words(recipe, draw.base) + " " + size_words(draw.hook);
}

Json draw_json(const Recipe& recipe, const Draw& draw) {
    return {{"id", draw.material == none
                       ? recipe.bases[static_cast<std::size_t>(draw.base)].id
                       : recipe.materials[static_cast<std::size_t>(draw.material)].id},
            {"text", material_name(recipe, draw)},
            {"measure_mm", tidy(in_millimetres(draw.measure))},
            {"count", tidy(draw.count)},
            {"length_mm", tidy(in_millimetres(draw.length))},
            {"mass_mg", mass_json(draw.mass)}};
}

/// The takes of one fly, step by step: the record's own list.
Json steps_json(const Recipe& recipe, const Tied& tied) {
    Json list = Json::array();
    for (const PartTake& take : tied.takes) {
        if (take.step == none) continue;
        list.push_back(
            {{"step", take.step + 1},
             {"part",
              take.part == none ? "" : recipe.parts[static_cast<std::size_t>(take.part)].id},
             {"material", recipe.materials[static_cast<std::size_t>(take.material)].id},
             {"count", tidy(take.count)},
             {"turns", tidy(take.turns)},
             {"length_mm", tidy(in_millimetres(take.length))},
             {"mass_mg", tidy(in_milligrams(take.mass.value))}});
    }
    return list;
}

Json batch_json(const Pattern& pattern, const Batch& batch) {
    Json flies = Json::array();
    for (std::size_t i = 0; i < batch.flies.size(); ++i) {
        const Fly& fly = batch.flies[i];
        Json parts = Json::array();
        for (const TallyLine& line : tally_by_part(fly.resolved, fly.tied)) {
            parts.push_back(tally_line_json(pattern, line));
        }
        flies.push_back({{"size", size_words(fly.tied.size).substr(1)},
                         {"flies", batch.sizes[i].flies},
                         {"mass_mg", mass_json(fly.tied.mass)},
                         {"parts", std::move(parts)},
                         {"steps", steps_json(pattern.recipe, fly.tied)}});
    }
    Json materials = Json::array();
    for (const Draw& draw : tally_batch(batch.sizes)) {
        materials.push_back(draw_json(pattern.recipe, draw));
    }
    return {{"recipe", pattern.recipe.id},
            {"flies", std::move(flies)},
            {"materials", std::move(materials)},
            {"mass_mg", mass_json(batch_mass(batch.sizes))}};
}

std::string length_words(Length length) {
    if (length.si <= 0.0) return {};
    if (length >= metres(1.0)) return fmt::format("{:.2f} m", length.si);
    return fmt::format("{:.0f} mm", in_millimetres(length));
}

std::string grams_words(Mass mass) {
    const double mg = in_milligrams(mass);
    return mg < 1000.0 ? fmt::format("{:.1f} mg", mg) : fmt::format("{:.2f} g", mg / 1000.0);
}

void print_batch(const Pattern& pattern, const Batch& batch, const Terminal& to) {
    const Recipe& recipe = pattern.recipe;
    fmt::print("{}: {}\n", to.paint(printable(recipe.name), Colour::bold),
               batch.count == 1 ? "one fly" : fmt::format("{} flies", batch.count));
    for (std::size_t i = 0; i < batch.flies.size(); ++i) {
        const Fly& fly = batch.flies[i];
        fmt::print("\n{} {} x {}\n{}", to.paint("One fly,", Colour::bold),
                   to.paint(size_words(fly.tied.size), Colour::cyan), batch.sizes[i].flies,
                   parts_text(pattern, fly, to));
    }
    using Align = Table::Align;
    Table table({{"material", Align::left}, {"measure mm"}, {"pieces"}, {"length"}, {"mass"}});
    for (const Draw& draw : tally_batch(batch.sizes)) {
        table.add({printable(material_name(recipe, draw)),
                   draw.measure.si > 0.0 ? fmt::format("{:.2f}", in_millimetres(draw.measure)) : "",
                   draw.count > 0.0 ? fmt::format("{:.0f}", draw.count) : "",
                   length_words(draw.length), grams_words(draw.mass.value)});
    }
    const Estimate<Mass> whole = batch_mass(batch.sizes);
    fmt::print(
        "\n{}  (net: what is on the flies, no waste and no whole packs)\n{}\nAll together {} "
        "({} to {})\n",
        to.paint("The batch", Colour::bold), table.text(to), grams_words(whole.value),
        grams_words(whole.low), grams_words(whole.high));
}

/// The batch as a table for spreadsheets, in the units that its heading names.
void print_csv(const Pattern& pattern, const Batch& batch) {
    std::vector<std::vector<std::string>> rows{{"material", "measure_mm", "pieces", "length_mm",
                                                "mass_mg", "mass_low_mg", "mass_high_mg"}};
    const auto number = [](double value) { return write_number(tidy(value)); };
    for (const Draw& draw : tally_batch(batch.sizes)) {
        rows.push_back({material_name(pattern.recipe, draw), number(in_millimetres(draw.measure)),
                        number(draw.count), number(in_millimetres(draw.length)),
                        number(in_milligrams(draw.mass.value)),
                        number(in_milligrams(draw.mass.low)),
                        number(in_milligrams(draw.mass.high))});
    }
    fmt::print("{}", write_table(rows));
}

ExitCode run_tally(const TallyOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    if (loaded.is_words_alone() && !options.json) {
        fmt::print("{}: words alone, there is nothing to count\n",
                   printable(loaded.pattern.recipe.name));
        return ExitCode::fine;
    }
    const Batch batch = tie_batch(loaded, options);
    if (options.json) {
        print(batch_json(loaded.pattern, batch));
    } else if (options.csv) {
        print_csv(loaded.pattern, batch);
    } else {
        print_batch(loaded.pattern, batch, terminal());
    }
    return ExitCode::fine;
}

} // namespace

void add_tally(const Command& program, Job& job) {
    auto options = std::make_shared<TallyOptions>();
    const Command command =
        program.command("tally", "Lengths, counts and masses for one fly or a batch");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--fly", options->flies, "SIZE=NUMBER, as often as there are sizes")
        .one_at_a_time();
    command.option("--hook", options->hook, "file of your own measured hook");
    command.flag("--json", options->json, "print JSON");
    command.flag("--csv", options->csv, "print a table for spreadsheets");
    command.runs(job, options, run_tally);
}

} // namespace wrapwright::cli
