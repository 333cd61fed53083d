#include "tests/platform/cli/program.h"

#include <doctest/doctest.h>
#include <set>

using namespace wrapwright::test;
using Json = nlohmann::json;

namespace {

/// The findings that a wrong recipe says it has: the words after "Findings:" in its notes.
std::set<std::string> findings_promised(const std::filesystem::path& recipe) {
    const std::string notes = Json::parse(bytes_of(recipe))["notes"].get<std::string>();
    const auto colon = notes.find("Findings:");
    REQUIRE(colon != std::string::npos);
    std::set<std::string> rules;
    std::string word;
    for (const char c : notes.substr(colon + 9)) {
        if (c == ',' || c == '.' || c == ' ') {
            if (!word.empty()) rules.insert(word);
            word.clear();
        } else {
            word += c;
        }
    }
    return rules;
}

/// The rules of all findings that are more than a note.
std::set<std::string> rules_found(const Json& size) {
    std::set<std::string> rules;
    for (const Json& finding : size["findings"]) {
        if (finding["level"] != "note") rules.insert(finding["rule"].get<std::string>());
    }
    return rules;
}

} // namespace

TEST_CASE("nothing stops a demo recipe at any of its sizes") {
    for (const auto& recipe : demo_recipes()) {
        const Ran ran = wrapwright::test::wrapwright({"check", recipe.string(), "--all-sizes"});
        CAPTURE(recipe.stem().string());
        CAPTURE(ran.out);
        CHECK(ran.code == 0);
        CHECK(ran.err.empty());
    }
}

TEST_CASE("each recipe that is wrong on purpose gives the findings that it names and no other, at "
          "every size") {
    for (const auto& recipe : wrong_recipes()) {
        const Ran ran = wrapwright::test::wrapwright({"check", recipe.string(), "--json"});
        CHECK(ran.code == 1);
        const Json report = ran.json();
        for (const Json& size : report["sizes"]) {
            CAPTURE(recipe.stem().string());
            CAPTURE(size["size"].get<std::string>());
            CHECK(rules_found(size) == findings_promised(recipe));
        }
    }
}

TEST_CASE("the wrong recipes show many kinds of finding between them") {
    std::set<std::string> all;
    for (const auto& recipe : wrong_recipes()) {
        const auto some = findings_promised(recipe);
        all.insert(some.begin(), some.end());
    }
    CHECK(wrong_recipes().size() >= 3);
    CHECK(all.size() >= 12);
}

TEST_CASE("a finding tells level, rule, step, message, evidence in numbers and remedy") {
    const Json check = wrapwright::test::wrapwright({"check", "bead-too-late", "--json"}).json();
    bool seen = false;
    for (const Json& finding : check["sizes"][0]["findings"]) {
        if (finding["rule"] != "bead-will-not-pass") continue;
        seen = true;
        CHECK(finding["level"] == "stops");
        CHECK(finding["step"] == 3);
        const Json& evidence = finding["evidence"];
        REQUIRE(evidence.size() == 3);
        CHECK(evidence[0]["what"] == "needed");
        CHECK(evidence[0]["unit"] == "mm");
        CHECK(evidence[0]["value"].get<double>() > evidence[1]["value"].get<double>());
        CHECK_FALSE(finding["remedy"].get<std::string>().empty());
        CHECK_FALSE(finding["caution"].get<std::string>().empty());
    }
    CHECK(seen);
}

TEST_CASE("one size alone may be checked, and not together with all of them") {
    const Json json =
        wrapwright::test::wrapwright({"check", "sill-dun", "--size", "16", "--json"}).json();
    REQUIRE(json["sizes"].size() == 1);
    CHECK(json["sizes"][0]["size"] == "16");
    CHECK(wrapwright::test::wrapwright({"check", "sill-dun", "--size", "16", "--all-sizes"}).code ==
          2);
}
