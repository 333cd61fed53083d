#pragma once
// Our own signs, drawn as lines: each stands beside a word or has one as its label.

#include "gui/ui.h"

namespace wrapwright {

enum class Icon : unsigned char {
    lay_out,  ///< a list with ticks
    library,  ///< fly box with compartments
    settings, ///< three sliders
    keys,     ///< a key cap
    back,
    undo,
    broken,  ///< a parted thread
    changed, ///< a pencil
    spoilt,  ///< a crossed-out hook
    bare,    ///< a hook with nothing on it
    on,      ///< two strokes to the right
    warning, ///< a triangle
    finding, ///< a flag
    anchor,  ///< restore point: a knot
    ticked,
    empty,
    turn, ///< an arrow round a shank
    star,
    film,    ///< a strip of frames
    what_if, ///< two windings, one beside the other
    caliper, ///< two jaws about a bar
    write,   ///< a card with lines and a pen on it
    orders,  ///< a slip with lines and a mark
    drop,    ///< a drop with a line that sinks in it
};

/// Draws a sign that fills a square box.
void draw_icon(ImDrawList& list, Icon icon, const Box& box, ImU32 colour);

/// A button with a sign, and its words below it where there is room for them: they are read at
/// arm's length, where the hand is. Whether it was pressed.
bool icon_button(Ui& ui, Icon icon, std::string_view label, const Box& box);

} // namespace wrapwright
