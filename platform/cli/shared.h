#pragma once
// What somebody sent, from its file: a recipe, a letter or a bundle.

#include "core/share/merge.h"

#include <string>

namespace wrapwright::cli {

/// Opens it, and says on stderr what of it could not be read; a bare name is a recipe that came along.
[[nodiscard]] Shared open_file(const std::string& said);

/// The one recipe of a file; bad_input where it holds none or several.
[[nodiscard]] SharedRecipe one_recipe(const std::string& said);

} // namespace wrapwright::cli
