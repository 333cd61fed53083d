#include "core/water/balance.h"

#include "tests/support/close.h"
#include "tests/support/dice.h"
#include "tests/support/water_builder.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

std::vector<Lump> some_lumps(test::Dice& dice) {
    std::vector<Lump> lumps;
    for (int i = 0; i < 8; ++i) {
        Lump l;
        l.at = {dice.between(-2e-3, 12e-3), dice.between(-4e-3, 2e-3)};
        l.volume = cubic_millimetres(dice.between(0.5, 10.0));
        l.mass = l.volume * grams_per_cm3(dice.between(1.1, 18.0));
        lumps.push_back(l);
    }
    return lumps;
}

FlyBody body_of(std::vector<Lump> lumps, const glm::dvec2& eye) {
    FlyBody body;
    Portion p;
    p.material = 0;
    for (const Lump& l : lumps) p.mass.value += l.mass;
    p.mass = exactly(p.mass.value);
    body.portions = {p};
    body.lumps = std::move(lumps);
    body.eye = eye;
    return body;
}

} // namespace

TEST_CASE("a part as heavy as water changes nothing about the weight's centre") {
    // Tolerance  1e-9 m: sums of a few numbers
    test::Dice dice{3};
    const Water w = water(10.0);
    for (int i = 0; i < 200; ++i) {
        std::vector<Lump> lumps = some_lumps(dice);
        const glm::dvec2 before = centres_of(lumps, w).of_weight;
        Lump wet;
        wet.at = {dice.between(-0.01, 0.02), dice.between(-0.01, 0.01)};
        wet.volume = cubic_millimetres(dice.between(1.0, 50.0));
        wet.mass = wet.volume * w.density;
        lumps.push_back(wet);
        const glm::dvec2 after = centres_of(lumps, w).of_weight;
        CHECK(within(after.x, before.x, 1e-9));
        CHECK(within(after.y, before.y, 1e-9));
    }
}

TEST_CASE("a fly mirrored in its shank rides the other way, as far") {
    test::Dice dice{4};
    const Water w = water(10.0);
    for (int i = 0; i < 200; ++i) {
        std::vector<Lump> lumps = some_lumps(dice);
        const glm::dvec2 eye{-1e-3, dice.between(-2e-3, 1e-3)};
        const glm::dvec2 trail{6e-3, dice.between(-1e-3, 1e-3)};
        const auto flip = [](const glm::dvec2& p) { return glm::dvec2{p.x, -p.y}; };
        std::vector<Lump> mirrored = lumps;
        for (Lump& l : mirrored) l.at = flip(l.at);
        const glm::dvec2 a = centres_of(lumps, w).of_weight;
        const glm::dvec2 b = centres_of(mirrored, w).of_weight;
        // Tolerance: rounding of sums in m.
        CHECK(within(roll_offset(eye, trail, a), -roll_offset(flip(eye), flip(trail), b), 1e-15));
    }
}

TEST_CASE(
    "weight away from the point rides point up, weight towards it point down, none undecided") {
    const Water w = water(10.0);
    const auto verdict = [&](double height_mm) {
        Lump bead;
        bead.at = {3e-3, height_mm * 1e-3};
        bead.volume = cubic_millimetres(10.0);
        bead.mass = milligrams(170.0);
        return ride(body_of({bead}, {0.0, 0.0}), {8e-3, 0.0}, w, millimetres(0.8),
                    grams_per_cm3(11.34));
    };
    CHECK(verdict(1.0).verdict == Ride::point_up);
    CHECK(verdict(-1.0).verdict == Ride::point_down);
    CHECK(verdict(0.1).verdict == Ride::undecided);
    CHECK(verdict(-0.19).verdict == Ride::undecided);
    CHECK(within(in_millimetres(verdict(1.0).delta), -1.0, 1e-9));
}

TEST_CASE("the ballast that would turn a fly over does turn it over, and half of it does not") {
    const Water w = water(10.0);
    test::Dice dice{5};
    int tried = 0;
    for (int i = 0; i < 100; ++i) {
        const std::vector<Lump> lumps = some_lumps(dice);
        const FlyBody body = body_of(lumps, {-1e-3, 0.0});
        const glm::dvec2 trail{9e-3, 0.0}; // so that both lines are one
        const RideCheck check = ride(body, trail, w, millimetres(0.6), grams_per_cm3(11.34));
        if (!check.up.ballast) continue;
        ++tried;
        const auto with = [&](double share) {
            std::vector<Lump> more = lumps;
            Lump lead;
            lead.at = {centres_of(lumps, w).of_weight.x, 0.6e-3};
            lead.mass = share * *check.up.ballast;
            lead.volume = lead.mass / grams_per_cm3(11.34);
            more.push_back(lead);
            return ride(body_of(more, {-1e-3, 0.0}), trail, w, millimetres(0.6),
                        grams_per_cm3(11.34))
                .delta.si;
        };
        // Tolerance: rounding of sums in m.
        CHECK(within(with(1.0), -least_offset.si, 1e-12));
        CHECK(with(0.5) > -least_offset.si);
    }
    CHECK(tried > 20);
}

TEST_CASE("a fly hangs the same whatever pulls it down, and a neutral one is said to be") {
    test::Dice dice{6};
    const Water w = water(10.0);
    const std::vector<Lump> lumps = some_lumps(dice);
    std::vector<Lump> doubled = lumps; // twice the weight everywhere: as twice the gravity
    for (Lump& l : doubled) {
        l.mass = 2.0 * l.mass;
        l.volume = 2.0 * l.volume;
    }
    const glm::dvec2 eye{-1e-3, 1e-3};
    CHECK(within(hang_angle(eye, centres_of(lumps, w)).si,
                 hang_angle(eye, centres_of(doubled, w)).si, 1e-12));
    Lump wet;
    wet.volume = cubic_millimetres(5.0);
    wet.mass = wet.volume * w.density;
    CHECK(centres_of({wet}, w).neutral);
    CHECK(
        ride(body_of({wet}, eye), {8e-3, 0.0}, w, millimetres(0.6), grams_per_cm3(11.34)).verdict ==
        Ride::undecided);
}
