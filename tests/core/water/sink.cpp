#include "core/water/sink.h"

#include "core/water/drag_law.h"
#include "tests/support/close.h"
#include "tests/support/dice.h"
#include "tests/support/water_builder.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

double speed_of(const ExampleFly& fly, const Water& w, const Tippet& tippet = {},
                TippetWay way = TippetWay::axial) {
    const Force weight = weight_in_water(fly.mass, fly.volume, w) + tippet_weight(tippet, w);
    return terminal_speed(fly.shape, weight, w, tippet, way).si;
}

} // namespace

TEST_CASE("a grain that is small enough falls as Stokes says") {
    // Source     Stokes 1851: U = (rho_s - rho) g d^2 / (18 mu)
    // Tolerance  3 / 16 Re, Oseen's next term, and 1.5 % for how the law joins it: Re is 1e-3
    const Water w = water(20.0);
    const double d = 12e-6, density = 2500.0;
    const double stokes = (density - w.density.si) * free_fall * d * d / (18.0 * w.viscosity.si);
    CHECK(within_share(ball_speed(d, density, w), stokes, 0.02));
}

TEST_CASE("what weighs as much as its water stands still, and what weighs less rises as fast") {
    const ExampleFly fly = example_fly(45.0);
    const Water w = water(10.0);
    CHECK(terminal_speed(fly.shape, Force{}, w).si == 0.0);
    const Force weight = newtons(1e-4);
    const double down = terminal_speed(fly.shape, weight, w).si;
    CHECK(down > 0.0);
    CHECK(terminal_speed(fly.shape, -weight, w).si == -down);
}

TEST_CASE("the speed found is the one at which drag carries the weight") {
    // Tolerance  1e-9 of the weight: the solver's own bound
    test::Dice dice{7};
    for (int i = 0; i < 300; ++i) {
        ExampleFly fly = example_fly(dice.between(0.0, 90.0));
        fly.shape.bead = millimetres(dice.between(0.0, 6.0));
        fly.shape.factor = dice.between(0.3, 3.0);
        const Force weight{std::exp(dice.between(-16.0, -3.0))};
        const Tippet tippet{millimetres(dice.between(0.05, 0.5)), metres(dice.between(0.0, 3.0))};
        const Water w = water(dice.between(0.0, 30.0));
        for (const TippetWay way : {TippetWay::axial, TippetWay::bowed, TippetWay::across}) {
            const Speed u = terminal_speed(fly.shape, weight, w, tippet, way);
            if (u.si == 0.0 || u.si >= 10.0) continue;
            const Force f = drag(fly.shape, u, w) + tippet_drag(tippet, way, u, w);
            CHECK(within_share(f.si, weight.si, 1e-8));
        }
    }
}

TEST_CASE("drag grows with speed, everywhere") {
    test::Dice dice{11};
    for (int i = 0; i < 100; ++i) {
        ExampleFly fly = example_fly(dice.between(0.0, 90.0));
        fly.shape.blunt = square_millimetres(dice.between(0.0, 5.0));
        const Water w = water(dice.between(0.0, 30.0));
        const Tippet tippet{millimetres(0.15), metres(1.0)};
        double before = 0.0, axial = 0.0, bowed = 0.0, across = 0.0;
        for (double u = 1e-6; u < 10.0; u *= 1.1) {
            const double f = drag(fly.shape, Speed{u}, w).si;
            CHECK(f > before);
            before = f;
            const auto more = [&](TippetWay way, double& last) {
                const double now = tippet_drag(tippet, way, Speed{u}, w).si;
                CHECK(now > last);
                last = now;
            };
            more(TippetWay::axial, axial);
            more(TippetWay::bowed, bowed);
            more(TippetWay::across, across);
        }
    }
}

TEST_CASE("a fly sinks faster with mass and warmth, slower with tippet, fibres and volume") {
    const ExampleFly fly = example_fly(45.0);
    const Water w = water(10.0);
    const double now = speed_of(fly, w);
    ExampleFly heavier = fly;
    heavier.mass = 1.1 * fly.mass;
    CHECK(speed_of(heavier, w) > now);
    CHECK(speed_of(fly, water(20.0)) > now);
    ExampleFly larger = fly;
    larger.volume = 1.5 * fly.volume;
    CHECK(speed_of(larger, w) < now);
    CHECK(speed_of(example_fly(60.0), w) < now);
    double before = now;
    for (const double length : {0.1, 0.5, 1.0, 3.0}) {
        for (const TippetWay way : {TippetWay::axial}) {
            const double u = speed_of(fly, w, {millimetres(0.15), metres(length)}, way);
            CHECK(u < before);
            before = u;
        }
    }
    const Tippet one{millimetres(0.15), metres(1.0)};
    CHECK(speed_of(fly, w, one, TippetWay::across) < speed_of(fly, w, one, TippetWay::bowed));
    CHECK(speed_of(fly, w, one, TippetWay::bowed) < speed_of(fly, w, one, TippetWay::axial));
    // No hackle, no tippet: nothing is left of them.
    CHECK(speed_of(fly, w, {millimetres(0.15), Length{}}, TippetWay::across) == now);
}

TEST_CASE(
    "a fly as many times as large in a fluid as many times as thin has the same drag numbers") {
    // A law of similarity: lengths by k, viscosity by k^1.5, gravity unchanged: Reynolds and Froude
    // numbers stay, speeds go by sqrt(k).
    // Tolerance  1e-8, twice the solver's
    ExampleFly fly = example_fly(45.0);
    const Water w = water(10.0);
    const double now = speed_of(fly, w);
    const double k = 1.7;
    Water thin = w;
    thin.viscosity.si *= std::pow(k, 1.5);
    fly.mass = k * k * k * fly.mass;
    fly.volume = k * k * k * fly.volume;
    fly.shape.bead = k * fly.shape.bead;
    fly.shape.skin_length = k * fly.shape.skin_length;
    fly.shape.skin.si *= k * k;
    for (WetFibres& f : fly.shape.fibres) {
        f.diameter = k * f.diameter;
        f.length = k * f.length;
    }
    CHECK(within_share(speed_of(fly, thin), std::sqrt(k) * now, 1e-8));
}

TEST_CASE("a hackle never drags more than the disc that it fills") {
    ExampleFly fly = example_fly(90.0);
    WetFibres& hackle = fly.shape.fibres.back();
    hackle.count = 4000.0;
    const Water w = water(10.0);
    hackle.most = {};
    const double free = drag(fly.shape, Speed{0.5}, w).si;
    hackle.most = square_millimetres(std::numbers::pi * 36.0);
    const double capped = drag(fly.shape, Speed{0.5}, w).si;
    CHECK(capped < free);
    fly.shape.fibres.pop_back();
    const double bare = drag(fly.shape, Speed{0.5}, w).si;
    // 1.15 q A, from memory as the source of the cap says.
    const double disc = 1.15 * 0.5 * w.density.si * 0.25 * std::numbers::pi * 36e-6;
    CHECK(within_share(capped - bare, disc, 1e-9));
}
