// The example fly, its tippet, its drift and the film, from two independent programs.

#include "core/water/drift.h"
#include "core/water/floating.h"
#include "tests/support/close.h"
#include "tests/support/water_builder.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

// Source of everything here, where no other is named: a Python script and an Octave script written
// apart from each other, which agree to 4 digits.

TEST_CASE("the example fly weighs what both programs say") {
    // Tolerance  half the last digit
    const ExampleFly fly = example_fly(45.0);
    CHECK(within(in_cubic_millimetres(fly.volume), 20.6872, 6e-5));
    CHECK(within(in_milligrams(fly.mass), 212.5465, 6e-5));
    CHECK(within(weight_in_water(fly.mass, fly.volume, water(10.0)).si * 1e3, 1.8816, 6e-5));
}

TEST_CASE("the example fly sinks as fast as both programs say") {
    // Tolerance  half the last digit
    constexpr double rows[][3] = {{10, 0, 0.7393}, {10, 45, 0.5592}, {10, 90, 0.4259},
                                  {5, 45, 0.5444}, {20, 45, 0.5846}, {5, 0, 0.7284},
                                  {20, 90, 0.4506}};
    for (const auto& [t, angle, speed] : rows) {
        CAPTURE(t);
        CAPTURE(angle);
        const ExampleFly fly = example_fly(angle);
        const Water w = water(t);
        const Force weight = weight_in_water(fly.mass, fly.volume, w);
        CHECK(within(terminal_speed(fly.shape, weight, w).si, speed, 6e-5));
    }
}

TEST_CASE("a tippet slows the example fly as both programs say") {
    // Tolerance  half the last digit; the bowed integral here is by 8 points, 1e-4
    const Tippet one{millimetres(0.15), metres(1.0)};
    const Water w = water(10.0);
    const auto per_metre = [&](TippetWay way, double u) {
        return tippet_drag(one, way, Speed{u}, w).si;
    };
    CHECK(within(per_metre(TippetWay::across, 0.2), 5.640e-3, 6e-7));
    CHECK(within(per_metre(TippetWay::axial, 0.2), 4.409e-4, 6e-8));
    // The mean of the boundary layer by quadrature: 4.517e-4; the leading term is 2 to 3 % lower.
    CHECK(within_share(per_metre(TippetWay::axial, 0.2), 4.517e-4, 0.03));
    CHECK(within(tippet_weight(one, w).si, 2.431e-5, 6e-9));

    const ExampleFly fly = example_fly(45.0);
    const Force bare = weight_in_water(fly.mass, fly.volume, w);
    constexpr double rows[][5] = {{0.3, 0.4795, 0.2974, 0.1907, 0.3776},
                                  {0.5, 0.4454, 0.2370, 0.1441, 0.3249},
                                  {1.0, 0.3813, 0.1652, 0.0955, 0.2509},
                                  {2.0, 0.2993, 0.1104, 0.0618, 0.1817}};
    for (const auto& [length, axial, bowed, full, middle] : rows) {
        CAPTURE(length);
        const Tippet tippet{millimetres(0.15), metres(length)};
        const Force weight = bare + tippet_weight(tippet, w);
        const auto speed = [&](TippetWay way) {
            return terminal_speed(fly.shape, weight, w, tippet, way).si;
        };
        CHECK(within(speed(TippetWay::axial), axial, 6e-5));
        CHECK(within(speed(TippetWay::bowed), bowed, 1.1e-4));
        CHECK(within(speed(TippetWay::across), full, 6e-5));
        CHECK(within(std::sqrt(speed(TippetWay::axial) * speed(TippetWay::bowed)), middle, 1.1e-4));
    }
}

TEST_CASE("a drift is as deep as the closed forms and a solved equation say") {
    // Tolerance  half the last digit
    const Stream stream{metres(1.2), metres_per_second(0.9)};
    Stream log_stream = stream;
    log_stream.profile = CurrentProfile::logarithmic;
    const Speed w = metres_per_second(0.15);
    CHECK(within(drift_depth(stream, w, metres(4.0)).si, 0.70310, 6e-6));
    CHECK(within(drift_to_bed(stream, w).si, 6.3000, 6e-5));
    CHECK(within(shear_speed(stream).si, 0.05472, 6e-6));
    CHECK(within(drift_depth(log_stream, w, metres(4.0)).si, 0.70754, 6e-6));
}

TEST_CASE("the example fly's path with inertia is that of a solved equation") {
    // Source     scipy's solve_ivp: 0.6512 m deep at 1.0 m after 1.2239 s; 1.199 m deep at 1.7102 m
    //            after 2.2038 s
    // Tolerance  half the last digit, and one step of 1 ms times the speed where it is read off
    const ExampleFly fly = example_fly(45.0);
    const Stream stream{metres(1.2), metres_per_second(0.9)};
    const auto path = drift_path(fly.shape, fly.mass, fly.volume, water(10.0), stream, metres(5.0));
    DriftPoint at_1{}, at_bed{};
    for (const DriftPoint& p : path) {
        if (p.along.si < 1.0) at_1 = p;
        if (p.depth.si < 1.199) at_bed = p;
    }
    CHECK(within(at_1.depth.si, 0.6512, 1.1e-3));
    CHECK(within(at_1.time.si, 1.2239, 1.1e-3));
    CHECK(within(at_bed.along.si, 1.7102, 1.1e-3));
    CHECK(within(at_bed.time.si, 2.2038, 2.1e-3));
}

TEST_CASE("a fibre on the film holds what the solved meniscus gives") {
    // Source     independent computation: a lying fibre of 0.05 mm, 2 gamma sin: 0.1366, 0.1454, 0.1454
    //            mN/mm at 70, 90, 110 degrees for 72.7 mN/m (with its own buoyancy 0.1367 to 0.1461)
    // Tolerance  half the last digit; 0.5 % for the buoyancy left out
    const Water w = fluid(998.2, 1e-3);
    constexpr double rows[][3] = {
        {70, 0.1366, 0.1367}, {90, 0.1454, 0.1454}, {110, 0.1454, 0.1461}};
    for (const auto& [angle, plain, whole] : rows) {
        CHECK(within(film_hold(w, degrees(angle)), plain, 6e-5));
        CHECK(within_share(film_hold(w, degrees(angle)), whole, 6e-3));
    }
    // A fly of 40 mg, 0.3923 mN: 2.70 mm of lying fibre, or 198 tips of 0.05 mm at 100 degrees.
    CHECK(within(0.3923 / film_hold(w, degrees(90.0)), 2.70, 6e-3));
    CHECK(within(0.3923e-3 / tip_hold(w, millimetres(0.05), degrees(100.0)).si, 198.0, 0.6));
}
