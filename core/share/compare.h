#pragma once
// Two recipes side by side: what was added, taken away, changed, in the trade's words and numbers.

#include "core/recipe/recipe.h"

#include <string>
#include <vector>

namespace wrapwright {

enum class ChangeKind : unsigned char { added, removed, changed, moved };

[[nodiscard]] std::string_view name(ChangeKind kind);

/// One difference.
struct Change {
    ChangeKind kind = ChangeKind::changed;
    std::string what;   ///< "tail, length", "step 4", "rib wire", "name"
    std::string before; ///< in words; empty where it was added
    std::string after;
    std::string by; ///< how far a number moved: "+1 turns", "-0.4 mm"; else empty
};

/// All differences, in the order of the recipe's own lists.
///
/// Parts, materials and bases are told apart by their ids, steps by what they say.
/// Shape   empty exactly where both have the same text form
/// Cost    steps of a by steps of b, up to a million; beyond it by their places
[[nodiscard]] std::vector<Change> compare(const Recipe& a, const Recipe& b);

/// "tail, length: half the shank -> 2/3 shank".
[[nodiscard]] std::string change_words(const Change& change);

} // namespace wrapwright
