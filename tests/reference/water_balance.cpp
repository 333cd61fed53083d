// A jig fly from simple pieces: closed forms, voxels and the lowest energy, by an independent script.

#include "core/material/bead.h"
#include "core/water/balance.h"
#include "tests/support/bead_builder.h"
#include "tests/support/close.h"
#include "tests/support/water_builder.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using namespace wrapwright::test;
using std::numbers::pi;

namespace {

// The script measures y towards the point; here y runs away from it.
constexpr double leg = 2.2, shank = 9.0, radius = 2.2, spear = 5.0, wire = 0.55;
const double rise = leg * std::sin(pi / 3.0);
const glm::dvec2 jig_eye{-leg * 0.5 * 1e-3, -rise * 1e-3};

void add(std::vector<Lump>& lumps, double mm3, double density, double x, double towards_point) {
    Lump l;
    l.at = {x * 1e-3, -towards_point * 1e-3};
    l.volume = cubic_millimetres(mm3);
    l.mass = l.volume * grams_per_cm3(density);
    lumps.push_back(l);
}

void add_wire(std::vector<Lump>& lumps, double length, double x, double y) {
    add(lumps, pi / 4.0 * wire * wire * length, 7.85, x, y);
}

void add_bend(std::vector<Lump>& lumps) {
    add_wire(lumps, pi * radius, shank + 2.0 * radius / pi, radius);
    add_wire(lumps, spear, shank - 0.5 * spear, 2.0 * radius);
}

double bead_mm3() { return in_cubic_millimetres(bead_volume(drilled(2.8, 1.0))); }

void add_body(std::vector<Lump>& lumps) {
    add(lumps, pi / 4.0 * (1.6 * 1.6 - wire * wire) * 7.0, 1.20, 5.0, 0.0);
}

std::vector<Lump> jig(bool bead) {
    std::vector<Lump> lumps;
    add_wire(lumps, leg, -0.25 * leg, 0.5 * rise);
    add_wire(lumps, shank, 0.5 * shank, 0.0);
    add_bend(lumps);
    if (bead) add(lumps, bead_mm3(), 17.5, -0.25, 0.43);
    add_body(lumps);
    return lumps;
}

Water script_water() { return fluid(999.7, 1.3059e-3); }

} // namespace

TEST_CASE("a jig fly has the centres that closed forms and voxels give") {
    // Source     the script: closed form, and voxels of 0.04 mm with overlaps taken out
    // Tolerance  half the last digit; 0.02 mm and 1 % for the voxels
    const Centres c = centres_of(jig(true), script_water());
    CHECK(within(in_grams(c.mass), 0.22191, 6e-6));
    CHECK(within(in_cubic_millimetres(c.volume), 27.2688, 6e-5));
    CHECK(within(c.of_mass.x * 1e3, 1.3584, 6e-5));
    CHECK(within(-c.of_mass.y * 1e3, 0.6479, 6e-5));
    CHECK(within(c.of_volume.x * 1e3, 3.4416, 6e-5));
    CHECK(within(-c.of_volume.y * 1e3, 0.4901, 6e-5));
    CHECK(within(c.of_weight.x * 1e3, 1.0666, 6e-5));
    CHECK(within(-c.of_weight.y * 1e3, 0.6700, 6e-5));
    CHECK(within_share(in_grams(c.mass), 0.22044, 0.01));
    CHECK(within(c.of_weight.x * 1e3, 1.078, 0.02));
    CHECK(within(-c.of_weight.y * 1e3, 0.679, 0.02));
}

TEST_CASE("it hangs where the potential energy is least") {
    // Source     the script: 29.688 degrees by closed form and by scipy's minimum of the energy
    // Tolerance  half the last digit
    const Centres c = centres_of(jig(true), script_water());
    CHECK(within(in_degrees(hang_angle(jig_eye, c)), 29.688, 6e-4));
}

TEST_CASE("its weight lies on the far side of both lines, and without a bead on neither for sure") {
    // Tolerance  half the last digit
    const glm::dvec2 along = jig_eye + glm::dvec2{1.0, 0.0};
    const glm::dvec2 trail{6.0e-3, -0.6e-3};
    const auto offsets = [&](bool bead) {
        const glm::dvec2 w = centres_of(jig(bead), script_water()).of_weight;
        return std::pair{roll_offset(jig_eye, along, w) * 1e3,
                         roll_offset(jig_eye, trail, w) * 1e3};
    };
    const auto [parallel, drawn] = offsets(true);
    CHECK(within(parallel, -1.2352, 6e-5));
    CHECK(within(drawn, -0.8231, 6e-5));
    const auto [bare_parallel, bare_drawn] = offsets(false);
    CHECK(within(bare_parallel, -0.3102, 6e-5));
    CHECK(within(bare_drawn, 1.0042, 6e-5));

    const auto ride_of = [&](bool bead) {
        FlyBody body;
        body.lumps = jig(bead);
        body.portions.resize(1);
        body.portions[0].material = 0;
        body.eye = jig_eye;
        return ride(body, trail, script_water(), millimetres(0.6), grams_per_cm3(11.34));
    };
    CHECK(ride_of(true).verdict == Ride::point_up);
    CHECK(within(ride_of(true).weight.si * 1e3, 1.9089, 6e-5));
    // Righting moment by the line through what trails: 1.571 uN m.
    CHECK(within(ride_of(true).weight.si * -ride_of(true).through_drag.si * 1e6, 1.571, 6e-4));
    CHECK(ride_of(false).verdict == Ride::undecided);
}

TEST_CASE(
    "the same bead on a straight eye rides point down, and lead on the back makes it neutral") {
    // Source     the script: delta +0.3142 mm; 0.1107 g of lead 0.6 mm off the axis
    // Tolerance  half the last digit
    std::vector<Lump> lumps;
    add_wire(lumps, shank + 1.0, 0.5 * (shank - 1.0), 0.0);
    add_bend(lumps);
    add(lumps, bead_mm3(), 17.5, 0.6, 0.0);
    add_body(lumps);
    const glm::dvec2 eye{-1e-3, 0.0}, along{1.0, 0.0};
    const auto delta = [&](double grams_of_lead) {
        std::vector<Lump> with = lumps;
        add(with, grams_of_lead / 11.34e-3, 11.34, 3.0, -0.6);
        return roll_offset(eye, along, centres_of(with, script_water()).of_weight) * 1e3;
    };
    CHECK(within(delta(0.0), 0.3142, 6e-5));
    CHECK(within(delta(0.1107), 0.0, 2e-4)); // 0.00005 g of the last digit moves it by 1.4e-4 mm
}

TEST_CASE("the bead that a raised eye needs grows without end as the eye comes down to it") {
    // Source     the script, bead at 0.2 mm, eye at 0, 0.5, 1.0, 1.5, 1.9 mm: impossible, 0.1464,
    //            0.0298, 0.0029 g of weight in water, any
    // Tolerance  half the last digit
    const std::vector<Lump> others = jig(false);
    const auto needed = [&](double eye_mm) {
        double sum = 0.0;
        for (const Lump& l : others) {
            sum += (l.mass.si - 999.7 * l.volume.si) * (-l.at.y - eye_mm * 1e-3);
        }
        return bead_needed(sum, millimetres(eye_mm), millimetres(0.2));
    };
    CHECK_FALSE(needed(0.0).has_value());
    CHECK(within(in_grams(needed(0.5).value()), 0.1464, 6e-5));
    CHECK(within(in_grams(needed(1.0).value()), 0.0298, 6e-5));
    CHECK(within(in_grams(needed(1.5).value()), 0.0029, 6e-5));
    CHECK(needed(1.9).value().si == 0.0);
}
