#pragma once
// One whole screen: where each panel stands, in any shape of window.

#include "gui/panels.h"

namespace wrapwright {

/// What a frame came to.
struct Shown {
    Wishes wishes{};
    /// Where the pictures of the wraps stand; no width where one is not shown.
    std::array<Box, picture_count> wraps{};
    std::vector<DrawnControl> controls{};
    std::vector<DrawnText> texts{};
    std::vector<DrawnField> fields{};
};

/// Draws the model over the whole of ImGui's display, and takes the keys.
///
/// Between NewFrame and Render. `typing` is kept by the caller from frame to frame.
/// Valid   a window of 480 x 320 at least
[[nodiscard]] Shown draw_screen(const Model& model, Typing& typing, const Fonts& fonts,
                                const TypeSizes& sizes);

/// The sizes of letters for this model and window.
[[nodiscard]] TypeSizes sizes_for(const Model& model, PixelSize window);

} // namespace wrapwright
