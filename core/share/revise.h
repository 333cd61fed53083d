#pragma once
// New recipes out of old ones: my version of somebody's fly, and what was done otherwise at the bench.

#include "core/bench/sitting.h"
#include "core/recipe/pattern.h"
#include "core/tying/record.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// The recipe as one's own: a new id and name; where it comes from and whose it was stay in it.
///
/// Valid   the caller sees to it that the id is free: see free_id
[[nodiscard]] Recipe fork_recipe(const Recipe& recipe, std::string_view id, std::string_view name,
                                 std::string_view author);

/// "sill-dun", or "sill-dun-2" and so on where `taken` says that it is.
template <class Taken>
[[nodiscard]] std::string free_id(std::string id, Taken taken) {
    std::string free = id;
    for (int n = 2; taken(free); ++n) {
        free = id;
        free.append("-").append(std::to_string(n));
    }
    return free;
}

/// The recipe with what a sitting did otherwise written into its steps.
///
/// A number of turns at an action that has turns takes their place; anything else becomes the action's
/// note. Both are told under "changes".
/// Valid   numbers and record are those of the recipe that the sitting was with
[[nodiscard]] Recipe with_otherwise(Recipe recipe, const Resolved& numbers, const Tied& tied,
                                    const std::vector<Otherwise>& otherwise);

} // namespace wrapwright
