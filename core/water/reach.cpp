#include "core/water/reach.h"

#include "core/material/substance.h"
#include "core/tying/tie.h"
#include "core/water/reach_guess.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace wrapwright {

namespace {

constexpr double band = 0.02; // of the goal: differences below it are no difference

/// Materials of a set on this rig's hook, by a recipe that has nothing else.
Result<std::vector<Stuff>> in_numbers(const Pattern& pattern, const Rig& rig,
                                      const std::vector<RecipeMaterial>& set) {
    Recipe recipe;
    recipe.id = "set";
    recipe.bases = {pattern.recipe.bases.front()};
    recipe.materials = set;
    const Result<Pattern> linked = link(std::move(recipe));
    if (!linked.ok()) return linked.error();
    Resolved numbers;
    const Result<bool> resolved =
        resolve(linked.value(), Rig{rig.size, {rig.hooks.front()}}, numbers);
    if (!resolved.ok()) return resolved.error();
    return std::move(numbers.materials);
}

/// A guess that was tied.
struct Proven {
    ReachWay way;
    double change = 0.0;
    WetShape shape;
    Estimate<Force> weight;
};

class Search {
  public:
    Search(const Pattern& pattern, const Rig& rig, const ReachStock& stock, const ReachGoal& goal,
           const Fishing& fishing, const Limits& limits)
        : pattern_(pattern), rig_(rig), stock_(stock), goal_(goal), fishing_(fishing),
          limits_(limits) {}

    Result<ReachFound> run(std::size_t most) {
        const Result<bool> resolved = resolve(pattern_, rig_, numbers_);
        if (!resolved.ok()) return resolved.error();
        tie(pattern_, rig_, numbers_, limits_, tied_);
        const Result<InWater> now = in_water(pattern_, numbers_, tied_, fishing_);
        if (!now.ok()) return now.error();
        Result<std::vector<Stuff>> beads = in_numbers(pattern_, rig_, stock_.beads);
        if (!beads.ok()) return beads.error();
        Result<std::vector<Stuff>> strands = in_numbers(pattern_, rig_, stock_.strands);
        if (!strands.ok()) return strands.error();
        beads_ = std::move(beads).value();
        strands_ = std::move(strands).value();
        places_ = reach_places(numbers_);
        water_ = now.value().water;
        factor_ = now.value().fit.factor;
        WetShape shape = wet_shape(pattern_, numbers_, tied_);
        shape.factor = factor_.value.si;
        for (const Finding& f : tied_.findings) likely_ += f.level == Level::likely ? 1 : 0;

        ReachFound out;
        out.has_bead = places_.bead_act != none;
        out.has_ballast = places_.ballast_act != none;
        std::vector<Guess> guesses = guess_all(
            {rig_, numbers_, tied_, now.value().body, shape, water_, fishing_, goal_, limits_},
            beads_, strands_, stock_.most_turns);
        out.combinations = static_cast<int>(guesses.size());
        out.ways = settle(guesses, most, out.tied);
        return out;
    }

  private:
    [[nodiscard]] auto rank(double distance, double change, bool lead, int troubles) const {
        return std::tuple(goal_.lead_free_first && lead, std::floor(distance / band), troubles,
                          change, distance);
    }

    /// Of each bead with each strand the best number of turns alone: they follow each other in the list.
    template <class Nearer>
    static void keep_best_turns(std::vector<Guess>& guesses, const Nearer& nearer) {
        std::size_t kept = 0;
        for (const Guess& g : guesses) {
            const bool same = kept > 0 && guesses[kept - 1].bead == g.bead &&
                              guesses[kept - 1].strand == g.strand;
            if (!same) {
                guesses[kept++] = g;
            } else if (nearer(g, guesses[kept - 1])) {
                guesses[kept - 1] = g;
            }
        }
        guesses.resize(kept);
    }

    /// Ties the nearest guesses in full, until there are enough that nothing stops.
    std::vector<ReachWay> settle(std::vector<Guess>& guesses, std::size_t most, int& tied) {
        const auto nearer = [&](const Guess& a, const Guess& b) {
            return rank(a.distance, a.change, a.lead, 0) < rank(b.distance, b.change, b.lead, 0);
        };
        keep_best_turns(guesses, nearer);
        const std::size_t tries = std::min(guesses.size(), 4 * most + 16);
        const auto last = guesses.begin() + static_cast<std::ptrdiff_t>(tries);
        std::partial_sort(guesses.begin(), last, guesses.end(), nearer);
        std::vector<Proven> proven;
        for (auto it = guesses.begin(); it != last && proven.size() < most + 4; ++it) {
            ++tied;
            if (std::optional<Proven> p = prove(*it)) proven.push_back(std::move(*p));
        }
        std::sort(proven.begin(), proven.end(), [&](const Proven& a, const Proven& b) {
            return rank(a.way.distance, a.change, a.way.has_lead, a.way.troubles) <
                   rank(b.way.distance, b.change, b.way.has_lead, b.way.troubles);
        });
        if (proven.size() > most) proven.resize(most);
        std::vector<ReachWay> ways;
        for (Proven& p : proven) {
            p.way.sink = sink_speed(p.shape, p.weight, water_, fishing_.tippet, factor_);
            ways.push_back(p.way);
        }
        return ways;
    }

    [[nodiscard]] const Stuff& recipe_stuff(int act) const {
        const int m = numbers_.acts[static_cast<std::size_t>(act)].material;
        return numbers_.materials[static_cast<std::size_t>(m)];
    }

    /// The guess tied in full, with the record's numbers; nothing where a finding stops it.
    std::optional<Proven> prove(const Guess& g) {
        Proven out;
        out.change = g.change;
        ReachWay& way = out.way;
        way.bead = g.bead;
        way.strand = g.strand;
        way.turns = g.turns;
        way.has_lead = g.lead;
        if (g.bead != none) {
            way.same_bead = is_same_bead(beads_[static_cast<std::size_t>(g.bead)],
                                         recipe_stuff(places_.bead_act));
        }
        if (g.strand != none) {
            way.same_strand = is_same_strand(strands_[static_cast<std::size_t>(g.strand)],
                                             recipe_stuff(places_.ballast_act));
        }
        const Pattern changed = with_way(pattern_, stock_, way);
        if (!resolve(changed, rig_, trial_numbers_).ok()) return std::nullopt;
        tie(changed, rig_, trial_numbers_, limits_, trial_);
        int likely = 0;
        for (const Finding& f : trial_.findings) {
            if (f.level == Level::stops) return std::nullopt;
            likely += f.level == Level::likely ? 1 : 0;
        }
        way.troubles = std::max(0, likely - likely_);
        const FlyBody body = fly_body(changed, trial_numbers_, trial_);
        out.shape = wet_shape(changed, trial_numbers_, trial_);
        out.weight = fly_weight(body, water_);
        WetShape drawn = out.shape;
        drawn.factor = factor_.value.si;
        const double u = speed_on_tippet(drawn, out.weight.value.si, water_, fishing_.tippet);
        const Speed fall = terminal_speed(drawn, out.weight.value, water_);
        way.mass = body.mass;
        way.depth = u > 1e-4 ? drift_depth(fishing_.stream, Speed{u}, goal_.along) : Length{};
        way.ride = ride(body, drag_centre(drawn, fall, water_, false), water_,
                        ballast_height(trial_), substance_row(Substance::lead).density.value);
        if (goal_.ride && way.ride.verdict != *goal_.ride) return std::nullopt;
        way.distance = distance_from(goal_, fishing_, way.mass.value.si, u);
        return out;
    }

    const Pattern& pattern_;
    const Rig& rig_;
    const ReachStock& stock_;
    const ReachGoal& goal_;
    const Fishing& fishing_;
    const Limits& limits_;
    Resolved numbers_, trial_numbers_;
    Tied tied_, trial_;
    std::vector<Stuff> beads_, strands_;
    ReachPlaces places_;
    Water water_;
    Estimate<Factor> factor_ = untimed;
    int likely_ = 0;
};

} // namespace

Result<ReachFound> reach(const Pattern& pattern, const Rig& rig, const ReachStock& stock,
                         const ReachGoal& goal, const Fishing& fishing, std::size_t most,
                         const Limits& limits) {
    const auto bad = [](double v, double low, double high) { return !(v >= low && v <= high); };
    const auto refused = [](std::string message, std::string remedy) {
        return Error{ErrorCode::out_of_range, std::move(message), std::move(remedy), {0, "goal"}};
    };
    if (const std::optional<Error> error = refuse(fishing)) return *error;
    if (!goal.mass && !goal.sink && !goal.depth && !goal.ride) {
        return refused("there is no goal to reach",
                       "give a mass, a sink rate, a depth after a drift, or a ride");
    }
    if ((goal.mass && bad(goal.mass->si, 1e-7, 0.1)) ||
        (goal.sink && bad(goal.sink->si, 1e-3, 5.0))) {
        return refused("no fly has that mass or sink rate",
                       "give 0.1 mg to 100 g, or 0.001 to 5 m/s");
    }
    if (goal.depth &&
        (bad(goal.depth->si, 1e-2, fishing.stream.depth.si) || bad(goal.along.si, 0.05, 1000.0))) {
        return refused("that depth is not in this stream",
                       "give a depth of 1 cm to the stream's own, after 0.05 to 1000 m");
    }
    return Search(pattern, rig, stock, goal, fishing, limits).run(most);
}

} // namespace wrapwright
