// What came in is looked at before it is taken: new, same, or what differs.
#include "core/share/merge.h"
#include "core/share/letter.h"
#include "tests/support/demo.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Shared opened(std::string_view text) {
    Result<Shared> shared = open_shared(text);
    REQUIRE(shared.ok());
    return std::move(shared).value();
}

} // namespace

TEST_CASE("a file, a letter and a bundle of a recipe open to the same recipe") {
    const Recipe dun = demo("sill-dun").recipe;
    const std::string file = write_recipe(dun);
    Bundle bundle;
    bundle.files.push_back({"recipes/sill-dun.json", file});
    for (const std::string& text :
         {file, write_letter(dun).value(), write_bundle(bundle).value()}) {
        const Shared shared = opened(text);
        REQUIRE(shared.recipes.size() == 1);
        CHECK(shared.recipes[0].recipe == dun);
        CHECK(shared.recipes[0].text == file);
        CHECK(shared.refused.empty());
    }
    CHECK_FALSE(open_shared("Tail: red").ok());
}

TEST_CASE("a recipe that came in is new, the same, or differs in what is told") {
    const Recipe dun = demo("sill-dun").recipe;
    SharedRecipe there{dun, write_recipe(dun), {}};
    CHECK(merge_row(there, std::nullopt).kind == MergeKind::fresh);
    CHECK(merge_row(there, dun).kind == MergeKind::same);
    there.recipe.notes = "keep it slim";
    const MergeRow row = merge_row(there, dun);
    CHECK(row.kind == MergeKind::differs);
    REQUIRE(row.changes.size() == 1);
    CHECK(change_words(row.changes[0]) == "notes: new: keep it slim");
    there.newer = "written by a newer program";
    CHECK(merge_row(there, dun).kind == MergeKind::newer);
}

TEST_CASE("one bad recipe of a bundle is told, and the others come") {
    Bundle bundle;
    bundle.files.push_back({"recipes/a.json", "{ not a recipe"});
    bundle.files.push_back({"recipes/sill-dun.json", write_recipe(demo("sill-dun").recipe)});
    bundle.files.push_back({"photos/sill-dun/14/side.jpg", "x"});
    const Shared shared = opened(write_bundle(bundle).value());
    CHECK(shared.recipes.size() == 1);
    CHECK(shared.photos.size() == 1);
    REQUIRE(shared.refused.size() == 1);
    CHECK(shared.refused[0].find("recipes/a.json") == 0);
}
