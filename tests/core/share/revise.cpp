// My version of a fly keeps whose it was; what was done otherwise becomes a revision.
#include "core/share/revise.h"
#include "core/share/compare.h"
#include "tests/support/demo.h"

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("a fork has its own id and name and says where it comes from") {
    const Recipe old = demo("sill-dun").recipe;
    const Recipe mine = fork_recipe(old, "sill-dun-2", "Sill Dun, my version", "a learner");
    CHECK(mine.provenance.version_of == "Sill Dun");
    CHECK(mine.provenance.credit == "after the Slate Weir fly bench");
    CHECK(mine.provenance.author == "a learner");
    CHECK(mine.provenance.permission == old.provenance.permission);
    CHECK(mine.steps == old.steps);
    CHECK(free_id("a", [](const std::string& id) { return id == "a" || id == "a-2"; }) == "a-3");
}

TEST_CASE("turns that were done otherwise take the place of the recipe's, words become a note") {
    const Pattern pattern = demo("sill-dun");
    const Result<Rig> rig = make_rig(pattern, HookSize{14});
    REQUIRE(rig.ok());
    Resolved numbers;
    REQUIRE(resolve(pattern, rig.value(), numbers).ok());
    Tied tied;
    tie(pattern, rig.value(), numbers, Limits{}, tied);
    int start = -1;
    for (std::size_t m = 0; m < tied.moments.size(); ++m) {
        const Act& act = numbers.acts[static_cast<std::size_t>(tied.moments[m].act)];
        if (act.op == Op::start_thread) start = static_cast<int>(m);
    }
    REQUIRE(start >= 0);
    const Recipe turned = with_otherwise(pattern.recipe, numbers, tied, {{{0, start}, "8 turns"}});
    CHECK(turned.steps[1].actions[0].turns.text == "8 turns");
    CHECK(turned.provenance.changes == "step 2, start thread: 8 turns");
    CHECK(compare(pattern.recipe, turned).size() == 2);
    const Recipe noted =
        with_otherwise(pattern.recipe, numbers, tied, {{{0, start}, "silk instead"}});
    CHECK(noted.steps[1].actions[0].note == "silk instead");
    CHECK(noted.steps[1].actions[0].turns.text == "5 turns");
    // The same said of every fly of a batch is written once.
    const Recipe twice =
        with_otherwise(pattern.recipe, numbers, tied,
                       {{{0, start}, "silk instead"}, {{1, start}, "silk instead"}});
    CHECK(twice == noted);
    CHECK(read_recipe(write_recipe(turned)).ok());
}
