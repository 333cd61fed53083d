#pragma once
// Keys and pads as wishes, by the map in the settings.

#include "gui/ui.h"

namespace wrapwright {

/// Adds what the keys that went down in this frame ask for.
///
/// Between NewFrame and Render. A key that a field is typing into stays with the field; on screens
/// with lists the arrows, tab, space and enter are left to ImGui's own moving about.
void take_keys(const Model& model, Typing& typing, Wishes& wishes);

/// Whether ImGui's keys move about on this screen, rather than the map's.
[[nodiscard]] bool keys_move_about(const Model& model);

/// Our word for a key: "space", "page down", "ctrl z", "pad down"; empty for one of no use.
[[nodiscard]] std::string key_word(ImGuiKey key, bool ctrl);

} // namespace wrapwright
