#pragma once
// Beads: volume, mass, and whether one passes the bends, the barb and the wire of a hook.

#include "core/hook/hook.h"
#include "core/units/estimate.h"

namespace wrapwright {

enum class BeadHole : unsigned char {
    drilled,     ///< one bore
    countersunk, ///< a bore with a cone at the rear
    slotted,     ///< a bore at the eye's end, a slot from the rear
};

/// A bead as a sphere with a bore along its axis.
struct Bead {
    Estimate<Length> diameter;
    Estimate<Length> bore;
    Estimate<Length> mouth;      ///< countersunk: diameter of the cone at the surface; else 0
    Angle countersink_half{};    ///< half-angle of that cone
    Estimate<Length> slot_width; ///< slotted: else 0
    Length slot_from{}; ///< slotted: where the slot starts, from the centre, eyeward negative
    BeadHole hole = BeadHole::drilled;
};

/// Solid volume of a drilled sphere (napkin ring), less its countersink or slot.
///
/// Valid   0 <= bore < diameter
/// Error   exact for drilled and countersunk; the slot by Simpson's rule, better than 1e-6 of it
/// Source  napkin ring V = pi h^3 / 6; countersink and slot derived in bead.cpp
[[nodiscard]] Volume bead_volume(const Bead& bead);

/// Length of the bore between the rims: sqrt(D^2 - b^2), shortened by a countersink.
[[nodiscard]] Length bore_length(const Bead& bead);

/// Where the volume centre lies on the axis from the sphere's centre, tailward positive.
[[nodiscard]] Length bead_centre_offset(const Bead& bead);

/// The smallest straight bore of that length that slides over a bend of round wire.
///
/// Valid   wire > 0, radius >= wire / 2, 0 <= angle <= pi, bore_length >= 0
/// Source  derived in bead.cpp from the symmetric worst position; checked by brute force in tests
[[nodiscard]] Length bore_needed(Length wire, Length radius, Angle angle, Length bore_length);

enum class Passage : unsigned char { passes, tight, sticks };

/// One limit of threading a bead on: the room there is and the room that it takes.
struct PassageCheck {
    Passage verdict = Passage::passes;
    Length needed{};
    Length has{};
    [[nodiscard]] Length margin() const { return has - needed; }
};

/// The three limits of sliding a bead from the point to the eye, and what is left of the gape.
struct BeadFit {
    PassageCheck wire;     ///< bore over the wire
    PassageCheck barb;     ///< bore over wire and barb
    PassageCheck bend;     ///< bore over the main bend
    PassageCheck jig_bend; ///< bore, or slot, over the jig bend; passes when there is none
    PassageCheck eye;   ///< eye's outside over bore or slot: the bead does not fall off the front
    Length gape_left{}; ///< gape - (bead - wire) / 2
    double gape_share = 1.0;
};

/// Whether that bead goes on that hook, and how much of the gape it leaves.
///
/// Error   bends are not perfect arcs: +-0.03 mm at 1 mm radius, hence "tight" below `clearance`
/// Source  bend: bore_needed; gape left: geometry of a bead centred on the wire
[[nodiscard]] BeadFit bead_fit(const Bead& bead, const Hook& hook, Length clearance);

} // namespace wrapwright
