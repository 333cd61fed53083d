#include "core/water/fly_body.h"

#include "core/water/balance.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"
#include "tests/support/fly_builder.h"
#include "tests/support/water_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

struct Made {
    Pattern pattern;
    Resolved numbers;
    Tied tied;
    FlyBody body;
};

Made made(const Pattern& pattern, HookSize size) {
    Made m{pattern, {}, {}, {}};
    const Result<Rig> rig = make_rig(pattern, size);
    REQUIRE(rig.ok());
    REQUIRE(resolve(pattern, rig.value(), m.numbers).ok());
    tie(pattern, rig.value(), m.numbers, Limits{}, m.tied);
    m.body = fly_body(pattern, m.numbers, m.tied);
    return m;
}

double width(const Estimate<Mass>& e) { return (e.high - e.low).si; }

} // namespace

TEST_CASE("lumps, portions and the record weigh the same, in every demo fly and size") {
    // Tolerance  1e-12 of it: sums of some hundred numbers
    for (const char* name :
         {"weirfoot-jig", "tailrace-spider", "sill-dun", "lockgate-sedge", "millpool-leech"}) {
        const Pattern pattern = demo(name);
        for (const HookSize size : pattern.recipe.size_list) {
            CAPTURE(name);
            const Made m = made(pattern, size);
            double lumps = 0.0, volume = 0.0, portions = 0.0, solid = 0.0;
            for (const Lump& l : m.body.lumps) {
                lumps += l.mass.si;
                volume += l.volume.si;
                CHECK(l.mass.si >= 0.0);
            }
            for (const Portion& p : m.body.portions) {
                portions += p.mass.value.si;
                solid += p.volume.value.si;
            }
            CHECK(within_share(lumps, m.tied.mass.value.si, 1e-12));
            CHECK(within_share(portions, m.tied.mass.value.si, 1e-12));
            CHECK(within_share(volume, solid, 1e-12));
            CHECK(sum_of_masses(m.body.portions).low <= m.tied.mass.value);
            // First order in the record and here is the same sum.
            CHECK(within_share(width(sum_of_masses(m.body.portions)), width(m.tied.mass), 1e-9));
        }
    }
}

TEST_CASE("a fly lies between the eye and its tail") {
    const Made m = made(demo("weirfoot-jig"), HookSize{14});
    const Centres c = centres_of(m.body.lumps, water(10.0));
    // The bead is most of it and sits on the eye's leg.
    CHECK(c.of_mass.x < c.of_volume.x);
    for (const Lump& l : m.body.lumps) {
        CHECK(l.at.x > -3e-3);
        CHECK(l.at.x < 20e-3);
    }
}

TEST_CASE("ten beads weighed together tell one, closer than any of them by its size") {
    // Hand-worked: 10 = 1.64 g on a scale of 0.01 g: 164 mg; digit 0.7 mg, differing 5.2 mg.
    const Estimate<Mass> one = one_of_weighed(10, grams(1.64), grams(0.01));
    CHECK(within(in_milligrams(one.value), 164.0, 1e-9));
    CHECK(within(in_milligrams(one.high - one.value), 5.2335, 1e-3));
    CHECK(one.origin == Origin::measured);
    CHECK(width(one_of_weighed(100, grams(16.4), grams(0.01))) < width(one));
    CHECK(one_of_weighed(1, milligrams(1.0), grams(1.0)).low.si == 0.0); // never below nothing
}

TEST_CASE(
    "a weighing of the whole narrows every part and gives the difference to the unsure ones") {
    Made m = made(demo("weirfoot-jig"), HookSize{14});
    const FlyBody before = m.body;
    const Mass scale = before.mass.value + milligrams(12.0);
    weigh_whole(m.body,
                {scale, scale - milligrams(1.0), scale + milligrams(1.0), Origin::measured});
    // The scale is far surer than the sum: nearly all of the 12 mg is believed.
    CHECK(within(in_milligrams(m.body.mass.value - before.mass.value), 12.0, 0.1));
    CHECK(width(m.body.mass) <= 2.0 * milligrams(1.0).si);
    double sum = 0.0;
    for (std::size_t i = 0; i < before.portions.size(); ++i) {
        const Portion &was = before.portions[i], &is = m.body.portions[i];
        sum += is.mass.value.si;
        CHECK(is.mass.value >= was.mass.value);
        // One thread in several parts was given straight sums; each still narrows by itself.
        CHECK(width(is.mass) <= width(was.mass) + 1e-15);
    }
    CHECK(within_share(sum, m.body.mass.value.si, 1e-12));
    const Estimate<Force> now = fly_weight(m.body, water(10.0));
    const Estimate<Force> then = fly_weight(before, water(10.0));
    CHECK((now.high - now.low).si < (then.high - then.low).si);
}

TEST_CASE("a weighed bead narrows the fly's weight in water") {
    Made m = made(demo("weirfoot-jig"), HookSize{14});
    const Estimate<Force> then = fly_weight(m.body, water(10.0));
    for (Stuff& s : m.numbers.materials) {
        if (s.kind != MaterialKind::bead) continue;
        s.item_mass = {s.item_mass.value, 0.99 * s.item_mass.value, 1.01 * s.item_mass.value,
                       Origin::measured};
    }
    const Result<Rig> rig = make_rig(m.pattern, HookSize{14});
    tie(m.pattern, rig.value(), m.numbers, Limits{}, m.tied);
    const FlyBody body = fly_body(m.pattern, m.numbers, m.tied);
    const Estimate<Force> now = fly_weight(body, water(10.0));
    CHECK((now.high - now.low).si < (then.high - then.low).si);
    CHECK(now.low <= now.value);
    CHECK(now.value <= now.high);
}
