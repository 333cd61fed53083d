#pragma once
// The views of the library; for gui/panel_library*.cpp alone.

#include "gui/panels.h"
#include "gui/widgets.h"

namespace wrapwright {

/// The recipes as a list. `entered`: the search was ended with enter.
void library_list(Ui& ui, const Box& box, bool entered);

/// Of the box: the first one that is typed into.
inline constexpr int first_box_column = 3;

/// The recipes as a fly box: patterns by sizes, what is there and what is wanted.
void library_box(Ui& ui, const Box& box);

/// What is done with a recipe that is picked, in one row.
void library_acts(Ui& ui, const Box& foot, const LibraryRow& picked);

} // namespace wrapwright
