// measure as a person runs it, on a picture that the program drew.

#include "tests/platform/cli/program.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;
using Json = nlohmann::json;

namespace {

std::string picture(const Scratch& scratch) {
    const std::string file = (scratch.folder() / "fly.png").string();
    const Ran drawn =
        wrapwright::test::wrapwright({"picture", "weirfoot-jig", "--size", "14", "-o", file});
    REQUIRE(drawn.code == 0);
    return file;
}

} // namespace

TEST_CASE("lengths follow the scale that is given, with an interval") {
    const Scratch scratch;
    const std::string fly = picture(scratch);
    const Json json =
        wrapwright::test::wrapwright({"measure", fly, "--scale", "100,100,300,100=10mm", "--points",
                                      "100,200,200,200,200,300", "--json"})
            .json();
    REQUIRE(json["lengths_mm"].size() == 2);
    for (const Json& length : json["lengths_mm"]) {
        CHECK(within(length["value"].get<double>(), 5.0, 1e-6)); // half of the 200 px
        CHECK(length["low"].get<double>() < 5.0);
        CHECK(length["high"].get<double>() > 5.0);
    }
    const Ran card = wrapwright::test::wrapwright(
        {"measure", fly, "--card", "10,10,400,12,398,260,12,255", "--points", "10,10,400,12"});
    CHECK(card.code == 0);
    CHECK(card.out.find("85.600 mm") != std::string::npos);
}

TEST_CASE("what cannot be measured is refused in one line with the remedy") {
    const Scratch scratch;
    const std::string fly = picture(scratch);
    const std::string scale = "100,100,300,100=10mm";
    const std::vector<std::vector<std::string>> bad{
        {"measure", fly},
        {"measure", fly, "--scale", scale},
        {"measure", fly, "--scale", scale, "--card", "1,1,90,1,90,60,1,60", "--points", "1,1,2,2"},
        {"measure", fly, "--scale", "100,100,300,100", "--points", "1,1,9,9"},
        {"measure", fly, "--scale", "100,100,100,100=10mm", "--points", "1,1,9,9"},
        {"measure", fly, "--scale", "100,100,300=10mm", "--points", "1,1,9,9"},
        {"measure", fly, "--scale", "100,100,300,100=ten", "--points", "1,1,9,9"},
        {"measure", fly, "--card", "1,1,90,60,90,1,1,60", "--points", "1,1,9,9"},
        {"measure", fly, "--scale", scale, "--points", "1,1"},
        {"measure", fly, "--scale", scale, "--line", "5,5,5,5"},
        {"measure", fly, "--scale", scale, "--line", "-5,5,90000,5"},
        {"measure", fly, "--scale", scale, "--line", "2,2,200,2"}, // an even ground: no ribs
        {"measure", scratch.file("fly.jpg", "not a photo"), "--scale", scale, "--points",
         "1,1,9,9"},
        {"measure", scratch.file("cut.png", bytes_of(fly).substr(0, 3000)), "--scale", scale,
         "--points", "1,1,9,9"},
        {"measure", (scratch.folder() / "none.png").string(), "--scale", scale, "--points",
         "1,1,9,9"},
    };
    for (const auto& arguments : bad) {
        const Ran ran = wrapwright::test::wrapwright(arguments);
        CAPTURE(ran.err);
        CAPTURE(ran.out);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK(ran.err.find('\n') == ran.err.size() - 1);
        CHECK(ran.err.find("; ") != std::string::npos);
    }
}

TEST_CASE(
    "proportions give targets on this hook, the other standards' words, and a caliper's verdict") {
    const Json json =
        wrapwright::test::wrapwright({"proportions", "sill-dun", "--size", "14", "--standard",
                                      "classical", "--measured", "tail=4.6mm", "--json"})
            .json();
    CHECK(json["standard"] == "classical");
    CHECK(json["standards"].size() == 3);
    bool tail = false;
    for (const Json& row : json["rows"]) {
        CHECK_FALSE(row["source"].get<std::string>().empty());
        CHECK(row["target_mm"]["low"] <= row["target_mm"]["value"]);
        if (row["part"] != "tail") continue;
        tail = true;
        CHECK(within(row["measured_mm"].get<double>(), 4.6, 1e-9));
        CHECK(row["verdict"].get<std::string>().find("short by") != std::string::npos);
        CHECK(row["others"].size() == 2);
        CHECK(row["step"].get<int>() > 0);
    }
    CHECK(tail);
    for (const std::vector<std::string>& bad :
         {std::vector<std::string>{"proportions", "sill-dun", "--standard", "nobody's"},
          {"proportions", "sill-dun", "--measured", "tail"},
          {"proportions", "sill-dun", "--measured", "nose=3mm"},
          {"proportions", "sill-dun", "--measured", "tail=long"}}) {
        const Ran ran = wrapwright::test::wrapwright(bad);
        CHECK(ran.code == 2);
        CHECK(ran.err.find("; ") != std::string::npos);
    }
}
