// Published proportions and facts of the trade, on numbers that the recipes' words resolve to.

#include "core/material/bead.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>
#include <string>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// The hook of the published example: gape 5.0, shank 10.0, eye 1.0 mm.
Hook example_hook() {
    Hook h;
    h.size = HookSize{12};
    h.shank = exactly(millimetres(10.0), Origin::measured);
    h.gape = exactly(millimetres(5.0), Origin::measured);
    h.wire = exactly(millimetres(0.5), Origin::measured);
    h.eye_length = exactly(millimetres(1.0), Origin::measured);
    h.eye_diameter = exactly(millimetres(1.6), Origin::measured);
    return h;
}

/// A length that a recipe's words give on the example hook, in mm.
double said_mm(const std::string& words) {
    Recipe r;
    r.id = "words";
    Part part;
    part.id = "part";
    part.length.text = words;
    const Result<Reading> reading = read_amount(words, {});
    REQUIRE(reading.ok());
    part.length.reading = reading.value();
    r.parts.push_back(part);
    const Result<Pattern> pattern = link(r);
    REQUIRE(pattern.ok());
    const Hook hook = example_hook();
    const Result<Rig> rig = make_rig(pattern.value(), HookSize{12}, &hook);
    REQUIRE(rig.ok());
    Resolved out;
    REQUIRE(resolve(pattern.value(), rig.value(), out).ok());
    REQUIRE(out.parts[0].length.given);
    return out.parts[0].length.value * 1e3;
}

int part_of(const Pattern& pattern, const std::string& role) {
    for (std::size_t i = 0; i < pattern.recipe.parts.size(); ++i) {
        if (pattern.recipe.parts[i].role == role) return static_cast<int>(i);
    }
    FAIL("no part with the role " << role);
    return none;
}

const Placed& placed(const Tied& tied, int part, PlacedKind kind) {
    for (const Placed& p : tied.placed) {
        if (p.part == part && p.kind == kind) return p;
    }
    FAIL("nothing placed for that part");
    return tied.placed.front();
}

} // namespace

TEST_CASE("the dry fly's published proportions are these millimetres on a hook of 5 by 10") {
    // Source     a club's beginner-course booklet: tail = shank, body 2/3 shank, wing = shank;
    //            hackle barbs 1.5 gape (the booklet, a retailer's chart and three more pages)
    // Tolerance  rounding alone
    CHECK(within(said_mm("1 shank"), 10.0, 1e-9));
    CHECK(within(said_mm("1.5 gape"), 7.5, 1e-9));
    CHECK(within(said_mm("2/3 of the shank"), 20.0 / 3.0, 1e-9));
    SUBCASE("and a nymph's tail is a third to a half of the shank") {
        // Source  an instructor's glossary and a retailer's nymph guide (2015)
        CHECK(within(said_mm("1/3 shank"), 10.0 / 3.0, 1e-9));
        CHECK(within(said_mm("half the shank"), 5.0, 1e-9));
    }
}

TEST_CASE("the standard shank is twice the gape and an eye's width, within the spread of makers") {
    // Source     published definition: standard shank = 2 x gape + eye width
    // Against    the typical dry hooks, whose columns have a spread of +-12 % each
    for (const int size : {10, 12, 14, 16, 18}) {
        CAPTURE(size);
        const Result<Hook> hook = typical_hook(HookFamily::dry, HookSize{size});
        REQUIRE(hook.ok());
        const Hook& h = hook.value();
        const double standard = (2.0 * h.gape.value + h.eye_length.value).si;
        CHECK(within_share(h.shank.value.si, standard, 0.24));
    }
}

TEST_CASE("the demo dun keeps a dry fly's proportions at every size") {
    // Source     tail 1.0 shank, hackle 1.5 gape: as above; the sources' own range is 1 to 1.5 bodies
    // Tolerance  the recipe's words are the sources' words, so rounding alone
    const Pattern pattern = demo("sill-dun");
    for (const HookSize size : pattern.recipe.size_list) {
        CAPTURE(size.number);
        const Tied fly = tied(pattern, size);
        const Hook& hook = fly.bases[0].hook;
        const Placed& tail = placed(fly, part_of(pattern, "tail"), PlacedKind::bundle);
        CHECK(within_share(tail.reach.si, hook.shank.value.si, 1e-9));
        const Placed& barbs = placed(fly, part_of(pattern, "hackle"), PlacedKind::barbs);
        CHECK(within_share(barbs.reach.si, 1.5 * hook.gape.value.si, 1e-9));
    }
}

TEST_CASE(
    "the demo jig has a half-shank tail and a bead of 0.45 to 0.70 of the gape at every size") {
    // Common practice, no source: half the shank; bead diameter 0.45 to 0.70 of the gape.
    const Pattern pattern = demo("weirfoot-jig");
    for (const HookSize size : pattern.recipe.size_list) {
        CAPTURE(size.number);
        const Tied fly = tied(pattern, size);
        const Hook& hook = fly.bases[0].hook;
        const Placed& tail = placed(fly, part_of(pattern, "tail"), PlacedKind::bundle);
        CHECK(within_share(tail.reach.si, 0.5 * hook.shank.value.si, 1e-9));
        const Placed& bead = placed(fly, part_of(pattern, "bead"), PlacedKind::bead);
        const double share = bead.reach / hook.gape.value;
        CHECK(share >= 0.45);
        CHECK(share <= 0.70);
    }
}

TEST_CASE("a slotted 2.8 mm bead goes over the 60-degree bend of a size 14 jig hook") {
    // Common practice, no source.
    const Pattern pattern = demo("weirfoot-jig");
    const Tied fly = tied(pattern, HookSize{14});
    CHECK(within(in_degrees(fly.bases[0].hook.jig_angle.value), 60.0, 1e-9));
    CHECK(within(in_millimetres(placed(fly, part_of(pattern, "bead"), PlacedKind::bead).reach), 2.8,
                 1e-9));
    for (const Finding& f : fly.findings) CHECK(f.rule != Rule::bead_will_not_pass);
}

TEST_CASE("ballast of the demo jig ends in the front two thirds of the shank") {
    // Common practice, no source: 6 to 12 turns under the thorax.
    const Pattern pattern = demo("weirfoot-jig");
    for (const HookSize size : pattern.recipe.size_list) {
        CAPTURE(size.number);
        const Tied fly = tied(pattern, size);
        const Winding& ballast = fly.windings.front();
        CHECK(ballast.turns >= 6.0);
        CHECK(ballast.turns <= 12.0);
        const Stations& s = fly.bases[0].line.stations();
        CHECK((ballast.to - s.front) / (s.bend - s.front) < 2.0 / 3.0);
    }
}
