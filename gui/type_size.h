#pragma once
// How large letters are, so that they are read from where the person sits.

#include "core/units/quantity.h"
#include "gui/camera.h"

namespace wrapwright {

/// Height of Inter's capitals over its size as ImGui counts it, from ascent to descent.
/// Source  the typeface's own tables: OS/2 sCapHeight 2048, hhea ascender 2728 and descender -680;
///         tests/gui/type_size.cpp reads them from the file and measures the letters
inline constexpr double capital_share = 2048.0 / (2728.0 + 680.0);

/// The least angle that a capital's height fills at the eye.
/// Source  ISO 9241-303:2011 (from memory): at least 16 minutes of arc, 20 to 22 preferred
inline constexpr Angle least_letter = degrees(20.0 / 60.0);

/// Height of a letter that fills an angle at a distance.
/// Source  geometry: 2 d tan(a / 2)
[[nodiscard]] Length letter_height(Length distance, Angle angle);

/// Where nobody has measured the screen and it does not tell: 96 dots to the inch.
inline constexpr double usual_dots_per_mm = 96.0 / 25.4;

/// Sizes of letters in dots, as a font is asked for: all of them readable from that distance.
struct TypeSizes {
    float small = 18.0F; ///< what comes next, labels, lists
    float main = 28.0F;  ///< what to do now
    float huge = 90.0F;  ///< the digits of the counter
    friend bool operator==(const TypeSizes&, const TypeSizes&) = default;
};

/// The sizes for a window: none is less than what is readable, and they grow as far as the window
/// has room for many lines of `small` and some of `main`.
/// Valid   dots_per_mm > 0
[[nodiscard]] TypeSizes type_sizes(Length distance, double dots_per_mm, PixelSize window);

} // namespace wrapwright
