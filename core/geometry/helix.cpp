#include "core/geometry/helix.h"

#include "core/geometry/helix_kernel.h"

#include <cmath>
#include <limits>
#include <string>

namespace wrapwright {

namespace {

Error refuse(std::string what, std::string remedy) {
    return {ErrorCode::out_of_range, std::move(what), std::move(remedy), {}};
}

bool positive(double x) { return x > 0.0 && std::isfinite(x); }

// Whole turns in a fractional count; a part in 1e9 short of a whole turn is rounding, not a gap.
int whole_turns(double turns) {
    const double n = std::floor(turns + 1e-9 * std::max(1.0, turns));
    return n < 0.0                               ? 0
           : n > std::numeric_limits<int>::max() ? std::numeric_limits<int>::max()
                                                 : static_cast<int>(n);
}

} // namespace

Length centre_radius(Length core_diameter, Length strand_height) {
    return {kernel::centre_radius(core_diameter.si, strand_height.si)};
}

Length helix_length(double turns, Length radius, Length pitch) {
    return {turns * kernel::turn_length(radius.si, pitch.si)};
}

Result<Length> cone_winding_length(Length r0, Length r1, Length along, Length pitch) {
    const bool radii = r0.si >= 0.0 && r1.si >= 0.0 && positive(r0.si + r1.si);
    if (!radii || !positive(along.si) || !positive(pitch.si)) {
        return refuse("a winding on a cone needs a core, a stretch and a pitch",
                      "give lengths above zero");
    }
    return Length{kernel::cone_length(r0.si, r1.si, along.si, pitch.si)};
}

Result<Length> touching_pitch(Length width, Length radius, double slope) {
    const double pitch = positive(width.si) && positive(radius.si) && std::isfinite(slope)
                             ? kernel::touching_pitch(width.si, radius.si, slope)
                             : HUGE_VAL;
    if (!std::isfinite(pitch)) {
        return refuse("a strand as wide as its core is round cannot be wound turn beside turn",
                      "use a narrower strand or a thicker core");
    }
    return Length{pitch};
}

int turns_in_cover(Length cover, Length pitch, Length width, Length radius) {
    return whole_turns(kernel::turns_in_cover(cover.si, pitch.si, width.si, radius.si));
}

Length span_of_turns(double turns, Length pitch, Length width, Length radius) {
    return {kernel::span_of_turns(turns, pitch.si, width.si, radius.si)};
}

double turns_from_length(Length strand, Length radius, Length pitch) {
    return kernel::turns_from_length(strand.si, radius.si, pitch.si);
}

double coverage(Length width, Length radius, Length pitch) {
    return kernel::coverage(width.si, radius.si, pitch.si);
}

HelixBend helix_bend(Length radius, Length pitch) {
    const double c = pitch.si / kernel::two_pi;
    const double square = radius.si * radius.si + c * c;
    return {radius.si / square, c / square};
}

Crossings crossings(double turns_a, double turns_b, bool same_sense) {
    const double mean = same_sense ? std::abs(turns_a - turns_b) : turns_a + turns_b;
    return {mean, static_cast<int>(std::floor(mean)), static_cast<int>(std::ceil(mean))};
}

int visible_marks(double turns, double phase) {
    return turns < phase ? 0 : static_cast<int>(std::floor(turns - phase)) + 1;
}

Result<GradedRib> graded_rib(Length d0, Length d1, Length along, double pitch_share) {
    if (!positive(d0.si) || !positive(d1.si) || !positive(along.si) || !positive(pitch_share)) {
        return refuse("a graded rib needs a body, a stretch and a pitch",
                      "give numbers above zero");
    }
    return GradedRib{kernel::graded_turns(d0.si, d1.si, along.si, pitch_share), pitch_share,
                     kernel::graded_growth(d0.si, d1.si, along.si, pitch_share)};
}

Result<GradedRib> graded_rib_of_turns(Length d0, Length d1, Length along, double turns) {
    if (!positive(turns)) return refuse("a rib needs a turn", "give turns above zero");
    // Turns are inversely proportional to the share, so one turn count gives the other.
    Result<GradedRib> of_one = graded_rib(d0, d1, along, 1.0);
    if (!of_one.ok()) return of_one;
    return graded_rib(d0, d1, along, of_one.value().turns / turns);
}

Length layer_diameter(Length core_diameter, Length strand_height, int layers, Stacking stacking) {
    return {kernel::layer_diameter(core_diameter.si, strand_height.si, layers, stacking.rise)};
}

Result<Length> flattened_width(Length diameter, Length height) {
    if (!positive(height.si) || !(height <= diameter)) {
        return refuse("a pressed strand must have some height and no more than it had",
                      "give a height between zero and the diameter");
    }
    return Length{kernel::flattened_width(diameter.si, height.si)};
}

Result<double> friction_needed(double slope, Angle to_generator) {
    const double sine = std::sin(to_generator.si);
    if (!(to_generator.si > 0.0) || !(in_degrees(to_generator) <= 90.0 + 1e-9)) {
        return refuse("a strand runs at 0 to 90 degrees to the taper", "give the smaller angle");
    }
    return kernel::friction_needed(slope, sine);
}

double capstan_ratio(double friction, Angle wrapped) { return std::exp(friction * wrapped.si); }

} // namespace wrapwright
