#include "core/tying/wrap.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

Profile cylinder(double diameter_mm, double length_mm) {
    Profile p;
    p.cell = millimetres(length_mm) / profile_cells;
    p.diameter.fill(millimetres(diameter_mm).si);
    return p;
}

Profile cone(double from_mm, double to_mm, double length_mm) {
    Profile p = cylinder(from_mm, length_mm);
    for (int i = 0; i < profile_cells; ++i) {
        p.diameter[static_cast<std::size_t>(i)] =
            millimetres(from_mm + (to_mm - from_mm) * (i + 0.5) / profile_cells).si;
    }
    return p;
}

WrapAsk strand(double width_mm, double from_mm) {
    WrapAsk ask;
    ask.from = millimetres(from_mm);
    ask.width = ask.height = millimetres(width_mm);
    return ask;
}

const Length window = millimetres(0.3);

} // namespace

TEST_CASE("twenty turns of half-millimetre wire at a given pitch have the length of their helix") {
    // Source     independent computation: closed form and a polyline of 2e6 points agree to 1e-8
    // Tolerance  the cells' sum is exact on a cylinder but for the rounding of the last cell
    const Profile shank = cylinder(0.9, 12.0);
    Profile after = shank;
    WrapAsk ask = strand(0.5, 0.0);
    ask.turns = 20.0;
    ask.has_turns = true;
    ask.pitch = millimetres(0.5);
    ask.has_pitch = true;
    ask.spacing = Spacing::open;
    const Wrap done = wrap(shank, &after, ask, window);
    CHECK(within(in_millimetres(done.length), 88.53118, 1e-5));
    CHECK(within(in_millimetres(done.to), 10.0, 1e-9));
    CHECK_FALSE(done.clipped);
}

TEST_CASE("turns on a cone have the length of the conical helix") {
    // Source     independent computation: closed form = adaptive quadrature: radius of the
    //            centreline 0.5 to 1.5 mm over 10 mm at a pitch of 1 mm is 63.70595375 mm
    // Tolerance  midpoint cells of 10/192 mm: error of second order, below 1e-5 of the length
    const double h = 0.1;
    const Profile core = cone(1.0 - h, 3.0 - h, 10.0);
    Profile after = core;
    WrapAsk ask = strand(h, 0.0);
    ask.to = millimetres(10.0);
    ask.has_to = true;
    ask.turns = 10.0;
    ask.has_turns = true;
    ask.spacing = Spacing::open;
    const Wrap done = wrap(core, &after, ask, window);
    CHECK(within_share(in_millimetres(done.length), 63.70595375, 1e-4));
}

TEST_CASE("touching turns lie at the pitch at which neighbours touch") {
    // Source     independent computation: least distance of neighbouring turns in three dimensions:
    //            shank 0.90, strand 0.50 mm touch at a pitch of 0.503264 mm
    // Tolerance  that number's last digit
    const Profile shank = cylinder(0.9, 12.0);
    Profile after = shank;
    WrapAsk ask = strand(0.5, 1.0);
    ask.turns = 8.0;
    ask.has_turns = true;
    const Wrap done = wrap(shank, &after, ask, window);
    CHECK(within(in_millimetres(done.pitch), 0.503264, 2e-6));
    SUBCASE("and cover their turns and one width of strand") {
        // Source  derived: N turns occupy N p + w along the core
        CHECK(within(in_millimetres(done.to - done.from), 8.0 * 0.503264 + 0.5, 1e-4));
    }
    SUBCASE("and raise the shank by two strand heights") {
        CHECK(within(after.diameter_at(millimetres(3.0)).si * 1e3, 1.9, 1e-9));
    }
}

TEST_CASE("a second layer wound straight back adds between the nested and the stacked height") {
    // Source  contact of two helices computed in three dimensions: nested 2.76603, stacked 2.9 mm
    //         for D 0.9 and d 0.5; a layer of the other hand lies between the two
    Profile shank = cylinder(0.9, 12.0);
    WrapAsk ask = strand(0.5, 1.0);
    ask.to = millimetres(6.0);
    ask.has_to = true;
    ask.turns = 2.0 * (5.0 / 0.503264);
    ask.has_turns = true;
    ask.spacing = Spacing::open;
    wrap(shank, &shank, ask, window);
    const double d = in_millimetres(shank.diameter_at(millimetres(3.5)));
    CHECK(d > 2.76603);
    CHECK(d < 2.9);
}

TEST_CASE("thread builds up by its volume, whatever lies below") {
    // Source     independent turn-by-turn simulation: 70 den nylon, 10 turns/mm, packing 0.70 on
    //            0.6 mm gives 0.79493 mm and 21.9115 mm of thread for each mm of body
    // Tolerance  the simulation's last digits; length leaves out the 1 mm of advance per mm
    Profile shank = cylinder(0.6, 10.0);
    WrapAsk ask = strand(0.1076, 2.0);
    ask.build = Build::volume;
    ask.solid = square_millimetres(0.0068226);
    ask.packing = 0.7;
    ask.to = millimetres(6.0);
    ask.has_to = true;
    ask.turns = 40.0;
    ask.has_turns = true;
    ask.spacing = Spacing::open;
    const Wrap done = wrap(shank, &shank, ask, window);
    CHECK(within(in_millimetres(shank.diameter_at(millimetres(4.0))), 0.79493, 1e-5));
    CHECK(within(in_millimetres(done.length) / 4.0, std::hypot(21.9115, 1.0), 2e-3));
}

TEST_CASE("graded turns grow with the body as their formula says") {
    // Source     independent computation: diameter 1 to 2 mm over 10 mm, pitch equal to the
    // diameter
    //            is 6.931472 turns, and successive gaps grow by 1.105171
    // Tolerance  midpoint cells: 1e-5 of the turns; the growth is a ratio of the two ends
    const Profile core = cone(1.0, 2.0, 10.0);
    Profile after = core;
    WrapAsk ask = strand(0.1, 0.0);
    ask.to = millimetres(10.0);
    ask.has_to = true;
    ask.turns = 6.931472;
    ask.has_turns = true;
    ask.spacing = Spacing::graded;
    const Wrap done = wrap(core, &after, ask, window);
    CHECK(within(done.growth, 1.105171, 2e-3));
}

TEST_CASE("lengths of winding scale with the fly, turns and slopes do not") {
    const auto wound = [](double k) {
        const Profile shank = cone(0.5 * k, 1.2 * k, 9.0 * k);
        Profile after = shank;
        WrapAsk ask = strand(0.2 * k, 1.0 * k);
        ask.to = millimetres(7.0 * k);
        ask.has_to = true;
        return wrap(shank, &after, ask, millimetres(0.3 * k));
    };
    const Wrap one = wound(1.0);
    // Touching turns over 6 mm less the strand's own width, on a slope of 0.7/2 in 9: about 5.8/0.2
    CHECK(within(one.turns, 29.0, 0.2));
    for (const double k : {1e-3, 1e3}) {
        CAPTURE(k);
        const Wrap other = wound(k);
        // Tolerance  rounding of some 150 cells
        CHECK(within_share(other.turns, one.turns, 1e-9));
        CHECK(within_share(other.length.si, k * one.length.si, 1e-9));
        CHECK(within_share(other.slope, one.slope, 1e-9));
    }
}

TEST_CASE("turns that do not fit on the wire end where it ends, and say so") {
    const Profile shank = cylinder(0.5, 8.0);
    Profile after = shank;
    WrapAsk ask = strand(0.4, 5.0);
    ask.turns = 40.0;
    ask.has_turns = true;
    const Wrap done = wrap(shank, &after, ask, window);
    CHECK(done.clipped);
    CHECK(within(in_millimetres(done.to), 8.0, 1e-9));
}

TEST_CASE("a step in the underbody is as steep as its height over the window") {
    Profile p = cylinder(0.5, 9.6); // cells of 0.05 mm
    for (int i = 96; i < profile_cells; ++i) p.diameter[static_cast<std::size_t>(i)] += 0.6e-3;
    // 0.3 mm of radius over a window of 0.3 mm
    const Steepest s = steepest(p, millimetres(2.0), millimetres(8.0), millimetres(0.3));
    CHECK(within(s.slope, 1.0, 1e-9));
    CHECK(within(in_millimetres(s.step), 0.6, 1e-9));
    CHECK(within(in_millimetres(s.at), 4.8, 0.3));
}
