#include "core/check/proportions.h"

#include "core/units/size_text.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/text.h"

#include <fmt/core.h>

#include <map>
#include <memory>

namespace wrapwright::cli {

namespace {

struct ProportionOptions {
    std::string recipe, size, hook, standard;
    std::vector<std::string> measured;
    bool json = false;
};

std::map<Measured, Length> measures_of(const ProportionOptions& options) {
    std::map<Measured, Length> out;
    for (const std::string& said : options.measured) {
        const auto equals = said.find('=');
        const auto part = measured_part(said.substr(0, equals));
        if (equals == std::string::npos || !part) {
            refuse_usage("--measured: '" + said + "' names no part with its length",
                         "write tail, body, thorax, wing or hackle, such as tail=4.6mm");
        }
        const Result<WrittenLength> length =
            parse_length(said.substr(equals + 1), LengthUnit::millimetre);
        if (!length.ok()) {
            refuse_usage("--measured: " + length.error().message, length.error().remedy);
        }
        out[*part] = length.value().quantity;
    }
    return out;
}

Json mm_json(const Estimate<Length>& e) {
    return {{"value", tidy(in_millimetres(e.value))},
            {"low", tidy(in_millimetres(e.low))},
            {"high", tidy(in_millimetres(e.high))}};
}

std::string mm_text(const Estimate<Length>& e) {
    return fmt::format("{:.1f} ({:.1f} to {:.1f})", in_millimetres(e.value), in_millimetres(e.low),
                       in_millimetres(e.high));
}

std::string list_of(const std::vector<std::string_view>& names) {
    std::string out;
    for (const std::string_view n : names) {
        if (!out.empty()) out.append(", ");
        out.append("\"").append(n).append("\"");
    }
    return out;
}

ExitCode run_proportions(const ProportionOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    const Recipe& recipe = loaded.pattern.recipe;
    const auto kind = fly_kind(recipe.fly_class);
    if (!kind) {
        refuse_usage("no standard knows a fly of the class '" + printable(recipe.fly_class) + "'",
                     "write a class such as dry, wet, nymph, jig nymph or streamer in the recipe");
    }
    const auto standards = standards_for(*kind);
    const std::string standard =
        options.standard.empty() ? std::string(standards.front()) : options.standard;
    if (std::find(standards.begin(), standards.end(), standard) == standards.end()) {
        refuse_usage("--standard: '" + standard + "' says nothing of a " + std::string(name(*kind)),
                     "take one of " + list_of(standards));
    }
    const Fly fly = run(loaded, size_of(loaded, options.size));
    const auto measured = measures_of(options);
    Json rows = Json::array();
    using Align = Table::Align;
    Table table({{"part", Align::left},
                 {"target mm", Align::left},
                 {"recipe mm"},
                 {"measured mm"},
                 {"it is", Align::left},
                 {"step"},
                 {"others say", Align::left}});
    for (const ProportionRow& row : proportion_rows()) {
        if (row.kind != *kind || row.standard != standard) continue;
        const Estimate<Length> target = target_of(row, loaded.pattern, fly.tied);
        const auto own = own_measure(loaded.pattern, fly.tied, row.part);
        const auto said = measured.find(row.part);
        std::optional<Length> length;
        if (own) length = own->length;
        if (said != measured.end()) length = said->second;
        const std::string verdict =
            length ? fit_words(fit_of(target, *length)) : std::string("not on this fly");
        Json others = Json::array();
        std::string other_words;
        for (const ProportionRow& other : proportion_rows()) {
            if (other.kind != row.kind || other.part != row.part || other.standard == standard) {
                continue;
            }
            const Estimate<Length> t = target_of(other, loaded.pattern, fly.tied);
            others.push_back({{"standard", other.standard}, {"target_mm", mm_json(t)}});
            append(other_words, "{}{} {:.1f}", other_words.empty() ? "" : ", ", other.standard,
                   in_millimetres(t.value));
        }
        Json json{
            {"part", name(row.part)},
            {"target_mm", mm_json(target)},
            {"source", row.source},
            {"recipe_mm", own ? Json(tidy(in_millimetres(own->length))) : Json()},
            {"measured_mm",
             said != measured.end() ? Json(tidy(in_millimetres(said->second))) : Json()},
            {"verdict", verdict},
            {"off_mm", length ? Json(tidy(in_millimetres(fit_of(target, *length).off))) : Json()},
            {"step", own ? Json(own->step + 1) : Json()},
            {"others", std::move(others)}};
        rows.push_back(std::move(json));
        const auto mm = [](Length x) { return fmt::format("{:.1f}", in_millimetres(x)); };
        table.add({std::string(name(row.part)), mm_text(target), own ? mm(own->length) : "",
                   said != measured.end() ? mm(said->second) : "", verdict,
                   own ? std::to_string(own->step + 1) : "", other_words},
                  verdict == "right" ? Colour::green : Colour::plain);
    }
    if (options.json) {
        print({{"recipe", recipe.id},
               {"size", size_words(fly.tied.size).substr(1)},
               {"kind", name(*kind)},
               {"standard", standard},
               {"standards", standards},
               {"rows", std::move(rows)}});
    } else {
        fmt::print("{}  {}: a {}, by \"{}\"; there are {}\n{}", printable(recipe.name),
                   size_words(fly.tied.size), name(*kind), standard, list_of(standards),
                   table.text(terminal()));
    }
    return ExitCode::fine;
}

} // namespace

void add_proportions(CLI::App& app, Job& job) {
    auto options = std::make_shared<ProportionOptions>();
    CLI::App* command = app.add_subcommand(
        "proportions", "How long each part should be on this hook, by a named standard");
    command->add_option("RECIPE", options->recipe, "recipe file or name")->required();
    command->add_option("--size", options->size, "hook size, such as 14; else the middle one");
    command->add_option("--hook", options->hook, "file of your own measured hook");
    command->add_option("--standard", options->standard, "its name; else the first for such a fly");
    command->add_option("--measured", options->measured, "PART=LENGTH by your caliper, tail=4.6mm")
        ->allow_extra_args(false);
    command->add_flag("--json", options->json, "print JSON");
    command->callback([options, &job] { job = [options] { return run_proportions(*options); }; });
}

} // namespace wrapwright::cli
