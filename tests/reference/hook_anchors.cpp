// Typical hooks against what is published about hooks, and the mass model against its own table.

#include "core/hook/centreline.h"
#include "core/hook/hook.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

Hook typical(HookFamily family, int number) { return typical_hook(family, {number}).value(); }

} // namespace

TEST_CASE("a size 12 dry hook has a gape of 5 mm and a shank of 10 mm") {
    // Source     a published hook primer: "size 12 dry: 5 mm gape, 10 mm shank"
    // Tolerance  the fitted column gives 9.7 mm; the source rounds to whole millimetres
    const Hook h = typical(HookFamily::dry, 12);
    CHECK(within(in_millimetres(h.gape.value), 5.0, 0.05));
    CHECK(within(in_millimetres(h.shank.value), 10.0, 0.5));
    CHECK(h.shank.low <= millimetres(10.0));
    CHECK(millimetres(10.0) <= h.shank.high);
}

TEST_CASE("a standard shank is about twice the gape, or that and one eye width") {
    // Source     published hook primers, both forms; between the two the column must lie
    // Tolerance  +-12 %, the spread between makers
    for (int n = 4; n <= 24; n += 2) {
        CAPTURE(n);
        const Hook h = typical(HookFamily::dry, n);
        const double least = 2.0 * h.gape.value.si;
        const double most = least + h.eye_diameter.value.si;
        CHECK(h.shank.value.si > 0.88 * least);
        CHECK(h.shank.value.si < 1.12 * most);
    }
}

TEST_CASE("a size 8 jig hook has wire of 0.610 mm") {
    // Source     a published measurement of a size 8 jig hook of 60 degrees: 0.024 in, 0.610 mm
    // Tolerance  0.001 in, what the caliper read
    const Hook h = typical(HookFamily::jig, 8);
    CHECK(within(in_millimetres(h.wire.value), 0.610, 0.0254));
    CHECK(within(in_degrees(h.jig_angle.value), 60.0, 1e-9));
}

TEST_CASE("wire of 0.60 mm is medium at size 10 and heavy at size 12") {
    // Source     a published micrometer survey's classes
    const Length wire = millimetres(0.60);
    const Hook ten = typical(HookFamily::wet, 10), twelve = typical(HookFamily::wet, 12);
    CHECK(ten.wire.low <= wire);
    CHECK(wire <= ten.wire.high);
    CHECK(wire > twelve.wire.high);
}

TEST_CASE("shank and gape shrink by about 1.16 from one even number to the next") {
    // Source     ratios measured on a hook plate of 1940 drawn at actual size: 8.6 % per number on
    //            a round bend, 10.2 % on a sproat; so 1.18 to 1.21 there, about 1.16 in trade
    // Tolerance  rounding of the smallest shanks to 0.1 mm
    for (const HookFamily f : {HookFamily::dry, HookFamily::curved, HookFamily::jig}) {
        for (int n = 6; n < 20; n += 2) {
            CAPTURE(n);
            const double ratio = typical(f, n).shank.value / typical(f, n + 2).shank.value;
            CHECK(within(ratio, 1.17, 0.04));
        }
    }
}

TEST_CASE("2X and 4X long have the shank of a hook two and four numbers larger") {
    // Source     three published explanations of nX long that count every whole number
    // Tolerance  rounding of the table to 0.1 mm; the table's own 2X column at 6
    for (int n = 8; n <= 14; n += 2) {
        CAPTURE(n);
        const double two = typical(HookFamily::dry, n - 2).shank.value.si;
        const double four = typical(HookFamily::dry, n - 4).shank.value.si;
        CHECK(within_share(typical(HookFamily::long_shank, n).shank.value.si, two, 0.01));
        CHECK(within_share(typical(HookFamily::streamer, n).shank.value.si, four, 0.01));
    }
}

TEST_CASE("an eye is as long along the shank as hooks of its size are said to have") {
    // Source     common practice, no source: 1.2 mm at 18, 1.5 at 14, 1.8 at 12, 2.2 at 8
    // Tolerance  12 %, the spread of the rule 3.3 wires
    const std::pair<int, double> rows[] = {{18, 1.2}, {14, 1.5}, {12, 1.8}, {8, 2.2}};
    for (const auto& [number, eye] : rows) {
        CAPTURE(number);
        CHECK(within_share(in_millimetres(typical(HookFamily::wet, number).eye_length.value), eye,
                           0.12));
    }
}

TEST_CASE("bare hooks weigh what length times wire gives by hand") {
    // Source     (shank + 2.27 gape + 8.2 wire) pi / 4 wire^2 7.85 g/cm3, computed apart from this
    //            code and rounded to whole milligrams
    // Tolerance  half a milligram of rounding, and 2.2708 for 2.27
    const std::pair<int, double> dry[] = {{8, 64},  {10, 46}, {12, 34}, {14, 23},
                                          {16, 17}, {18, 11}, {20, 8},  {22, 5}};
    const std::pair<int, double> wet[] = {{4, 161}, {6, 118}, {8, 85},  {10, 60}, {12, 44},
                                          {14, 33}, {16, 24}, {18, 16}, {20, 11}};
    for (const auto& [n, mg] : dry) {
        CAPTURE(n);
        CHECK(within(in_milligrams(hook_mass(typical(HookFamily::dry, n)).value), mg, 0.6));
    }
    for (const auto& [n, mg] : wet) {
        CAPTURE(n);
        CHECK(within(in_milligrams(hook_mass(typical(HookFamily::wet, n)).value), mg, 0.6));
    }
}
