#pragma once
// Where the bases of a fly lie behind each other: hooks and shanks that joints hold together.

#include "core/tying/record.h"

#include <array>

namespace wrapwright {

inline constexpr int most_bases = 8;

/// How far the front of each base's shank lies along x; the first base's is 0.
using BaseShifts = std::array<Length, most_bases>;

/// The shifts of all bases, by the free length of their joints; those without one stand behind.
[[nodiscard]] BaseShifts base_shifts(const Pattern& pattern, const Tied& tied);

} // namespace wrapwright
