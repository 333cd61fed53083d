#include "core/check/photo_found.h"

#include "core/units/number_text.h"
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
    std::vector<std::string> measured, batches;
    double limit = 10.0;
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

std::string list_of(const std::vector<std::string>& names) {
    std::string out;
    for (const std::string& n : names) {
        if (!out.empty()) out.append(", ");
        out.append("\"").append(n).append("\"");
    }
    return out;
}

/// One measure of each fly of a batch: PART=4.6,4.7,... in mm, or mass in mg.
void add_batch(const std::string& said, const ProportionOptions& options, Json& rows,
               std::string& text) {
    const auto equals = said.find('=');
    const std::string part = said.substr(0, equals);
    const bool known = measured_part(part).has_value() || part == "rib" || part == "mass";
    std::vector<double> values;
    std::string_view rest = equals == std::string::npos ? std::string_view{}
                                                        : std::string_view(said).substr(equals + 1);
    while (known && !rest.empty()) {
        const auto comma = rest.find(',');
        const Result<double> value = read_number(rest.substr(0, comma));
        if (!value.ok() || !(value.value() > 0.0)) break;
        values.push_back(value.value());
        rest = comma == std::string_view::npos ? std::string_view{} : rest.substr(comma + 1);
    }
    if (values.empty() || !rest.empty()) {
        refuse_usage("--batch: '" + said + "' is no part with the measures of a batch",
                     "write tail=4.6,4.7,4.5 in mm, or mass=215,219 in mg");
    }
    const BatchSpread s = batch_spread(values, options.limit / 100.0);
    rows.push_back({{"part", part},
                    {"flies", values.size()},
                    {"mean", tidy(s.mean)},
                    {"sd", tidy(s.sd)},
                    {"low", tidy(s.low)},
                    {"high", tidy(s.high)},
                    {"worst_fly", s.worst + 1},
                    {"worst_off", tidy(s.worst_off)},
                    {"twins", s.twins}});
    const std::string_view unit = part == "mass" ? "mg" : "mm";
    append(text,
           "{}: {} flies, mean {:.2f} {}, deviation {:.2f}, {:.2f} to {:.2f} (range {:.2f}); {} "
           "{:g} %, farthest is fly {} by {:.0f} %\n",
           part, values.size(), s.mean, unit, s.sd, s.low, s.high, s.high - s.low,
           s.twins ? "twins, within" : "not twins by", options.limit, s.worst + 1,
           100.0 * s.worst_off);
}

ExitCode run_proportions(const ProportionOptions& options) {
    const Loaded loaded = load(options.recipe, options.hook);
    const Recipe& recipe = loaded.pattern.recipe;
    const Fly fly = run(loaded, size_of(loaded, options.size));
    const std::vector<PartTarget> all = targets_of(loaded.pattern, fly.tied);
    const std::vector<std::string> standards = standards_of(all);
    if (standards.empty()) {
        refuse_usage("no standard knows a fly of the class '" + printable(recipe.fly_class) + "'",
                     "write a class such as dry, wet, nymph, jig nymph or streamer in the recipe, "
                     "or targets of its own");
    }
    const std::string standard = options.standard.empty() ? standards.front() : options.standard;
    if (std::find(standards.begin(), standards.end(), standard) == standards.end()) {
        refuse_usage("--standard: '" + standard + "' says nothing of such a fly",
                     "take one of " + list_of(standards));
    }
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
    for (const PartTarget& row : only(all, standard)) {
        const Estimate<Length>& target = row.length;
        const auto own = own_measure(loaded.pattern, fly.tied, row.part);
        const auto said = measured.find(row.part);
        std::optional<Length> length;
        if (own) length = own->length;
        if (said != measured.end()) length = said->second;
        const std::string verdict =
            length ? fit_words(fit_of(target, *length)) : std::string("not on this fly");
        Json others = Json::array();
        std::string other_words;
        for (const PartTarget& other : all) {
            if (other.part != row.part || other.standard == standard) continue;
            const Estimate<Length>& t = other.length;
            others.push_back({{"standard", other.standard}, {"target_mm", mm_json(t)}});
            append(other_words, "{}{} {:.1f}", other_words.empty() ? "" : ", ", other.standard,
                   in_millimetres(t.value));
        }
        Json json{
            {"part", name(row.part)},
            {"target_mm", mm_json(target)},
            {"share", row.words},
            {"source", row.source},
            {"recipe_mm", own ? Json(tidy(in_millimetres(own->length))) : Json()},
            {"measured_mm",
             said != measured.end() ? Json(tidy(in_millimetres(said->second))) : Json()},
            {"verdict", verdict},
            {"off_mm", length ? Json(tidy(in_millimetres(fit_of(target, *length).off))) : Json()},
            {"step", own ? Json(own->step + 1) : Json()},
            {"mend_until_step",
             own ? Json(mend_until(loaded.pattern, fly.tied, row.part) + 1) : Json()},
            {"others", std::move(others)}};
        rows.push_back(std::move(json));
        const auto mm = [](Length x) { return fmt::format("{:.1f}", in_millimetres(x)); };
        table.add({std::string(name(row.part)), mm_text(target), own ? mm(own->length) : "",
                   said != measured.end() ? mm(said->second) : "", verdict,
                   own ? std::to_string(own->step + 1) : "", other_words},
                  verdict == "right" ? Colour::green : Colour::plain);
    }
    Json batches = Json::array();
    std::string batch_text;
    for (const std::string& said : options.batches) add_batch(said, options, batches, batch_text);
    if (options.json) {
        print({{"recipe", recipe.id},
               {"size", size_words(fly.tied.size).substr(1)},
               {"standard", standard},
               {"standards", standards},
               {"rows", std::move(rows)},
               {"batches", std::move(batches)}});
    } else {
        fmt::print("{}  {}: by \"{}\"; there are {}\n{}{}", printable(recipe.name),
                   size_words(fly.tied.size), standard, list_of(standards), table.text(terminal()),
                   batch_text);
    }
    return ExitCode::fine;
}

} // namespace

void add_proportions(const Command& program, Job& job) {
    auto options = std::make_shared<ProportionOptions>();
    const Command command = program.command(
        "proportions", "How long each part should be on this hook, by a named standard");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("--size", options->size, "hook size, such as 14; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--standard", options->standard, "its name; else the first for such a fly");
    command.option("--measured", options->measured, "PART=LENGTH by your caliper, tail=4.6mm")
        .one_at_a_time();
    command
        .option("--batch", options->batches,
                "PART=4.6,4.7,...: one measure of each fly; mass in mg")
        .one_at_a_time();
    command.option("--twins", options->limit, "percent of the mean that twins may differ by")
        .within(0.1, 50.0);
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_proportions);
}

} // namespace wrapwright::cli
