// Thread as a strand and as a body against independent computations.

#include "core/geometry/thread_build.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

Length mm(double v) { return millimetres(v); }

Area solid(double den, double density) { return denier(den) / grams_per_cm3(density); }

double in_mm2(Area a) { return a.si * 1e6; }

constexpr double body_packing = 0.7;

} // namespace

TEST_CASE("a thread's denier and density give its solid area and its strand's diameter") {
    // Source     independent computation; ISO 1144 for den and tex, nylon 1.14 g/cm3 (Morton and
    //            Hearle, Physical Properties of Textile Fibres, table 5.1)
    // Tolerance  last digit given
    const Area nylon70 = solid(70.0, 1.14);
    CHECK(within(in_mm2(nylon70), 0.006823, 5e-7));
    CHECK(within(in_tex(denier(70.0)), 7.77778, 5e-6));
    CHECK(within(in_millimetres(round_strand_diameter(nylon70, 1.0)), 0.0932, 5e-5));
    CHECK(within(in_millimetres(round_strand_diameter(nylon70, 0.75)), 0.1076, 5e-5));
    CHECK(within(in_millimetres(round_strand_diameter(solid(140.0, 1.14), 0.75)), 0.1522, 5e-5));
    CHECK(within(in_millimetres(round_strand_diameter(solid(50.0, 0.97), 0.75)), 0.0986, 5e-5));
    CHECK(within(in_millimetres(round_strand_diameter(solid(72.0, 1.39), 0.75)), 0.0988, 5e-5));
}

TEST_CASE("24 filaments of 70 den lie 0.457 mm wide in one layer and 0.228 in two") {
    // Source     independent computation; tolerance: last digit given
    const Area a = solid(70.0, 1.14);
    CHECK(within(in_millimetres(filament_diameter(a, 24)), 0.01903, 5e-6));
    CHECK(within(in_millimetres(flat_strand(a, 24, 1).width), 0.4566, 5e-5));
    CHECK(within(in_millimetres(flat_strand(a, 24, 2).width), 0.2283, 5e-5));
    CHECK(within(in_millimetres(flat_strand(a, 24, 2).thickness), 0.0355, 5e-5));
}

TEST_CASE("round fibres fill at most 0.9069 of a space") {
    // Source     hexagonal packing of circles, pi / sqrt(12); a published paper on yarn packing
    //            gives 0.906 as the number of filaments grows
    CHECK(within(densest_packing, std::numbers::pi / std::sqrt(12.0), 1e-15));
}

TEST_CASE("thread builds a base up as a turn-by-turn simulation does") {
    // Source     independent computation: 70 den, packing .7; formula = simulation in Python
    // Tolerance  last digit given
    const Area a = solid(70.0, 1.14);
    const Length d1 = built_diameter(mm(0.6), 10.0, mm(1.0), a, body_packing);
    CHECK(within(in_millimetres(d1), 0.79493, 5e-6));
    const Length d2 = built_diameter(mm(1.0), 100.0, mm(1.0), a, body_packing);
    CHECK(within(in_millimetres(d2), 2.94932, 5e-6));

    const std::vector<double> base{mm(0.6).si};
    const std::vector<double> target{d1.si};
    const BuildPlan plan = plan_build(base, target, mm(1.0), a, body_packing);
    CHECK(within(in_millimetres(plan.length), 21.9115, 5e-4)); // in each mm of body
    const std::vector<double> thick{mm(1.0).si};
    const std::vector<double> thicker{d2.si};
    CHECK(within(in_millimetres(plan_build(thick, thicker, mm(1.0), a, body_packing).length),
                 620.357, 5e-3));

    // Against    turns laid one by one here: each adds its own volume to a ring and has the length
    //            of a circle at the middle of what it adds
    double diameter = 0.6;
    double length = 0.0;
    constexpr int slices = 1000; // of a turn, so that the sum is nearly an integral
    for (int i = 0; i < 10 * slices; ++i) {
        const double piece = std::numbers::pi * diameter / slices;
        const double area = in_mm2(a) / body_packing * piece; // over a body 1 mm long
        diameter = std::sqrt(diameter * diameter + area * 4.0 / std::numbers::pi);
        length += piece;
    }
    // Tolerance  diameters of one turn of 1e4 apart
    CHECK(within_share(in_millimetres(d1), diameter, 1e-4));
    CHECK(within_share(in_millimetres(plan.length), length, 1e-3));
}

TEST_CASE("a spindle-shaped body of 12 mm takes 328 turns and 846 mm of 70 den thread") {
    // Source     independent computation: integral in numpy 328.32 turns, 845.79 mm, 6.578 mg, peak
    //            41.04 turns/mm; simulation with a 0.5 mm ribbon 328 turns, 843 mm
    // Tolerance  midpoint rule in 960 cells: 1e-5; else the last digit given
    constexpr int cells = 960;
    std::vector<double> base, target;
    for (int i = 0; i < cells; ++i) {
        const double z = 12.0 * (i + 0.5) / cells;
        const double x = (z - 6.0) / 6.0;
        base.push_back(mm(0.5).si);
        target.push_back(mm(0.5 + 0.8 * (1.0 - x * x)).si);
    }
    const BuildPlan plan =
        plan_build(base, target, mm(12.0 / cells), solid(70.0, 1.14), body_packing);
    CHECK(within(plan.turns, 328.32, 0.01));
    CHECK(within(in_millimetres(plan.length), 845.79, 0.02));
    CHECK(within(in_milligrams(denier(70.0) * plan.length), 6.578, 5e-4));
    CHECK(within(plan.densest_per_mm, 41.04, 5e-3));
}

TEST_CASE("a thread's tenacity and denier give its breaking load") {
    // Source     fibre-rope table: high-tenacity nylon .84 N/tex, 70 den breaks at 6.5 N;
    // HMPE 2.65,
    //            50 den at 14.7 N; textile nylon 5 gf/den = .4413 N/tex, 3.43 N
    // Tolerance  last digit given
    CHECK(within(in_newtons(newtons_per_tex(0.84) * denier(70.0)), 6.5, 0.05));
    CHECK(within(in_newtons(newtons_per_tex(2.65) * denier(50.0)), 14.7, 0.05));
    CHECK(within(in_newtons(newtons_per_tex(5.0 * 0.08825985) * denier(70.0)), 3.43, 5e-3));
}
