// Drag laws, and settling speeds that were published.

#include "core/water/drag_law.h"
#include "tests/support/close.h"
#include "tests/support/water_builder.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("the sphere's law is Brown and Lawler's and lies near the standard curve") {
    // Source     independent computation of Brown & Lawler 2003 and of the standard drag curve of
    //            Clift, Grace and Weber, the same to 1e4 by a library for chemical engineering
    // Tolerance  half the last digit; 7.1 %, the law's own distance from that curve
    constexpr double rows[][3] = {
        {0.1, 247.504, 244.257}, {1, 27.6000, 27.156},   {10, 4.1275, 4.2584},
        {100, 1.0731, 1.0870},   {1000, 0.4634, 0.4711}, {1e4, 0.4106, 0.4052},
        {1e5, 0.4661, 0.5018},
    };
    for (const auto& [re, law, curve] : rows) {
        CAPTURE(re);
        CHECK(within(sphere_drag(re), law, re < 1.0 ? 6e-4 : 6e-5));
        CHECK(within_share(sphere_drag(re), curve, 0.0715));
    }
}

TEST_CASE("the sphere's law passes through measured drag with the scatter that is published") {
    // Source     a university page's table of measured spheres, 21 points: rms 5.5 %, most 15.2 %
    // Tolerance  0.05 of a per cent, the rounding of the two figures
    constexpr double re[] = {.05875, .1585, .4786, 3.020, 7.015, 15.49, 57.54,
                             144.5,  264.9, 512.9, 1000., 1862., 3162., 4764.,
                             8375.,  15560, 26480, 34670, 58880, 1e5,   170200};
    constexpr double cd[] = {492.0, 169.8, 58.88, 10.86, 5.623, 3.388, 1.479,
                             .9204, .7194, .5623, .4786, .4365, .4074, .3890,
                             .3981, .4395, .4571, .4775, .4732, .4624, .4395};
    double squares = 0.0, most = 0.0;
    for (std::size_t i = 0; i < std::size(re); ++i) {
        const double off = sphere_drag(re[i]) / cd[i] - 1.0;
        squares += off * off;
        most = std::max(most, std::abs(off));
    }
    CHECK(within(std::sqrt(squares / std::size(re)), 0.055, 5e-4));
    CHECK(within(most, 0.152, 5e-4));
}

TEST_CASE("the cylinder's law follows computed flow below 40 and Cheng above 100") {
    // Source     own steady solutions of the Navier-Stokes equations (streamfunction, Newton,
    //            Richardson), computed apart; Fornberg 1980 has 2.000 and 1.498 at 20 and 40,
    //            Takami & Keller 1969 10.28, 2.754 and 2.003 at 1, 10, 20 (both from memory)
    // Tolerance  0.36 %, how well the law was fitted; 1 % against the literature
    constexpr double computed[][2] = {{0.1, 55.70}, {0.3, 24.05}, {0.5, 16.62},
                                      {1, 10.34},   {2, 6.656},   {5, 3.933},
                                      {10, 2.756},  {20, 2.003},  {40, 1.501}};
    for (const auto& [re, cd] : computed) {
        CAPTURE(re);
        CHECK(within_share(cylinder_drag(re), cd, 0.0037));
    }
    constexpr double printed[][2] = {
        {20, 2.000}, {40, 1.498}, {1, 10.28}, {10, 2.754}, {20, 2.003}};
    for (const auto& [re, cd] : printed) CHECK(within_share(cylinder_drag(re), cd, 0.01));
    // The same law in another program, half the last digit.
    constexpr double law[][2] = {{0.05, 97.069}, {0.7, 13.150},  {3, 5.2458},
                                 {15, 2.2699},   {60, 1.4239},   {100, 1.3285},
                                 {300, 1.1879},  {1000, 0.9842}, {1e4, 1.0879}};
    for (const auto& [re, cd] : law) {
        CAPTURE(re);
        CHECK(within(cylinder_drag(re), cd, cd > 10.0 ? 6e-4 : 6e-5));
    }
}

TEST_CASE("a body as round as a sphere drags 4 to 5 per cent more by the law for odd shapes") {
    // Source     Haider & Levenspiel 1989 as computed apart: 28.4699 at 1, 0.4839 at 1000
    // Tolerance  half the last digit
    CHECK(within(irregular_drag(1.0, 1.0), 28.4699, 6e-5));
    CHECK(within(irregular_drag(1000.0, 1.0), 0.4839, 6e-5));
    CHECK(irregular_drag(300.0, 0.6) > irregular_drag(300.0, 0.8));
}

TEST_CASE("settling speeds that were published are found again") {
    // Tolerance  each with its reason: the sources used other drag laws, which differ from this one
    //            by up to 3.5 % in speed
    constexpr double lb = 0.45359237, ft = 0.3048;
    // CACHE problem set: coal 0.208 mm, 1800 kg/m3 in water of 994.6 kg/m3 and 0.8931 mPa s; and
    // at 30 times gravity (from memory).
    CHECK(within_share(ball_speed(0.208e-3, 1800.0, fluid(994.6, 8.931e-4)), 0.0157816, 0.012));
    CHECK(within_share(ball_speed(0.208e-3, 1800.0, fluid(994.6, 8.931e-4), 30.0), 0.20602, 0.035));
    // GPSA Engineering Data Book, 13th edition, example 7-1: 0.46 ft/s, printed to 2 digits.
    const double gas =
        ball_speed(150e-6, 31.2 * lb / (ft * ft * ft), fluid(2.07 * lb / (ft * ft * ft), 1.2e-5));
    CHECK(within(gas / ft, 0.46, 5e-3));
    // A tutorial: glass 2.6 in water 0.9966 and 0.982 mPa s falls 20 mm/s at 174.69 um.
    CHECK(within_share(ball_speed(174.69e-6, 2600.0, fluid(996.6, 0.982e-3)), 0.020, 2e-3));
    // The same: 400 um, 1.03, in air of 35 C: 1.445 m/s.
    CHECK(within_share(ball_speed(400e-6, 1030.0, fluid(1.1455, 0.026e-3)), 1.445, 0.01));
    // The same: a steel ball of 2.5 mm takes 10.3 s for 250 mm in oil: 0.9601 Pa s by Stokes, and
    // 0.9385 with the sphere's law, computed apart.
    CHECK(within_share(ball_speed(2.5e-3, 7800.0, fluid(959.0, 0.9385)), 0.25 / 10.3, 2e-4));
    CHECK(within_share(ball_speed(2.5e-3, 7800.0, fluid(959.0, 0.9601)), 0.25 / 10.3, 0.025));
    // Coulson & Richardson 2 (from memory): steel 0.40 mm in oil of 820 and 10 mPa s: 0.051 m/s.
    CHECK(within(ball_speed(0.40e-3, 7870.0, fluid(820.0, 0.010)), 0.051, 5e-4));
    // Rushton et al.: 70 um 2600 and 50 um 2800 in water: 4.06 and 2.453 mm/s, by Oseen.
    CHECK(within_share(ball_speed(70e-6, 2600.0, fluid(1000.0, 1e-3)), 0.00406, 0.012));
    CHECK(within_share(ball_speed(50e-6, 2800.0, fluid(1000.0, 1e-3)), 0.002453, 0.035));
}

TEST_CASE("bare beads sink at 10 degrees as another program and a library say") {
    // Source     independent computation with the same law, 4 digits; a library for chemical
    //            engineering with its own default law: 1.0012, 1.2777, 0.8409
    // Tolerance  half the last digit and the water's own 1e-6; 1 % between the two laws
    const Water w = fluid(999.70, 1.3059e-3);
    constexpr double rows[][3] = {{2.0e-3, 17500, 1.0105},
                                  {3.0e-3, 17500, 1.2842},
                                  {4.0e-3, 17500, 1.4876},
                                  {3.0e-3, 8490, 0.8488},
                                  {3.0e-3, 2500, 0.3459}};
    for (const auto& [d, density, speed] : rows) {
        CHECK(within(ball_speed(d, density, w), speed, 6e-5));
    }
    CHECK(within_share(ball_speed(2.0e-3, 17500, w), 1.0012, 0.01));
    CHECK(within_share(ball_speed(3.0e-3, 17500, w), 1.2777, 0.01));
    CHECK(within_share(ball_speed(3.0e-3, 8490, w), 0.8409, 0.01));
}

TEST_CASE("a bead that starts from rest takes the time and the way that a solved equation gives") {
    // Source     scipy's solve_ivp on the same equation of motion: 0.269 s, 219.8 mm, 130.0 mm behind
    //            for tungsten of 3 mm; 0.200 s, 109.0 mm, 63.6 mm for brass
    // Tolerance  half the last digit; 0.1 mm on the last, which was read off after 1.5 s
    const Water w = fluid(999.7, 1.3059e-3);
    constexpr double rows[][4] = {{17500, 0.269, 219.8, 130.0}, {8490, 0.200, 109.0, 63.6}};
    for (const auto& [density, time, way, behind] : rows) {
        const Volume v{std::numbers::pi / 6.0 * 27e-9};
        const StartUp s = start_up(ball(3e-3), v * Density{density}, v, w);
        CHECK(within(in_seconds(s.time), time, 6e-4));
        CHECK(within(in_millimetres(s.way), way, 0.06));
        CHECK(within(in_millimetres(s.behind), behind, 0.11));
    }
}
