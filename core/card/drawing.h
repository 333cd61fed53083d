#pragma once
// The fly as lines on paper, from the same record as everything else.

#include "core/card/page.h"
#include "core/geometry/fly/outline.h"

namespace wrapwright {

/// Draws the fly so many times life size, its eye's back at a place; mirrored for the other hand.
void draw_outline(Drawing& drawing, const FlyOutline& fly, double x, double y, double fold,
                  bool mirrored = false);

/// The bounds of an outline with everything that stands out of it, mm.
struct OutlineBounds {
    double left = 0.0, right = 0.0, top = 0.0, bottom = 0.0; ///< from the eye's back; y down
};
[[nodiscard]] OutlineBounds bounds_of(const FlyOutline& fly);

} // namespace wrapwright
