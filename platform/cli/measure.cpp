#include "core/units/number_text.h"
#include "core/units/size_text.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/terminal.h"
#include "platform/photo.h"

#include <fmt/core.h>

#include <memory>

namespace wrapwright::cli {

namespace {

struct MeasureOptions {
    std::string photo, scale, card, line, points;
    int half_width = 5;
    double tilt = 0.0;
    bool json = false;
};

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

PhotoScale scale_of(const MeasureOptions& options) {
    const auto or_refuse = [](Result<PhotoScale> scale) {
        if (!scale.ok()) refuse_usage(scale.error().message, scale.error().remedy);
        return std::move(scale).value();
    };
    if (options.scale.empty() == options.card.empty()) {
        refuse_usage("a photo needs one scale",
                     "give --scale X1,Y1,X2,Y2=9.7mm, or --card with its four corners");
    }
    if (!options.card.empty()) {
        const auto c = places_of("card", options.card, 4, 4);
        return or_refuse(PhotoScale::card({c[0], c[1], c[2], c[3]}));
    }
    const auto equals = options.scale.find('=');
    if (equals == std::string::npos) {
        refuse_usage("--scale: '" + options.scale + "' has no length", "write X1,Y1,X2,Y2=9.7mm");
    }
    const auto p = places_of("scale", options.scale.substr(0, equals), 2, 2);
    const Result<WrittenLength> apart = parse_length(options.scale.substr(equals + 1));
    if (!apart.ok()) refuse_usage("--scale: " + apart.error().message, apart.error().remedy);
    return or_refuse(PhotoScale::two_points(p[0], p[1], apart.value().quantity));
}

Json mm_json(const Estimate<Length>& e) {
    return {{"value", tidy(in_millimetres(e.value))},
            {"low", tidy(in_millimetres(e.low))},
            {"high", tidy(in_millimetres(e.high))}};
}

std::string mm_text(const Estimate<Length>& e) {
    return fmt::format("{:.3f} mm ({:.3f} to {:.3f})", in_millimetres(e.value),
                       in_millimetres(e.low), in_millimetres(e.high));
}

ExitCode run_measure(const MeasureOptions& options) {
    const Result<Photo> opened = open_photo(options.photo);
    if (!opened.ok()) refuse(options.photo, opened.error());
    const Photo& photo = opened.value();
    const PhotoScale scale = scale_of(options);
    PhotoDoubt doubt;
    doubt.tilt = degrees(options.tilt).si;
    if (options.line.empty() && options.points.empty()) {
        refuse_usage("there is nothing to measure",
                     "give --line for ribs, or --points for lengths");
    }
    Json json{{"photo", {{"width", photo.width}, {"height", photo.height}}},
              {"scale", scale.is_card() ? "card" : "two points"}};
    std::string text;
    if (!options.points.empty()) {
        const auto places = places_of("points", options.points, 2, 200);
        for (const glm::dvec2& p : places) {
            if (!scale.reaches(p)) {
                refuse_usage("--points: the scale does not reach to one of them",
                             "give places on the photo, near the scale");
            }
        }
        Json lengths = Json::array();
        for (std::size_t i = 0; i + 1 < places.size(); ++i) {
            const Estimate<Length> d = scale.distance(places[i], places[i + 1], doubt);
            lengths.push_back(mm_json(d));
            append(text, "  from place {} to {}: {}\n", i + 1, i + 2, mm_text(d));
        }
        json["lengths_mm"] = std::move(lengths);
    }
    if (!options.line.empty()) {
        const auto ends = places_of("line", options.line, 2, 2);
        const Result<RibMeasure> ribs =
            measure_ribs(photo.view(), scale, ends[0], ends[1], options.half_width, doubt);
        if (!ribs.ok()) refuse(options.photo, ribs.error());
        const RibMeasure& r = ribs.value();
        json["line_mm"] = mm_json(scale.distance(ends[0], ends[1], doubt));
        json["period_mm"] = mm_json(r.period);
        json["turns"] = tidy(r.turns);
        json["unevenness"] = tidy(r.unevenness);
        json["agree"] = r.agree;
        json["by_spectrum_mm"] = tidy(in_millimetres(r.by_spectrum));
        json["by_shift_mm"] = tidy(in_millimetres(r.by_shift));
        Json marks = Json::array();
        for (const glm::dvec2& m : r.marks) marks.push_back({tidy(m.x), tidy(m.y)});
        json["marks_px"] = std::move(marks);
        append(text, "  ribs {} apart, {:.1f} turns on the line, {:.0f} % uneven\n",
               mm_text(r.period), r.turns, 100.0 * r.unevenness);
        if (!r.agree) {
            append(
                text,
                "  two ways do not agree: {:.3f} mm by the spectrum, {:.3f} mm by shifting; count "
                "the ribs and take the one that fits\n",
                in_millimetres(r.by_spectrum), in_millimetres(r.by_shift));
        }
    }
    if (options.json) {
        print(json);
    } else {
        fmt::print("{} x {} pixels, scale by {}\n{}", photo.width, photo.height,
                   scale.is_card() ? "a card" : "two points", text);
    }
    return ExitCode::fine;
}

} // namespace

void add_measure(CLI::App& app, Job& job) {
    auto options = std::make_shared<MeasureOptions>();
    CLI::App* command = app.add_subcommand("measure", "Lengths and rib spacing on a photo");
    command->add_option("PHOTO", options->photo, "PNG or JPEG")->required();
    command->add_option("--scale", options->scale, "X1,Y1,X2,Y2=9.7mm: two pixels so far apart");
    command->add_option("--card", options->card,
                        "X1,Y1,...,X4,Y4: corners of an ID-1 card, round it");
    command->add_option("--line", options->line, "X1,Y1,X2,Y2 along a ribbed body");
    command->add_option("--points", options->points,
                        "X1,Y1,X2,Y2,...: lengths from each to the next");
    command->add_option("--width", options->half_width, "pixels on each side of the line")
        ->check(CLI::Range(0, 50));
    command
        ->add_option("--tilt", options->tilt,
                     "degrees that the fly may stand off the scale's plane")
        ->check(CLI::Range(0, 60));
    command->add_flag("--json", options->json, "print JSON");
    command->callback([options, &job] { job = [options] { return run_measure(*options); }; });
}

} // namespace wrapwright::cli
