// Strands against tables: thread by denier, wire by the thousandth of an inch, densities.

#include "core/material/material.h"
#include "tests/support/close.h"
#include "tests/support/material_builder.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Stuff thread(double den, Substance substance, bool flat) {
    MaterialFacts facts = facts_of(MaterialKind::thread, substance);
    facts.linear = denier(den);
    facts.flat = flat;
    return complete(facts);
}

Stuff wire(MaterialKind kind, Length diameter, Substance substance) {
    MaterialFacts facts = facts_of(kind, substance);
    facts.diameter = diameter;
    return complete(facts);
}

double mg_per_cm(const Stuff& s) { return in_milligrams(s.linear.value * millimetres(10.0)); }

} // namespace

TEST_CASE("round threads are as thick as denier and density make them") {
    // Source     sqrt(4 den / (9000 rho 0.75 pi)), computed apart from this code: 70 den nylon
    //            0.1076 mm, 140 den 0.1522, 50 den gel-spun 0.0986
    // Tolerance  half of the last digit; the solid area of 70 den nylon is 0.006823 mm2
    CHECK(within(in_millimetres(thread(70, Substance::nylon, false).width.value), 0.1076, 6e-5));
    CHECK(within(in_millimetres(thread(140, Substance::nylon, false).width.value), 0.1522, 6e-5));
    CHECK(within(in_millimetres(thread(50, Substance::gel_spun, false).width.value), 0.0986, 6e-5));
    CHECK(
        within(in_millimetres(thread(72, Substance::polyester, false).width.value), 0.0988, 6e-5));
    CHECK(within(thread(70, Substance::nylon, false).solid_area.value.si * 1e6, 0.006823, 6e-7));
    CHECK(within(in_tex(thread(70, Substance::nylon, false).linear.value), 7.77778, 1e-5));
}

TEST_CASE("flat threads lie six times as wide as thick") {
    // Source     a table computed apart from this code, width by thickness in mm at 6:1
    // Tolerance  half of the last digit printed; polyester there is 1.38, here 1.39 g/cm3
    struct Row {
        double den;
        Substance substance;
        double width, height;
    };
    const Row rows[] = {
        {30, Substance::gel_spun, 0.17, 0.028},  {50, Substance::gel_spun, 0.21, 0.036},
        {70, Substance::nylon, 0.23, 0.039},     {72, Substance::polyester, 0.22, 0.036},
        {100, Substance::gel_spun, 0.30, 0.050}, {135, Substance::polyester, 0.29, 0.049},
        {140, Substance::nylon, 0.33, 0.055},    {210, Substance::nylon, 0.40, 0.067},
        {280, Substance::nylon, 0.47, 0.078},
    };
    for (const Row& r : rows) {
        CAPTURE(r.den);
        const Stuff s = thread(r.den, r.substance, true);
        CHECK(within(in_millimetres(s.width.value), r.width, 8e-3));
        CHECK(within(in_millimetres(s.height.value), r.height, 8e-4));
    }
}

TEST_CASE("a flat 70 den nylon is about two layers of its 24 filaments") {
    // Source     w = nf df / 2, t = df (1 + sqrt(3) / 2) with df = sqrt(4 As / (24 pi)): 0.2283 by
    //            0.0355 mm
    // Tolerance  12 %: six to one is a rule of thumb
    const Stuff s = thread(70, Substance::nylon, true);
    CHECK(within_share(in_millimetres(s.width.value), 0.2283, 0.12));
    CHECK(within_share(in_millimetres(s.height.value), 0.0355, 0.12));
}

TEST_CASE("published breaking loads lie in the interval of their fibre") {
    // Source     strengths printed for threads of one class page, in ounces and pounds: 72 den
    //            polyester 16 oz, 135 den 29 oz, 215 den 2.01 lb; 50 and 100 den gel-spun 4 and
    //            8 lb; 200 den aramid 8.4 lb
    // Tolerance  one ounce, as printed
    const double ounce = 0.278013851; // N: 28.349523125 g at 9.80665 m/s2
    const auto holds = [&](double den, Substance substance, double ounces_) {
        const Estimate<Force> f = thread(den, substance, false).strength;
        CAPTURE(den);
        CHECK(in_newtons(f.low) <= (ounces_ + 1.0) * ounce);
        CHECK((ounces_ - 1.0) * ounce <= in_newtons(f.high));
    };
    holds(72, Substance::polyester, 16.0);
    holds(135, Substance::polyester, 29.0);
    holds(215, Substance::polyester, 32.2);
    holds(50, Substance::gel_spun, 64.0);
    holds(100, Substance::gel_spun, 128.0);
    holds(200, Substance::aramid, 134.4);
}

TEST_CASE("tying nylon breaks at 5 to 6.5 grams per denier, gel-spun at about 32") {
    // Source     1 gf/den = 0.08825985 N/tex; 70 den at 6 gf/den 4.1 N, 50 den at 32 gf/den 15.7 N
    // Tolerance  half of the last digit printed
    CHECK(within(in_newtons(thread(70, Substance::nylon, false).strength.value), 4.1, 0.06));
    CHECK(within(in_newtons(thread(50, Substance::gel_spun, false).strength.value), 15.7, 0.06));
}

TEST_CASE("weighting wire weighs what section times density gives") {
    // Source     pi / 4 d^2 rho with 11.34 (lead) and 7.3 (tin), printed in mg per cm
    // Tolerance  half of the last digit; tin here is 7.29
    struct Row {
        double inch, lead, tin;
    };
    const Row rows[] = {{.010, 5.7, 3.7},   {.015, 12.9, 8.3},  {.020, 23.0, 14.8},
                        {.025, 35.9, 23.1}, {.030, 51.7, 33.3}, {.035, 70.4, 45.3}};
    for (const Row& r : rows) {
        CAPTURE(r.inch);
        const Length d = inches(r.inch);
        CHECK(within(mg_per_cm(wire(MaterialKind::ballast, d, Substance::lead)), r.lead, 0.06));
        CHECK(within(mg_per_cm(wire(MaterialKind::ballast, d, Substance::tin)), r.tin, 0.12));
    }
}

TEST_CASE("lead-free wire has 64 per cent of lead's mass in the same space") {
    // Source     published for tin-based wire; the ratio of the densities
    // Tolerance  half of the last digit
    const double ratio =
        substance_row(Substance::tin).density.value / substance_row(Substance::lead).density.value;
    CHECK(within(ratio, 0.64, 0.005));
}

TEST_CASE("copper wire by gauge weighs what the wire tables print") {
    // Source     ASTM B258 d = 0.127 mm 92^((36 - n) / 39); copper 8.96: 34 AWG 181 mg/m, 36 AWG
    //            114, 38 AWG 71, 32 AWG 287
    // Tolerance  half a milligram of rounding
    const std::pair<int, double> rows[] = {{32, 287}, {34, 181}, {36, 114}, {38, 71}};
    for (const auto& [gauge, mg_per_m] : rows) {
        CAPTURE(gauge);
        const Length d = millimetres(0.127 * std::pow(92.0, (36.0 - gauge) / 39.0));
        CHECK(within(100.0 * mg_per_cm(wire(MaterialKind::wire, d, Substance::copper)), mg_per_m,
                     0.6));
    }
}

TEST_CASE("a wound body of brassie wire on a size 14 hook weighs about 0.02 g") {
    // Source     one published weighing, "about 0.02 g"; 6 mm of body on wire of 0.49 mm
    // Tolerance  the weighing was to 0.01 g
    const Length d = wire_diameter_word("brassie")->value;
    const Stuff s = wire(MaterialKind::wire, d, Substance::copper);
    const double turns = 6.0 / in_millimetres(d);
    const double per_turn = std::numbers::pi * (0.49e-3 + d.si);
    const double g = in_grams(s.linear.value * metres(turns * per_turn));
    CHECK(within(g, 0.02, 0.005));
}

TEST_CASE("usual wire, bead and ballast are what charts give for the hook") {
    // Source     common practice, no source: wire small on 14, brassie on 12 (medium from 10 on);
    //            ballast .015 in on 14, .020 on 12 and 10; beads 2.0, 2.8 and 3.3 mm on 18, 14, 12
    // Tolerance  the interval of the usual value itself
    const auto holds = [](const Estimate<Length>& e, double mm) {
        CAPTURE(mm);
        CHECK(e.low <= millimetres(mm));
        CHECK(millimetres(mm) <= e.high);
    };
    holds(complete(facts_of(MaterialKind::wire), 4.3).width, 0.13);
    holds(complete(facts_of(MaterialKind::wire), 5.0).width, 0.185);
    holds(complete(facts_of(MaterialKind::ballast), 4.3).width, 0.381);
    holds(complete(facts_of(MaterialKind::ballast), 5.0).width, 0.508);
    holds(complete(facts_of(MaterialKind::bead), 3.1).bead.diameter, 2.0);
    holds(complete(facts_of(MaterialKind::bead), 4.3).bead.diameter, 2.8);
    holds(complete(facts_of(MaterialKind::bead), 5.0).bead.diameter, 3.3);
    holds(complete(facts_of(MaterialKind::hackle), 4.3).barb_length, 6.5); // 1.5 gape, published
}

TEST_CASE("densities are those of handbooks and of the periodic table") {
    // Source     in g/cm3: elements, a library of the periodic table (lead 11.35, tin 7.31, copper
    //            8.96); brass C36000 0.307 lb/in3; fibres Morton & Hearle, tables 5.1 and 5.2
    // Tolerance  0.3 %: rooms and purities
    const auto g_cm3 = [](Substance s) { return in_grams_per_cm3(substance_row(s).density.value); };
    CHECK(within_share(g_cm3(Substance::lead), 11.35, 3e-3));
    CHECK(within_share(g_cm3(Substance::tin), 7.31, 3e-3));
    CHECK(within_share(g_cm3(Substance::copper), 8.96, 3e-3));
    CHECK(within_share(g_cm3(Substance::bismuth), 9.78, 3e-3));
    CHECK(within_share(g_cm3(Substance::brass), 0.307 * 453.59237 / 16.387064, 3e-3));
    CHECK(within_share(g_cm3(Substance::steel), 7.85, 3e-3));
    CHECK(within_share(g_cm3(Substance::nylon), 1.14, 3e-3));
    CHECK(within_share(g_cm3(Substance::polyester), 1.39, 3e-3));
    CHECK(within_share(g_cm3(Substance::gel_spun), 0.97, 3e-3));
    CHECK(within_share(g_cm3(Substance::silk), 1.34, 3e-3));
    CHECK(within_share(g_cm3(Substance::keratin), 1.31, 3e-3));
    CHECK(within_share(g_cm3(Substance::cotton), 1.55, 3e-3));
    CHECK(within_share(g_cm3(Substance::rayon), 1.52, 3e-3));
    CHECK(within_share(g_cm3(Substance::polypropylene), 0.91, 3e-3));
    CHECK(within_share(g_cm3(Substance::acrylic), 1.19, 3e-3));
    CHECK(within_share(g_cm3(Substance::vinyl), 1.40, 3e-3));
    CHECK(within_share(g_cm3(Substance::aramid), 1.44, 3e-3));
}

TEST_CASE("lead, tin and copper have the densities of their crystals") {
    // Source     atoms per cell, atomic mass and lattice constants (from memory): Pb fcc 4.9502 A,
    //            Cu fcc 3.6149 A, beta-Sn 4 atoms in 5.8316^2 x 3.1815 A; u = 1.66053907e-24 g
    // Tolerance  0.3 %: thermal expansion and rounding
    const double u = 1.66053907e-24, cubic = 1e-24;
    const auto g_cm3 = [](Substance s) { return in_grams_per_cm3(substance_row(s).density.value); };
    CHECK(
        within_share(g_cm3(Substance::lead), 4 * 207.2 * u / (std::pow(4.9502, 3) * cubic), 3e-3));
    CHECK(within_share(g_cm3(Substance::copper), 4 * 63.546 * u / (std::pow(3.6149, 3) * cubic),
                       3e-3));
    CHECK(within_share(g_cm3(Substance::tin), 4 * 118.710 * u / (5.8316 * 5.8316 * 3.1815 * cubic),
                       3e-3));
}

TEST_CASE("every density and strength names where it is from") {
    for (int i = 1; i <= static_cast<int>(Substance::epoxy); ++i) {
        const SubstanceRow& row = substance_row(static_cast<Substance>(i));
        CAPTURE(row.word);
        CHECK_FALSE(row.density_source.empty());
        CHECK(row.tenacity_source.empty() == (row.tenacity.value.si == 0.0)); // exact: none
        CHECK(row.density.low <= row.density.value);
        CHECK(row.density.value <= row.density.high);
    }
    // Tungsten beads are sintered alloy: ASTM B777 classes 1 to 4, not the element's 19.3.
    CHECK(in_grams_per_cm3(substance_row(Substance::tungsten).density.high) < 19.0);
}
