#pragma once
// The fly's diameter along the wire: what every later winding lies on.

#include "core/units/quantity.h"

#include <algorithm>
#include <array>

namespace wrapwright {

/// Cells of a profile: fine enough that one is narrower than a flat thread on any usual hook.
inline constexpr int profile_cells = 192;

/// The diameter in equal cells from the back of the eye to halfway round the bend.
///
/// Units   m
struct Profile {
    Length cell{};                                ///< width of one
    std::array<double, profile_cells> diameter{}; ///< of each, at its middle

    [[nodiscard]] int index(Length at) const {
        return std::clamp(static_cast<int>(at.si / cell.si), 0, profile_cells - 1);
    }
    [[nodiscard]] Length at(int i) const { return (i + 0.5) * cell; }
    [[nodiscard]] Length end() const { return profile_cells * cell; }
    /// The diameter at a place, linear between the middles of cells.
    [[nodiscard]] Length diameter_at(Length place) const {
        const double x = std::clamp(place.si / cell.si - 0.5, 0.0, profile_cells - 1.0);
        const int i = std::min(static_cast<int>(x), profile_cells - 2);
        const double f = x - i;
        const auto k = static_cast<std::size_t>(i);
        return {diameter[k] * (1.0 - f) + diameter[k + 1] * f};
    }
};

} // namespace wrapwright
