#include "core/stock/table_text.h"
#include "core/units/number_text.h"
#include "tests/platform/cli/program.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;
using Json = nlohmann::json;

TEST_CASE("a batch of two sizes adds up hook by hook, bead by bead and in weight") {
    const Json tally = wrapwright::test::wrapwright(
                           {"tally", "weirfoot-jig", "--fly", "14=24", "--fly", "16=12", "--json"})
                           .json();
    REQUIRE(tally["flies"].size() == 2);
    double mass = 0.0;
    for (const Json& fly : tally["flies"]) {
        mass += fly["flies"].get<double>() * fly["mass_mg"]["value"].get<double>();
    }
    // Tolerance: 36 flies, each rounded to 1e-6 mg.
    CHECK(within(tally["mass_mg"]["value"].get<double>(), mass, 4e-5));

    double hooks = 0.0, large_beads = 0.0, small_beads = 0.0;
    for (const Json& line : tally["materials"]) {
        if (line["id"] == "hook") hooks += line["count"].get<double>();
        if (line["id"] != "bead") continue;
        // The recipe's table: 2.8 mm on a 14, 2.4 mm on a 16.
        if (within(line["measure_mm"].get<double>(), 2.8, 1e-6)) large_beads = line["count"];
        if (within(line["measure_mm"].get<double>(), 2.4, 1e-6)) small_beads = line["count"];
    }
    CHECK(hooks == 36.0);
    CHECK(large_beads == 24.0);
    CHECK(small_beads == 12.0);
}

TEST_CASE("one fly is tallied by part and by step, and both hold the same wire") {
    const Json tally =
        wrapwright::test::wrapwright({"tally", "weirfoot-jig", "--fly", "14=1", "--json"}).json();
    const Json& fly = tally["flies"][0];
    double by_part = 0.0, by_step = 0.0;
    for (const Json& line : fly["parts"]) {
        if (line["id"] == "rib") by_part += line["length_mm"].get<double>();
    }
    for (const Json& line : fly["steps"]) {
        if (line["part"] == "rib") by_step += line["length_mm"].get<double>();
    }
    CHECK(by_part > 0.0);
    CHECK(within(by_part, by_step, 1e-5)); // a few roundings to 1e-6 mm
}

TEST_CASE("without an order the tally is that of one fly in the middle size") {
    const Ran ran = wrapwright::test::wrapwright({"tally", "weirfoot-jig"});
    REQUIRE(ran.code == 0);
    CHECK(ran.out.find("one fly") != std::string::npos);
    CHECK(ran.out.find("#14") != std::string::npos);
}

TEST_CASE("the table for spreadsheets has the same rows as the JSON") {
    const Json tally =
        wrapwright::test::wrapwright({"tally", "weirfoot-jig", "--fly", "14=3", "--json"}).json();
    const Ran ran =
        wrapwright::test::wrapwright({"tally", "weirfoot-jig", "--fly", "14=3", "--csv"});
    REQUIRE(ran.code == 0);
    const auto table = wrapwright::read_table(ran.out);
    REQUIRE(table.ok());
    const auto& rows = table.value().rows;
    REQUIRE(rows.size() == tally["materials"].size() + 1);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const Json& row = tally["materials"][i - 1];
        CHECK(rows[i][0] == row["text"].get<std::string>());
        CHECK(wrapwright::read_number(rows[i][3]).value() == row["length_mm"].get<double>());
        CHECK(wrapwright::read_number(rows[i][4]).value() == row["mass_mg"]["value"].get<double>());
    }
}

TEST_CASE("an order that does not say how many of which size is refused in one line") {
    for (const char* order : {"14", "14=", "14=x", "14=0", "14=-3", "14=2.5", "14=999999999999",
                              "=3", "cat=3", "00=3"}) {
        CAPTURE(order);
        const Ran ran = wrapwright::test::wrapwright({"tally", "weirfoot-jig", "--fly", order});
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK(ran.err.find('\n') == ran.err.size() - 1);
    }
}
