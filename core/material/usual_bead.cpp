#include "core/material/usual.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

// Bores as sold, from memory: 0.7-0.8 mm in a bead of 2.0, 0.9-1.0 in 2.8, 1.0-1.1 in 3.3, 1.2-1.4
// in 4.0, which is 0.25 mm and a quarter of the bead.
constexpr Length metal_bore_least = millimetres(0.25);
constexpr double metal_bore_share = 0.25;
constexpr double metal_bore_spread = 0.12;
/// A glass bead's hole: so wide that 0.65 of its sphere is glass. From memory.
constexpr double glass_bore_share = 0.50;
constexpr double glass_bore_spread = 0.20;
constexpr double widest_bore_share = 0.60;

// The countersink. From memory its mouth is 0.5 to 0.6 of the bead and 0.4 to 0.5 deep; a little
// more than that is taken, because the one batch that was weighed (755 beads of 3.3 mm tungsten,
// 188.5 g) is lighter than those leave it: see tests/reference/bead_mass.cpp.
constexpr double mouth_share = 0.62;
constexpr double mouth_spread = 0.10;
constexpr double sink_share = 0.55;

// The slot, from memory: 0.25 to 0.40 of the bead wide, from the rear to the middle or past it.
constexpr double slot_share = 0.30;
constexpr double slot_spread = 0.20;
constexpr double slot_past_middle = 0.10;

} // namespace

Bead usual_bead(const MaterialFacts& facts, Length gape) {
    const bool glass = facts.substance == Substance::glass;
    Bead bead;
    bead.diameter =
        facts.diameter ? exactly(*facts.diameter, facts.origin) : usual(facts.kind).width.on(gape);
    const Length d = bead.diameter.value;
    bead.hole = facts.hole.value_or(facts.slot ? BeadHole::slotted
                                    : glass    ? BeadHole::drilled
                                               : BeadHole::countersunk);
    if (facts.bore) {
        bead.bore = exactly(*facts.bore, facts.origin);
    } else if (glass) {
        bead.bore = about(glass_bore_share * d, glass_bore_spread);
    } else {
        const Length bore = metal_bore_least + metal_bore_share * d;
        bead.bore = about(std::min(bore, widest_bore_share * d), metal_bore_spread);
    }
    if (bead.hole == BeadHole::countersunk) {
        const Length mouth = std::max(mouth_share * d, std::min(1.15 * bead.bore.value, 0.98 * d));
        bead.mouth = about(mouth, mouth_spread);
        bead.countersink_half =
            radians(std::atan(0.5 * ((mouth - bead.bore.value) / (sink_share * d))));
    }
    if (bead.hole == BeadHole::slotted) {
        bead.slot_width =
            facts.slot ? exactly(*facts.slot, facts.origin) : about(slot_share * d, slot_spread);
        bead.slot_from = -slot_past_middle * d;
    }
    return bead;
}

} // namespace wrapwright
