#include "core/water/drift.h"

#include "tests/support/close.h"
#include "tests/support/water_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

const Stream river{metres(1.2), metres_per_second(0.9)};
const Stream log_river{metres(1.2), metres_per_second(0.9), millimetres(50.0),
                       CurrentProfile::logarithmic};

} // namespace

TEST_CASE("a drift goes deeper with way and sink rate and never through the bed") {
    double before = -1.0;
    for (double x = 0.0; x < 20.0; x += 0.25) {
        const double z = drift_depth(river, metres_per_second(0.15), metres(x)).si;
        CHECK(z >= before);
        CHECK(z <= river.depth.si);
        CHECK(z <= drift_depth(river, metres_per_second(0.2), metres(x)).si);
        before = z;
    }
    CHECK(before == river.depth.si);
}

TEST_CASE("the bed is reached where the drift says so") {
    const Speed w = metres_per_second(0.15);
    for (const Stream& s : {river, log_river}) {
        const Length bed = drift_to_bed(s, w);
        CHECK(drift_depth(s, w, bed - metres(0.01)) < s.depth);
        CHECK(drift_depth(s, w, bed + metres(0.01)) == s.depth);
    }
}

TEST_CASE("both profiles agree within what profiles differ by") {
    // Source     independent computation: 0.70310 and 0.70754 m; they cross at the surface
    // Tolerance  5 %: mean over surface speed is 0.875 by one and 0.848 by the other
    for (const double x : {0.5, 1.0, 3.0, 5.0}) {
        const double power = drift_depth(river, metres_per_second(0.15), metres(x)).si;
        const double log = drift_depth(log_river, metres_per_second(0.15), metres(x)).si;
        CHECK(within_share(log, power, 0.05));
    }
}

TEST_CASE("turbulence spreads as time at first and as its root later") {
    // Source     Taylor 1921: the two limits of his formula
    // Tolerance  1 % at 1/100 and 100 times the memory of 1.47 s
    const double u = shear_speed(river).si;
    CHECK(within_share(turbulent_spread(river, seconds(0.0147)).si, u * 0.0147, 0.01));
    const double ratio =
        turbulent_spread(river, seconds(588.0)) / turbulent_spread(river, seconds(147.0));
    CHECK(within_share(ratio, 2.0, 0.01));
    CHECK(turbulent_spread(river, seconds(0.0)).si == 0.0);
}

TEST_CASE("a path with inertia ends near the one that has its speed at once") {
    // Source     independent computation: 0.6512 m against 0.6520 m after 1 m: what it lags down it
    //            gains while it is still slower than the current
    // Tolerance  1 %
    const ExampleFly fly = example_fly(45.0);
    const Water w = water(10.0);
    const auto path = drift_path(fly.shape, fly.mass, fly.volume, w, river, metres(1.0));
    const Speed sink = terminal_speed(fly.shape, weight_in_water(fly.mass, fly.volume, w), w);
    CHECK(within_share(path.back().depth.si, drift_depth(river, sink, metres(1.0)).si, 0.01));
    CHECK(path.front().depth.si == 0.0);
    for (std::size_t i = 1; i < path.size(); ++i) CHECK(path[i].depth >= path[i - 1].depth);
}
