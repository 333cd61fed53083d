#pragma once
// The panels: each draws its part of the model into a box, changes nothing, and adds wishes to the
// Ui.

#include "gui/ui.h"

namespace wrapwright {

/// The name of the fly, where the sitting stands, and the doors to the other screens.
void panel_header(Ui& ui, const Box& box);

/// In how many rows the header stands: ten doors in one would be too small to press in a narrow window.
[[nodiscard]] int header_rows(float width);

/// What to do now. Pressing anywhere in it moves on.
void panel_step(Ui& ui, const Box& box);

/// Whether there is room for what can hurt, and for the count.
[[nodiscard]] bool step_holds_cautions(Ui& ui, const Box& box);

/// Back, undo, and what went wrong.
void panel_acts(Ui& ui, const Box& box);

/// What is seldom wanted, beside more words: without them a key alone does it.
void panel_more_acts(Ui& ui, const Box& box);

/// Used, in this step, to come.
void panel_tally(Ui& ui, const Box& box);

/// The fly as it is now, turned by hand; the picture itself comes under wraps_image(which).
void panel_wraps(Ui& ui, const Box& box, Picture which = Picture::own);

/// Everything that a sitting needs, ticked off one by one.
void panel_lay_out(Ui& ui, const Box& box);

void panel_library(Ui& ui, const Box& box);
void panel_settings(Ui& ui, const Box& box);
void panel_keys(Ui& ui, const Box& box);

/// Keys, the trade's words, the tour.
void panel_help(Ui& ui, const Box& box);

/// The stop of the tour along the foot of a screen, where it is taken; how much of it that is.
float panel_tour(Ui& ui, const Box& all);

/// The whole tying, to scrub through, to play, to save as pictures.
void panel_film(Ui& ui, const Box& box);

/// One winding done otherwise, beside what it comes to.
void panel_what_if(Ui& ui, const Box& box);

/// What the fly weighs, how it sinks and drifts, which way up it rides.
void panel_water(Ui& ui, const Box& box);

/// Whether the fly is in proportion: targets, photo, true size, batch.
void panel_check(Ui& ui, const Box& box);

/// The recipe while it is written.
void panel_edit(Ui& ui, const Box& box);
/// Stock and orders: lines, stock, needs, days, cost, classes and swaps.
void panel_orders(Ui& ui, const Box& box);

/// What was measured of the fly in the vise, with a line for more.
void panel_caliper(Ui& ui, const Box& box);

/// What is open over the bench; nothing where none is.
void panel_sheet(Ui& ui, const Box& window);

/// The label of that picture's control.
[[nodiscard]] const char* wraps_name(Picture which);

/// The number under which the photo that is open is asked for.
inline constexpr std::uintptr_t photo_image = ~std::uintptr_t{100};

/// The number under which a picture of the wraps is asked for: whoever draws the lists puts the
/// real texture there.
[[nodiscard]] constexpr std::uintptr_t wraps_image(Picture which) {
    return ~static_cast<std::uintptr_t>(which);
}

} // namespace wrapwright
