#include "core/geometry/sweep.h"

#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

constexpr double pi = std::numbers::pi;

// A straight core along x whose radius runs evenly from r0 to r1.
std::vector<CoreKnot> straight_knots(double r0, double r1, double length, int count, double half) {
    std::vector<CoreKnot> knots(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double share = i / (count - 1.0);
        CoreKnot& k = knots[static_cast<std::size_t>(i)];
        k.axis.x = static_cast<float>(share * length);
        k.radius = static_cast<float>(r0 + share * (r1 - r0));
        k.section = static_cast<float>(half);
    }
    return knots;
}

} // namespace

TEST_CASE("a winding is a closed solid that faces outwards and has the volume of its wire") {
    const auto knots = straight_knots(0.7, 0.7, 6.0, 7, 0.25);
    WindingPath w;
    w.knots = knots;
    w.spacing = 1.0;
    w.from = 1.0;
    w.to = 1.0 + 5 * 0.503;
    w.turns = 5;
    w.steps_per_turn = 128;
    for (const bool away : {true, false}) {
        w.away = away;
        Mesh mesh;
        append_winding(mesh, w, with_true_area(ellipse_section(24)));
        const MeshCheck check = check_mesh(mesh);
        CAPTURE(away);
        CAPTURE(check.volume_mm3);
        CHECK(check.closed);
        CHECK(check.euler == 2);
        // Source     Pappus: section times length of the centre
        // Tolerance  sin(D)/D of the steps, D = 2 pi / 128: 4e-4; which diagonal splits a twisted
        //            quad adds or takes 3e-4
        const double volume = pi * 0.25 * 0.25 * 5 * std::hypot(2 * pi * 0.7, 0.503);
        CHECK(within_share(check.volume_mm3, volume, 1e-3));
    }
}
