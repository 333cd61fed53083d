#pragma once
// Fingers: what of a touch counts as a press. With a mouse all of this changes nothing.

#include "gui/ui.h"

namespace wrapwright {

/// How far a finger may slide and still press, in the window's units.
inline constexpr float most_slide = 16.0F;
/// How long it takes until a finger has stayed.
inline constexpr float stay_s = 0.7F;

/// Whether a finger, and not a mouse, was last at work.
[[nodiscard]] bool by_finger();

/// Whether the control of that label is pressed: by a pointer, unless it was a finger that slid (a wet
/// hand wipes, a list is pushed), or by Typing::press, which is taken. A control without a label is pressed by a pointer alone.
[[nodiscard]] bool meant(Ui& ui, std::string_view label, bool pressed);

/// Whether a finger has just stayed long on the item that was drawn last; true once for each touch.
[[nodiscard]] bool stayed();

/// Whether the press that ends in this frame was such a long one.
[[nodiscard]] bool was_long();

/// Scrolls the child window that is being drawn by the finger that pushes it.
/// Call   right after BeginChild
void push_scroll(const Box& box);

/// Which way a finger that went down in the box slides, once it does.
[[nodiscard]] Slide slide_of(const Box& box);

/// How far a finger that lies in the box has just pushed it to the right; 0 where it pushes up or down, or
/// does not push.
[[nodiscard]] float pushed_sideways(const Box& box);

} // namespace wrapwright
