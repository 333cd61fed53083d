#include "core/units/number_text.h"
#include "core/units/size_text.h"
#include "platform/cli/commands.h"
#include "platform/cli/json.h"
#include "platform/cli/measure_fly.h"
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
    std::vector<std::string> marks;
    std::string recipe, size, hook, standard;
    bool flipped = false;
    bool json = false;
};

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
    const SaidScale said = said_scale(options.scale);
    return or_refuse(PhotoScale::two_points(said.points[0], said.points[1], said.apart));
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
    if (options.line.empty() && options.points.empty() && options.marks.empty()) {
        refuse_usage("there is nothing to measure",
                     "give --line for ribs, --points for lengths, or --mark with --recipe for a "
                     "whole fly");
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
    if (!options.marks.empty()) {
        const MarkedFly fly{options.recipe,   options.size,  options.hook,
                            options.standard, options.scale, options.card,
                            options.line,     options.marks, options.flipped};
        measure_fly(photo.view(), fly, doubt, json, text);
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

void add_measure(const Command& program, Job& job) {
    auto options = std::make_shared<MeasureOptions>();
    const Command command = program.command("measure", "Lengths and rib spacing on a photo");
    command.option("PHOTO", options->photo, "PNG or JPEG").required();
    command.option("--scale", options->scale, "X1,Y1,X2,Y2=9.7mm: two pixels so far apart");
    command.option("--card", options->card, "X1,Y1,...,X4,Y4: corners of an ID-1 card, round it");
    command.option("--line", options->line, "X1,Y1,X2,Y2 along a ribbed body");
    command.option("--points", options->points, "X1,Y1,X2,Y2,...: lengths from each to the next");
    command
        .option("--mark", options->marks,
                "eye=X,Y and so on: bend, tail-end, body-start, body-end, hackle-tip")
        .one_at_a_time();
    command.option("--recipe", options->recipe, "what the marks are held against");
    command.option("--size", options->size, "its hook size; else the middle one");
    command.option("--hook", options->hook, "file of your own measured hook");
    command.option("--standard", options->standard, "of proportions; else the first");
    command.flag("--point-up", options->flipped, "the hook's point is upward in the photo");
    command.option("--width", options->half_width, "pixels on each side of the line").within(0, 50);
    command.option("--tilt", options->tilt, "degrees that the fly may stand off the scale's plane")
        .within(0, 60);
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_measure);
}

} // namespace wrapwright::cli
