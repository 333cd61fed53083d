#include "core/geometry/detail.h"

#include "core/geometry/helix.h"
#include "core/geometry/sweep.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

constexpr int fewest = 6;

// Half the angle at the centre of a chord whose middle lies `error` inside its circle.
double half_chord_angle(double radius, double error) {
    return std::acos(std::clamp(1.0 - error / radius, -1.0, 1.0));
}

int pieces(double whole, double piece) {
    const double n = std::ceil(whole / piece - 1e-9); // a whole number is not rounded up
    return n < 1e6 ? std::max(fewest, static_cast<int>(n)) : 1'000'000;
}

// sin(x) / x, which is 1 at 0.
double sinc(double x) { return x == 0.0 ? 1.0 : std::sin(x) / x; }

} // namespace

int sides_for(Length radius, Length chord_error) {
    return std::min(max_sides,
                    pieces(std::numbers::pi, half_chord_angle(radius.si, chord_error.si)));
}

int steps_per_turn_for(Length radius, Length pitch, Length strand_radius, Length chord_error) {
    const HelixBend bend = helix_bend(radius, pitch);
    const double outer = 1.0 / bend.curvature + strand_radius.si;
    const double turning = bend.curvature * helix_length(1.0, radius, pitch).si;
    return pieces(turning, 2.0 * half_chord_angle(outer, chord_error.si));
}

double section_share(int sides) { return sinc(2.0 * std::numbers::pi / sides); }

double path_share(Angle turning) { return sinc(turning.si); }

double true_volume_scale(int sides, Angle turning) {
    return std::sqrt(1.0 / (section_share(sides) * path_share(turning)));
}

} // namespace wrapwright
