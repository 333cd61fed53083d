#include "core/recipe/pattern.h"

#include "tests/support/close.h"
#include "tests/support/fly_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Amount same_as(const char* part, double factor = 1.0) {
    Amount a;
    a.text = "same as";
    a.reading = {AmountKind::relative, Unit::count, Basis::part, factor, factor, factor, part};
    return a;
}

Amount share_of(Basis basis, double factor) {
    Amount a;
    a.text = "a share";
    a.reading = {AmountKind::relative, Unit::length, basis, factor, factor, factor, {}};
    return a;
}

Resolved resolved(const Recipe& r) {
    const Result<Pattern> pattern = link(r);
    REQUIRE(pattern.ok());
    const Hook hook = test_hook();
    const Result<Rig> rig = make_rig(pattern.value(), HookSize{14}, &hook);
    REQUIRE(rig.ok());
    Resolved out;
    REQUIRE(resolve(pattern.value(), rig.value(), out).ok());
    return out;
}

} // namespace

TEST_CASE("an id that nothing has is refused with the place where it stands") {
    Recipe r = good_nymph();
    r.steps[3].actions[0].part = "boddy";
    const Result<Pattern> p = link(r);
    REQUIRE_FALSE(p.ok());
    CHECK(p.error().code == ErrorCode::unknown_word);
    CHECK(p.error().place.key == "steps[3].actions[0].part");
    CHECK(p.error().message.find("boddy") != std::string::npos);
}

TEST_CASE("an id that two entries have is refused") {
    Recipe r = good_nymph();
    r.parts[2].id = "bead";
    const Result<Pattern> p = link(r);
    REQUIRE_FALSE(p.ok());
    CHECK(p.error().code == ErrorCode::duplicate);
}

TEST_CASE("amounts that lean on each other in a ring are refused, and longer chains are followed") {
    Recipe r = good_nymph();
    r.parts[3].length = same_as("body");
    r.parts[4].length = same_as("rib", 2.0);
    r.parts[5].length = same_as("tail");
    const Result<Pattern> ring = link(r);
    REQUIRE_FALSE(ring.ok());
    CHECK(ring.error().code == ErrorCode::cyclic);

    r.parts[5].length = mm(3);
    const Resolved out = resolved(r);
    CHECK(within(out.parts[3].length.value, 6e-3, 1e-15)); // tail = body = 2 x rib = 6 mm
    CHECK(out.parts[3].length.origin == Origin::derived);
}

TEST_CASE("a part that is as long as itself is refused") {
    Recipe r = good_nymph();
    r.parts[3].length = same_as("tail");
    REQUIRE_FALSE(link(r).ok());
}

TEST_CASE("half the shank and one and a half gapes are millimetres of this hook") {
    Recipe r = good_nymph();
    r.parts[3].length = share_of(Basis::shank, 0.5);
    CHECK(within(resolved(r).parts[3].length.value * 1e3, 4.2, 1e-12));
    r.parts[3].length = share_of(Basis::gape, 1.5);
    CHECK(within(resolved(r).parts[3].length.value * 1e3, 6.45, 1e-12));
    CHECK(resolved(r).parts[3].length.origin == Origin::measured);
}

TEST_CASE("a part for other sizes is left out, and its actions with it") {
    Recipe r = good_nymph();
    r.parts[5].only = {HookSize{10}, HookSize{12}};
    const Resolved out = resolved(r);
    CHECK_FALSE(out.parts[5].present);
    for (const Act& act : out.acts) CHECK(act.part != 5);
}

TEST_CASE("of paired alternatives the first is tied") {
    Recipe r = good_nymph();
    r.parts[3].either = "wing";
    r.parts[3].choice = "grey";
    r.parts[5].either = "wing";
    r.parts[5].choice = "brown";
    const Resolved out = resolved(r);
    CHECK(out.parts[3].present);
    CHECK_FALSE(out.parts[5].present);
}

TEST_CASE("a table by size gives the number of its row and the words elsewhere") {
    Recipe r = good_nymph();
    SizedText row;
    row.list = {HookSize{14}};
    row.reading = turns(9).reading;
    r.parts[2].turns = a_word("to taste");
    r.parts[2].turns.by_size.push_back(row);
    CHECK(resolved(r).parts[2].turns.value == 9.0);
    r.parts[2].turns.by_size[0].list = {HookSize{10}};
    CHECK(resolved(r).parts[2].turns.word);
}

TEST_CASE("a number that its use cannot mean is refused with its place") {
    Recipe r = good_nymph();
    find_action(r, Op::whip_finish).turns = turns(1e9);
    const Result<Pattern> pattern = link(r);
    REQUIRE(pattern.ok());
    const Hook hook = test_hook();
    const Result<Rig> rig = make_rig(pattern.value(), HookSize{14}, &hook);
    REQUIRE(rig.ok());
    Resolved out;
    const Result<bool> done = resolve(pattern.value(), rig.value(), out);
    REQUIRE_FALSE(done.ok());
    CHECK(done.error().place.key == "steps[5].actions[0].turns");
}

TEST_CASE("an operation with a material that it cannot be done with is refused with its place") {
    Recipe r = good_nymph();
    r.parts[4].made_of[0].material = "bead";
    const Result<Pattern> pattern = link(r);
    REQUIRE(pattern.ok());
    const Hook hook = test_hook();
    const Result<Rig> rig = make_rig(pattern.value(), HookSize{14}, &hook);
    REQUIRE(rig.ok());
    Resolved out;
    const Result<bool> done = resolve(pattern.value(), rig.value(), out);
    REQUIRE_FALSE(done.ok());
    CHECK(done.error().place.key == "steps[3].actions[0].material");
    CHECK(done.error().message.find("bead") != std::string::npos);
}

TEST_CASE("every phase of a recipe without structure links and resolves to nothing to do") {
    Recipe r;
    r.id = "words";
    r.verbatim = "silk, partridge, sparse";
    const Resolved out = resolved(r);
    CHECK(out.acts.empty());
}
