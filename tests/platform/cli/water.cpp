// water, reach and rules as a person runs them.

#include "tests/platform/cli/program.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace wrapwright::test;
using Json = nlohmann::json;

namespace {

Json run_json(std::vector<std::string> arguments) {
    arguments.emplace_back("--json");
    return wrapwright::test::wrapwright(arguments).json();
}

void check_spread(const Json& spread) {
    REQUIRE(spread.contains("value"));
    CHECK(spread["low"].get<double>() <= spread["value"].get<double>());
    CHECK(spread["value"].get<double>() <= spread["high"].get<double>());
}

} // namespace

TEST_CASE("water says mass, volume, sink rate, ride, hang and drift, each with its interval") {
    const Json w = run_json({"water", "weirfoot-jig", "--size", "14"});
    for (const char* key : {"mass_mg", "volume_mm3", "sink_m_s", "weight_in_water_mN"}) {
        CAPTURE(key);
        check_spread(w[key]);
    }
    CHECK(w["ride"]["verdict"] == "point up");
    CHECK(w["ride"]["delta_mm"].get<double>() < 0.0);
    CHECK(w["ride"]["doubt_mm"].get<double>() > 0.0);
    CHECK(w["hang_deg"].get<double>() > 0.0);
    CHECK(w["known"] == "until you time one");
    REQUIRE(w["drift"].size() > 10);
    double before = -1.0;
    for (const Json& p : w["drift"]) {
        CHECK(p["x_m"].get<double>() > before);
        before = p["x_m"];
        CHECK(p["low"].get<double>() <= p["depth_m"].get<double>());
        CHECK(p["depth_m"].get<double>() <= p["high"].get<double>());
    }
    double parts = 0.0;
    for (const Json& p : w["parts"]) parts += p["mass_mg"]["value"].get<double>();
    // Tolerance: each of fewer than 40 parts is rounded to 1e-6 mg.
    CHECK(within(parts, w["mass_mg"]["value"].get<double>(), 4e-5));
}

TEST_CASE("plan and water say the same of every demo fly") {
    for (const auto& file : demo_recipes()) {
        if (file.stem() == "keepers-note") continue; // words alone
        const Json plan = run_json({"plan", file.string()});
        const Json water = run_json({"water", file.string()});
        for (const auto& [key, value] : plan["water"].items()) {
            CAPTURE(key);
            CHECK(water[key] == value);
        }
        CHECK(plan["mass_mg"] == water["mass_mg"]);
    }
}

TEST_CASE("the options move the numbers the way they should") {
    const auto sink = [](std::vector<std::string> more) {
        more.insert(more.begin(), {"water", "weirfoot-jig", "--size", "14"});
        return run_json(more)["sink_m_s"]["value"].get<double>();
    };
    const double usual = sink({});
    CHECK(sink({"--temp", "2"}) < usual);
    CHECK(sink({"--sea"}) < usual);
    CHECK(sink({"--tippet", "0.15mm:2m"}) < usual);
    CHECK(sink({"--tippet", ".006in:1m"}) < usual * 1.05);
    CHECK(sink({"--tippet", "none"}) > 2.0 * usual);
    CHECK(sink({"--air", "20"}) < usual);
    const Json log = run_json({"water", "weirfoot-jig", "--size", "14", "--profile", "log"});
    const Json power = run_json({"water", "weirfoot-jig", "--size", "14"});
    CHECK(log["drift"][8]["depth_m"] != power["drift"][8]["depth_m"]);
    // 5 %: the two profiles' own difference.
    CHECK(within_share(log["drift"][8]["depth_m"].get<double>(),
                       power["drift"][8]["depth_m"].get<double>(), 0.05));
    CHECK(power["tippet_band_m_s"]["drawn_along"] > power["tippet_band_m_s"]["bowed"]);
    const Json timed = run_json({"water", "weirfoot-jig", "--size", "14", "--tippet", "none",
                                 "--timed", "0.5m:0.9s", "--timed", "0.5m:0.92s@10"});
    CHECK(timed["known"] == "by a timed fall");
    CHECK(timed["drag_factor"]["of_each_fall"].size() == 2);
    // Both falls in water of 10 and 15 degrees at 0.55 m/s: so it is foretold.
    CHECK(within_share(timed["sink_m_s"]["value"].get<double>(), 0.55, 0.02));
    const Json weighed = run_json({"water", "weirfoot-jig", "--size", "14", "--weighed",
                                   "10=2.20g:0.01g", "--bead", "10=1.60g:0.01g"});
    CHECK(within(weighed["mass_mg"]["value"].get<double>(), 220.0, 2.0));
    CHECK(weighed["mass_mg"]["high"].get<double>() - weighed["mass_mg"]["low"].get<double>() <
          20.0);
}

TEST_CASE("reach comes near the goal and says what it takes") {
    const Json r = run_json({"reach", "weirfoot-jig", "--size", "14", "--mass", "180mg"});
    REQUIRE(r["ways"].size() >= 3);
    const Json& best = r["ways"][0];
    CHECK(within_share(best["mass_mg"]["value"].get<double>(), 180.0, 0.03));
    CHECK_FALSE(best["bead_text"].get<std::string>().empty());
    const Json free =
        run_json({"reach", "weirfoot-jig", "--size", "14", "--sink", "0.3m/s", "--lead-free"});
    CHECK_FALSE(free["ways"][0]["lead"].get<bool>());
    const Json deep = run_json({"reach", "weirfoot-jig", "--size", "14", "--depth-at", "0.8m:4m"});
    CHECK(within_share(deep["ways"][0]["depth_m"].get<double>(), 0.8, 0.06));
    const Json ladder =
        run_json({"reach", "weirfoot-jig", "--size", "14", "--ladder", "100mg,150mg,250mg,400mg"});
    REQUIRE(ladder["ladder"].size() == 4);
    CHECK(ladder["ladder"][0]["head"] != ladder["ladder"][1]["head"]);
    const Ran words =
        wrapwright::test::wrapwright({"reach", "weirfoot-jig", "--size", "14", "--mass", "180mg"});
    CHECK(words.out.find("until you time one") != std::string::npos);
}

TEST_CASE("rules judge with the set's name and date, and leave with 1 beyond a limit") {
    const Ran inside = wrapwright::test::wrapwright(
        {"rules", "weirfoot-jig", "--size", "14", "--set", "slate-weir-open"});
    CHECK(inside.code == 0);
    CHECK(inside.out.find("Slate Weir Open, as of 2026-03-01") != std::string::npos);
    CHECK(inside.out.find("cannot tell") != std::string::npos);
    const Ran beyond = wrapwright::test::wrapwright(
        {"rules", "weirfoot-jig", "--size", "10", "--set", "mill-reach-evening"});
    CHECK(beyond.code == 1);
    const Json rows =
        run_json({"rules", "weirfoot-jig", "--size", "14", "--set", "slate-weir-open"});
    CHECK(rows["date"] == "2026-03-01");
    for (const Json& row : rows["rows"]) {
        const std::string verdict = row["verdict"];
        CHECK((verdict == "pass" || verdict == "fail" || verdict == "cannot tell"));
    }
}

TEST_CASE("what cannot be used is refused in one line with the remedy") {
    const Scratch scratch;
    const std::vector<std::vector<std::string>> bad{
        {"water", "weirfoot-jig", "--temp", "80"},
        {"water", "weirfoot-jig", "--temp", "warm"},
        {"water", "weirfoot-jig", "--tippet", "0.15mm"},
        {"water", "weirfoot-jig", "--tippet", "5mm:1m"},
        {"water", "weirfoot-jig", "--current", "-1"},
        {"water", "weirfoot-jig", "--depth", "0"},
        {"water", "weirfoot-jig", "--timed", "0.5m"},
        {"water", "weirfoot-jig", "--timed", "0.5m:0s"},
        {"water", "weirfoot-jig", "--weighed", "0=2g"},
        {"water", "weirfoot-jig", "--weighed", "heavy"},
        {"water", "sill-dun", "--bead", "10=1g"},
        {"water", "keepers-note"},
        {"reach", "weirfoot-jig"},
        {"reach", "weirfoot-jig", "--mass", "0mg"},
        {"reach", "weirfoot-jig", "--depth-at", "5m:4m"},
        {"reach", "weirfoot-jig", "--mass", "180mg", "--set", "nowhere"},
        {"reach", "weirfoot-jig", "--mass", "180mg", "--set",
         scratch.file("set.json", "{\"format\": \"wrapwright recipe\", \"version\": 1}")},
        {"rules", "weirfoot-jig", "--set", "nowhere"},
        {"rules", "weirfoot-jig", "--set", scratch.file("rules.json", "{}")},
    };
    for (const auto& arguments : bad) {
        const Ran ran = wrapwright::test::wrapwright(arguments);
        CAPTURE(ran.err);
        CAPTURE(arguments.back());
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK(ran.err.find('\n') == ran.err.size() - 1);
        CHECK(ran.err.find("; ") != std::string::npos);
    }
}
