#pragma once
// How fast something sinks: terminal speed, and how long it takes to reach it.

#include "core/water/drag.h"

namespace wrapwright {

/// The steady speed at which drag equals that weight in water; negative where it rises.
///
/// `weight` is what the water does not carry, tippet included; a weight of 0 stands still.
/// Error   1e-9 of the speed; beyond 10 m/s that bound is returned
/// Source  root of drag(U) = weight, bracketed; drag grows with U, so there is one
/// Cost    about six evaluations of the drag
[[nodiscard]] Speed terminal_speed(const WetShape& shape, Force weight, const Water& water,
                                   const Tippet& tippet = {}, TippetWay way = TippetWay::axial);

/// The weight in water of that mass and volume.
[[nodiscard]] constexpr Force weight_in_water(Mass mass, Volume volume, const Water& water) {
    return {(mass.si - water.density.si * volume.si) * free_fall};
}

/// The first moments of a fall from rest, without a tippet.
struct StartUp {
    Speed terminal{};
    Duration time{}; ///< until that share of the terminal speed
    Length way{};    ///< fallen by then
    Length behind{}; ///< how far it stays behind one that had the speed at once, for good
};

/// How long a fall takes to reach `share` of its terminal speed.
///
/// All 0 where it does not sink.
/// Valid   0 < share < 1
/// Source  (m + rho V / 2) dU/dt = W - F(U): the added mass of a sphere; integrated over U
[[nodiscard]] StartUp start_up(const WetShape& shape, Mass mass, Volume volume, const Water& water,
                               double share = 0.95);

} // namespace wrapwright
