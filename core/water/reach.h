#pragma once
// The way back: which bead and how much ballast bring this recipe to a wanted mass, sink rate, depth
// or ride.

#include "core/tying/limits.h"
#include "core/water/in_water.h"

#include <optional>
#include <vector>

namespace wrapwright {

/// What there is to choose from, as a recipe lists its materials. An index names a bead or a strand.
struct ReachStock {
    std::vector<RecipeMaterial> beads{};   ///< beads and cones
    std::vector<RecipeMaterial> strands{}; ///< of ballast
    int most_turns = 30;                   ///< of ballast
};

/// The beads, cones and ballast among those materials.
[[nodiscard]] ReachStock stock_of(const std::vector<RecipeMaterial>& materials);

/// What is wanted: the first of these that is given is aimed at, a ride on top of any.
struct ReachGoal {
    std::optional<Mass> mass{};
    std::optional<Speed> sink{};   ///< on the fishing's tippet
    std::optional<Length> depth{}; ///< after `along` of the fishing's stream
    Length along = metres(4.0);
    std::optional<Ride> ride{};
    bool lead_free_first = false;
};

/// One way to reach it: a combination that was tied, and that nothing stops.
struct ReachWay {
    int bead = none;   ///< index into the stock; none: as the recipe has it, or has none
    int strand = none; ///< the same for ballast
    int turns = 0;     ///< of ballast; 0: without
    bool has_lead = false;
    bool same_bead = true, same_strand = true; ///< as the recipe has it
    Estimate<Mass> mass{};
    Estimate<Speed> sink{};
    Length depth{}; ///< after the goal's `along`
    RideCheck ride{};
    double distance = 0.0; ///< from the goal: share of it
    int troubles = 0;      ///< likely findings that the recipe as it is has not
};

/// What the search looked at.
struct ReachFound {
    std::vector<ReachWay> ways{};               ///< nearest first
    int combinations = 0;                       ///< reckoned
    int tied = 0;                               ///< of which tied in full
    bool has_bead = false, has_ballast = false; ///< whether the recipe slides on or winds one
};

/// The ways to reach a goal on that rig, at most `most`, nearest first.
///
/// All combinations are reckoned from the fly as it is, by the masses that change; the nearest are
/// tied in full, and only those that nothing stops are returned, with the record's own numbers.
/// Ranked by lead (when asked), distance in steps of 2 %, new troubles, change, distance.
/// Fails   out_of_range where the goal is none, or as resolve and in_water
[[nodiscard]] Result<ReachFound> reach(const Pattern& pattern, const Rig& rig,
                                       const ReachStock& stock, const ReachGoal& goal,
                                       const Fishing& fishing, std::size_t most,
                                       const Limits& limits = {});

/// The recipe with that way's bead and ballast in their places; its words stay as they were.
///
/// Amounts that go by the bead follow it. Without ballast, what winds and locks it is left out.
[[nodiscard]] Pattern with_way(const Pattern& pattern, const ReachStock& stock,
                               const ReachWay& way);

/// A word for the head colour of a rung, lightest fly first: white, yellow, orange, red, brown, black.
[[nodiscard]] std::string_view rung_colour(std::size_t rung, std::size_t rungs);

} // namespace wrapwright
