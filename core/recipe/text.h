#pragma once
// The recipe's text form: JSON of our own, described by assets/recipe.schema.json.

#include "core/recipe/recipe.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// A recipe from its text form.
///
/// Unknown keys are kept; amounts and places are read; link() checks what ids refer to.
/// Fails   too_large over 4 MiB, 48 levels or 200,000 values; malformed, duplicate, unknown_word,
///         unknown_unit, unknown_version, ambiguous, out_of_range: each with line, key and remedy
[[nodiscard]] Result<Recipe> read_recipe(std::string_view text);

/// A recipe that was opened to be looked at.
struct OpenedRecipe {
    Recipe recipe{};
    std::string
        newer{}; ///< not empty: by a newer program, never to be saved by this one; why, in words
};

/// A recipe from its text form, one of a newer version too where this program understands all of it
/// that it has a meaning for.
///
/// Fails   as read_recipe does; for a newer version the message begins with that
[[nodiscard]] Result<OpenedRecipe> open_recipe(std::string_view text);

/// The recipe in its text form; reading it back and writing it again gives the same bytes.
///
/// Valid   every text in UTF-8, every unknown key's JSON one value
[[nodiscard]] std::string write_recipe(const Recipe& recipe);

/// The line of the value at a path of keys such as "steps[3].actions[0].turns", or of the innermost
/// value on the way there; 0 where the text is no JSON. It finds the line of an error of link().
[[nodiscard]] int line_at(std::string_view text, std::string_view path);

/// A measured hook from its text form (assets/hook.schema.json), completed from typical values.
///
/// Fails   as read_recipe does, and unknown_word for a key that no hook has
[[nodiscard]] Result<Hook> read_hook(std::string_view text);

/// The hook in its text form; typical and derived values are left out, for reading completes them.
[[nodiscard]] std::string write_hook(const Hook& hook);

} // namespace wrapwright
