#pragma once
// One line as on a card, understood as what it adds to a recipe.

#include "core/recipe/edit.h"

namespace wrapwright {

/// What a line adds to a list before `index`: "tail: ginger cock fibres, half the shank" is a part
/// with its material and length, a line for the materials a material, for the steps a step in these
/// words.
///
/// What is not understood stays in the words. Words that name a material of the recipe mean that
/// one.
/// Fails   malformed for a line without words
[[nodiscard]] Result<std::vector<Edit>> line_edits(const Recipe& recipe, const std::string& list,
                                                   int index, const std::string& line);

} // namespace wrapwright
