// Somebody new: a recipe from nothing, tied, changed, saved, forked, found, handed on. The real program,
// without a screen; then the library that it left behind is looked into.

#include "core/recipe/text.h"
#include "core/share/letter.h"
#include "platform/store/store.h"
#include "tests/platform/cli/program.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>
#include <sstream>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// From the door to the editor until the fly is saved.
constexpr const char* written = R"(press Write
press New fly
press empty
press name
key ctrl a
type Culvert Creeper
press class
key ctrl a
type wet
press sizes
key ctrl a
type 12-16
press add to parts
type tail: ginger cock fibres, half the shank, 8 fibres
key enter
type body: olive dubbing
key enter
type rib: copper wire, 5 turns
key enter
type hackle: brown hen, 2 turns
key enter
wait 0.3
press 2. Start the thread behind the eye and trim its end.
press + do something in step 2
wait 0.1
type tie in tail at bend, 4 turns
key enter
type tie in rib at bend
key enter
type dub body from bend to 0.3 shank
key enter
type counter rib rib from bend to 0.3 shank
key enter
type tie off rib
key enter
type trim rib
key enter
type tie in hackle at 0.3 shank
key enter
type collar hackle
key enter
type tie off hackle
key enter
type trim hackle
key enter
key escape
press Save
)";

/// Tied at the bench with six turns of rib, which become a revision; forked; found; handed on.
constexpr const char* then_tied = R"(press Lay out
press Begin now
key 8 tab
key d
type 6 turns
press Note it
key 14 tab
press Write
press Revisions
press Revision from this sitting: 1 change
press My version
press Revisions
press Save as file
press Copy as text
press Recipes
wait 0.1
type creeper
press Culvert Creeper (my version)
press Write
press Text
press loose
key ctrl v
press Culvert Creeper (my version)
)";

/// What the editing takes somebody who types neither fast nor slowly.
///
/// Source  Card, Moran, Newell: The keystroke-level model, CACM 23 (1980), 396-410: 0.28 s for a key of
///         an average typist, 1.1 s to point with a mouse, 0.4 s for the hand to change over, 1.35 s to
///         think before each line; from memory
double keystroke_seconds(const std::string& script) {
    double seconds = 0.0;
    std::istringstream lines(script);
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("type ")) {
            seconds += 1.35 + 0.28 * static_cast<double>(line.size() - 5);
        } else if (line.starts_with("press ")) {
            seconds += 1.35 + 1.1 + 2.0 * 0.4 + 0.28;
        } else if (line.starts_with("key ")) {
            seconds += 2.0 * 0.28;
        }
    }
    return seconds;
}

template <class T>
T got(Result<T> result) {
    if (!result.ok()) FAIL(result.error().message);
    return std::move(result).value();
}

} // namespace

TEST_CASE("a fly is invented from nothing, tied, changed, saved, forked, found and handed on") {
    const double seconds = keystroke_seconds(written);
    MESSAGE("writing it takes " << seconds << " s by the keystroke-level model");
    CHECK(seconds < 300.0);

    const Scratch scratch;
    const std::string data = (scratch.folder() / "data").string();
    const std::string script = scratch.file("newcomer.txt", std::string(written) + then_tied);
    const Ran ran = run_program(WW_SHOTS, {script, "--data", data, "--width", "1600", "--height",
                                           "1500", "-o", scratch.folder().string()});
    CAPTURE(ran.err);
    REQUIRE(ran.code == 0);

    Store store = got(Store::open(data, 1'777'600'000));
    const auto found = got(store.library("creeper"));
    REQUIRE(found.size() == 2); // the fly and the fork, by one word of them
    std::string own, fork;
    for (const StoredRow& row : found) {
        (row.name == "Culvert Creeper" ? own : fork) = row.id;
    }
    REQUIRE_FALSE(own.empty());
    REQUIRE_FALSE(fork.empty());

    // As it came, as it was written, and with what was done differently.
    const auto revisions = got(store.revisions(own));
    REQUIRE(revisions.size() == 3);
    CHECK(revisions[0].note == "6 turns");
    const Recipe first = got(read_recipe(got(store.recipe_text(own, 2))));
    const Recipe changed = got(read_recipe(got(store.recipe_text(own))));
    CHECK(first.size_list.size() == 3);
    const auto rib = [](const Recipe& recipe) -> std::string {
        for (const Part& part : recipe.parts) {
            if (part.role == "rib") return part.turns.text;
        }
        return {};
    };
    CHECK(rib(first) == "5 turns");
    CHECK(changed != first);
    CHECK(write_recipe(changed).find("6 turns") != std::string::npos);

    // One fly was finished, for nobody's order.
    CHECK(got(store.box()).at({own, "14"}) == BoxCount{1, 0});

    const std::string text = got(store.recipe_text(fork));
    CHECK(got(read_recipe(text)).provenance.version_of == "Culvert Creeper");
    CHECK(bytes_of(std::filesystem::path(data) / "shared" / (fork + ".json")) == text);
    CHECK(got(read_letter(got(write_letter(got(read_recipe(text)))))) == text);
}

TEST_CASE("a bundle is opened by its name, looked at, and taken in with its photo") {
    const Scratch scratch;
    const std::string data = (scratch.folder() / "data").string();
    const std::string bundle = (scratch.folder() / "club.json").string();
    const std::string photo = scratch.file("side.jpg", "not really a photo");
    Recipe other = demo("weirfoot-jig").recipe;
    other.notes = "slimmer";
    const std::string changed = scratch.file("changed.json", write_recipe(other));
    REQUIRE(wrapwright::test::wrapwright(
                {"bundle", "sill-dun", changed, "--photo", "sill-dun/14=" + photo, "-o", bundle})
                .code == 0);
    const std::string script =
        scratch.file("open.txt", "press Write\npress Text\npress file\ntype " + bundle +
                                     "\nkey enter\nwait 0.2\n"
                                     "press Take them in\n");
    const Ran ran = run_program(WW_SHOTS, {script, "--data", data, "--width", "1280", "--height",
                                           "800", "-o", scratch.folder().string()});
    CAPTURE(ran.err);
    REQUIRE(ran.code == 0);
    Store store = got(Store::open(data, 1'777'600'000));
    CHECK(got(store.revisions("sill-dun")).size() == 1); // it was here already
    CHECK(got(store.revisions("weirfoot-jig")).size() == 2);
    CHECK(got(store.recipe_text("weirfoot-jig")) == write_recipe(other));
    const auto photos = got(store.photos("sill-dun", "14"));
    REQUIRE(photos.size() == 1);
    CHECK(got(store.photo_bytes(photos[0].id)) == "not really a photo");
}

TEST_CASE("a file of a newer program is shown to be read, and the library stays as it was") {
    const Scratch scratch;
    const std::string data = (scratch.folder() / "data").string();
    std::string text = write_recipe(demo("sill-dun").recipe);
    text.replace(text.find("\"version\": 1"), 12, "\"version\": 9");
    const std::string newer = scratch.file("newer.json", text);
    const std::string script =
        scratch.file("open.txt", "press Write\npress Text\npress file\ntype " + newer +
                                     "\nkey enter\nwait 0.2\npress Sill Dun##shared 0\n");
    const Ran ran = run_program(WW_SHOTS, {script, "--data", data, "--width", "1280", "--height",
                                           "800", "-o", scratch.folder().string()});
    CAPTURE(ran.err);
    REQUIRE(ran.code == 0);
    Store store = got(Store::open(data, 1'777'600'000));
    CHECK(got(store.revisions("sill-dun")).size() == 1);
    CHECK(got(store.recipe_text("sill-dun")).find("\"version\": 1") != std::string::npos);
}
