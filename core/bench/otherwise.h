#pragma once
// What was done differently in a sitting, as edits of the recipe: the next revision.

#include "core/bench/sitting.h"
#include "core/recipe/edit.h"

namespace wrapwright {

/// Edits of the recipe that the sitting was tied from.
///
/// "rib: 7 turns ..." and "8 fibres" become the amount of that action or its part at the sitting's
/// size; every text is kept as well, word for word, at the tip of its step.
/// Valid   pattern, numbers and record are those of the sitting
[[nodiscard]] std::vector<Edit> otherwise_edits(const Pattern& pattern, const Resolved& numbers,
                                                const Tied& tied,
                                                const std::vector<Otherwise>& changes);

/// The note for that revision: "rib: 7 turns; another material".
[[nodiscard]] std::string otherwise_note(const std::vector<Otherwise>& changes);

} // namespace wrapwright
