#include "gui/what_if.h"

#include "core/tying/tie.h"
#include "core/tying/words.h"
#include "core/units/number_words.h"
#include "gui/model.h"

#include <algorithm>

namespace wrapwright {

namespace {

const std::optional<double>& said(const Trials& trials, Trial what) {
    return trials[static_cast<std::size_t>(what)];
}

Number number(double value, Unit unit) {
    Number n;
    n.value = n.low = n.high = value;
    n.unit = unit;
    n.given = true;
    return n;
}

Anchor place(double metres) { return {Landmark::eye, none, metres, true}; }

/// The strand made thicker or thinner as a whole: its section goes with the square.
void widen(Stuff& stuff, double width) {
    const double k = width / stuff.width.value.si;
    const auto scale = [](auto& estimate, double by) {
        estimate.value = by * estimate.value;
        estimate.low = by * estimate.low;
        estimate.high = by * estimate.high;
    };
    scale(stuff.width, k);
    scale(stuff.height, k);
    scale(stuff.linear, k * k);
    scale(stuff.solid_area, k * k);
    scale(stuff.strength, k * k);
}

} // namespace

std::optional<std::array<TrialRange, trial_count>> trial_ranges(const OpenFly& fly, int moment) {
    const Counted own = counted_at(fly, moment);
    if (own.last <= own.first) return std::nullopt;
    const Winding& w = fly.tied.windings[static_cast<std::size_t>(own.first)];
    if (w.turns <= 0.0 || w.width.si <= 0.0) return std::nullopt;
    const double end =
        fly.tied.bases[static_cast<std::size_t>(w.base)].line.stations().bend_bottom.si;
    return std::array<TrialRange, trial_count>{{{1.0, std::max(12.0, 3.0 * w.turns), w.turns},
                                                {0.5 * w.width.si, 6.0 * w.pitch.si, w.pitch.si},
                                                {0.3 * w.width.si, 3.0 * w.width.si, w.width.si},
                                                {0.0, end, w.from.si},
                                                {0.0, end, w.to.si}}};
}

std::shared_ptr<const OpenFly> try_out(const OpenFly& fly, int moment, const Trials& trials) {
    auto tried = std::make_shared<OpenFly>(fly);
    Act& act = tried->resolved.acts[static_cast<std::size_t>(moment)];
    const Counted own = counted_at(fly, moment);
    const Winding& w = fly.tied.windings[static_cast<std::size_t>(own.first)];
    if (const auto& turns = said(trials, Trial::turns)) {
        act.turns = number(*turns, Unit::turns);
        act.pitch.given = false;
        act.spacing = Spacing::open; // so many turns over the stretch, wherever they then lie
    }
    if (const auto& pitch = said(trials, Trial::pitch)) {
        act.pitch = number(*pitch, Unit::length);
        act.turns.given = false;
        act.spacing = Spacing::open;
    }
    if (const auto& from = said(trials, Trial::from)) act.from = place(*from);
    if (const auto& to = said(trials, Trial::to)) act.to = place(*to);
    if (const auto& width = said(trials, Trial::width)) {
        widen(tried->resolved.materials[static_cast<std::size_t>(w.material)], *width);
    }
    tie(tried->pattern, tried->rig, tried->resolved, Limits{}, tried->tied);
    return tried;
}

std::string trial_words(const OpenFly& tried, int moment) {
    const Counted own = counted_at(tried, moment);
    if (own.last <= own.first) return "tried otherwise";
    const Winding& w = tried.tied.windings[static_cast<std::size_t>(own.first)];
    const std::string what = w.part == none ? "thread" : part_words(tried.pattern.recipe, w.part);
    return what + ": " + turn_words(w.turns) + " turns, " + length_words(w.pitch, false) +
           " apart, " + length_words(w.from, false) + " to " + length_words(w.to, false) +
           ", strand " + length_words(w.width, false);
}

} // namespace wrapwright
