#include "core/material/bead.h"
#include "tests/support/bead_builder.h"
#include "tests/support/close.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::countersunk;
using wrapwright::test::drilled;
using wrapwright::test::slotted;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

/// Volume and first moment of the countersunk bead, by adding up thin rings: no formula of
/// bead.cpp.
struct Sum {
    double volume = 0.0, moment = 0.0;
};

Sum rings(double D, double bore, double mouth, double half_angle) {
    const double rim = std::sqrt(D * D - mouth * mouth) / 2.0;
    Sum sum;
    constexpr int n = 200'000;
    for (int i = 0; i < n; ++i) {
        const double x = D * ((i + 0.5) / n - 0.5);
        const double outer = D * D / 4.0 - x * x;
        double inner = bore / 2.0;
        inner = std::max(inner, mouth / 2.0 + (x - rim) * std::tan(half_angle));
        if (x > rim) inner = mouth; // nothing is left beyond the mouth
        const double area = std::numbers::pi * std::max(0.0, outer - inner * inner);
        sum.volume += area * D / n;
        sum.moment += area * x * D / n;
    }
    return sum;
}

} // namespace

TEST_CASE("a bead without a bore is a sphere") {
    // Source     V = pi D^3 / 6
    const Bead ball = drilled(3.0, 0.0);
    CHECK(within_share(in_cubic_millimetres(bead_volume(ball)), std::numbers::pi * 4.5, 1e-14));
    CHECK(bead_centre_offset(ball).si == 0.0); // exact: nothing was cut
    CHECK(within_share(in_millimetres(bore_length(ball)), 3.0, 1e-15));
}

TEST_CASE("what is left of a drilled sphere depends on the bore's length alone") {
    // Source     the napkin ring problem: V = pi h^3 / 6
    const Bead small = drilled(2.5, 1.5), large = drilled(std::sqrt(4.0 + 9.0), 3.0);
    CHECK(within_share(in_millimetres(bore_length(small)), 2.0, 1e-14));
    CHECK(within_share(in_millimetres(bore_length(large)), 2.0, 1e-14));
    CHECK(within_share(bead_volume(small).si, bead_volume(large).si, 1e-13));
}

TEST_CASE("a countersunk bead is what thin rings add up to") {
    // Tolerance  200,000 midpoint rings: 1e-9 of the smooth part, 1e-5 at the two jumps
    for (const double half : {12.0, 16.0, 30.0, 45.0}) {
        CAPTURE(half);
        const Bead bead = countersunk(3.0, 1.0, 1.8, degrees(half));
        const Sum sum = rings(3.0, 1.0, 1.8, degrees(half).si);
        CHECK(within_share(in_cubic_millimetres(bead_volume(bead)), sum.volume, 2e-5));
        CHECK(within(in_millimetres(bead_centre_offset(bead)), sum.moment / sum.volume, 2e-5));
    }
}

TEST_CASE("a countersink as narrow as the bore takes nothing away") {
    const Bead plain = drilled(3.0, 1.0);
    const Bead same = countersunk(3.0, 1.0, 1.0, degrees(20.0));
    CHECK(bead_volume(same) == bead_volume(plain));
    CHECK(bore_length(same) == bore_length(plain));
    CHECK(countersink_depth(same).si == 0.0); // exact: there is none
}

TEST_CASE("a countersink that would come out in front ends at the front rim") {
    const Bead deep = countersunk(3.0, 1.0, 1.2, degrees(1.0));
    CHECK(within_share(countersink_depth(deep).si, bore_length(deep).si, 1e-14));
    CHECK(bead_volume(deep).si > 0.0);
}

TEST_CASE("a slotted bead is what thin strips add up to") {
    // The slot by a grid over axis and width, with the wall's thickness at each: another integral.
    // Tolerance  the grid is good to 2e-5 of the slot; Simpson's rule in bead.cpp to 1e-6
    for (const double width : {0.5, 0.8, 1.3}) {
        CAPTURE(width);
        const double D = 3.0, bore = 1.0, from = -0.3;
        const double rim = std::sqrt(D * D - bore * bore) / 2.0;
        constexpr int n = 1500;
        double volume = 0.0, moment = 0.0;
        for (int i = 0; i < n; ++i) {
            const double x = from + (rim - from) * (i + 0.5) / n;
            for (int k = 0; k < n; ++k) {
                const double z = width / 2.0 * (k + 0.5) / n;
                const double out = D * D / 4.0 - x * x - z * z;
                const double in = std::max(0.0, bore * bore / 4.0 - z * z);
                const double wall = std::sqrt(std::max(0.0, out)) - std::sqrt(in);
                const double cell = std::max(0.0, wall) * (rim - from) / n * width / n;
                volume += cell;
                moment += cell * x;
            }
        }
        const double napkin = in_cubic_millimetres(bead_volume(drilled(D, bore)));
        const Bead bead = slotted(D, bore, width, from);
        CHECK(within_share(napkin - in_cubic_millimetres(bead_volume(bead)), volume, 2e-5));
        CHECK(within(in_millimetres(bead_centre_offset(bead)), -moment / (napkin - volume), 2e-5));
    }
}

TEST_CASE("a bead shrinks as bore, mouth or slot grow, and its centre moves to the eye") {
    const auto volume = [](const Bead& bead) { return bead_volume(bead).si; };
    CHECK(volume(drilled(3.0, 1.0)) > volume(drilled(3.0, 1.1)));
    CHECK(volume(drilled(3.0, 1.0)) > volume(countersunk(3.0, 1.0, 1.5, degrees(20.0))));
    CHECK(volume(countersunk(3.0, 1.0, 1.5, degrees(20.0))) >
          volume(countersunk(3.0, 1.0, 1.8, degrees(20.0))));
    CHECK(volume(slotted(3.0, 1.0, 0.6, 0.0)) > volume(slotted(3.0, 1.0, 0.8, 0.0)));
    CHECK(volume(slotted(3.0, 1.0, 0.6, 0.0)) > volume(slotted(3.0, 1.0, 0.6, -0.3)));
    CHECK(bead_centre_offset(countersunk(3.0, 1.0, 1.5, degrees(20.0))).si < 0.0);
    CHECK(bead_centre_offset(slotted(3.0, 1.0, 0.6, 0.0)).si < 0.0);
    CHECK(bore_length(countersunk(3.0, 1.0, 1.5, degrees(20.0))) < bore_length(drilled(3.0, 1.0)));
}

TEST_CASE("twice the bead has eight times the volume and twice the offset") {
    // Tolerance  a few roundings
    const auto check = [](const Bead& one, const Bead& two) {
        CHECK(within_share(bead_volume(two).si, 8.0 * bead_volume(one).si, 1e-13));
        CHECK(within_share(bead_centre_offset(two).si, 2.0 * bead_centre_offset(one).si, 1e-12));
    };
    check(countersunk(2.8, 0.95, 1.7, degrees(15.0)), countersunk(5.6, 1.9, 3.4, degrees(15.0)));
    check(slotted(2.8, 0.95, 0.8, -0.2), slotted(5.6, 1.9, 1.6, -0.4));
}
