#pragma once
// The recipe's text form: JSON of our own, described by assets/recipe.schema.json.

#include "core/recipe/recipe.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// A recipe from its text form.
///
/// Unknown keys are kept. Ids are checked, amounts and places are read, nothing is computed.
/// Fails   too_large over 4 MiB or 48 levels; malformed, duplicate, unknown_word, unknown_version,
///         cyclic, out_of_range: each with line, key and remedy
[[nodiscard]] Result<Recipe> read_recipe(std::string_view text);

/// The recipe in its text form; reading it back and writing it again gives the same bytes.
[[nodiscard]] std::string write_recipe(const Recipe& recipe);

/// A measured hook from its text form (assets/hook.schema.json), completed from typical values.
[[nodiscard]] Result<Hook> read_hook(std::string_view text);

[[nodiscard]] std::string write_hook(const Hook& hook);

} // namespace wrapwright
