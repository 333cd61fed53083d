#pragma once
// The browser's words for keys.

#include <imgui.h>
#include <string_view>

namespace wrapwright {

/// The key of a KeyboardEvent: by what it writes (`key`) for letters and digits, so that a layout
/// counts, else by its word or its place (`code`). ImGuiKey_None for one of no use.
/// Source  W3C UI Events KeyboardEvent key and code values
[[nodiscard]] ImGuiKey key_of(std::string_view key, std::string_view code);

} // namespace wrapwright
