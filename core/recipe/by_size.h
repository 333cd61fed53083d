#pragma once
// An amount changed for one size, for a size and all smaller hooks, or for all of them.

#include "core/recipe/edit.h"

namespace wrapwright {

enum class SizeScope : unsigned char { this_size, from_here_down, all };

/// The words of an amount at a size: those of its row, else those that hold everywhere.
[[nodiscard]] const std::string& words_at(const Amount& amount, HookSize size);

/// The edits that give the amount at `path` these words at that size, at it and all smaller hooks of
/// the recipe, or everywhere. Rows of equal words are joined; rows of sizes that the recipe does not
/// have stay as they are.
[[nodiscard]] std::vector<Edit> sized_edits(const Recipe& recipe, const std::string& path,
                                            const Amount& amount, HookSize size, SizeScope scope,
                                            const std::string& words);

} // namespace wrapwright
