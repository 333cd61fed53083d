#pragma once
// How deep a fly is after a drift: carried by the current at its own depth while it sinks.

#include "core/water/sink.h"

#include <vector>

namespace wrapwright {

/// How the current slows down towards the bed.
enum class CurrentProfile : unsigned char {
    power,       ///< by the seventh root of the height over the bed
    logarithmic, ///< by its logarithm over the bed's roughness
};

/// A stream that is the same all along.
struct Stream {
    Length depth{};
    Speed surface{};                      ///< speed of the current at the surface
    Length roughness = millimetres(50.0); ///< ks of the bed: about the size of its stones
    CurrentProfile profile = CurrentProfile::power;
};

/// The depth below the surface after drifting `along`, at most the stream's.
///
/// Error   exact by the power; by the logarithm solved to 1e-9 m, ending y0 above the bed
/// Valid   stream.depth, stream.surface, sink > 0; along >= 0; by the logarithm depth > roughness
/// Source  derived from dx/dz = u(y) / w: u = us (y / H)^(1/7), or u = (u* / 0.4) ln(y / y0) with
///         y0 = ks / 30, whose integral is X = u* / (0.4 w) [G(H) - G(H - z)], G(y) = y ln(y / y0) - y
[[nodiscard]] Length drift_depth(const Stream& stream, Speed sink, Length along);

/// The way along until the bed.
[[nodiscard]] Length drift_to_bed(const Stream& stream, Speed sink);

/// The shear speed of that stream: 0.4 us / ln(H / y0).
[[nodiscard]] Speed shear_speed(const Stream& stream);

/// How far turbulence alone moves things up or down in that time, as a standard deviation.
///
/// Error   a rough figure: the river's own bed, upwelling and slack are not in it
/// Source  vertical speeds of rms u* and mixing 0.067 u* H (Fischer et al. 1979) give a memory of
///         0.067 H / u*; spread by Taylor 1921
[[nodiscard]] Length turbulent_spread(const Stream& stream, Duration time);

/// One point of a path with inertia.
struct DriftPoint {
    Duration time{};
    Length along{}, depth{};
};

/// The path of a fly that lands at rest on the surface: its own inertia and the current's profile.
///
/// Ends at the bed, at `along`, or after 60 s. Without a tippet.
/// Error   steps of 1 ms, fourth order: better than 1e-5 m
/// Source  (m + rho V / 2) dv/dt = W e_z - F(|v - u|) (v - u) / |v - u|, u by the 1/7 power
[[nodiscard]] std::vector<DriftPoint> drift_path(const WetShape& shape, Mass mass, Volume volume,
                                                 const Water& water, const Stream& stream,
                                                 Length along);

} // namespace wrapwright
