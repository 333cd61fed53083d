#pragma once
// Hook sizes as numbers on packets: labels that order hooks of one family, never millimetres.

#include <compare>

namespace wrapwright {

/// A hook size: 14 is #14, 1 is #1, and above it 0 is 1/0, -1 is 2/0, -2 is 3/0.
///
/// A larger number is a smaller hook all the way, so plain integers order the whole ladder.
struct HookSize {
    int number = 14;
    friend constexpr auto operator<=>(HookSize, HookSize) = default;
};

/// Whether hook a is larger than hook b, as their labels say.
constexpr bool larger(HookSize a, HookSize b) { return a.number < b.number; }

} // namespace wrapwright
