#pragma once
// Three sets of colours, and the contrast that they promise.

#include "gui/settings.h"

#include <array>
#include <cstdint>
#include <string_view>

namespace wrapwright {

/// A colour as it is written on screens: sRGB, 8 bits each.
struct Colour {
    std::uint8_t r = 0, g = 0, b = 0;
    friend bool operator==(Colour, Colour) = default;
};

/// What a colour is for. Nothing is said by colour alone: words or shapes go with it.
struct Palette {
    Colour ground;     ///< behind everything
    Colour sheet;      ///< a panel on it
    Colour field;      ///< where something is typed or picked
    Colour line;       ///< rules and edges
    Colour ink;        ///< the step's words
    Colour soft;       ///< what comes next, labels
    Colour accent;     ///< the button that moves on; what is being done
    Colour accent_ink; ///< words on it
    Colour good;       ///< done
    Colour warn;       ///< cautions and findings
    Colour near;       ///< nearly right
};

[[nodiscard]] const Palette& palette(Theme theme);

/// Relative luminance, 0 to 1.
/// Source  WCAG 2.1, definition of relative luminance, with its threshold of 0.04045 (the corrected
///         value of IEC 61966-2-1)
[[nodiscard]] double luminance(Colour colour);

/// Contrast ratio of two colours, 1 to 21.
/// Source  WCAG 2.1, definition of contrast ratio: (L1 + 0.05) / (L2 + 0.05)
[[nodiscard]] double contrast(Colour a, Colour b);

} // namespace wrapwright
