#pragma once
// Water and simple bodies for the tests of core/water.

#include "core/water/sink.h"

#include <numbers>

namespace wrapwright::test {

/// Water as the check values have it: of that temperature, fresh.
inline Water water(double celsius_degrees) {
    const Result<Water> made = water_at(celsius(celsius_degrees));
    WW_ASSERT(made.ok());
    return made.value();
}

/// Any other fluid.
inline Water fluid(double density, double viscosity) {
    Water w;
    w.temperature = celsius(20.0);
    w.density = {density};
    w.viscosity = {viscosity};
    w.tension = {0.0727};
    return w;
}

inline WetShape ball(double diameter_m) {
    WetShape shape;
    shape.bead = {diameter_m};
    return shape;
}

/// The speed of a falling ball; `pull` times the usual gravity.
inline double ball_speed(double diameter_m, double density, const Water& in, double pull = 1.0) {
    const double volume = std::numbers::pi / 6.0 * diameter_m * diameter_m * diameter_m;
    const Force weight{(density - in.density.si) * volume * free_fall * pull};
    return terminal_speed(ball(diameter_m), weight, in).si;
}

/// The example fly of the check values: bead 2.8/1.0 mm, wire 0.60 x 18 mm of which 5 mm lie across
/// the flow, body 1.4 x 10 mm, 20 barbs of 0.05 x 6 mm at an angle to the flow.
struct ExampleFly {
    Mass mass{};
    Volume volume{};
    WetShape shape{};
};

inline ExampleFly example_fly(double hackle_degrees) {
    using std::numbers::pi;
    ExampleFly fly;
    const auto add = [&](double mm3, double density) {
        fly.volume += cubic_millimetres(mm3);
        fly.mass += cubic_millimetres(mm3) * grams_per_cm3(density);
    };
    const double h = std::sqrt(2.8 * 2.8 - 1.0);
    add(pi / 6.0 * h * h * h, 17.5);
    add(pi * 0.09 * 18.0, 7.85);
    add(70.0 * 850.0 / 9e6 / 1.14 * 1e3, 1.14);
    add(pi * 0.0025 * 25.0, 8.96);
    add(20.0 * pi / 4.0 * 0.0025 * 6.0, 1.31);
    fly.shape.bead = millimetres(2.8);
    fly.shape.skin_length = millimetres(10.0);
    fly.shape.skin = square_millimetres(pi * 1.4 * 10.0);
    WetFibres bend;
    bend.diameter = millimetres(0.60);
    bend.length = millimetres(5.0);
    fly.shape.fibres.push_back(bend);
    if (hackle_degrees > 0.0) {
        WetFibres hackle;
        hackle.count = 20.0;
        hackle.diameter = millimetres(0.05);
        hackle.length = millimetres(6.0);
        hackle.across = std::sin(degrees(hackle_degrees).si);
        fly.shape.fibres.push_back(hackle);
    }
    return fly;
}

} // namespace wrapwright::test
