#pragma once
// A recipe as a text that goes into a letter or a post and is read back exactly.
//
// People read the words; below them stands the same recipe once more, packed, between
// "[wrapwright recipe 1" and "]". Lines may be broken anew and quoted with "> ".

#include "core/recipe/recipe.h"

#include <string>
#include <string_view>

namespace wrapwright {

inline constexpr int letter_version = 1;

/// The recipe in words for people: name, credit, hook, parts, steps, notes. Nothing reads it back.
[[nodiscard]] std::string recipe_words(const Recipe& recipe);

/// The letter: the words, then the exact lines.
/// Fails   too_large for a recipe over 4 MiB
[[nodiscard]] Result<std::string> write_letter(const Recipe& recipe);

/// Whether the text holds the exact lines of a recipe.
[[nodiscard]] bool is_letter(std::string_view text);

/// The text form of the recipe in a letter, byte for byte as it was written.
///
/// Fails   not_found without exact lines: the words can be read as loose text; unknown_version for
///         those of a newer program; malformed where letters were lost; too_large
[[nodiscard]] Result<std::string> read_letter(std::string_view text);

} // namespace wrapwright
