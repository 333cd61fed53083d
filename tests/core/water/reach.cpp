#include "core/water/reach.h"

#include "core/recipe/text.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <cmath>
#include <doctest/doctest.h>
#include <fstream>
#include <iterator>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

ReachStock catalogue() {
    std::ifstream file(WW_SOURCE_DIR "/assets/sets/catalogue.json");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    const Result<Recipe> set = read_recipe(text);
    REQUIRE(set.ok());
    return stock_of(set.value().materials);
}

ReachFound found(const Pattern& pattern, HookSize size, const ReachGoal& goal) {
    const Result<Rig> rig = make_rig(pattern, size);
    REQUIRE(rig.ok());
    Result<ReachFound> out = reach(pattern, rig.value(), catalogue(), goal, {}, 8);
    REQUIRE(out.ok());
    return std::move(out).value();
}

} // namespace

TEST_CASE("a mass in reach is reached, by flies that nothing stops") {
    const Pattern pattern = demo("weirfoot-jig");
    const ReachStock stock = catalogue();
    for (const HookSize size : pattern.recipe.size_list) {
        const Rig rig = make_rig(pattern, size).value();
        Resolved now;
        REQUIRE(resolve(pattern, rig, now).ok());
        Tied as_it_is;
        tie(pattern, rig, now, Limits{}, as_it_is);
        ReachGoal goal;
        goal.mass = 1.2 * as_it_is.mass.value;
        const ReachFound out = found(pattern, size, goal);
        REQUIRE(out.ways.size() >= 3);
        CHECK(out.combinations > 500);
        for (const ReachWay& way : out.ways) {
            // Its numbers are those of the fly that it makes, tied anew.
            const Pattern changed = with_way(pattern, stock, way);
            Resolved numbers;
            REQUIRE(resolve(changed, rig, numbers).ok());
            Tied tied;
            tie(changed, rig, numbers, Limits{}, tied);
            CHECK(tied.mass == way.mass);
            for (const Finding& f : tied.findings) CHECK(f.level != Level::stops);
            CHECK(within(way.distance, std::abs(std::log(way.mass.value / *goal.mass)), 1e-12));
        }
        // 3 %: thread and body change a little with what lies below them.
        CHECK(out.ways.front().distance < 0.03);
    }
}

TEST_CASE("no combination of a small set is nearer than the first that is found") {
    // Every combination tied in full, one by one: the brute force that the search stands in for.
    const Pattern pattern = demo("weirfoot-jig");
    const HookSize size{14};
    const Rig rig = make_rig(pattern, size).value();
    ReachStock stock = catalogue();
    std::erase_if(stock.beads, [](const RecipeMaterial& m) {
        return m.id != "brass-2-8" && m.id != "tungsten-2-4" && m.id != "tungsten-2-8";
    });
    std::erase_if(stock.strands,
                  [](const RecipeMaterial& m) { return m.id != "tin-010" && m.id != "tin-020"; });
    stock.most_turns = 12;
    ReachGoal goal;
    goal.mass = milligrams(171.0);
    double nearest = 10.0;
    for (int b = 0; b < 3; ++b) {
        for (int s = 0; s < 2; ++s) {
            for (int n = 0; n <= 12; ++n) {
                ReachWay way;
                way.bead = b;
                way.strand = n == 0 ? none : s;
                way.turns = n;
                const Pattern changed = with_way(pattern, stock, way);
                Resolved numbers;
                if (!resolve(changed, rig, numbers).ok()) continue;
                Tied tied;
                tie(changed, rig, numbers, Limits{}, tied);
                bool stopped = false;
                for (const Finding& f : tied.findings) stopped |= f.level == Level::stops;
                if (stopped) continue;
                nearest = std::min(nearest, std::abs(std::log(tied.mass.value / *goal.mass)));
            }
        }
    }
    const Result<ReachFound> out = reach(pattern, rig, stock, goal, {}, 6);
    REQUIRE(out.ok());
    double best = 10.0;
    for (const ReachWay& way : out.value().ways) best = std::min(best, way.distance);
    // 2 %: differences below that are ranked by how little changes, and by what the guess leaves out.
    CHECK(best <= nearest + 0.02);
}

TEST_CASE("a sink rate, a depth and a ride are reached too") {
    const Pattern pattern = demo("weirfoot-jig");
    ReachGoal sink;
    sink.sink = metres_per_second(0.3);
    // The weight between rows of the guess's table, and the body's own change: 5 %.
    CHECK(within_share(found(pattern, HookSize{14}, sink).ways.front().sink.value.si, 0.3, 0.05));
    ReachGoal deep;
    deep.depth = metres(0.8);
    deep.along = metres(4.0);
    CHECK(within_share(found(pattern, HookSize{14}, deep).ways.front().depth.si, 0.8, 0.06));
    ReachGoal up;
    up.mass = milligrams(200.0);
    up.ride = Ride::point_up;
    for (const ReachWay& way : found(pattern, HookSize{14}, up).ways) {
        CHECK(way.ride.verdict == Ride::point_up);
    }
}

TEST_CASE("lead comes last when asked, and the recipe's own bead first among equals") {
    const Pattern pattern = demo("weirfoot-jig");
    ReachGoal goal;
    goal.mass = milligrams(215.0);
    goal.lead_free_first = true;
    const ReachFound out = found(pattern, HookSize{14}, goal);
    bool lead = false;
    for (const ReachWay& way : out.ways) {
        CHECK_FALSE((lead && !way.has_lead));
        lead = way.has_lead;
    }
    CHECK_FALSE(out.ways.front().has_lead);
}

TEST_CASE("a ladder climbs, with a head colour of its own for each rung") {
    const Pattern pattern = demo("weirfoot-jig");
    double before = 0.0;
    std::vector<std::string_view> colours;
    const double rungs[] = {100.0, 150.0, 250.0, 400.0};
    for (std::size_t i = 0; i < 4; ++i) {
        ReachGoal goal;
        goal.mass = milligrams(rungs[i]);
        const ReachFound out = found(pattern, HookSize{14}, goal);
        REQUIRE_FALSE(out.ways.empty());
        CHECK(out.ways.front().mass.value.si > before);
        before = out.ways.front().mass.value.si;
        colours.push_back(rung_colour(i, 4));
    }
    std::sort(colours.begin(), colours.end());
    CHECK(std::unique(colours.begin(), colours.end()) == colours.end());
}

TEST_CASE("no goal, a goal that no fly reaches and a set of nothing are said plainly") {
    const Pattern pattern = demo("weirfoot-jig");
    const Rig rig = make_rig(pattern, HookSize{14}).value();
    ReachGoal goal;
    CHECK_FALSE(reach(pattern, rig, catalogue(), goal, {}, 8).ok());
    goal.mass = Mass{std::nan("")};
    CHECK_FALSE(reach(pattern, rig, catalogue(), goal, {}, 8).ok());
    goal.mass = grams(500.0);
    CHECK_FALSE(reach(pattern, rig, catalogue(), goal, {}, 8).ok());
    goal.mass = milligrams(200.0);
    const Result<ReachFound> nothing = reach(pattern, rig, {}, goal, {}, 8);
    REQUIRE(nothing.ok());
    CHECK(nothing.value().ways.empty());
}
