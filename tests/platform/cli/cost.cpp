// cost as a person runs it, against a sheet worked by hand.

#include "tests/platform/cli/program.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright::test;
using Json = nlohmann::json;

namespace {

Ran cost(std::vector<std::string> more) {
    std::vector<std::string> all{"cost", "weirfoot-jig", "--size", "14"};
    all.insert(all.end(), more.begin(), more.end());
    return wrapwright::test::wrapwright(all);
}

} // namespace

TEST_CASE("five dozen cost what they do on paper, to the minor unit") {
    // Source  worked by hand. 60 good of 66 begun (binomial, 5 % spoilt, 95 % sure); hooks 66 x 6.50 / 25 =
    //         17.16, three packs; beads 66 / 0.9 = 73.33 x 5.20 / 20 = 19.07, four packs; 66 x 4.5 min
    //         = 4.95 h x 15.00 = 74.25
    const Json json =
        cost({"--dozens", "5", "--spoil", "5", "--each", "4.5", "--rate", "15", "--price",
              "hook=6.50/25", "--price", "bead=5.20/20", "--postage", "3.20", "--json"})
            .json();
    CHECK(json["good"] == 60);
    CHECK(json["starts"] == 66);
    REQUIRE(json["lines"].size() == 5);
    CHECK(json["lines"][0]["consumed"] == "17.16");
    CHECK(json["lines"][0]["cash"] == "19.50");
    CHECK(json["lines"][1]["packs"] == 4);
    CHECK(json["lines"][1]["consumed"] == "19.07");
    CHECK(json["lines"][1]["cash"] == "20.80");
    CHECK(json["lines"][2]["consumed"] == "74.25");
    CHECK(json["consumed"] == "113.68");
    CHECK(json["cash"] == "43.50");
    CHECK(json["price"] == "113.68");
    CHECK(within(json["per_fly_minor"].get<double>(), 11368.0 / 60.0, 1e-6));
    CHECK(json["unpriced"].size() == 7);
}

TEST_CASE("a spool is priced by its length and a cape by its flies") {
    const Json json = cost({"--price", "rib-wire=4.50/100yd", "--price",
                            "hen-feather=20.00/60flies", "--waste", "0", "--json"})
                          .json();
    // A cape of 60 flies at 20.00: 12 flies use 4.00 of it. The spool's length is the tally's own.
    const Json tally =
        wrapwright::test::wrapwright({"tally", "weirfoot-jig", "--fly", "14=12", "--json"}).json();
    bool cape = false, wire = false;
    for (const Json& line : json["lines"]) {
        cape = cape || line["consumed"] == "4.00";
        if (line["what"].get<std::string>().find("copper wire") == std::string::npos) continue;
        wire = true;
        CHECK(within(line["used"].get<double>(), 12.0 * 0.027, 0.012));
        CHECK(line["packs"] == 1);
    }
    CHECK(cape);
    CHECK(wire);
    CHECK_FALSE(tally.empty());
}

TEST_CASE(
    "labour at nothing is shown, and tax comes with a word of caution only when it is asked for") {
    const Ran plain = cost({});
    CHECK(plain.code == 0);
    CHECK(plain.out.find("labour") != std::string::npos);
    CHECK(plain.out.find("counted as nothing") != std::string::npos);
    CHECK(plain.out.find("tax is a column") == std::string::npos);
    const Ran taxed = cost({"--tax", "10", "--rate", "10", "--each", "5"});
    CHECK(taxed.out.find("tax is a column and no advice") != std::string::npos);
    // One dozen: an hour at 10.00, and a tenth of 11.12 leaves 10.00.
    CHECK(taxed.out.find("11.12") != std::string::npos);
}

TEST_CASE("prices that mean nothing are refused with the way to write them") {
    for (const char* odd : {"bead", "bead=5", "bead=5/0", "bead=/20", "bead=x/20", "bead=5/-3",
                            "elbow=5/20", "bead=5/100yd", "thread=5/20", "bead=5/nan"}) {
        CAPTURE(odd);
        const Ran ran = cost({"--price", odd});
        CHECK(ran.code == 2);
        CHECK(ran.err.find("--price") != std::string::npos);
    }
    CHECK(cost({"--dozens", "0"}).code == 2);
    CHECK(cost({"--rate", "much"}).code == 2);
    CHECK(cost({"--fee", "60", "--tax", "40"}).code == 2);
}
