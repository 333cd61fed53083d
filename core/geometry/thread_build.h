#pragma once
// Thread as a strand and as what it builds up to, by conservation of volume.
//
// `solid` is the area of fibre alone across a strand: linear density over density. Packing is the
// share of fibre in the space that it takes, 0 to 1: about 0.75 in a twisted strand, 0.6 (loose)
// to 0.8 (tight or waxed) in a wound body, and the whole uncertainty of what is computed here.

#include "core/units/quantity.h"

#include <span>

namespace wrapwright {

/// Most of a space that round fibres can fill: side by side in a hexagon, pi / sqrt(12).
inline constexpr double densest_packing = 0.90689968211710892530;

/// Diameter of a twisted strand.
/// Source  solid = packing pi d^2 / 4
[[nodiscard]] Length round_strand_diameter(Area solid, double packing);

/// Diameter of one filament of a strand of so many.
[[nodiscard]] Length filament_diameter(Area solid, int filaments);

/// A strand spun open.
struct FlatStrand {
    Length width{};
    Length thickness{};
};

/// A strand spun open to so many layers of filaments, each lying in the grooves of the one below.
/// Valid   1 <= layers <= filaments
[[nodiscard]] FlatStrand flat_strand(Area solid, int filaments, int layers);

/// Diameter over a base after turns spread evenly over a stretch.
/// Source  (pi/4) (D1^2 - D0^2) = nu (solid/packing) pi (D0 + D1)/2, nu turns to the length: each
///         side divides by D0 + D1, so the growth is linear in turns and does not depend on D0
[[nodiscard]] Length built_diameter(Length base, double turns, Length over, Area solid,
                                    double packing);

/// Turns that build a base up to a diameter over a stretch; 0 where it is that thick already.
[[nodiscard]] double turns_to_build(Length base, Length target, Length over, Area solid,
                                    double packing);

/// Packing of thread that grew a base by so much: the calibration of one's own hand.
/// Valid   built > base
[[nodiscard]] double packing_from_build(Length base, Length built, double turns, Length over,
                                        Area solid);

/// Thread for a wanted profile.
struct BuildPlan {
    double turns = 0.0;
    Length length{};
    double densest_per_mm = 0.0; ///< turns in the thickest millimetre
};

/// Turns and length that fill the space between two profiles given by equal cells.
///
/// Units   diameters in m
/// Shape   base and target have the same size; a cell whose target is below its base takes nothing
/// Source  length = packing V / solid, for any profile
[[nodiscard]] BuildPlan plan_build(std::span<const double> base, std::span<const double> target,
                                   Length cell, Area solid, double packing);

} // namespace wrapwright
