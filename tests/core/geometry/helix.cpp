#include "core/geometry/helix.h"
#include "core/geometry/helix_kernel.h"
#include "tests/support/close.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

Length mm(double v) { return millimetres(v); }

} // namespace

TEST_CASE("lengths of windings scale with the fly") {
    for (const double k : {1e-6, 0.5, 3.0, 1e6}) {
        CAPTURE(k);
        CHECK(within_share(helix_length(7.3, mm(k * 0.7), mm(k * 0.5)).si,
                           k * helix_length(7.3, mm(0.7), mm(0.5)).si, 1e-14));
        const auto scaled = cone_winding_length(mm(k * 0.5), mm(k * 1.5), mm(k * 10), mm(k));
        const auto plain = cone_winding_length(mm(0.5), mm(1.5), mm(10), mm(1));
        CHECK(within_share(scaled.value().si, k * plain.value().si, 1e-13));
        CHECK(within_share(touching_pitch(mm(k * 0.4), mm(k * 0.5)).value().si,
                           k * touching_pitch(mm(0.4), mm(0.5)).value().si, 1e-14));
    }
}

TEST_CASE("turns add up") {
    const Length r = mm(0.6);
    const Length p = mm(0.3);
    CHECK(within_share((helix_length(3.0, r, p) + helix_length(4.5, r, p)).si,
                       helix_length(7.5, r, p).si, 1e-14));
    // A cone cut in two is as long as the whole: the antiderivative has no piece of its own.
    const double whole = cone_winding_length(mm(0.5), mm(1.5), mm(10), mm(1)).value().si;
    const double parts = cone_winding_length(mm(0.5), mm(0.9), mm(4), mm(1)).value().si +
                         cone_winding_length(mm(0.9), mm(1.5), mm(6), mm(1)).value().si;
    CHECK(within_share(parts, whole, 1e-12));
}

TEST_CASE("a cone becomes a cylinder as its taper goes") {
    const double turns = 10.0 / 0.8;
    const double cylinder = helix_length(turns, mm(0.7), mm(0.8)).si;
    double before = 1.0;
    for (const double taper : {1e-2, 1e-3, 1e-4, 1e-7, 0.0}) {
        CAPTURE(taper);
        const auto cone =
            cone_winding_length(mm(0.7 - taper), mm(0.7 + taper), mm(10), mm(0.8)).value();
        const double off = std::abs(cone.si / cylinder - 1.0);
        CHECK(off <= before);
        before = std::max(off, 1e-9); // below, only rounding is left
    }
    CHECK(before == 1e-9);
    // Same either way round.
    CHECK(within_share(cone_winding_length(mm(0.4), mm(1), mm(8), mm(0.8)).value().si,
                       cone_winding_length(mm(1), mm(0.4), mm(8), mm(0.8)).value().si, 1e-13));
}

TEST_CASE("whole turns that fit a cover take no more room than it has, and one more does not fit") {
    const Length width = mm(0.2);
    const Length radius = mm(0.5);
    for (const double pitch : {0.2005, 0.31, 0.9}) {
        for (const double cover : {0.1, 0.5, 3.0, 7.77}) {
            CAPTURE(pitch);
            CAPTURE(cover);
            const int n = turns_in_cover(mm(cover), mm(pitch), width, radius);
            if (n > 0) CHECK(span_of_turns(n, mm(pitch), width, radius) <= mm(cover + 1e-9));
            CHECK(span_of_turns(n + 1, mm(pitch), width, radius) > mm(cover));
            // A cover made for n turns takes n turns, whatever the last digit.
            const Length exact = span_of_turns(12.0, mm(pitch), width, radius);
            CHECK(turns_in_cover(exact, mm(pitch), width, radius) == 12);
        }
    }
    CHECK(turns_in_cover(mm(0.0), mm(0.3), width, radius) == 0);
}

TEST_CASE("a strand of the length that turns take makes those turns") {
    const Length length = helix_length(4.25, mm(1.1), mm(0.7));
    CHECK(within(turns_from_length(length, mm(1.1), mm(0.7)), 4.25, 1e-13));
}

TEST_CASE("an open wrap covers all at the touching pitch and never more") {
    const Length pitch = touching_pitch(mm(0.3), mm(0.6)).value();
    CHECK(within(coverage(mm(0.3), mm(0.6), pitch), 1.0, 1e-12));
    CHECK(coverage(mm(0.3), mm(0.6), 0.5 * pitch) == 1.0);
    // Wound ever more open it becomes a strip along the core: w / (2 pi R).
    CHECK(within_share(coverage(mm(0.3), mm(0.6), mm(1e6)), 0.3 / (2 * std::numbers::pi * 0.6),
                       1e-9));
}

TEST_CASE("turns touch along the slope, so their pitch along the axis is shorter") {
    const Length flat = touching_pitch(mm(0.3), mm(0.6)).value();
    const Length taper = touching_pitch(mm(0.3), mm(0.6), std::tan(degrees(30.0).si)).value();
    CHECK(within_share(taper.si, flat.si * std::cos(degrees(30.0).si), 1e-14));
}

TEST_CASE("a helix keeps the curvature and torsion that its shape gives") {
    // curvature^2 + torsion^2 = 1 / (R^2 + c^2) and torsion / curvature = c / R
    const HelixBend b = helix_bend(mm(0.7), mm(0.5));
    const double c = mm(0.5).si / (2.0 * std::numbers::pi);
    const double r = mm(0.7).si;
    CHECK(within_share(b.curvature * b.curvature + b.torsion * b.torsion, 1.0 / (r * r + c * c),
                       1e-14));
    CHECK(within_share(b.torsion / b.curvature, c / r, 1e-14));
    CHECK(within_share(helix_bend(mm(0.7), mm(0.0)).curvature, 1.0 / r, 1e-14)); // a circle
}

TEST_CASE("a rib that starts in sight shows one mark more than turns, behind it just the turns") {
    // common practice, no source: "five turns of rib" are read as five marks or as five gaps
    CHECK(visible_marks(5.0, 1e-6) == 5);
    CHECK(visible_marks(5.0 + 1e-5, 1e-6) == 6);
    CHECK(visible_marks(5.0, 0.5) == 5);
    CHECK(visible_marks(0.3, 0.5) == 0);
}

TEST_CASE("a graded rib comes out the same from its share and from its turns") {
    const auto by_share = graded_rib(mm(0.8), mm(1.7), mm(6.0), 0.9).value();
    const auto by_turns = graded_rib_of_turns(mm(0.8), mm(1.7), mm(6.0), by_share.turns).value();
    CHECK(within_share(by_turns.pitch_share, 0.9, 1e-14));
    CHECK(within_share(by_turns.growth, by_share.growth, 1e-14));
    // On a level body it is an even rib.
    const auto level = graded_rib(mm(1.2), mm(1.2), mm(6.0), 0.5).value();
    CHECK(within_share(level.turns, 10.0, 1e-14));
    CHECK(level.growth == 1.0);
    // Its gaps, laid end to end, fill the body: a geometric sum.
    double at = 0.0;
    double gap = 0.9 * 0.8;
    const double q = by_share.growth;
    // The first gap starts at d0: integral of the growing pitch over one turn.
    gap *= std::log(q) > 0 ? (q - 1.0) / std::log(q) : 1.0;
    const int whole = static_cast<int>(by_share.turns);
    for (int k = 0; k < whole; ++k, gap *= q) at += gap;
    CHECK(within_share(at, 6.0 * kernel::place_of_turn(whole, by_share.turns, q), 1e-12));
}

TEST_CASE("the place of a turn runs from start to end and grows evenly or by a ratio") {
    CHECK(kernel::place_of_turn(0.0, 8.0, 1.1) == 0.0);
    CHECK(kernel::place_of_turn(8.0, 8.0, 1.1) == 1.0);
    CHECK(kernel::place_of_turn(2.0, 8.0, 1.0) == 0.25);
    // A growth that is nearly 1 meets the even case.
    CHECK(within(kernel::place_of_turn(2.0, 8.0, 1.0 + 1e-8), 0.25, 1e-7));
    const auto at = [](double u) { return kernel::place_of_turn(u, 8.0, 1.1); };
    CHECK(within_share((at(5.0) - at(4.0)) / (at(4.0) - at(3.0)), 1.1, 1e-12));
}

TEST_CASE("layers lie between nested and stacked") {
    for (int k = 1; k < 5; ++k) {
        const Length low = layer_diameter(mm(1), mm(0.3), k, nested);
        const Length middle = layer_diameter(mm(1), mm(0.3), k, back_wound);
        const Length high = layer_diameter(mm(1), mm(0.3), k, stacked);
        CHECK(low <= middle);
        CHECK(middle <= high);
    }
    CHECK(layer_diameter(mm(1), mm(0.3), 0, stacked) == mm(1));
}

TEST_CASE("a strand pressed flat keeps its area") {
    for (const double height : {0.5, 0.4, 0.25, 0.1}) {
        const double w = in_millimetres(flattened_width(mm(0.5), mm(height)).value());
        const double area = std::numbers::pi / 4 * height * height + height * (w - height);
        CHECK(within_share(area, std::numbers::pi / 4 * 0.25, 1e-14));
    }
}

TEST_CASE("windings that cannot be are refused, and never give a NaN") {
    const double nan = std::nan("");
    const double infinite = std::numeric_limits<double>::infinity();
    for (const double bad : {0.0, -1.0, nan, infinite}) {
        CAPTURE(bad);
        CHECK_FALSE(cone_winding_length(mm(0.5), mm(1), mm(5), mm(bad)).ok());
        CHECK_FALSE(cone_winding_length(mm(0.5), mm(1), mm(bad), mm(0.3)).ok());
        CHECK_FALSE(touching_pitch(mm(bad), mm(0.5)).ok());
        CHECK_FALSE(touching_pitch(mm(0.5), mm(bad)).ok());
        CHECK_FALSE(graded_rib(mm(1), mm(2), mm(5), bad).ok());
        CHECK_FALSE(graded_rib_of_turns(mm(1), mm(2), mm(5), bad).ok());
        CHECK_FALSE(flattened_width(mm(0.5), mm(bad)).ok());
        CHECK_FALSE(friction_needed(0.2, degrees(bad)).ok());
    }
    // As wide as the core is round, a strand only lies along it.
    CHECK_FALSE(touching_pitch(mm(2.0 * std::numbers::pi), mm(1.0)).ok());
    CHECK(touching_pitch(mm(6.28), mm(1.0)).ok());
    CHECK_FALSE(flattened_width(mm(0.5), mm(0.6)).ok());
    CHECK_FALSE(friction_needed(0.2, degrees(91.0)).ok());
}
