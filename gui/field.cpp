#include "gui/field.h"

#include <algorithm>
#include <imgui_internal.h>
#include <utility>

namespace wrapwright {

namespace {

/// The part of a box that is not scrolled away: elsewhere other things are pressed.
Box in_sight(const Box& box) {
    const ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 least = list.GetClipRectMin();
    const ImVec2 most = list.GetClipRectMax();
    const float y = std::max(box.y, least.y);
    return {box.x, y, box.width, std::max(0.0F, std::min(box.bottom(), most.y) - y)};
}

} // namespace

int take_outside(ImGuiInputTextCallbackData* data) {
    auto& outside = *static_cast<std::optional<OutsideText>*>(data->UserData);
    if (!outside) return 0;
    data->DeleteChars(0, data->BufTextLen);
    data->InsertChars(0, outside->text.c_str());
    const auto at = [&](std::size_t byte) {
        return static_cast<int>(std::min(byte, outside->text.size()));
    };
    data->SelectionStart = at(outside->from);
    data->SelectionEnd = data->CursorPos = at(outside->to);
    outside.reset();
    return 0;
}

void note_field(Ui& ui, std::string_view label, const std::string& text, const Box& box,
                bool number, bool many_lines) {
    const bool active = ImGui::IsItemActive();
    if (active && !ImGui::IsItemVisible()) ImGui::SetScrollHereY(0.5F); // a keyboard came up
    DrawnField field{std::string(label), text, in_sight(box), number, many_lines, active};
    ImGuiInputTextState* state = ImGui::GetInputTextState(ImGui::GetActiveID());
    const bool by_hand =
        ImGui::IsMouseDown(ImGuiMouseButton_Left) || ImGui::IsMouseReleased(ImGuiMouseButton_Left);
    if (active && state != nullptr && by_hand) {
        field.caret_to = state->GetCursorPos();
        field.caret_from = state->HasSelection() ? state->GetSelectionStart() : field.caret_to;
    }
    ui.fields.push_back(std::move(field));
}

void note_field_to_be(Ui& ui, std::string label, const Box& box, bool number) {
    const Box seen = in_sight(box);
    if (seen.height > 0.0F) ui.fields.push_back({std::move(label), {}, seen, number, false, false});
}

} // namespace wrapwright
