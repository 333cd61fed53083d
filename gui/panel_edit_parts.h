#pragma once
// The parts of the screen on which a recipe is written; placed by panel_edit.cpp alone.

#include "gui/edit_fields.h"
#include "gui/widgets.h"

namespace wrapwright {

/// The recipe as a list: parts, steps with their actions, materials.
void edit_outline(Ui& ui, const Box& box);

/// What is picked, field by field, each with what was understood.
void edit_fields(Ui& ui, const Box& box);

/// What can be done next at a step, and why the rest cannot.
void edit_choices(Ui& ui, const Box& box);

/// The hook with its landmarks, to press a place on; how high it is drawn is the box's.
void edit_hook(Ui& ui, const Box& box, const std::vector<Field>& fields);

/// All sizes beside each other.
void edit_sizes(Ui& ui, const Box& box);

/// A text of any shape, and what is read in it.
void edit_loose(Ui& ui, const Box& box);

/// What was saved when, and what was changed since.
void edit_versions(Ui& ui, const Box& box);

/// What is found: why it cannot be run, or the findings of the step that is picked; how high it is.
float edit_findings(Ui& ui, const Box& box);

} // namespace wrapwright
