#include "core/tally/tally.h"

#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using wrapwright::test::within;

namespace {

// Sums of a few short decimals: a difference beyond 1e-12 of the unit is no rounding.
constexpr double rounding = 1e-12;

PartTake take(int part, int material, int step, double count, double turns, double length_mm,
              double mass_mg, double doubt) {
    PartTake t;
    t.part = part;
    t.material = material;
    t.step = step;
    t.count = count;
    t.turns = turns;
    t.length = millimetres(length_mm);
    t.mass = about(milligrams(mass_mg), doubt);
    return t;
}

/// Materials 0 bead, 1 wire, 2 fibres, 3 fur.
Resolved stock(double bead_mm) {
    Resolved resolved;
    resolved.materials.resize(4);
    resolved.materials[0].kind = MaterialKind::bead;
    resolved.materials[0].bead.diameter = exactly(millimetres(bead_mm));
    resolved.materials[1].kind = MaterialKind::wire;
    resolved.materials[1].width = exactly(millimetres(0.13));
    resolved.materials[2].kind = MaterialKind::fibres;
    resolved.materials[3].kind = MaterialKind::dubbing;
    return resolved;
}

/// Parts 0 bead, 1 tail, 2 rib, 3 body; the rib is tied in before the tail is finished.
Tied fly(int size, double tail_mm) {
    Tied tied;
    tied.size = {size};
    tied.takes.push_back(take(none, none, none, 1.0, 0.0, 0.0, 30.0, 0.2));
    tied.takes.push_back(take(0, 0, 0, 1.0, 0.0, 0.0, 150.0, 0.1));
    tied.takes.push_back(take(2, 1, 1, 1.0, 0.0, 3.0, 0.4, 0.1));
    tied.takes.push_back(take(1, 2, 2, 8.0, 0.0, tail_mm, 0.3, 0.5));
    tied.takes.push_back(take(2, 1, 3, 0.0, 5.0, 15.0, 2.0, 0.1));
    tied.takes.push_back(take(3, 3, 3, 0.0, 9.0, 40.0, 6.0, 0.5));
    tied.mass = about(milligrams(188.7), 0.1);
    return tied;
}

} // namespace

TEST_CASE("a part is one line over all its steps, hooks first and then as the recipe lists them") {
    const auto lines = tally_by_part(stock(2.8), fly(14, 4.0));
    REQUIRE(lines.size() == 5);
    CHECK(lines[0].material == none);
    CHECK(lines[0].base == 0);
    CHECK(lines[1].part == 0);
    CHECK(lines[2].part == 1);
    CHECK(lines[3].part == 2);
    CHECK(lines[4].part == 3);
    CHECK(within(in_millimetres(lines[3].length), 18.0, rounding));
    CHECK(within(in_milligrams(lines[3].mass.value), 2.4, rounding));
    CHECK(within(lines[3].turns, 5.0, rounding));
}

TEST_CASE("wire has a length and no pieces, fibres have both") {
    const auto lines = tally_by_part(stock(2.8), fly(14, 4.0));
    CHECK(lines[3].count == 0.0);
    CHECK(lines[2].count == 8.0);
    CHECK(within(in_millimetres(lines[2].length), 4.0, rounding));
}

TEST_CASE("the lines of a tally hold all the mass that was taken") {
    const Tied tied = fly(14, 4.0);
    double taken = 0.0, listed = 0.0;
    for (const PartTake& t : tied.takes) taken += t.mass.value.si;
    for (const TallyLine& line : tally_by_part(stock(2.8), tied)) listed += line.mass.value.si;
    CHECK(within(listed, taken, 1e-18)); // kg: rounding of a sum of 1e-4
}

TEST_CASE("a batch keeps beads of two sizes apart and adds up what is alike") {
    const Resolved large = stock(2.8), small = stock(2.4);
    const Tied of14 = fly(14, 4.0), of16 = fly(16, 3.4);
    const auto draws = tally_batch({{&large, &of14, 24}, {&small, &of16, 12}});
    // Hooks of two sizes, beads of two sizes, one wire, one lot of fibres, one fur.
    REQUIRE(draws.size() == 7);
    CHECK(draws[0].hook == HookSize{14});
    CHECK(draws[0].count == 24.0);
    CHECK(draws[1].hook == HookSize{16});
    CHECK(draws[1].count == 12.0);
    CHECK(within(in_millimetres(draws[2].measure), 2.4, rounding));
    CHECK(draws[2].count == 12.0);
    CHECK(within(in_millimetres(draws[3].measure), 2.8, rounding));
    CHECK(draws[3].count == 24.0);
    CHECK(within(in_millimetres(draws[4].length), 36.0 * 18.0, 1e-9)); // a sum of 36 flies
}

TEST_CASE("fibres are drawn by number, and the longest tells what to look for") {
    const Resolved stocked = stock(2.8);
    const Tied of14 = fly(14, 4.0), of16 = fly(16, 3.4);
    const auto draws = tally_batch({{&stocked, &of14, 24}, {&stocked, &of16, 12}});
    const Draw& fibres = draws[4];
    REQUIRE(fibres.material == 2);
    CHECK(fibres.count == 36.0 * 8.0);
    CHECK(within(in_millimetres(fibres.length), 4.0, rounding));
}

TEST_CASE("the doubt of a batch grows with its number, because its flies share it") {
    const Resolved stocked = stock(2.8);
    const Tied one = fly(14, 4.0);
    const Estimate<Mass> mass = batch_mass({{&stocked, &one, 10}});
    CHECK(within(in_milligrams(mass.value), 1887.0, 1e-9));
    CHECK(within(in_milligrams(mass.high - mass.value), 188.7, 1e-9));
    CHECK(mass.origin == Origin::typical);
}

TEST_CASE("an empty batch draws nothing and weighs nothing") {
    CHECK(tally_batch({}).empty());
    CHECK(batch_mass({}).value.si == 0.0);
}
