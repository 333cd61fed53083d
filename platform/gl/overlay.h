#pragma once
// A scene's dimension lines, hatches and labels, as part of an ImGui list.

#include "gui/scene.h"

struct ImDrawList;
struct ImFont;

namespace wrapwright {

/// Adds the scene's overlay to a list whose points are the picture's pixels, from the upper left.
void add_overlay(const Scene& scene, ImFont& font, ImDrawList& list);

} // namespace wrapwright
