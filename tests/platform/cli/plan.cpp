#include "tests/platform/cli/program.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;
using Json = nlohmann::json;

namespace {

/// Whether an object has all of these keys.
bool has_keys(const Json& object, const std::vector<std::string>& keys) {
    for (const std::string& key : keys) {
        if (!object.contains(key)) {
            MESSAGE("missing key: " << key);
            return false;
        }
    }
    return true;
}

/// The sizes of a recipe, as the check of all of them lists them.
std::vector<std::string> sizes_of(const std::string& recipe) {
    std::vector<std::string> sizes;
    const Json json = wrapwright::test::wrapwright({"check", recipe, "--json"}).json();
    for (const Json& size : json["sizes"]) sizes.push_back(size["size"].get<std::string>());
    return sizes;
}

void check_plan(const Json& plan) {
    CHECK(has_keys(plan, {"hook", "steps", "windings", "parts", "mass_mg", "profile", "findings"}));
    CHECK(has_keys(plan["hook"], {"shank_mm", "gape_mm", "wire_mm", "eye_mm", "origin"}));
    for (const Json& step : plan["steps"]) {
        CHECK(has_keys(step, {"number", "text", "cautions"}));
        CHECK_FALSE(step["text"].get<std::string>().empty());
    }
    for (const Json& winding : plan["windings"]) {
        CHECK(
            has_keys(winding, {"step", "part", "from_mm", "to_mm", "turns", "pitch_mm", "strand_mm",
                               "core_mm", "length_mm", "mass_mg", "sense", "against_thread"}));
        CHECK(winding["turns"].get<double>() > 0.0);
        // A turn is never shorter than the way round its core.
        CHECK(winding["length_mm"].get<double>() >=
              winding["turns"].get<double>() * 3.14159 * 0.99 * winding["core_mm"].get<double>());
    }
    double parts = 0.0;
    for (const Json& part : plan["parts"]) {
        CHECK(has_keys(part, {"id", "role", "count", "length_mm", "mass_mg"}));
        parts += part["mass_mg"].get<double>();
    }
    const Json& mass = plan["mass_mg"];
    // Tolerance: each of fewer than 40 parts is rounded to 1e-6 mg.
    CHECK(within(parts, mass["value"].get<double>(), 4e-5));
    CHECK(mass["low"].get<double>() <= mass["value"].get<double>());
    CHECK(mass["value"].get<double>() <= mass["high"].get<double>());
    double before = -1.0;
    for (const Json& cell : plan["profile"]) {
        CHECK(cell["at_mm"].get<double>() > before);
        CHECK(cell["diameter_mm"].get<double>() >= 0.999 * plan["hook"]["wire_mm"].get<double>());
        before = cell["at_mm"].get<double>();
    }
    for (const Json& finding : plan["findings"]) {
        CHECK(has_keys(finding, {"level", "rule", "step", "message", "evidence", "remedy"}));
    }
}

} // namespace

TEST_CASE("a plan has its keys, and its numbers agree with each other, for every demo and size") {
    for (const auto& recipe : demo_recipes()) {
        for (const std::string& size : sizes_of(recipe.string())) {
            CAPTURE(recipe.stem().string());
            CAPTURE(size);
            const Ran ran =
                wrapwright::test::wrapwright({"plan", recipe.string(), "--size", size, "--json"});
            REQUIRE(ran.code == 0);
            CHECK(ran.err.empty());
            check_plan(ran.json());
        }
    }
}

TEST_CASE("every structured demo is tied in at least three sizes and in eight steps or more") {
    int structured = 0;
    for (const auto& recipe : demo_recipes()) {
        CAPTURE(recipe.stem().string());
        const Json plan = wrapwright::test::wrapwright({"plan", recipe.string(), "--json"}).json();
        if (plan["steps"].empty()) continue;
        ++structured;
        CHECK(sizes_of(recipe.string()).size() >= 3);
        CHECK(plan["steps"].size() >= 8);
    }
    CHECK(structured >= 5);
}

TEST_CASE("a demo is found by its bare name, and the text for people carries its steps") {
    const Ran ran = wrapwright::test::wrapwright({"plan", "weirfoot-jig", "--size", "14"});
    REQUIRE(ran.code == 0);
    CHECK(ran.out.find("Weirfoot Jig") != std::string::npos);
    CHECK(ran.out.find("wind the rib across the body") != std::string::npos);
    CHECK(ran.out.find('\x1b') == std::string::npos); // plain in a pipe
}

TEST_CASE("the other hand changes no step and says which way round its turns run") {
    const Json right =
        wrapwright::test::wrapwright({"plan", "sill-dun", "--hand", "right", "--json"}).json();
    const Json left =
        wrapwright::test::wrapwright({"plan", "sill-dun", "--hand", "left", "--json"}).json();
    CHECK(right["steps"] == left["steps"]);
    CHECK(right["hand"] == "right");
    CHECK(left["hand"] == "left");
    const Ran text = wrapwright::test::wrapwright({"plan", "sill-dun", "--hand", "left"});
    CHECK(text.out.find("away from you\" runs counter-clockwise") != std::string::npos);
}

TEST_CASE("no step of a demo says a word that holds for one hand only") {
    for (const auto& recipe : demo_recipes()) {
        const Json plan = wrapwright::test::wrapwright({"plan", recipe.string(), "--json"}).json();
        for (const Json& step : plan["steps"]) {
            const std::string text = step.dump();
            CAPTURE(text);
            CHECK(text.find("clockwise") == std::string::npos);
            CHECK(text.find("left hand") == std::string::npos);
            CHECK(text.find("right hand") == std::string::npos);
        }
    }
}

TEST_CASE("a measured hook stands in for the typical one and says so") {
    const std::string hook = WW_SOURCE_DIR "/assets/hooks/jig-14.json";
    const Json plan =
        wrapwright::test::wrapwright({"plan", "weirfoot-jig", "--hook", hook, "--json"}).json();
    CHECK(within(plan["hook"]["shank_mm"].get<double>(), 8.3, 1e-9)); // as the file says
    CHECK(plan["hook"]["origin"] == "measured");
    CHECK(plan["size"] == "14");
    const Json typical =
        wrapwright::test::wrapwright({"plan", "weirfoot-jig", "--size", "14", "--json"}).json();
    CHECK(typical["hook"]["origin"] == "typical");
}

TEST_CASE("a recipe of words alone is printed word for word, and there is nothing to run") {
    const Ran ran = wrapwright::test::wrapwright({"plan", "keepers-note"});
    REQUIRE(ran.code == 0);
    CHECK(ran.out.find("Size to suit the day. Fish it slow.") != std::string::npos);
    CHECK(ran.out.find("nothing to run") != std::string::npos);
    const Json plan = wrapwright::test::wrapwright({"plan", "keepers-note", "--json"}).json();
    CHECK(plan["verbatim"].get<std::string>().find("My neighbour puts a pinch") !=
          std::string::npos);
    CHECK(plan["windings"].empty());
}

TEST_CASE("control characters of a recipe do not reach the terminal") {
    const Scratch scratch;
    const std::string file = scratch.file(
        "loud.json", "{\"format\": \"wrapwright recipe\", \"version\": 1, "
                     "\"name\": \"\\u001b[2Jloud\\u0007\", \"verbatim\": \"x\\u001b]0;\"}");
    const Ran ran = wrapwright::test::wrapwright({"plan", file});
    REQUIRE(ran.code == 0);
    CHECK(ran.out.find("loud") != std::string::npos);
    CHECK(ran.out.find('\x1b') == std::string::npos);
    CHECK(ran.out.find('\a') == std::string::npos);
}
