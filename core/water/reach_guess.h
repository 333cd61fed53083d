#pragma once
// Reckoning every combination of a set before any of it is tied. Internal to core/water.

#include "core/water/reach.h"

#include <array>

namespace wrapwright {

/// The acts that put the first bead and the ballast on the first base; none where there is none.
struct ReachPlaces {
    int bead_act = none, ballast_act = none;
};
[[nodiscard]] ReachPlaces reach_places(const Resolved& numbers);

[[nodiscard]] bool is_same_bead(const Stuff& a, const Stuff& b);
[[nodiscard]] bool is_same_strand(const Stuff& a, const Stuff& b);

/// The fly as it is, which the combinations are reckoned from.
struct ReachFrom {
    const Rig& rig;
    const Resolved& numbers;
    const Tied& tied;
    const FlyBody& body;
    const WetShape& shape; ///< with its drag factor
    const Water& water;
    const Fishing& fishing;
    const ReachGoal& goal;
    const Limits& limits;
};

/// One combination before it is tied.
struct Guess {
    int bead = none, strand = none, turns = 0;
    double distance = 0.0, change = 0.0;
    bool lead = false;
};

/// How far a steady speed on the tippet, or its mass, is from the goal, as a share of it.
[[nodiscard]] double distance_from(const ReachGoal& goal, const Fishing& fishing, double mass,
                                   double speed);

/// The steady speed on the fishing's tippet, midway between drawn along and bowed.
[[nodiscard]] double speed_on_tippet(const WetShape& shape, double weight, const Water& water,
                                     const Tippet& tippet);

/// All combinations that have room on the shank and pass the hook's bends.
///
/// Error   the thread and the body are taken to stay as they are
/// Cost    linear in combinations; 20 drag solutions for each bead unless a mass is the goal
[[nodiscard]] std::vector<Guess> guess_all(const ReachFrom& from, const std::vector<Stuff>& beads,
                                           const std::vector<Stuff>& strands, int most_turns);

} // namespace wrapwright
