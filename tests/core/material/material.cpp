#include "core/material/material.h"
#include "tests/support/close.h"
#include "tests/support/material_builder.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <numbers>
#include <string>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

template <class Q>
bool is_sound(const Estimate<Q>& e) {
    return std::isfinite(e.low.si) && std::isfinite(e.high.si) && e.low.si >= 0.0 &&
           e.low <= e.value && e.value <= e.high;
}

} // namespace

TEST_CASE("every kind is completed from nothing, with sound intervals, and says it is typical") {
    for (int i = 0; i < material_kinds; ++i) {
        const auto kind = static_cast<MaterialKind>(i);
        CAPTURE(name(kind));
        for (const double gape : {2.0, 4.3, 9.3}) {
            const Stuff s = complete(facts_of(kind), gape);
            CHECK(s.kind == kind);
            CHECK(is_sound(s.density));
            CHECK(s.density.value.si > 0.0);
            CHECK(is_sound(s.width));
            CHECK(is_sound(s.height));
            CHECK(is_sound(s.linear));
            CHECK(is_sound(s.solid_area));
            CHECK(is_sound(s.strength));
            CHECK(is_sound(s.usable_length));
            CHECK(is_sound(s.fibre_diameter));
            CHECK(is_sound(s.barb_length));
            CHECK(is_sound(s.wound_density));
            CHECK(is_sound(s.item_mass));
            CHECK(s.packing > 0.0);
            CHECK(s.packing <= 1.0);
            // A strand can be wound: the winding's arithmetic divides by these.
            if (s.width.value.si > 0.0) CHECK(s.height.value.si > 0.0);
            if (s.linear.value.si > 0.0) {
                CHECK(within_share(s.solid_area.value.si * s.density.value.si, s.linear.value.si,
                                   1e-12));
                CHECK(s.linear.origin >= Origin::derived);
            }
        }
    }
}

TEST_CASE("whatever is wound has a width, and whatever is counted a mass or a fibre") {
    using K = MaterialKind;
    for (const K kind :
         {K::thread,   K::ballast, K::wire,  K::tinsel, K::oval,   K::floss,       K::yarn,
          K::chenille, K::herl,    K::quill, K::biot,   K::hackle, K::soft_hackle, K::marabou,
          K::cdc,      K::foam,    K::film,  K::slip,   K::legs,   K::flash}) {
        CAPTURE(name(kind));
        CHECK(complete(facts_of(kind)).width.value.si > 0.0);
        CHECK(complete(facts_of(kind)).linear.value.si > 0.0);
    }
    for (const K kind : {K::fibres, K::hair, K::marabou, K::cdc, K::hackle, K::soft_hackle,
                         K::flash, K::legs, K::biot, K::slip, K::dubbing}) {
        CAPTURE(name(kind));
        CHECK(complete(facts_of(kind)).fibre_diameter.value.si > 0.0);
    }
    for (const K kind : {K::bead, K::cone, K::dumbbell, K::tube, K::coat, K::eyes}) {
        CAPTURE(name(kind));
        CHECK(complete(facts_of(kind)).item_mass.value.si > 0.0);
    }
    // A strand that waits to be wound is one strand, not a bundle of fibres.
    for (const K kind : {K::wire, K::tinsel, K::herl, K::quill, K::chenille}) {
        CHECK(complete(facts_of(kind)).fibre_diameter.value.si == 0.0); // exact: none
    }
}

TEST_CASE("what is said of a material is kept, with the origin that it was said with") {
    MaterialFacts facts = facts_of(MaterialKind::quill);
    facts.width = millimetres(0.5);
    facts.thickness = millimetres(0.11);
    facts.usable_length = millimetres(80.0);
    facts.barb_length = millimetres(1.0);
    facts.density = grams_per_cm3(1.0);
    facts.weighed = milligrams(7.0);
    facts.origin = Origin::measured;
    const Stuff s = complete(facts);
    CHECK(s.width == exactly(millimetres(0.5), Origin::measured));
    CHECK(s.height == exactly(millimetres(0.11), Origin::measured));
    CHECK(s.usable_length == exactly(millimetres(80.0), Origin::measured));
    CHECK(s.barb_length == exactly(millimetres(1.0), Origin::measured));
    CHECK(s.density == exactly(grams_per_cm3(1.0), Origin::measured));
    CHECK(s.item_mass == exactly(milligrams(7.0), Origin::measured));
    CHECK(s.linear.origin == Origin::derived);
    // Tolerance  the product of three given numbers
    CHECK(within_share(s.linear.value.si, 0.5e-3 * 0.11e-3 * 1000.0, 1e-12));
}

TEST_CASE("a bead that is weighed says so even where the recipe only states the rest") {
    MaterialFacts facts = facts_of(MaterialKind::bead, Substance::tungsten);
    facts.diameter = millimetres(3.3);
    facts.weighed = milligrams(260.0);
    const Stuff s = complete(facts);
    CHECK(s.item_mass == exactly(milligrams(260.0), Origin::measured));
    CHECK(s.bead.diameter.origin == Origin::stated);
}

TEST_CASE("a bead's mass is surer when its size is said, and its density too") {
    // Source     first-order propagation: the cube of the size counts three times
    // Tolerance  the sums are exact but for rounding
    const Stuff usual_size = complete(facts_of(MaterialKind::bead, Substance::brass));
    MaterialFacts facts = facts_of(MaterialKind::bead, Substance::brass);
    facts.diameter = usual_size.bead.diameter.value;
    const Stuff said_size = complete(facts);
    facts.density = grams_per_cm3(8.49);
    const Stuff said_both = complete(facts);
    const double shape = relative_spread(said_both.item_mass);
    CHECK(shape > 0.05);
    CHECK(relative_spread(said_size.item_mass) > shape);
    CHECK(within_share(relative_spread(usual_size.item_mass),
                       std::hypot(relative_spread(said_size.item_mass), 3.0 * 0.15), 1e-9));
}

TEST_CASE("a bead keeps the bore, hole and slot that are said") {
    MaterialFacts facts = facts_of(MaterialKind::bead, Substance::brass);
    facts.diameter = millimetres(3.0);
    facts.bore = millimetres(1.2);
    facts.hole = BeadHole::drilled;
    CHECK(complete(facts).bead.bore == exactly(millimetres(1.2)));
    CHECK(complete(facts).bead.hole == BeadHole::drilled);
    facts.hole.reset();
    facts.slot = millimetres(0.7);
    CHECK(complete(facts).bead.hole == BeadHole::slotted);
    CHECK(complete(facts).bead.slot_width == exactly(millimetres(0.7)));
    CHECK(complete(facts_of(MaterialKind::bead, Substance::glass)).bead.hole == BeadHole::drilled);
    CHECK(complete(facts_of(MaterialKind::bead)).bead.hole == BeadHole::countersunk);
}

TEST_CASE("a bead with almost no wall left is still a bead") {
    for (const BeadHole hole : {BeadHole::drilled, BeadHole::countersunk, BeadHole::slotted}) {
        MaterialFacts facts = facts_of(MaterialKind::bead, Substance::brass);
        facts.diameter = millimetres(3.0);
        facts.bore = millimetres(2.99);
        facts.hole = hole;
        CHECK(complete(facts).item_mass.value.si > 0.0);
    }
}

TEST_CASE("nobody says of what: then the interval reaches from the usual to the heaviest") {
    const Stuff wire = complete(facts_of(MaterialKind::ballast));
    CHECK(wire.substance == Substance::tin);
    CHECK_FALSE(wire.toxic);
    CHECK(wire.density.high >= grams_per_cm3(11.34));
    const Stuff bead = complete(facts_of(MaterialKind::bead));
    CHECK(bead.density.high >= grams_per_cm3(18.0));
    CHECK(complete(facts_of(MaterialKind::bead, Substance::brass)).density.high <
          grams_per_cm3(9.0));
}

TEST_CASE("lead alone is toxic, and wire alone stands out hard") {
    CHECK(complete(facts_of(MaterialKind::ballast, Substance::lead)).toxic);
    CHECK_FALSE(complete(facts_of(MaterialKind::ballast, Substance::tin)).toxic);
    CHECK(complete(facts_of(MaterialKind::wire)).springy);
    CHECK_FALSE(complete(facts_of(MaterialKind::floss)).springy);
}

TEST_CASE("a flat thread lies wider and lower than a round one of the same denier") {
    MaterialFacts facts = facts_of(MaterialKind::thread, Substance::nylon);
    facts.linear = denier(140.0);
    const Stuff round = complete(facts);
    facts.flat = true;
    const Stuff flat = complete(facts);
    CHECK(round.width == round.height);
    CHECK(flat.width.value > round.width.value);
    CHECK(flat.height.value < round.height.value);
    CHECK(flat.solid_area == round.solid_area);
    CHECK(flat.strength == round.strength);
    // Both hold the same solid share: rectangle and disc have one area.
    const double rectangle = flat.width.value.si * flat.height.value.si;
    CHECK(within_share(rectangle, disc_area(round.width.value).si, 1e-12));
}

TEST_CASE("a thread's diameter goes with the root of its denier and its strength with it") {
    MaterialFacts facts = facts_of(MaterialKind::thread, Substance::polyester);
    facts.linear = denier(72.0);
    const Stuff one = complete(facts);
    facts.linear = denier(288.0);
    const Stuff four = complete(facts);
    CHECK(within_share(four.width.value.si, 2.0 * one.width.value.si, 1e-12));
    CHECK(within_share(four.strength.value.si, 4.0 * one.strength.value.si, 1e-12));
}

TEST_CASE("a round strand's diameter follows from its mass per length where none is said") {
    MaterialFacts facts = facts_of(MaterialKind::wire, Substance::copper);
    facts.linear = LinearDensity{disc_area(millimetres(0.2)).si * 8960.0};
    CHECK(within_share(complete(facts).width.value.si, 0.2e-3, 1e-12));
}

TEST_CASE("hair from 0.18 mm on is full of air, finer hair is solid, nylon hair always") {
    MaterialFacts facts = facts_of(MaterialKind::hair, Substance::keratin);
    facts.fibre_diameter = millimetres(0.28);
    CHECK(complete(facts).density.high < grams_per_cm3(0.7));
    facts.fibre_diameter = millimetres(0.10);
    CHECK(complete(facts).density.low > grams_per_cm3(1.2));
    facts.fibre_diameter = millimetres(0.28);
    facts.substance = Substance::nylon;
    CHECK(complete(facts).density.low > grams_per_cm3(1.1));
}

TEST_CASE("a flat piece that stands free counts as the round fibre of its area") {
    MaterialFacts facts = facts_of(MaterialKind::flash);
    facts.width = millimetres(0.4);
    facts.thickness = millimetres(0.02);
    const Stuff s = complete(facts);
    CHECK(within_share(disc_area(s.fibre_diameter.value).si, 0.4e-3 * 0.02e-3, 1e-12));
}

TEST_CASE("fibres, hair and legs are as thick as their fibre is said to be") {
    for (const MaterialKind kind : {MaterialKind::fibres, MaterialKind::hair, MaterialKind::legs}) {
        MaterialFacts facts = facts_of(kind);
        facts.fibre_diameter = millimetres(0.11);
        CHECK(complete(facts).fibre_diameter.value == millimetres(0.11));
        CHECK(complete(facts).width.value == millimetres(0.11));
        facts.fibre_diameter.reset();
        facts.diameter = millimetres(0.11);
        CHECK(within_share(complete(facts).fibre_diameter.value.si, 0.11e-3, 1e-12));
    }
}

TEST_CASE("what goes by the hook grows with its gape, what does not stays") {
    using K = MaterialKind;
    const auto grows = [](K kind, auto member) {
        return (complete(facts_of(kind), 8.0).*member).value /
               (complete(facts_of(kind), 4.0).*member).value;
    };
    CHECK(within_share(grows(K::hackle, &Stuff::barb_length), 2.0, 1e-12));
    CHECK(within_share(grows(K::slip, &Stuff::width), 2.0, 1e-12));
    CHECK(within_share(grows(K::wire, &Stuff::width), 2.0, 1e-12));
    CHECK(within_share(grows(K::herl, &Stuff::width), 1.0, 1e-12));
}

TEST_CASE("each coat brings its time, and a time that is said wins") {
    MaterialFacts facts = facts_of(MaterialKind::coat);
    CHECK(complete(facts).coat == CoatKind::varnish);
    facts.substance = Substance::epoxy;
    CHECK(complete(facts).coat == CoatKind::epoxy);
    facts.substance = Substance::unknown;
    facts.coat = CoatKind::light_cured;
    CHECK(complete(facts).substance == Substance::light_cured);
    CHECK(complete(facts).cure < minutes(1.0));
    facts.cure = minutes(3.0);
    CHECK(complete(facts).cure == minutes(3.0));
}

TEST_CASE("numbers that no material can have are refused by the key of the recipe") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double bad : {-1e-3, 0.0, 1e3, nan}) {
        CAPTURE(bad);
        const std::pair<std::optional<Length> MaterialFacts::*, const char*> lengths[] = {
            {&MaterialFacts::diameter, "size"},
            {&MaterialFacts::width, "width"},
            {&MaterialFacts::thickness, "thickness"},
            {&MaterialFacts::usable_length, "fibre_length"},
            {&MaterialFacts::barb_length, "barb_length"},
            {&MaterialFacts::fibre_diameter, "fibre_diameter"},
            {&MaterialFacts::bore, "bore"},
            {&MaterialFacts::slot, "slot"},
        };
        for (const auto& [member, key] : lengths) {
            MaterialFacts facts = facts_of(MaterialKind::bead);
            facts.*member = metres(bad);
            const Result<Stuff> result = complete_material(facts, millimetres(4.0));
            REQUIRE_FALSE(result.ok());
            CHECK(result.error().code == ErrorCode::out_of_range);
            CHECK(result.error().place.key == key);
        }
        MaterialFacts thread = facts_of(MaterialKind::thread);
        thread.linear = LinearDensity{bad};
        CHECK_FALSE(complete_material(thread, millimetres(4.0)).ok());
        MaterialFacts heavy = facts_of(MaterialKind::bead);
        heavy.weighed = Mass{bad};
        CHECK_FALSE(complete_material(heavy, millimetres(4.0)).ok());
        MaterialFacts dense = facts_of(MaterialKind::bead);
        dense.density = Density{bad * 1e3};
        CHECK_FALSE(complete_material(dense, millimetres(4.0)).ok());
    }
    MaterialFacts slow = facts_of(MaterialKind::coat);
    slow.cure = minutes(-1.0);
    CHECK_FALSE(complete_material(slow, millimetres(4.0)).ok());
}

TEST_CASE("a bore or slot as wide as its bead is refused, said or usual") {
    MaterialFacts facts = facts_of(MaterialKind::bead);
    facts.bore = millimetres(3.0);
    CHECK_FALSE(complete_material(facts, millimetres(4.0)).ok()); // a usual bead of 2.6 mm
    facts.diameter = millimetres(3.0);
    CHECK_FALSE(complete_material(facts, millimetres(4.0)).ok());
    facts.diameter = millimetres(4.0);
    CHECK(complete_material(facts, millimetres(4.0)).ok());
    facts.slot = millimetres(4.0);
    CHECK_FALSE(complete_material(facts, millimetres(4.0)).ok());
}

TEST_CASE("trade words for wire go from extra small to large without overlap") {
    Length last{};
    for (const char* word : {"extra small", "small", "brassie", "medium", "large"}) {
        CAPTURE(word);
        const auto wire = wire_diameter_word(word);
        REQUIRE(wire.has_value());
        CHECK(wire->low > last);
        CHECK(wire->low < wire->value);
        CHECK(wire->value < wire->high);
        last = wire->high;
    }
    CHECK(wire_diameter_word("fine") == wire_diameter_word("small"));
    CHECK(wire_diameter_word("ultra fine") == wire_diameter_word("extra small"));
    CHECK_FALSE(wire_diameter_word("thick").has_value());
}

TEST_CASE("wire takes its diameter from a number, else from its word, else from the hook") {
    MaterialFacts facts = facts_of(MaterialKind::wire);
    facts.size_word = "brassie";
    CHECK(complete(facts).width == *wire_diameter_word("brassie"));
    CHECK(complete(facts).height == complete(facts).width);
    facts.size_word = "to suit";
    CHECK(complete(facts).width == complete(facts_of(MaterialKind::wire)).width);
    facts.size_word = "brassie";
    facts.diameter = millimetres(0.1);
    CHECK(complete(facts).width == exactly(millimetres(0.1)));
    CHECK(complete(facts_of(MaterialKind::oval)).width.value.si > 0.0);
}
