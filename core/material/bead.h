#pragma once
// Beads: volume, mass, and whether one passes the bends, the barb and the wire of a hook.

#include "core/hook/hook.h"
#include "core/units/estimate.h"

#include <string_view>

namespace wrapwright {

enum class BeadHole : unsigned char {
    drilled,     ///< one bore
    countersunk, ///< a bore with a cone at the rear
    slotted,     ///< a bore at the eye's end, a slot from the rear
};

std::string_view name(BeadHole hole);

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

/// Length of the bore from rim to rim: sqrt(D^2 - b^2), less what the mouth of a countersink takes.
[[nodiscard]] Length bore_length(const Bead& bead);

/// How deep the countersink goes into the bore from its mouth; 0 where there is none.
[[nodiscard]] Length countersink_depth(const Bead& bead);

/// Where the volume centre lies on the axis from the sphere's centre, tailward positive.
[[nodiscard]] Length bead_centre_offset(const Bead& bead);

/// The smallest straight bore of that length that slides over a bend of round wire.
///
/// Valid   wire > 0, radius >= wire / 2, 0 <= angle <= pi, bore_length >= 0
/// Source  derived in bead.cpp from the symmetric worst position; checked by brute force in tests
[[nodiscard]] Length bore_needed(Length wire, Length radius, Angle angle, Length bore_length);

/// How much wider than the wire a slot must be to let it through.
inline constexpr Length slot_clearance = millimetres(0.05);

/// The smallest bore with which that bead, its countersink or slot kept, slides over a bend.
///
/// A slot faces the inside of the bend: where it is wide enough only the unslotted part counts.
/// Valid   as bore_needed
/// Error   exact for a straight bore, and for a countersink while the outer edge meets the wall on
///         the bend's arc; by search along the wire to 0.1 um
/// Source  derived in bead_fit.cpp; checked by brute force in tests
[[nodiscard]] Length bead_bore_needed(const Bead& bead, Length wire, Length radius, Angle angle);

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
    PassageCheck eye;      ///< eye's outside over the bore: the bead does not fall off the front
    Length gape_left{};    ///< gape - (bead - wire) / 2
    double gape_share = 1.0;
};

/// Whether that bead goes on that hook, and how much of the gape it leaves.
///
/// Over wire and barb "tight" is a margin from 0 to `clearance`; over a bend from -clearance on.
/// Error   bends are not perfect arcs: +-0.03 mm at 1 mm radius, and bores +-0.05 mm
/// Source  bend: bore_needed; gape left: geometry of a bead centred on the wire
[[nodiscard]] BeadFit bead_fit(const Bead& bead, const Hook& hook, Length clearance);

} // namespace wrapwright
