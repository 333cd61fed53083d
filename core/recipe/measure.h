#pragma once
// What an amount measures where it is written, and what its words mean there: for files and for the
// fields of an editor.

#include "core/recipe/amount.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// What an amount may be, so that a number of turns in millimetres is refused where it is written.
enum class AmountOf : unsigned char { turns, count, length, linear_density, mass, duration, size };

/// What a measure is called in messages, and how one is written.
struct MeasureWords {
    std::string_view wanted;
    std::string_view example;
};
[[nodiscard]] MeasureWords words_of(AmountOf measure);

/// What an amount's words mean as that measure: read_amount, where a bare number takes the measure's
/// unit.
///
/// Fails   as read_amount does; unknown_unit for what measures something else or has no unit; for a
///         size as parse_hook_size
[[nodiscard]] Result<Reading> read_measure(std::string_view text, AmountOf measure,
                                           const std::vector<std::string>& parts);

/// What a field made of what somebody typed into it.
struct TypedAmount {
    Amount amount{}; ///< the words as typed; a number beside them where they carry none plainly
    std::string understood{};     ///< one short line for what stands beside the field
    bool number = false;          ///< false: it stays a word, which is fine too
    std::optional<Error> error{}; ///< why the words cannot stand; `amount` keeps them even so
};

/// What a field of that measure makes of any text.
///
/// Beyond what a file may hold: of a length a bare .015 or 7/64 is in inches, as wire and beads are
/// sold, and the number is put beside the words.
/// Valid   parts: the ids that "same as body" may name
[[nodiscard]] TypedAmount type_amount(std::string_view text, AmountOf measure,
                                      const std::vector<std::string>& parts);

} // namespace wrapwright
