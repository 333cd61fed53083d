#pragma once
// My version of somebody's fly.

#include "core/recipe/recipe.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// The recipe as one's own: a new id and name; where it comes from and whose it was stay in it.
///
/// Valid   the caller sees to it that the id is free: see free_id
[[nodiscard]] Recipe fork_recipe(const Recipe& recipe, std::string_view id, std::string_view name,
                                 std::string_view author);

/// "sill-dun", or "sill-dun-2" and so on where `taken` says that it is.
template <class Taken>
[[nodiscard]] std::string free_id(const std::string& id, Taken taken) {
    std::string free = id;
    for (int n = 2; taken(free); ++n) {
        free = id;
        free.append("-").append(std::to_string(n));
    }
    return free;
}

} // namespace wrapwright
