// My version of a fly keeps whose it was.
#include "core/share/fork.h"
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
