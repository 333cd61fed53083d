// A bundle comes back as it was packed, and none leads out of its folder.
#include "core/share/bundle.h"
#include "tests/support/demo.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Bundle some() {
    Bundle bundle;
    bundle.note = "for the club evening";
    bundle.files.push_back({"recipes/sill-dun.json", write_recipe(demo("sill-dun").recipe)});
    std::string bytes;
    for (int i = 0; i < 256; ++i) bytes += static_cast<char>(i);
    bundle.files.push_back({"photos/sill-dun/14/side view.jpg", bytes});
    return bundle;
}

std::string with_path(std::string_view path) {
    std::string text = R"({"format": "wrapwright bundle", "version": 1, "files": [{"path": ")";
    return text.append(path).append(R"(", "text": "x"}]})");
}

} // namespace

TEST_CASE("a bundle gives its recipes and photos back byte for byte") {
    const Result<std::string> text = write_bundle(some());
    REQUIRE(text.ok());
    CHECK(is_bundle(text.value()));
    const Result<Bundle> back = read_bundle(text.value());
    REQUIRE(back.ok());
    CHECK(back.value() == some());
    const Result<std::string> again = write_bundle(back.value());
    REQUIRE(again.ok());
    CHECK(again.value() == text.value());
}

TEST_CASE("a path that climbs out, hides or is a device is refused") {
    for (const std::string_view path : {"../x.json",
                                        "recipes/../../x.json",
                                        "/etc/x.json",
                                        "recipes//x.json",
                                        "recipes/.x.json",
                                        "recipes/..json",
                                        "C:/x.json",
                                        "recipes/a:b.json",
                                        "recipes/a\\\\..\\\\b.json",
                                        "photos/a/14/..",
                                        "photos/../a/b",
                                        "photos/a/b/c/d",
                                        "recipes/con.json",
                                        "recipes/x.txt",
                                        "photos/a/14/nul",
                                        "",
                                        "recipes/",
                                        "recipes/a/b.json",
                                        "photos/a/14/x ",
                                        "recipes/a\\u0000b.json",
                                        "recipes/a\\nb.json"}) {
        CAPTURE(path);
        const Result<Bundle> read = read_bundle(with_path(path));
        REQUIRE_FALSE(read.ok());
        CHECK(read.error().code == ErrorCode::out_of_range);
        CHECK_FALSE(read.error().remedy.empty());
    }
    CHECK(read_bundle(with_path("recipes/\u00e9t\u00e9.json")).ok());
    CHECK_FALSE(path_fault(std::string("recipes/") + std::string(200, 'a') + ".json").empty());
}

TEST_CASE("a bundle of a newer program, a torn one and a doubled file are refused in clear words") {
    const auto error = [](std::string_view text) {
        const Result<Bundle> read = read_bundle(text);
        REQUIRE_FALSE(read.ok());
        return read.error();
    };
    CHECK(error(R"({"format": "wrapwright bundle", "version": 2, "files": []})").code ==
          ErrorCode::unknown_version);
    const std::string whole = write_bundle(some()).value();
    CHECK(error(whole.substr(0, whole.size() / 2)).code == ErrorCode::malformed);
    CHECK(error(R"({"format": "wrapwright recipe", "version": 1})").code == ErrorCode::malformed);
    Bundle twice = some();
    twice.files.push_back({"RECIPES/x.json", ""});
    CHECK_FALSE(write_bundle(twice).ok());
    twice = some();
    twice.files.push_back({"recipes/Sill-Dun.json", "{}"}); // one file where case does not count
    CHECK_FALSE(write_bundle(twice).ok());
}

TEST_CASE("a recipe of a newer version opens to be looked at, and says so") {
    std::string text = write_recipe(demo("sill-dun").recipe);
    text.replace(text.find("\"version\": 1"), 12, "\"version\": 7, \"glitter\": true");
    CHECK_FALSE(read_recipe(text).ok());
    const Result<OpenedRecipe> opened = open_recipe(text);
    REQUIRE(opened.ok());
    CHECK(opened.value().newer.find("newer program (version 7)") != std::string::npos);
    CHECK(opened.value().recipe.name == "Sill Dun");
    CHECK(open_recipe(write_recipe(demo("sill-dun").recipe)).value().newer.empty());
    text.replace(text.find("flatten barb"), 12, "weld onto it");
    const Result<OpenedRecipe> unknown = open_recipe(text);
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().code == ErrorCode::unknown_version);
}
