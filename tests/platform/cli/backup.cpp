#include "tests/platform/cli/program.h"

#include "core/recipe/text.h"
#include "platform/store/store.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;
namespace fs = std::filesystem;

namespace {

/// A library with one recipe of that name.
void make_library(const fs::path& folder, const std::string& name) {
    auto store = wrapwright::Store::open(folder, 0);
    REQUIRE(store.ok());
    wrapwright::Recipe recipe;
    recipe.id = recipe.name = name;
    REQUIRE(store.value().add_recipe(recipe, wrapwright::write_recipe(recipe), 0).ok());
}

} // namespace

TEST_CASE("a library is backed up by one command and restored by another, after a look") {
    const Scratch scratch;
    const std::string one = scratch.folder() / "one";
    const std::string two = scratch.folder() / "two";
    const std::string file = scratch.folder() / "kept.db";
    make_library(one, "first");
    make_library(two, "second");
    const Ran backup = wrapwright::test::wrapwright({"backup", "--data", one, "-o", file});
    CAPTURE(backup.err);
    CHECK(backup.code == 0);
    const Ran look = wrapwright::test::wrapwright({"restore", file, "--data", two});
    CHECK(look.code == 0);
    CHECK(look.out.find("first") != std::string::npos);
    CHECK(look.out.find("second") != std::string::npos);
    CHECK(look.out.find("nothing was changed") != std::string::npos);
    CHECK(wrapwright::test::wrapwright({"restore", file, "--data", two, "--yes"}).code == 0);
    auto store = wrapwright::Store::open(two, 0);
    REQUIRE(store.ok());
    const auto rows = store.value().library("");
    REQUIRE(rows.ok());
    REQUIRE(rows.value().size() == 1);
    CHECK(rows.value()[0].id == "first");
}

TEST_CASE("a library or a backup that is not there is refused and none is made") {
    const Scratch scratch;
    const std::string none = scratch.folder() / "none";
    const Ran ran = wrapwright::test::wrapwright({"backup", "--data", none, "-o", none + ".db"});
    CHECK(ran.code == 2);
    CHECK_FALSE(fs::exists(none));
    make_library(scratch.folder() / "one", "first");
    const Ran restore = wrapwright::test::wrapwright(
        {"restore", none + ".db", "--data", scratch.folder() / "one", "--yes"});
    CHECK(restore.code == 3);
    CHECK(restore.err.find("; ") != std::string::npos);
}
