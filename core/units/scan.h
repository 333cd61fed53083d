#pragma once
// Small readers of text that the parsers of this room share. ASCII case only; no locale.

#include "core/result.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace wrapwright::detail {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }
constexpr bool is_letter(char c) { return lower(c) >= 'a' && lower(c) <= 'z'; }

/// How many bytes of blanks start at `at`: space, tab, line ends, and the no-break space U+00A0.
[[nodiscard]] std::size_t blanks_at(std::string_view text, std::size_t at);

/// The text without the blanks around it.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// The text in lower case.
[[nodiscard]] std::string lowered(std::string_view text);

/// Takes `word`, in any case, off the front of the text, and blanks after it; or does nothing.
///
/// A word that ends in a letter is not taken out of the middle of a longer one.
bool take_word(std::string_view& text, std::string_view word);

/// The text in quotation marks for a message: control bytes as '?', cut to 40 bytes.
[[nodiscard]] std::string quoted(std::string_view text);

/// The refusal of a decimal comma.
[[nodiscard]] Error decimal_comma(std::string_view text);

} // namespace wrapwright::detail
