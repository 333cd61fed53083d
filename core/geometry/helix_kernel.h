#pragma once
// The formulas of windings as bare doubles, for the loops that wind every strand of a recipe.
//
// Everything is in metres and radians, nothing allocates, nothing is checked: the caller's inputs
// are inside Valid. core/geometry/helix.h has the same formulas with kinds and refusals.
//
// `radius` is that of the strand's centreline, (core diameter + strand height) / 2; `width` is the
// strand across its own run; `pitch` is along the core's axis.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace wrapwright::kernel {

inline constexpr double two_pi = 2.0 * std::numbers::pi;

/// Radius at which a strand's centre runs on a core.
constexpr double centre_radius(double core_diameter, double strand_height) {
    return 0.5 * (core_diameter + strand_height);
}

/// Length of one turn on a cylinder.
/// Source  do Carmo, Differential Geometry of Curves and Surfaces (1976), sec. 1-3: the cylinder
///         unrolls into a plane, where a turn is the diagonal of circumference and pitch
inline double turn_length(double radius, double pitch) {
    const double around = two_pi * radius;
    return std::sqrt(around * around + pitch * pitch);
}

/// Length of strand over one short cell of a body, its radius linear in between.
/// Error   relative (radius_change / radius)^2 / 24 and less, from the mean radius used
inline double cell_length(double mean_radius, double turns, double along, double radius_change) {
    const double around = two_pi * mean_radius * turns;
    return std::sqrt(around * around + along * along + radius_change * radius_change);
}

/// Length on a cone at constant axial pitch, centreline radius r0 to r1 over `along`.
/// Valid   radii >= 0 and not both 0, along > 0, pitch > 0
/// Source  integral of sqrt(1 + r'^2 + (2 pi r / p)^2) dz with r linear, by
///         int sqrt(A + B^2 r^2) dr = r/2 sqrt(A + B^2 r^2) + A/(2B) asinh(B r / sqrt A)
inline double cone_length(double r0, double r1, double along, double pitch) {
    const double slope = (r1 - r0) / along;
    // Below this slope the difference of the two antiderivatives loses more than the mean radius
    // does, whose error is slope^2.
    if (std::abs(slope) < 1e-6) return along / pitch * turn_length(0.5 * (r0 + r1), pitch);
    const double a = 1.0 + slope * slope;
    const double b = two_pi / pitch;
    const auto antiderivative = [&](double r) {
        return 0.5 * r * std::sqrt(a + b * b * r * r) +
               a / (2.0 * b) * std::asinh(b * r / std::sqrt(a));
    };
    return (antiderivative(r1) - antiderivative(r0)) / slope;
}

/// Integral of f from a to b by eight-point Gauss-Legendre.
/// Error   exact for polynomials to degree 15; use one call for each smooth piece
/// Source  Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 25.4, n = 8
template <class F>
double integrate(F&& f, double a, double b) {
    constexpr std::array<double, 4> node{0.183434642495649804939476, 0.525532409916328985817739,
                                         0.796666477413626739591554, 0.960289856497536231683561};
    constexpr std::array<double, 4> weight{0.362683783378361982965150, 0.313706645877887287337962,
                                           0.222381034453374470544356, 0.101228536290376259152531};
    const double middle = 0.5 * (a + b);
    const double half = 0.5 * (b - a);
    double sum = 0.0;
    for (std::size_t i = 0; i < node.size(); ++i) {
        sum += weight[i] * (f(middle - half * node[i]) + f(middle + half * node[i]));
    }
    return half * sum;
}

/// Length of strand on one smooth piece of any body: r(z), its slope r'(z) and the pitch p(z).
/// Valid   pitch(z) > 0
/// Source  arc length in cylindrical coordinates with dtheta/dz = 2 pi / p
template <class Radius, class Slope, class Pitch>
double winding_length(Radius&& radius, Slope&& slope, Pitch&& pitch, double from, double to) {
    return integrate(
        [&](double z) {
            const double s = slope(z);
            const double around = two_pi * radius(z) / pitch(z);
            return std::sqrt(1.0 + s * s + around * around);
        },
        from, to);
}

/// Pitch at which neighbouring turns just touch; infinite when the strand is as wide as the core
/// is round, for then it lies lengthwise.
/// Source  p cos(lambda) = w with tan(lambda) = p / (2 pi R), solved for p
inline double touching_pitch(double width, double radius) {
    const double share = width / (two_pi * radius);
    return share < 1.0 ? width / std::sqrt(1.0 - share * share) : HUGE_VAL;
}

/// The same on a taper, where turns touch along the slope: the axial part of the touching pitch.
inline double touching_pitch(double width, double radius, double slope) {
    return touching_pitch(width, radius) / std::sqrt(1.0 + slope * slope);
}

/// Touching turns per length of such a taper, 1 / touching_pitch without its division by zero;
/// `lengthening` is 1 + slope^2.
inline double touching_turns_per_length(double width, double radius, double lengthening) {
    const double share = width / (two_pi * radius);
    return std::sqrt(std::max(0.0, 1.0 - share * share) * lengthening) / width;
}

/// Cosine of the helix angle, measured from the circumference.
inline double cos_helix_angle(double radius, double pitch) {
    return two_pi * radius / turn_length(radius, pitch);
}

/// Axial room of n turns: one strand's width more than n pitches.
inline double span_of_turns(double turns, double pitch, double width, double radius) {
    return turns * pitch + width / cos_helix_angle(radius, pitch);
}

/// Turns, not rounded, whose span is `cover`; 0 where not even the strand's width fits.
inline double turns_in_cover(double cover, double pitch, double width, double radius) {
    return std::max(0.0, (cover - width / cos_helix_angle(radius, pitch)) / pitch);
}

/// Share of the core that a winding hides.
inline double coverage(double width, double radius, double pitch) {
    return std::min(1.0, width / (pitch * cos_helix_angle(radius, pitch)));
}

/// Turns that a given length of strand makes.
inline double turns_from_length(double length, double radius, double pitch) {
    return length / turn_length(radius, pitch);
}

/// Width of a round strand pressed to `height`, as a rectangle with round ends of the same area.
/// Valid   0 < height <= diameter
/// Source  pi d^2/4 = pi h^2/4 + h (w - h), solved for w
constexpr double flattened_width(double diameter, double height) {
    return height + std::numbers::pi / 4.0 * (diameter * diameter - height * height) / height;
}

/// Diameter over k layers of height h, each but the first raising by `rise` of its height.
constexpr double layer_diameter(double core_diameter, double height, double layers, double rise) {
    return layers > 0.0 ? core_diameter + 2.0 * height * (1.0 + (layers - 1.0) * rise)
                        : core_diameter;
}

/// Friction below which a strand slides down a taper: |geodesic / normal curvature|.
///
/// `sin_to_generator` is 1 for a turn straight round, less for an open rib.
/// Source  Koussios and Bergsma, Friction experiments for filament winding applications,
///         J. Thermoplastic Composite Materials 19 (2006) 5-34: slips when |kg / kn| > mu;
///         a path at constant angle psi on a cone has |kg / kn| = tan(alpha) / sin(psi)
inline double friction_needed(double taper_slope, double sin_to_generator) {
    return std::abs(taper_slope) / sin_to_generator;
}

/// Turns of a rib whose pitch is `share` of the local diameter, on a diameter linear from d0 to d1.
/// Source  n = int dz / (c D(z)) = along ln(d1/d0) / (c (d1 - d0))
inline double graded_turns(double d0, double d1, double along, double share) {
    const double x = (d1 - d0) / d0;
    const double log_over_x = x == 0.0 ? 1.0 : std::log1p(x) / x; // the one exact limit
    return along / (share * d0) * log_over_x;
}

/// Ratio of successive gaps of that rib.
inline double graded_growth(double d0, double d1, double along, double share) {
    return std::exp(share * (d1 - d0) / along);
}

/// Where turn u of n lies along a winding whose pitch grows by `growth` each turn, as a share 0..1.
/// Source  z(u) / z(n) = (q^u - 1) / (q^n - 1): the geometric sum, continued between whole turns
inline double place_of_turn(double u, double n, double growth) {
    const double log_q = std::log(growth);
    if (std::abs(log_q * n) < 1e-9) return u / n; // expm1 would divide 0 by 0
    return std::expm1(log_q * u) / std::expm1(log_q * n);
}

} // namespace wrapwright::kernel
