#pragma once
// Numbers and names as short words: what the texts of steps and findings are put together from.

#include "core/tying/record.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// A count with its noun: "1 turn", "2.5 turns".
[[nodiscard]] std::string counted(double count, std::string_view one, std::string_view many);

/// Millimetres with two decimals and the unit.
[[nodiscard]] std::string mm_words(Length length);

/// What the recipe calls a part: its role, told apart by its id where another part has that role.
[[nodiscard]] std::string part_words(const Recipe& recipe, int part);

/// What the recipe calls a material: its text, else its id.
[[nodiscard]] std::string material_words(const Recipe& recipe, int material);

/// What a base is called: "hook" where there is one, else "rear hook" by its id and kind.
[[nodiscard]] std::string base_words(const Recipe& recipe, int base);

/// Which way a strand goes, the same for either hand: "over the top, away from you".
[[nodiscard]] std::string_view sense_words(Sense sense);

} // namespace wrapwright
