#pragma once
// What the number of an amount counts, measures or is a share of. Only for the readers of this
// room.

#include "core/recipe/amount.h"
#include "core/units/size_text.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::detail {

/// A unit of an amount; a bare number has the default.
struct AmountUnit {
    Unit unit = Unit::count;
    Basis basis = Basis::none;
    std::string part{};  ///< id for Basis::part
    double factor = 1.0; ///< SI for one of it, where none of the next three says so exactly
    std::optional<LengthUnit> length{};
    std::optional<MassUnit> mass{};
    std::optional<LinearDensityUnit> linear{};
};

/// So many of the unit in SI, rounded as the makers of core/units round.
[[nodiscard]] double si(double number, const AmountUnit& unit);

[[nodiscard]] AmountUnit wire_gauge_unit();

/// Takes a unit off the front of the text: "mm", "open turns", "fibres", "eye lengths", "shank".
[[nodiscard]] std::optional<AmountUnit> take_unit(std::string_view& rest,
                                                  const std::vector<std::string>& parts);

/// Takes what a share is of: "shank", "hook gape", "bead diameter", a part.
[[nodiscard]] std::optional<AmountUnit>
take_share(std::string_view& rest, const std::vector<std::string>& parts, bool part_first);

} // namespace wrapwright::detail
