#pragma once
// Pieces of an amount or a place, taken off the front of a text. Only for the readers of this room.

#include "core/recipe/amount.h"
#include "core/result.h"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::detail {

using PartIds = std::vector<std::string>;

/// Takes the first of the phrases that the text starts with; longer ones go before their
/// beginnings.
///
/// A blank in a phrase stands for one or more blanks or a hyphen.
bool take_any(std::string_view& rest, std::initializer_list<std::string_view> phrases);

/// Takes the longest part id that the text starts with; hyphens and blanks are the same.
[[nodiscard]] std::optional<std::string> take_part(std::string_view& rest, const PartIds& parts);

/// Takes an amount: a number or a range with what it counts or measures, or a share of something.
///
/// Nothing is taken where there is none.
/// Fails   out_of_range for a number below 0 or beyond use; malformed for what is no number at all
[[nodiscard]] Result<std::optional<Reading>> take_amount(std::string_view& rest,
                                                         const PartIds& parts);

[[nodiscard]] bool has_digit(std::string_view text);

} // namespace wrapwright::detail
