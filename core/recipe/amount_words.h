#pragma once
// What was understood of an amount or a place, in words: shown beside what was written.

#include "core/recipe/amount.h"

#include <string>

namespace wrapwright {

/// "10 to 12 turns, 10 taken", "half the shank", "2.78 mm", "a word, no number"; empty for nothing.
[[nodiscard]] std::string understood(const Reading& reading);

/// "the barb", "1 mm behind the bead", "the front of abdomen"; empty for nothing.
[[nodiscard]] std::string understood(const Spot& spot);

} // namespace wrapwright
