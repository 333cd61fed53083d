#pragma once
// Colour words of recipes as light: what "brown olive" looks like in a picture.

#include "core/geometry/fly/model.h"
#include "core/recipe/recipe.h"

#include <array>
#include <optional>
#include <string_view>

namespace wrapwright {

/// Linear RGB, 0 to 1.
using Colour = std::array<float, 3>;

/// The linear colour of an sRGB triple such as 0xB87333.
/// Source  IEC 61966-2-1:1999, the inverse of its transfer function
[[nodiscard]] Colour linear_colour(unsigned srgb);

/// The colour of "#rrggbb", or of the colour words in a text; nothing where there are none.
///
/// Two words mix ("brown olive"), the last one weighs more; "dark", "pale", "fluorescent" and the
/// like change what they stand with. Case does not matter; unknown words are passed over.
[[nodiscard]] std::optional<Colour> colour_of_words(std::string_view text);

/// What a material looks like: its tint, else its colour word, else a word in its text, else the
/// usual look of its kind and substance.
[[nodiscard]] Colour colour_of(const RecipeMaterial& material);

/// How its surface takes light.
[[nodiscard]] Look look_of(const RecipeMaterial& material);

/// A darker (below 1) or lighter (above 1) shade of a colour.
[[nodiscard]] Colour shade(const Colour& colour, float by);

/// A mix of two: 0 gives the first, 1 the second.
[[nodiscard]] Colour mix(const Colour& a, const Colour& b, float share);

} // namespace wrapwright
