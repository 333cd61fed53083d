#pragma once
// The table of typical hooks as a ladder: dimensions by number, and back.

#include "core/hook/hook.h"

namespace wrapwright {

/// The dimensions that the table of typical hooks holds.
enum class HookColumn : unsigned char { shank, gape, wire };

/// The numbers that a family's rows cover; a larger number is a smaller hook.
struct HookRange {
    HookSize largest;
    HookSize smallest;
};

[[nodiscard]] HookRange typical_range(HookFamily family);

/// One dimension of a family's typical hook at a number, whole or not.
///
/// Valid   outside the family's range the ladder goes on with the ratio of its last step
[[nodiscard]] Length typical_value(HookFamily family, HookColumn column, double number);

/// The number, whole or not, at which a family has that dimension: the inverse of typical_value.
///
/// Valid   value > 0
[[nodiscard]] double typical_number(HookFamily family, HookColumn column, Length value);

/// The spread of one dimension between makers at one number, as a share of it.
[[nodiscard]] double typical_spread(HookFamily family, HookColumn column);

} // namespace wrapwright
