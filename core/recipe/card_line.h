#pragma once
// One line as on a card, understood as what it adds to a recipe.

#include "core/recipe/edit.h"

namespace wrapwright {

/// What a line adds to a list before `index`: "tail: ginger cock fibres, half the shank" is a part
/// with its material and length, a line for the materials a material, for the steps a step in these
/// words; for the bases a hook, shank, tube or needle, for the joints one between the last two of
/// these, for the targets how long a part should be.
///
/// What is not understood stays in the words. Words that name a material of the recipe mean that
/// one.
/// Fails   malformed for a line without words
[[nodiscard]] Result<std::vector<Edit>> line_edits(const Recipe& recipe, const std::string& list,
                                                   int index, const std::string& line);

/// Where the words of an operation end and what is said of it begins, in "tie tail at bend, 3 turns".
[[nodiscard]] std::size_t operation_end(std::string_view line);

/// What is said of an operation, as members of an action's JSON: ` at bend, 3 turns` gives
/// `, "to": "bend", "turns": "3 turns"`; what is not understood is its note.
[[nodiscard]] std::string said_of_operation(const Recipe& recipe, std::string_view said);

} // namespace wrapwright
