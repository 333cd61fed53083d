#include "platform/cli/measure_fly.h"

#include "core/units/number_text.h"
#include "core/units/size_text.h"
#include "platform/cli/failure.h"
#include "platform/cli/load.h"
#include "platform/cli/text.h"

#include <algorithm>
#include <fmt/core.h>

namespace wrapwright::cli {

/// X1,Y1,X2,Y2 ...: as many places as there are.
std::vector<glm::dvec2> places_of(const std::string& option, const std::string& text,
                                  std::size_t least, std::size_t most) {
    std::vector<double> numbers;
    std::string_view rest = text;
    while (!rest.empty()) {
        const auto comma = rest.find(',');
        const Result<double> number = read_number(rest.substr(0, comma));
        if (!number.ok()) {
            refuse_usage("--" + option + ": '" + text + "' is no list of places",
                         "write pixels as X1,Y1,X2,Y2");
        }
        numbers.push_back(number.value());
        rest = comma == std::string_view::npos ? std::string_view{} : rest.substr(comma + 1);
    }
    if (numbers.size() % 2 != 0 || numbers.size() < 2 * least || numbers.size() > 2 * most) {
        refuse_usage("--" + option + ": '" + text + "' has not the places that it needs",
                     least == most ? fmt::format("write {} pairs of pixels", least)
                                   : "write pixels as X1,Y1,X2,Y2");
    }
    std::vector<glm::dvec2> places;
    for (std::size_t i = 0; i + 1 < numbers.size(); i += 2) {
        places.emplace_back(numbers[i], numbers[i + 1]);
    }
    return places;
}

SaidScale said_scale(const std::string& text) {
    const auto equals = text.find('=');
    if (equals == std::string::npos) {
        refuse_usage("--scale: '" + text + "' has no length", "write X1,Y1,X2,Y2=9.7mm");
    }
    const Result<WrittenLength> apart = parse_length(text.substr(equals + 1));
    if (!apart.ok()) refuse_usage("--scale: " + apart.error().message, apart.error().remedy);
    return {places_of("scale", text.substr(0, equals), 2, 2), apart.value().quantity};
}

namespace {

PhotoMarks marks_of(const MarkedFly& fly) {
    PhotoMarks marks;
    marks.flipped = fly.flipped;
    if (!fly.card.empty()) {
        const auto corners = places_of("card", fly.card, 4, 4);
        for (std::size_t i = 0; i < 4; ++i) marks.at[i] = corners[i];
    } else {
        marks.scale_by = ScaleBy::points;
        const SaidScale scale = said_scale(fly.scale);
        marks.known = scale.apart;
        for (std::size_t i = 0; i < 2; ++i) marks.at[i] = scale.points[i];
    }
    if (!fly.line.empty()) {
        const auto ends = places_of("line", fly.line, 2, 2);
        marks[PhotoSpot::line_start] = ends[0];
        marks[PhotoSpot::line_end] = ends[1];
    }
    for (const std::string& said : fly.marks) {
        const auto equals = said.find('=');
        std::string word = said.substr(0, equals);
        std::replace(word.begin(), word.end(), '-', ' ');
        const auto spot = photo_spot(word);
        if (equals == std::string::npos || !spot || *spot < PhotoSpot::eye) {
            refuse_usage("--mark: '" + said + "' names no place with its pixel",
                         "write eye=X,Y, bend, tail-end, body-start, body-end or hackle-tip");
        }
        marks[*spot] = places_of("mark", said.substr(equals + 1), 1, 1)[0];
    }
    return marks;
}

} // namespace

void measure_fly(const GreyView& photo, const MarkedFly& said, const PhotoDoubt& doubt, Json& json,
                 std::string& text) {
    if (said.recipe.empty()) {
        refuse_usage("marks need a recipe to be held against", "give --recipe, and --size");
    }
    const Loaded loaded = load(said.recipe, said.hook);
    const Fly fly = run(loaded, size_of(loaded, said.size));
    const std::vector<PartTarget> all = targets_of(loaded.pattern, fly.tied);
    const std::vector<std::string> standards = standards_of(all);
    std::string standard = said.standard;
    if (standard.empty() && !standards.empty()) standard = standards.front();
    if (std::find(standards.begin(), standards.end(), standard) == standards.end()) {
        refuse_usage("--standard: '" + standard + "' says nothing of such a fly",
                     "see `proportions` for those that do");
    }
    const std::vector<PartTarget> targets = only(all, standard);
    const PhotoFound found =
        find_on_photo(photo, marks_of(said), targets, loaded.pattern, fly.tied, doubt);
    if (!found.scale) refuse_usage(found.no_scale, "mark them anew");
    Json parts = Json::array();
    append(text, "  {} {}, by \"{}\"\n", printable(loaded.pattern.recipe.name),
           size_words(fly.tied.size), standard);
    for (std::size_t i = 0; i < found.lengths.parts.size(); ++i) {
        const auto& e = found.lengths.parts[i];
        if (!e) continue;
        const auto part = static_cast<Measured>(i);
        Json row{{"part", name(part)},
                 {"length_mm", tidy(in_millimetres(e->value))},
                 {"low_mm", tidy(in_millimetres(e->low))},
                 {"high_mm", tidy(in_millimetres(e->high))}};
        std::string words = length_text(*e);
        for (const PartTarget& t : targets) {
            if (t.part != part) continue;
            const FitCheck fit = fit_of(t.length, e->value);
            row["target_mm"] = tidy(in_millimetres(t.length.value));
            row["off_mm"] = tidy(in_millimetres(fit.off));
            row["verdict"] = fit_words(fit);
            words.append(", ").append(fit_words(fit));
        }
        append(text, "  {}: {}\n", name(part), words);
        parts.push_back(std::move(row));
    }
    Json faults = Json::array();
    for (const FaultSeen& f : found.faults) {
        const FaultWords& w = words_of(f.kind);
        faults.push_back({{"sign", w.sign},
                          {"step", f.step == none ? Json() : Json(f.step + 1)},
                          {"mend_until_step", f.until == none ? Json() : Json(f.until + 1)},
                          {"cause", w.cause},
                          {"cure", w.cure}});
        append(text, "  {}: {}. Usually {}: {}.\n", w.sign, mend_words(f.step, f.until), w.cause,
               w.cure);
    }
    json["fly"] = {{"recipe", loaded.pattern.recipe.id},
                   {"size", size_words(fly.tied.size).substr(1)},
                   {"standard", standard},
                   {"parts", std::move(parts)},
                   {"faults", std::move(faults)}};
    if (found.lengths.shank) {
        json["fly"]["eye_to_bend_mm"] = tidy(in_millimetres(found.lengths.shank->value));
    }
}

} // namespace wrapwright::cli
