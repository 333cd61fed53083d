// The way back on a typical stock: 20 beads, 6 strands, up to 30 turns, at 5 hook sizes, and how the
// time grows with the stock. The reference is tying combinations in full, one by one, which is what
// the search stands in for; both on the thread's CPU time, interleaved in one run. Then one answer of
// the water to a slider, against the 16.7 ms of a frame.
//
//   build/tests/bench/bench_reach [repeats]

#include "core/water/reach.h"
#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "tests/bench/measure.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

namespace {

using namespace wrapwright;
using namespace wrapwright::bench;

Recipe recipe_of(const std::string& file) {
    std::ifstream in(WW_SOURCE_DIR "/assets/" + file);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    Result<Recipe> recipe = read_recipe(text);
    if (!recipe.ok()) std::exit(1);
    return std::move(recipe).value();
}

ReachStock stock(std::size_t beads, std::size_t strands, int turns) {
    ReachStock all = stock_of(recipe_of("sets/catalogue.json").materials);
    ReachStock out;
    const auto take = [](std::vector<RecipeMaterial>& to, const std::vector<RecipeMaterial>& from,
                         std::size_t n) {
        for (std::size_t i = 0; i < n; ++i) {
            to.push_back(from[i % from.size()]);
            to.back().id.append("-").append(std::to_string(i)); // a larger stock holds some twice
        }
    };
    take(out.beads, all.beads, beads);
    take(out.strands, all.strands, strands);
    out.most_turns = turns;
    return out;
}

struct Searched {
    int combinations = 0, tied = 0;
};

Searched search_all(const Pattern& pattern, const std::vector<Rig>& rigs, const ReachStock& set,
                    const ReachGoal& goal) {
    Searched out;
    for (const Rig& rig : rigs) {
        const Result<ReachFound> found = reach(pattern, rig, set, goal, {}, 8);
        if (!found.ok()) std::exit(1);
        out.combinations += found.value().combinations;
        out.tied += found.value().tied;
        keep(&found);
    }
    return out;
}

/// Seconds of tying one combination in full and weighing it in water.
double tie_one(const Pattern& pattern, const Rig& rig, const ReachStock& set) {
    Resolved numbers;
    Tied tied;
    int n = 0;
    return seconds_of(60, [&] {
        ReachWay way;
        way.bead = n % static_cast<int>(set.beads.size());
        way.strand = n % static_cast<int>(set.strands.size());
        way.turns = 1 + n % 20;
        ++n;
        const Pattern changed = with_way(pattern, set, way);
        if (!resolve(changed, rig, numbers).ok()) std::exit(1);
        tie(changed, rig, numbers, Limits{}, tied);
        const FlyBody body = fly_body(changed, numbers, tied);
        keep(&body);
    });
}

} // namespace

int main(int argc, char** argv) {
    const int repeats = argc > 1 ? std::atoi(argv[1]) : 11;
    const Result<Pattern> linked = link(recipe_of("recipes/weirfoot-jig.json"));
    if (!linked.ok()) return 1;
    const Pattern& pattern = linked.value();
    std::vector<Rig> rigs;
    for (const HookSize size : pattern.recipe.size_list) {
        const Result<Rig> rig = make_rig(pattern, size);
        if (rig.ok() && rigs.size() < 5) rigs.push_back(rig.value());
    }
    ReachGoal mass, sink;
    mass.mass = milligrams(180.0);
    sink.sink = metres_per_second(0.3);

    std::printf("beads strands turns  combinations tied   by mass ms  by sink rate ms\n");
    const ReachStock typical = stock(20, 6, 30);
    const auto time = [&](const ReachStock& set, const ReachGoal& goal) {
        std::vector<double> ms;
        for (int i = 0; i < repeats; ++i) {
            ms.push_back(1e3 * seconds_of(1, [&] { search_all(pattern, rigs, set, goal); }));
        }
        return median(ms);
    };
    double worst = 0.0;
    constexpr int stocks[][3] = {{5, 6, 30},  {10, 6, 30}, {20, 6, 30},
                                 {40, 6, 30}, {80, 6, 30}, {20, 12, 60}};
    for (const auto& [beads, strands, turns] : stocks) {
        const ReachStock set =
            stock(static_cast<std::size_t>(beads), static_cast<std::size_t>(strands), turns);
        const Searched found = search_all(pattern, rigs, set, sink);
        const double by_mass = time(set, mass), by_sink = time(set, sink);
        std::printf("%5d %7d %5d  %12d %4d  %11.2f  %15.2f\n", beads, strands, turns,
                    found.combinations, found.tied, by_mass, by_sink);
        if (beads == 20 && strands == 6) worst = std::max(by_mass, by_sink);
    }
    goal("20 beads x 6 strands x 30 turns at 5 sizes, ms", worst, "<", 100.0, worst < 100.0);

    std::vector<double> one, dip;
    Resolved numbers;
    Tied tied;
    if (!resolve(pattern, rigs[0], numbers).ok()) return 1;
    tie(pattern, rigs[0], numbers, Limits{}, tied);
    for (int i = 0; i < repeats; ++i) {
        one.push_back(tie_one(pattern, rigs[0], typical));
        dip.push_back(seconds_of(10, [&] {
            const Result<InWater> w = in_water(pattern, numbers, tied, {});
            keep(&w);
        }));
    }
    const Searched found = search_all(pattern, rigs, typical, sink);
    const double brute = 1e3 * median(one) * found.combinations;
    std::printf(
        "one combination tied in full: %.1f us; all of them: %.0f ms, %.1f times the search\n",
        1e6 * median(one), brute, brute / worst);
    const double ms = 1e3 * median(dip);
    goal("one answer of the water to a slider, of a frame's 16.7 ms", ms / 16.7, "<", 1.0,
         ms < 16.7);
    return 0;
}
