// Windings against independent computations: each number below came from another program than ours
// or is worked out here another way, by brute force.

#include "core/geometry/helix.h"
#include "core/geometry/helix_kernel.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>
#include <glm/vec3.hpp>
#include <numbers>
#include <random>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

constexpr double pi = std::numbers::pi;

Length mm(double v) { return millimetres(v); }

// Length of a polyline laid along the winding r(z) with theta' = 2 pi / p: no calculus in it.
template <class Radius>
double polyline_length(Radius&& radius, double along, double pitch, int points) {
    const auto at = [&](int i) {
        const double z = along * i / points;
        const double angle = 2.0 * pi * z / pitch;
        return glm::dvec3(radius(z) * std::cos(angle), radius(z) * std::sin(angle), z);
    };
    double length = 0.0;
    glm::dvec3 before = at(0);
    for (int i = 1; i <= points; ++i) {
        const glm::dvec3 here = at(i);
        length += glm::distance(before, here);
        before = here;
    }
    return length;
}

// Least distance between a point of one helix and a whole turn of another: radii ra and rb, the
// second helix `ahead` of the first along the axis at the same angle.
double helix_distance(double ra, double rb, double pitch, double ahead) {
    const auto square = [&](double angle) {
        const double z = pitch * angle / (2.0 * pi) + ahead;
        return ra * ra + rb * rb - 2.0 * ra * rb * std::cos(angle) + z * z;
    };
    double best = -pi;
    for (int i = 0; i <= 4000; ++i) {
        const double angle = -pi + 2.0 * pi * i / 4000;
        if (square(angle) < square(best)) best = angle;
    }
    for (double step = 2.0 * pi / 4000; step > 1e-12; step *= 0.5) {
        while (square(best + step) < square(best)) best += step;
        while (square(best - step) < square(best)) best -= step;
    }
    return std::sqrt(square(best));
}

template <class F>
double bisect(F&& f, double low, double high) {
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (f(middle) < 0.0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

} // namespace

TEST_CASE("twenty turns of half-millimetre wire on a 0.90 mm shank are 88.53 mm long") {
    // Source     independent computation: closed form in numpy = polyline of 2e6 points to 1e-8
    // Tolerance  last digit given
    const Length radius = centre_radius(mm(0.90), mm(0.50));
    const Length length = helix_length(20.0, radius, mm(0.50));
    CHECK(within(in_millimetres(length), 88.53118, 5e-6));
    // Source     the same times pi d^2/4 and 11.34 g/cm3 (lead, density lists)
    const Mass lead = disc_area(mm(0.50)) * length * grams_per_cm3(11.34);
    CHECK(within(in_grams(lead), 0.197124, 5e-7));
}

TEST_CASE("a winding on a cone has the length of its integral") {
    // Source     independent computation: scipy quad = octave quad = polyline of 1e6 points
    // Tolerance  last digit given
    struct Case {
        double r0, r1, along, pitch, length;
    };
    for (const Case& c :
         {Case{0.5, 1.5, 10.0, 1.0, 63.70595375}, Case{0.35, 1.05, 6.0, 0.15, 176.04306756},
          Case{1.0, 0.4, 8.0, 0.8, 44.75557027}}) {
        CAPTURE(c.r0);
        const auto length = cone_winding_length(mm(c.r0), mm(c.r1), mm(c.along), mm(c.pitch));
        REQUIRE(length.ok());
        CHECK(within(in_millimetres(length.value()), c.length, 5e-9));
        // Against    a polyline laid here; its error falls with the square of the step: 2e-8
        const auto radius = [&](double z) { return c.r0 + (c.r1 - c.r0) * z / c.along; };
        CHECK(within_share(in_millimetres(length.value()),
                           polyline_length(radius, c.along, c.pitch, 400'000), 1e-7));
    }
}

TEST_CASE("a winding on a body of any shape has the length of its integral") {
    const auto radius = [](double z) { return 0.4 + 0.6 * std::sin(pi * z / 10.0); };
    const auto slope = [](double z) { return 0.06 * pi * std::cos(pi * z / 10.0); };
    const auto pitch = [](double) { return 1.5; };
    const double length = kernel::winding_length(radius, slope, pitch, 0.0, 10.0);
    // Source     independent computation: scipy quad 34.37087525; numpy leggauss(8) 34.37087540
    // Tolerance  last digit of the eight-point rule, and its stated error
    CHECK(within(length, 34.37087540, 5e-9));
    CHECK(within_share(length, 34.37087525, 5e-9));
    CHECK(within_share(length, polyline_length(radius, 10.0, 1.5, 400'000), 1e-7));
}

TEST_CASE("turns at the touching pitch touch in space") {
    // Source     independent computation: least distance in space by scipy = wire diameter
    struct Case {
        double shank, wire, pitch;
    };
    for (const Case& c : {Case{0.90, 0.50, 0.503264}, Case{0.50, 0.40, 0.404069},
                          Case{0.60, 0.25, 0.251103}, Case{1.00, 0.635, 0.639913}}) {
        CAPTURE(c.shank);
        const double radius = 0.5 * (c.shank + c.wire);
        const auto pitch = touching_pitch(mm(c.wire), mm(radius));
        REQUIRE(pitch.ok());
        // Tolerance  2e-5: the formula measures across turns as if they were flat
        CHECK(within_share(in_millimetres(pitch.value()), c.pitch, 2e-5));
        // Against    the distance of neighbouring turns found here by search
        const double p = in_millimetres(pitch.value());
        CHECK(within_share(helix_distance(radius, radius, p, p), c.wire, 2e-5));
    }
}

TEST_CASE("a second layer that lies in the grooves rises by 0.866 of the wire") {
    // Source     independent computation: contact of two helices by scipy brentq, 0.86531 and
    //            0.86600 of the wire
    struct Case {
        double core, wire, rise;
    };
    for (const Case& c : {Case{0.9, 0.5, 0.86531}, Case{2.0, 0.25, 0.86600}}) {
        CAPTURE(c.core);
        const double radius = 0.5 * (c.core + c.wire);
        const double pitch = kernel::touching_pitch(c.wire, radius);
        // Against    the same contact searched here: the layer half a pitch on, at radius + rise
        const double rise = bisect(
            [&](double h) {
                return helix_distance(radius, radius + h, pitch, 0.5 * pitch) - c.wire;
            },
            0.5 * c.wire, 1.2 * c.wire);
        CHECK(within(rise / c.wire, c.rise, 1e-5));
        // Tolerance  the flat limit sqrt(3)/2 is 1e-3 high on the smallest shank
        CHECK(within_share(nested.rise, c.rise, 1e-3));
    }
}

TEST_CASE("layers of half-millimetre wire on 0.9 mm stack and nest to known diameters") {
    // Source     arithmetic by hand: D0 + 2 d [1 + (k-1) s], s = 1 and sqrt(3)/2
    // Tolerance  last digit given
    const double stacked_mm[] = {1.9, 2.9, 3.9};
    const double nested_mm[] = {1.9, 2.76603, 3.63205};
    for (int k = 1; k <= 3; ++k) {
        CAPTURE(k);
        CHECK(within(in_millimetres(layer_diameter(mm(0.9), mm(0.5), k, stacked)),
                     stacked_mm[k - 1], 1e-12));
        CHECK(within(in_millimetres(layer_diameter(mm(0.9), mm(0.5), k, nested)), nested_mm[k - 1],
                     5e-6));
    }
}

TEST_CASE("windings cross as often as brute force counts") {
    // Source     independent computation: sign changes counted on 4e5 points over 200 phases: 14 or
    //            15 crossings (X = 14.945) of opposite senses, 3 or 4 (X = 3.516) of equal ones
    // Tolerance  last digit given
    const double n1 = 12.0 / 1.3;
    const double n2 = 12.0 / 2.1;
    const Crossings opposite = crossings(n1, n2, false);
    CHECK(within(opposite.mean, 14.945, 5e-4));
    CHECK(opposite.least == 14);
    CHECK(opposite.most == 15);
    const Crossings equal = crossings(n1, n2, true);
    CHECK(within(equal.mean, 3.516, 5e-4));
    CHECK(equal.least == 3);
    CHECK(equal.most == 4);
}

TEST_CASE("as many rib marks show as pass the line of sight") {
    // Against    turns counted one by one, as the strand passes; 2000 random ribs
    std::mt19937 random(7);
    std::uniform_real_distribution<double> some_turns(1.0, 9.0);
    std::uniform_real_distribution<double> some_phase(0.001, 1.0);
    for (int i = 0; i < 2000; ++i) {
        const double turns = some_turns(random);
        const double phase = some_phase(random);
        int passed = 0;
        for (double at = phase; at <= turns; at += 1.0) ++passed;
        CAPTURE(turns);
        CAPTURE(phase);
        CHECK(visible_marks(turns, phase) == passed);
    }
}

TEST_CASE("an open wrap covers the share of the core that random points say") {
    // Source     independent computation by numpy: formula .3104 and .3195, Monte Carlo of 4e5
    //            points .3103 and .3198
    struct Case {
        double radius, width, pitch, covered;
    };
    std::mt19937 random(11);
    for (const Case& c : {Case{0.6, 0.3, 1.0, 0.3104}, Case{0.4, 0.5, 2.0, 0.3195}}) {
        CAPTURE(c.radius);
        const double covered = coverage(mm(c.width), mm(c.radius), mm(c.pitch));
        CHECK(within(covered, c.covered, 5e-5));
        // Against    random points on the unrolled cylinder and their distance to the strand's
        //            middle line, measured square to it
        // Tolerance  three standard deviations of 2e5 points: 0.0031
        std::uniform_real_distribution<double> place(0.0, c.pitch);
        std::uniform_real_distribution<double> round(0.0, 2.0 * pi * c.radius);
        const double cosine = std::cos(std::atan(c.pitch / (2.0 * pi * c.radius)));
        int hits = 0;
        constexpr int points = 200'000;
        for (int i = 0; i < points; ++i) {
            double along = place(random) - c.pitch * round(random) / (2.0 * pi * c.radius);
            along -= c.pitch * std::round(along / c.pitch);
            hits += std::abs(along) * cosine < 0.5 * c.width;
        }
        CHECK(within(covered, static_cast<double>(hits) / points, 0.0031));
    }
}

namespace {

// |geodesic / normal curvature| of the path r(theta) on a cone, by finite differences in space.
template <class Radius>
double slip_by_differences(double half_angle, Radius&& radius, double theta) {
    const auto at = [&](double a) {
        const double r = radius(a);
        return glm::dvec3(r * std::cos(a), r * std::sin(a), r / std::tan(half_angle));
    };
    constexpr double h = 1e-4;
    const glm::dvec3 first = (at(theta + h) - at(theta - h)) / (2.0 * h);
    const glm::dvec3 second = (at(theta + h) - 2.0 * at(theta) + at(theta - h)) / (h * h);
    const double speed = glm::length(first);
    const glm::dvec3 tangent = first / speed;
    const glm::dvec3 curvature = (second - glm::dot(second, tangent) * tangent) / (speed * speed);
    const glm::dvec3 outward(std::cos(theta), std::sin(theta), 0.0);
    const glm::dvec3 normal =
        std::cos(half_angle) * outward - glm::dvec3(0.0, 0.0, std::sin(half_angle));
    return std::abs(glm::dot(curvature, glm::cross(normal, tangent)) / glm::dot(curvature, normal));
}

} // namespace

TEST_CASE("a strand slides where its sideways pull beats friction") {
    // Source     independent computation: numerical differential geometry in numpy. The criterion
    //            |kg/kn| > mu is that of filament winding (Koussios and Bergsma 2006)
    // Tolerance  last digit given; differences here good to 1e-6
    struct Case {
        double half_angle, round, open;
    };
    for (const Case& c : {Case{10.0, 0.176327, 0.203605}, Case{20.0, 0.363970, 0.420277},
                          Case{30.0, 0.577350, 0.666667}}) {
        CAPTURE(c.half_angle);
        const double alpha = degrees(c.half_angle).si;
        const double slope = std::tan(alpha);
        const auto round = friction_needed(slope, degrees(90.0));
        const auto open = friction_needed(slope, degrees(60.0));
        REQUIRE(round.ok());
        REQUIRE(open.ok());
        CHECK(within(round.value(), c.round, 1e-6));
        CHECK(within(open.value(), c.open, 1e-6));
        CHECK(within(round.value(),
                     slip_by_differences(alpha, [](double) { return 1.0; }, 0.3), 1e-5));
        const double rate = std::sin(alpha) / std::tan(degrees(60.0).si); // of a path at 60 degrees
        CHECK(within(
            open.value(),
            slip_by_differences(alpha, [&](double a) { return std::exp(rate * a); }, 0.3), 1e-5));
        // A geodesic, r cos(theta sin(alpha)) constant, never slides.
        CHECK(slip_by_differences(
                  alpha, [&](double a) { return 0.8 / std::cos(a * std::sin(alpha)); }, 0.4) <
              1e-5);
    }
}

TEST_CASE("a body that grows from 1.0 to 2.5 mm within 2 mm needs a friction of 0.375") {
    // Source     (2.5 - 1.0) / 2 / 2.0 by hand; its angle 20.556 degrees
    const double slope = 0.5 * (2.5 - 1.0) / 2.0;
    CHECK(within(friction_needed(slope, degrees(90.0)).value(), 0.375, 1e-12));
    CHECK(within(in_degrees(radians(std::atan(slope))), 20.556, 5e-4));
}

TEST_CASE("tension grows round a core as the capstan equation says") {
    // Source     independent computation by numpy: e^(.2 x 6 pi) and e^(.3 pi)
    // Tolerance  last digit given
    CHECK(within(capstan_ratio(0.2, radians(6.0 * pi)), 43.3762, 5e-5));
    CHECK(within(capstan_ratio(0.3, radians(pi)), 2.56633, 5e-6));
}

TEST_CASE(
    "a rib as wide apart as its body is thick grows by a tenth each turn on a 1 in 10 taper") {
    // Source     independent computation: scipy quad of dz / (c D) = ln 2 / 0.1; q = e^0.1
    // Tolerance  last digit given
    const auto rib = graded_rib(mm(1.0), mm(2.0), mm(10.0), 1.0);
    REQUIRE(rib.ok());
    CHECK(within(rib.value().turns, 6.931472, 5e-7));
    CHECK(within(rib.value().growth, 1.105171, 5e-7));
}
