#include "core/geometry/thread_build.h"
#include "tests/support/close.h"

#include <array>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::within_share;

namespace {

Length mm(double v) { return millimetres(v); }

const Area solid = denier(70.0) / grams_per_cm3(1.14);

} // namespace

TEST_CASE("turns, diameter and packing of a build-up each follow from the other two") {
    for (const double base : {0.3, 0.6, 2.0}) {
        const Length built = built_diameter(mm(base), 37.0, mm(2.5), solid, 0.68);
        CHECK(within_share(turns_to_build(mm(base), built, mm(2.5), solid, 0.68), 37.0, 1e-12));
        CHECK(within_share(packing_from_build(mm(base), built, 37.0, mm(2.5), solid), 0.68, 1e-12));
    }
}

TEST_CASE("thread for a profile has the volume that the profile gains") {
    const std::array base{mm(0.5).si, mm(0.6).si, mm(0.9).si, mm(1.0).si};
    const std::array target{mm(0.7).si, mm(1.0).si, mm(0.8).si, mm(1.3).si};
    double gained = 0.0; // m3, where there is any gain
    for (std::size_t i = 0; i < base.size(); ++i) {
        if (target[i] < base[i]) continue;
        gained += std::numbers::pi / 4 * (target[i] * target[i] - base[i] * base[i]) * mm(0.1).si;
    }
    const BuildPlan plan = plan_build(base, target, mm(0.1), solid, 0.7);
    CHECK(within_share(plan.length.si * solid.si, 0.7 * gained, 1e-12));
    CHECK(plan.turns > 0.0);
}

TEST_CASE("a target below the base takes no thread") {
    CHECK(turns_to_build(mm(1.0), mm(0.8), mm(2.0), solid, 0.7) == 0.0);
}

TEST_CASE("a strand of packing 1 has the area of its fibres, in any form") {
    const Length d = round_strand_diameter(solid, 1.0);
    CHECK(within_share(disc_area(d).si, solid.si, 1e-14));
    const Length f = filament_diameter(solid, 24);
    CHECK(within_share(24.0 * disc_area(f).si, solid.si, 1e-14));
    // One layer of filaments lies side by side.
    CHECK(within_share(flat_strand(solid, 24, 1).width.si, 24.0 * f.si, 1e-14));
    CHECK(within_share(flat_strand(solid, 24, 1).thickness.si, f.si, 1e-14));
}
