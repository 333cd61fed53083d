#include "core/water/water_words.h"

#include "core/tying/words.h"
#include "platform/cli/failure.h"
#include "platform/cli/water_json.h"

#include <fmt/core.h>

#include <string_view>

namespace wrapwright::cli {

namespace {

template <class Q>
Json spread_json(const Estimate<Q>& e, double unit) {
    return {{"value", tidy(unit * e.value.si)},
            {"low", tidy(unit * e.low.si)},
            {"high", tidy(unit * e.high.si)},
            {"origin", name(e.origin)}};
}

std::string portion_name(const Pattern& pattern, const Portion& p) {
    if (p.material == none) return base_words(pattern.recipe, p.base);
    return p.part == none ? "joint" : part_words(pattern.recipe, p.part);
}

Json place_json(const glm::dvec2& at) { return {tidy(at.x * 1e3), tidy(at.y * 1e3)}; }

Json portions_json(const Pattern& pattern, const InWater& w) {
    Json list = Json::array();
    for (const Portion& p : w.body.portions) {
        list.push_back(
            {{"part", portion_name(pattern, p)},
             {"material", p.material == none
                              ? ""
                              : pattern.recipe.materials[static_cast<std::size_t>(p.material)].id},
             {"mass_mg", spread_json(p.mass, 1e6)},
             {"volume_mm3", spread_json(p.volume, 1e9)}});
    }
    return list;
}

} // namespace

Json water_json(const Pattern& pattern, const InWater& w) {
    Json drift = Json::array();
    for (const DriftPlace& p : w.drift) {
        drift.push_back({{"x_m", tidy(p.along.si)},
                         {"depth_m", tidy(p.depth.value.si)},
                         {"low", tidy(p.depth.low.si)},
                         {"high", tidy(p.depth.high.si)}});
    }
    Json turn = Json::object();
    if (w.ride.up.ballast) turn["ballast_mg"] = tidy(w.ride.up.ballast->si * 1e6);
    if (w.ride.up.bead_out) turn["bead_out_mm"] = tidy(w.ride.up.bead_out->si * 1e3);
    Json factors = Json::array();
    for (const Factor& f : w.fit.each) factors.push_back(tidy(f.si));
    return {{"mass_mg", spread_json(w.mass, 1e6)},
            {"volume_mm3", spread_json(w.volume, 1e9)},
            {"weight_in_water_mN", spread_json(w.weight, 1e3)},
            {"sink_m_s", spread_json(w.sink, 1.0)},
            {"sink_without_tippet_m_s", spread_json(w.sink_free, 1.0)},
            {"tippet_band_m_s", {{"drawn_along", tidy(w.drawn.si)}, {"bowed", tidy(w.bowed.si)}}},
            {"nearly_neutral", w.nearly_neutral},
            {"known", w.timed ? "by a timed fall" : until_timed},
            {"drag_factor",
             {{"value", tidy(w.fit.factor.value.si)},
              {"low", tidy(w.fit.factor.low.si)},
              {"high", tidy(w.fit.factor.high.si)},
              {"of_each_fall", std::move(factors)},
              {"scatter", tidy(w.fit.scatter)}}},
            {"start_up",
             {{"time_s", tidy(w.start.time.si)},
              {"way_mm", tidy(w.start.way.si * 1e3)},
              {"behind_mm", tidy(w.start.behind.si * 1e3)}}},
            {"film", {{"verdict", name(w.film.verdict)}, {"margin", tidy(w.film.margin)}}},
            {"ride",
             {{"verdict", name(w.ride.verdict)},
              {"delta_mm", tidy(w.ride.delta.si * 1e3)},
              {"doubt_mm", tidy(w.ride.doubt.si * 1e3)},
              {"to_turn_up", std::move(turn)}}},
            {"hang_deg", tidy(in_degrees(w.hang))},
            {"sinking_deg", tidy(in_degrees(w.attitude))},
            {"centres_mm",
             {{"mass", place_json(w.centres.of_mass)},
              {"volume", place_json(w.centres.of_volume)},
              {"weight_in_water", place_json(w.centres.of_weight)},
              {"drag", place_json(w.drag_at)},
              {"eye", place_json(w.body.eye)}}},
            {"parts", portions_json(pattern, w)},
            {"to_bed_m", spread_json(w.to_bed, 1.0)},
            {"drift", std::move(drift)}};
}

std::string water_text(const Pattern& pattern, const InWater& w, const Fishing& fishing,
                       const Terminal& to) {
    std::string out;
    const auto say = [&](std::string_view what, const std::string& words,
                         Colour colour = Colour::plain) {
        append(out, "  {} {}\n", to.paint(fmt::format("{:<9}", what), Colour::faint),
               to.paint(wrapped(printable(words), to.width, 12), colour));
    };
    say("weighs", weight_words(w.mass) + fmt::format(", of which {:.2f} mN are left in water",
                                                     w.weight.value.si * 1e3));
    say("tippet",
        fishing.tippet.length.si > 0.0
            ? fmt::format("{:.2f} mm, {:.2f} m of it in the water",
                          in_millimetres(fishing.tippet.thickness), fishing.tippet.length.si)
            : std::string("none"));
    say("sinking", sink_words(w), w.nearly_neutral ? Colour::yellow : Colour::bold);
    if (fishing.tippet.length.si > 0.0) {
        say("", fmt::format("{:.2f} m/s with the tippet drawn along, {:.2f} with it bowed",
                            w.drawn.si, w.bowed.si));
        say("", "without a tippet " + speed_words(w.sink_free));
    }
    say("surface", film_words(w));
    say("riding", ride_words(w),
        w.ride.verdict == Ride::undecided ? Colour::yellow : Colour::plain);
    for (const std::string& line : turn_over_words(w)) say("", "to turn it: " + line);
    say("hanging", hang_words(w));
    for (const std::string& line : ground_words(pattern, w)) say("rests on", line);
    if (w.fit.wall_near) say("note", "the jar is narrower than 20 beads: its wall was allowed for");
    if (w.fit.too_short) say("note", "let it fall 0.3 m before the clock starts, where you can");
    Table table({{"after m"}, {"deep m"}, {"from"}, {"to"}});
    for (std::size_t i = 4; i < drift_places; i += 4) {
        const DriftPlace& p = w.drift[i];
        const auto m = [](Length x) { return fmt::format("{:.2f}", x.si); };
        table.add(
            {fmt::format("{:.1f}", p.along.si), m(p.depth.value), m(p.depth.low), m(p.depth.high)});
    }
    append(out, "\n{}  ({:.2g} m/s at the surface, {:.2g} m deep; {})\n{}",
           to.paint("Drift", Colour::bold), fishing.stream.surface.si, fishing.stream.depth.si,
           w.timed ? "by timed falls" : until_timed, table.text(to));
    return out;
}

} // namespace wrapwright::cli
