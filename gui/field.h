#pragma once
// Fields of text that something outside edits: the on-screen keyboard of a tablet writes into a field
// of the page, with its accents, suggestions and selection, and what stands there comes in here.

#include "gui/ui.h"

namespace wrapwright {

/// ImGui's callback for every field (ImGuiInputTextFlags_CallbackAlways); its data is
/// Typing::outside, which it takes.
int take_outside(ImGuiInputTextCallbackData* data);

/// Notes the field that was drawn last, and keeps the one that is typed into in sight. One that takes a
/// number alone opens the keypad of numbers on a tablet.
void note_field(Ui& ui, std::string_view label, const std::string& text, const Box& box,
                bool number, bool many_lines);

/// Notes a place where a tap will open a field, which no frame has drawn yet.
void note_field_to_be(Ui& ui, std::string label, const Box& box, bool number);

} // namespace wrapwright
