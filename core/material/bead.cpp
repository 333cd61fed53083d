#include "core/material/bead.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>

// Volume and balance of a bead. Notation, in m: D sphere, b bore, c mouth of the countersink (all
// diameters), x along the axis from the centre, tailward positive.
//   rims      x_b = sqrt(D^2 - b^2) / 2, x_m = sqrt(D^2 - c^2) / 2
//   napkin    the sphere less its bore: pi (2 x_b)^3 / 6, whatever D is
//   sink      a frustum from b to c, less the bore in it, and the ring of sphere beyond x_m
//   slot      a strip of width w from the bore outwards, on one side of the axis, from x_s to x_b:
//             its area at x is G(R(x)) - G(b / 2), R(x)^2 = D^2 / 4 - x^2, where
//             G(r) = half the part of a disc of radius r that lies within w / 2 of a diameter

namespace wrapwright {

namespace {

using std::numbers::pi;

/// What a cut takes away: its volume, and the first moment of it about the sphere's centre.
struct Cut {
    double volume = 0.0, moment = 0.0;
};

double rim(double sphere, double hole) { return 0.5 * std::sqrt(sphere * sphere - hole * hole); }

/// Depth of the countersink along the axis, at most as far as the other rim.
double sink_depth(const Bead& bead, double b, double c) {
    const double through = rim(bead.diameter.value.si, b) + rim(bead.diameter.value.si, c);
    return std::min(0.5 * (c - b) / std::tan(bead.countersink_half.si), through);
}

bool is_sunk(const Bead& bead) {
    return bead.hole == BeadHole::countersunk && bead.mouth.value > bead.bore.value &&
           bead.countersink_half.si > 0.0;
}

Cut sink(const Bead& bead) {
    if (!is_sunk(bead)) return {};
    const double sphere = bead.diameter.value.si, rb = bead.bore.value.si / 2.0,
                 rc = bead.mouth.value.si / 2.0;
    const double xb = rim(sphere, 2.0 * rb), xm = rim(sphere, 2.0 * rc);
    const double depth = sink_depth(bead, 2.0 * rb, 2.0 * rc);
    const double slope = (rc - rb) / depth, from = xm - depth;
    // Over the frustum r^2 - rb^2 = 2 rb slope t + slope^2 t^2, t from its narrow end.
    const double linear = 2.0 * rb * slope, square = slope * slope;
    const double t2 = depth * depth, t3 = t2 * depth, t4 = t3 * depth;
    Cut cut{pi * (linear * t2 / 2.0 + square * t3 / 3.0), 0.0};
    cut.moment = from * cut.volume + pi * (linear * t3 / 3.0 + square * t4 / 4.0);
    // Beyond the mouth D^2 / 4 - x^2 - rb^2 = xb^2 - x^2 is left of the sphere, and goes too.
    const double x2 = xb * xb - xm * xm, x3 = xb * xb * xb - xm * xm * xm,
                 x4 = xb * xb * xb * xb - xm * xm * xm * xm;
    cut.volume += pi * (xb * xb * (xb - xm) - x3 / 3.0);
    cut.moment += pi * (xb * xb * x2 / 2.0 - x4 / 4.0);
    return cut;
}

double half_strip(double radius, double half_width) {
    const double a = std::min(radius, half_width);
    if (a <= 0.0) return 0.0;
    return a * std::sqrt(std::max(0.0, radius * radius - a * a)) +
           radius * radius * std::asin(a / radius);
}

Cut slot(const Bead& bead) {
    if (bead.hole != BeadHole::slotted || bead.slot_width.value.si <= 0.0) return {};
    const double sphere = bead.diameter.value.si, rb = bead.bore.value.si / 2.0;
    const double half_width = bead.slot_width.value.si / 2.0;
    const double xb = rim(sphere, 2.0 * rb), from = std::clamp(bead.slot_from.si, -xb, xb);
    const double bore = half_strip(rb, half_width);
    constexpr int steps = 64; // even, for Simpson's rule
    Cut cut;
    for (int i = 0; i <= steps; ++i) {
        const double x = from + (xb - from) * i / steps;
        const double weight = i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
        const double radius = std::sqrt(std::max(rb * rb, sphere * sphere / 4.0 - x * x));
        const double area = half_strip(radius, half_width) - bore;
        cut.volume += weight * area;
        cut.moment += weight * area * x;
    }
    const double third = (xb - from) / steps / 3.0;
    return {cut.volume * third, cut.moment * third};
}

double napkin(const Bead& bead) {
    const double h = 2.0 * rim(bead.diameter.value.si, bead.bore.value.si);
    return pi * h * h * h / 6.0;
}

void check(const Bead& bead) {
    WW_ASSERT(bead.bore.value.si >= 0.0 && bead.bore.value < bead.diameter.value);
    WW_ASSERT(bead.mouth.value < bead.diameter.value);
}

} // namespace

Volume bead_volume(const Bead& bead) {
    check(bead);
    return {napkin(bead) - sink(bead).volume - slot(bead).volume};
}

Length bead_centre_offset(const Bead& bead) {
    check(bead);
    const Cut sunk = sink(bead), slotted = slot(bead);
    const double left = napkin(bead) - sunk.volume - slotted.volume;
    return {-(sunk.moment + slotted.moment) / left};
}

Length bore_length(const Bead& bead) {
    check(bead);
    const double sphere = bead.diameter.value.si, front = rim(sphere, bead.bore.value.si);
    return {front + (is_sunk(bead) ? rim(sphere, bead.mouth.value.si) : front)};
}

Length countersink_depth(const Bead& bead) {
    check(bead);
    return {is_sunk(bead) ? sink_depth(bead, bead.bore.value.si, bead.mouth.value.si) : 0.0};
}

} // namespace wrapwright
