#pragma once
// The parts of the screen that checks a fly; placed by panel_check.cpp alone.

#include "core/check/target_marks.h"
#include "gui/fly_drawing.h"
#include "gui/widgets.h"

namespace wrapwright {

void check_targets(Ui& ui, const Box& box);
void check_photo(Ui& ui, const Box& box);
void check_size(Ui& ui, const Box& box);
void check_batch(Ui& ui, const Box& box);

/// What the photo says, what is still to be marked, and the buttons for it.
void photo_rows(Ui& ui, const Box& box);

/// A tick, a triangle or a cross, in the colour of that verdict.
void fit_sign(Ui& ui, Fit fit, const Box& box);
[[nodiscard]] Colour colour_of(const Palette& colours, Fit fit);

/// The target for a part by the standard that is picked; nothing where it says none.
[[nodiscard]] const PartTarget* target_for(const Model& model, Measured part);

/// The newest reading of a part of that fly; nothing where it was not measured.
[[nodiscard]] const FlyReading* reading_for(const Model& model, int fly, std::string_view part);

/// "too long by 1.1 mm; step 3: mend it before you go on. Cut or pinched by eye: measure ...".
[[nodiscard]] std::string advice(const Model& model, const PartTarget& target, const FitCheck& fit);

/// A line of words, as high as it needs to be.
void check_say(Ui& ui, Scroll& scroll, float room, Colour colour, std::string_view text);

/// The fly at that many dots per mm with the picked standard's targets on it; 0: as large as it fits.
void draw_checked(Ui& ui, const Box& box, float dots_per_mm);

/// Words for what was typed, one line: "tail 4.6".
void caliper_line(Ui& ui, const Box& box);

} // namespace wrapwright
