#include "core/check/faults.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

using K = FaultKind;

constexpr std::array<FaultWords, 16> table{{
    {K::tail_long, "tail too long", "cut or pinched by eye",
     "measure the fibres along the shank, pinch them there, and bind them down where you measured"},
    {K::tail_short, "tail too short", "the fibres slipped back while they were bound",
     "hold the pinch until three turns lie over them"},
    {K::body_long, "body too long", "it was begun too far back, round the bend",
     "mark the place above the barb and begin there"},
    {K::body_short, "body too short", "it was begun too far forward, or the head takes too much",
     "begin above the barb, and stop at the mark behind the eye"},
    {K::thorax_long, "thorax too long", "the body ended too early",
     "run the body up to its mark before the thorax begins"},
    {K::thorax_short, "thorax too short", "the body was run too far forward",
     "stop the body a third of the shank behind the eye"},
    {K::wing_long, "wing too long", "its tips were measured past the bend",
     "measure along the shank and transfer it with a pinch"},
    {K::wing_short, "wing too short", "it was pulled back while it was tied in",
     "hold the tips over the bend until it is locked"},
    {K::hackle_long, "hackle too long", "a feather of the next larger size",
     "hold a barb against the gape before it is tied in; over a thick body take one size less"},
    {K::hackle_short, "hackle too short", "a feather of a smaller size, or its thin end",
     "hold a barb against the gape before it is tied in"},
    {K::eye_crowded, "the eye is crowded", "everything began too near to the eye",
     "leave one to two eye lengths bare, and begin at that mark"},
    {K::rib_wide, "the rib's turns are too far apart", "fewer turns than the recipe has",
     "count the turns, and set the first one by the spacing in mm"},
    {K::rib_close, "the rib's turns are too close", "more turns than the recipe has",
     "count the turns, and set the first one by the spacing in mm"},
    {K::rib_uneven, "the rib is uneven", "each turn was set by eye",
     "let the ticks over the fly set them: so many turns, so many mm apart"},
    {K::heavy, "heavier than the others", "more ballast, dubbing or coat than the recipe has",
     "count turns of ballast; take half the dubbing that you think of"},
    {K::light, "lighter than the others", "less ballast, or another bead",
     "count turns of ballast, and weigh ten beads of this lot"},
}};

} // namespace

const FaultWords& words_of(FaultKind kind) { return table[static_cast<std::size_t>(kind)]; }

FaultKind length_fault(Measured part, bool is_long) {
    const int first = 2 * static_cast<int>(part);
    return static_cast<FaultKind>(is_long ? first : first + 1);
}

std::optional<OwnMeasure> own_rib(const Pattern& pattern, const Tied& tied) {
    for (const Winding& w : tied.windings) {
        if (w.part == none || w.base != 0) continue;
        if (pattern.recipe.parts[static_cast<std::size_t>(w.part)].role != "rib") continue;
        if (w.pitch.si > 0.0 && w.spacing != Spacing::touching) return OwnMeasure{w.pitch, w.step};
    }
    return std::nullopt;
}

std::vector<FaultSeen> faults_of(const SeenOnFly& seen, const std::vector<PartTarget>& targets,
                                 const Pattern& pattern, const Tied& tied) {
    std::vector<FaultSeen> out;
    for (const PartTarget& target : targets) {
        const auto& length = seen.parts[static_cast<std::size_t>(target.part)];
        if (!length) continue;
        const FitCheck fit = fit_of(target.length, *length);
        if (fit.fit == Fit::right) continue;
        const auto own = own_measure(pattern, tied, target.part);
        out.push_back({length_fault(target.part, fit.off.si > 0.0), own ? own->step : none,
                       mend_until(pattern, tied, target.part)});
    }
    const auto rib = own_rib(pattern, tied);
    const int rib_step = rib ? rib->step : none;
    if (seen.rib_spacing && rib) {
        const double share = *seen.rib_spacing / rib->length;
        if (share > 1.1) out.push_back({K::rib_wide, rib_step, rib_step});
        if (share < 0.9) out.push_back({K::rib_close, rib_step, rib_step});
    }
    if (seen.rib_unevenness && *seen.rib_unevenness > seen_unevenness) {
        out.push_back({K::rib_uneven, rib_step, rib_step});
    }
    // A bead is the head: nothing need be left bare behind it.
    if (seen.bare_head && !tied.bases.empty() && tied.bases.front().bead == none &&
        *seen.bare_head < tied.bases.front().hook.eye_length.value) {
        const auto body = own_measure(pattern, tied, Measured::body);
        const int step = body ? body->step : none;
        out.push_back({K::eye_crowded, step, step});
    }
    std::sort(out.begin(), out.end(), [](const FaultSeen& x, const FaultSeen& y) {
        return x.step != y.step ? x.step < y.step : x.kind < y.kind;
    });
    return out;
}

std::string mend_words(int step, int until) {
    if (step == none) return "no step of this recipe makes it";
    std::string words = "step ";
    words.append(std::to_string(step + 1));
    if (until <= step) return words.append(": mend it before you go on");
    return words.append("; it can be mended until step ").append(std::to_string(until + 1));
}

} // namespace wrapwright
