// Searching the library, and the revisions of a recipe.
#include "tests/platform/store/scratch.h"

#include <fstream>
#include <iterator>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Spellings spellings() {
    std::ifstream file(WW_SOURCE_DIR "/assets/words/spellings.txt");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    return got(Spellings::read(text));
}

Recipe with_words(const std::string& id, const std::string& verbatim) {
    Recipe recipe = small_recipe(id, id);
    recipe.verbatim = verbatim;
    return recipe;
}

std::vector<std::string> ids(Store& store, const LibrarySearch& wanted) {
    std::vector<std::string> list;
    for (const StoredRow& row : got(store.search(wanted))) list.push_back(row.id);
    return list;
}

LibrarySearch words(std::string text) {
    LibrarySearch wanted;
    wanted.words = std::move(text);
    return wanted;
}

using Ids = std::vector<std::string>;

} // namespace

TEST_CASE("both spellings and both words of a thing are found by one search") {
    const Folder folder;
    Store store = opened(folder.path());
    store.set_spellings(spellings());
    const std::pair<const char*, const char*> pairs[] = {
        {"tyer", "tier"},      {"vice", "vise"}, {"gape", "gap"},     {"silk", "thread"},
        {"dressing", "tying"}, {"grey", "gray"}, {"fibres", "fibers"}};
    for (const auto& [a, b] : pairs) {
        add(store, with_words(std::string("one-") + a, std::string("the ") + a + " of it"));
        add(store, with_words(std::string("other-") + a, std::string("the ") + b + " of it"));
        CAPTURE(a);
        CHECK(ids(store, words(a)).size() == 2);
        CHECK(ids(store, words(b)).size() == 2);
        CHECK(ids(store, words(std::string(b) + " of")).size() == 2);
    }
    CHECK(ids(store, words("tyer zzz")).empty());
}

TEST_CASE("every text of a recipe is found: verbatim, steps, credit, what may replace a material") {
    const Folder folder;
    Store store = opened(folder.path());
    Recipe recipe = demo("sill-dun").recipe;
    recipe.provenance.credit = "quagga";
    recipe.materials[2].instead = "okapi";
    recipe.steps[1].landmark = "tapir";
    recipe.bases[0].text = "wombat hook";
    recipe.verbatim = "numbat";
    add(store, recipe);
    for (const char* word : {"quagga", "okapi", "tapir", "wombat", "numbat", "NUMB"}) {
        CAPTURE(word);
        CHECK(ids(store, words(word)) == Ids{"sill-dun"});
    }
}

TEST_CASE("size, material, class, tag, weight and favourites narrow a search") {
    const Folder folder;
    Store store = opened(folder.path());
    store.set_spellings(spellings());
    for (const char* name : {"weirfoot-jig", "sill-dun", "tailrace-spider", "lockgate-sedge"}) {
        add(store, demo(name).recipe);
    }
    LibrarySearch wanted;
    wanted.size = HookSize{10}; // the jig has 10-18, the sedge 10-16
    CHECK(ids(store, wanted) == Ids{"lockgate-sedge", "weirfoot-jig"});
    wanted = {};
    wanted.material = "deer";
    CHECK(ids(store, wanted) == Ids{"lockgate-sedge"});
    wanted.material = "thread"; // the spider's is silk, and it has no thread by that word
    CHECK(ids(store, wanted).size() == 4);
    wanted.material = "tail"; // the word of a part, and of no material
    CHECK(ids(store, wanted).empty());
    wanted = {};
    wanted.fly_class = "DRY";
    CHECK(ids(store, wanted) == Ids{"sill-dun"});
    wanted = {};
    wanted.tag = "jig";
    CHECK(ids(store, wanted) == Ids{"weirfoot-jig"});
    // Only the jig, with its tungsten bead, weighs more than 150 mg at size 14.
    const Tied jig = tied(demo("weirfoot-jig"), HookSize{14});
    wanted = {};
    wanted.size = HookSize{14};
    wanted.at_least = jig.mass.low;
    CHECK(ids(store, wanted) == Ids{"weirfoot-jig"});
    wanted.at_least.reset();
    wanted.at_most = Mass{jig.mass.low.si * 0.5};
    CHECK(ids(store, wanted) == Ids{"lockgate-sedge", "sill-dun", "tailrace-spider"});
    wanted = {};
    CHECK(got(store.set_favourite("sill-dun", true)));
    wanted.favourites = true;
    CHECK(ids(store, wanted) == Ids{"sill-dun"});
}

TEST_CASE("odd words in any field of a search are words and never statements") {
    const Folder folder;
    Store store = opened(folder.path());
    add(store, demo("sill-dun").recipe);
    for (const char* odd : {"\"", "%", "_", "\\", "'; DROP TABLE recipe; --", "a OR b", "NEAR(x)",
                            "\xff\xfe", "text:x", "^a"}) {
        LibrarySearch wanted;
        wanted.words = wanted.material = wanted.tag = wanted.fly_class = odd;
        CAPTURE(odd);
        CHECK(store.search(wanted).ok());
    }
    CHECK(ids(store, {}).size() == 1);
}

TEST_CASE("revisions are listed, named and gone back to, and none is lost") {
    const Folder folder;
    Store store = opened(folder.path());
    Recipe recipe = demo("sill-dun").recipe;
    const std::string first = write_recipe(recipe);
    add(store, recipe);
    recipe.notes = "slimmer";
    CHECK(got(store.save_revision(recipe, write_recipe(recipe), "slimmer body", some_day + 9)) ==
          2);
    CHECK(got(store.name_revision("sill-dun", 1, "as taught")));
    CHECK_FALSE(store.name_revision("sill-dun", 7, "x").ok());
    CHECK(got(store.go_back("sill-dun", 1, some_day + 20)) == 3);
    const std::vector<StoredRevision> list = got(store.revisions("sill-dun"));
    REQUIRE(list.size() == 3);
    CHECK(list[0].note == "back to revision 1");
    CHECK(list[1].note == "slimmer body");
    CHECK(list[2].name == "as taught");
    CHECK(got(store.recipe_text("sill-dun")) == first);
    CHECK(got(store.recipe_text("sill-dun", 2)) == write_recipe(recipe));
    CHECK_FALSE(store.revisions("nobody").ok());
    CHECK(ids(store, words("slimmer")).empty()); // the newest revision is what is searched
}

TEST_CASE("libraries of versions before open and are weighed bit by bit") {
    for (const char* version : {"version-2.db", "version-3.db", "version-4.db"}) {
        CAPTURE(version);
        const Folder folder;
        std::filesystem::copy_file(std::filesystem::path(WW_SOURCE_DIR "/tests/golden/old") /
                                       version,
                                   folder.path() / "wrapwright.db");
        Store store = opened(folder.path());
        const auto all = got(store.library(""));
        REQUIRE_FALSE(all.empty());
        CHECK(got(store.weigh_some(1)) == static_cast<std::int64_t>(all.size()) - 1);
        CHECK(got(store.weigh_some(1000)) == 0);
        CHECK(got(store.weigh_some(1000)) == 0);
        CHECK(got(store.revisions(all[0].id)).back().name.empty());
    }
}
