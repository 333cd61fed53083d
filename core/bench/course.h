#pragma once
// The course of a sitting: which action of which fly comes after which, for a batch.

#include "core/tying/record.h"

#include <vector>

namespace wrapwright {

/// One action at one fly: where a person can stand in a sitting.
struct Stop {
    int fly = 0;
    int moment = 0; ///< index into Tied::moments
    friend bool operator==(const Stop&, const Stop&) = default;
};

/// The stops of a batch in the order in which they are worked.
///
/// Steps for the whole batch that come first are done for every fly before the first fly goes on;
/// those that come last are done for every fly after the last one. Both keep the recipe's order of
/// steps: one step for all flies, then the next step for all flies.
/// Valid   flies >= 1
[[nodiscard]] std::vector<Stop> course_of(const Pattern& pattern, const Tied& tied, int flies);

} // namespace wrapwright
