// Recipes read from loose text, shared, bundled, merged and compared by the program.
#include "tests/platform/cli/program.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;

namespace {

Ran run(const std::vector<std::string>& arguments) {
    return wrapwright::test::wrapwright(arguments);
}

} // namespace

TEST_CASE("a loose text becomes a recipe file that the other commands take") {
    const Scratch scratch;
    const std::string text =
        scratch.file("card.txt", "Sluice Wet\nHook: wet, #12-16\nTail: red floss\n"
                                 "Body: black wool\nHackle: brown\nqwerty!\n");
    const std::string out = (scratch.folder() / "sluice.json").string();
    const Ran ran = run({"read", text, "-o", out});
    CHECK(ran.code == 0);
    CHECK(ran.out.find("red floss") != std::string::npos);
    CHECK(ran.out.find("qwerty") != std::string::npos);
    CHECK(bytes_of(out).find("\"name\": \"Sluice Wet\"") != std::string::npos);
    CHECK(run({"plan", out, "--size", "14"}).code == 0);
    const auto json = run({"read", text, "--json"}).json();
    CHECK(json["flies"] == 1);
    CHECK(json["pieces"].size() > 8);
}

TEST_CASE("a recipe goes through a letter and is the same file again") {
    const Scratch scratch;
    const std::string letter = (scratch.folder() / "letter.txt").string();
    const std::string back = (scratch.folder() / "back.json").string();
    CHECK(run({"share", "sill-dun", "-o", letter}).code == 0);
    CHECK(run({"read", letter, "-o", back}).code == 0);
    CHECK(run({"compare", "sill-dun", back}).out == "no difference\n");
    CHECK(run({"compare", "sill-dun", letter}).code == 0);
    const std::string torn = scratch.file("torn.txt", bytes_of(letter).substr(0, 3000) + "]");
    const Ran refused = run({"read", torn});
    CHECK(refused.code == 2);
    CHECK(refused.err.find("lost") != std::string::npos);
}

TEST_CASE("a bundle is looked at first, taken in when said, and nothing is overwritten unseen") {
    const Scratch scratch;
    const std::string bundle = (scratch.folder() / "club.json").string();
    const std::string photo = scratch.file("side.jpg", "not really a photo");
    const std::string data = (scratch.folder() / "data").string();
    REQUIRE(
        run({"bundle", "sill-dun", "weirfoot-jig", "--photo", "sill-dun/14=" + photo, "-o", bundle})
            .code == 0);
    auto seen = run({"merge", bundle, "--data", data, "--json"}).json();
    CHECK(seen["recipes"][0]["kind"] == "new");
    CHECK(seen["photos_taken"] == 0);
    auto taken = run({"merge", bundle, "--data", data, "--take", "--json"}).json();
    CHECK(taken["recipes"][0]["done"] == "taken");
    CHECK(taken["photos_taken"] == 1);
    CHECK(run({"merge", bundle, "--data", data, "--take", "--json"}).json()["photos_taken"] == 0);
    // The same recipe with another note: it is told, left, and taken only when named.
    std::string changed;
    for (const auto& file : demo_recipes()) {
        if (file.stem() == "sill-dun") changed = bytes_of(file);
    }
    changed.replace(changed.find("Dead drift"), 4, "Slow");
    const std::string other = scratch.file("other.json", changed);
    seen = run({"merge", other, "--data", data, "--take", "--json"}).json();
    CHECK(seen["recipes"][0]["kind"] == "differs");
    CHECK(seen["recipes"][0]["changes"].size() == 1);
    CHECK(std::string(seen["recipes"][0]["done"]).find("left") == 0);
    seen = run({"merge", other, "--data", data, "--take", "--both", "sill-dun", "--json"}).json();
    CHECK(seen["recipes"][0]["done"] == "taken beside it as sill-dun-2");
    seen = run({"merge", other, "--data", data, "--take", "--newest", "sill-dun", "--json"}).json();
    CHECK(std::string(seen["recipes"][0]["done"]).find("revision 2") != std::string::npos);
    CHECK(run({"merge", other, "--data", data, "--json"}).json()["recipes"][0]["kind"] == "same");
}

TEST_CASE("a bundle unpacks into a folder and overwrites nothing") {
    const Scratch scratch;
    const std::string bundle = (scratch.folder() / "club.json").string();
    const std::string folder = (scratch.folder() / "out").string();
    REQUIRE(run({"bundle", "sill-dun", "-o", bundle}).code == 0);
    CHECK(run({"unbundle", bundle, folder}).code == 0);
    CHECK(run({"compare", folder + "/recipes/sill-dun.json", "sill-dun"}).out == "no difference\n");
    CHECK(run({"unbundle", bundle, folder}).code == 2);
    const std::string climbing = scratch.file(
        "bad.json",
        R"({"format": "wrapwright bundle", "version": 1, "files": [{"path": "../x.json", "text": "{}"}]})");
    const Ran refused = run({"unbundle", climbing, folder});
    CHECK(refused.code == 2);
    CHECK(refused.err.find("../x.json") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(scratch.folder() / "x.json"));
}
