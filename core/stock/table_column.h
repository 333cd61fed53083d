#pragma once
// A column of a table that a person edits: its name, and its text in and out.

#include "core/result.h"

#include <string>
#include <string_view>

namespace wrapwright {

template <class Row>
struct TableColumn {
    std::string_view key;   ///< in files
    std::string_view title; ///< on the screen
    bool number = false;    ///< set to the right
    bool fixed = false;     ///< told and not edited; in a file it says which row is meant
    std::string (*write)(const Row&) = nullptr;
    /// Takes what was typed into a row; a refusal leaves it as it was.
    Result<bool> (*read)(Row&, std::string_view) = nullptr;
};

/// A number typed into a field, at least `least`.
/// Fails   malformed for no number, out_of_range below `least` or above a thousand million
[[nodiscard]] Result<double> read_amount(std::string_view text, double least);

} // namespace wrapwright
