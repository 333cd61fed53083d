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

/// The line of the caret, of a field that was drawn in that box.
Box caret_line(const std::string& text, const Box& box, int caret) {
    int line = 0;
    for (const char c : text) {
        if (caret <= 0) break;
        if ((c & 0xC0) != 0x80) --caret; // a letter, not a later byte of one
        if (c == '\n') ++line;
    }
    const float high = ImGui::GetFontSize();
    const float y = box.y + grid + high * static_cast<float>(line);
    return {box.x, std::min(y, box.bottom() - high), box.width, high};
}

/// Scrolls to where it is typed when that moves, or when a keyboard comes up over it.
void keep_in_sight(Ui& ui, const Box& at) {
    const ImDrawList& list = *ImGui::GetWindowDrawList();
    const float end = list.GetClipRectMax().y;
    const float top = at.y + ImGui::GetScrollY();
    if (end == ui.typing.sight_end && top == ui.typing.sight_top) return; // exact: as they were
    ui.typing.sight_end = end;
    ui.typing.sight_top = top;
    if (at.y < list.GetClipRectMin().y || at.bottom() > end) {
        ImGui::SetScrollFromPosY(at.y + 0.5F * at.height - ImGui::GetWindowPos().y, 0.5F);
    }
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
    ImGuiInputTextState* state = ImGui::GetInputTextState(ImGui::GetActiveID());
    if (active && !ImGui::IsItemVisible()) ImGui::SetScrollHereY(0.5F);
    if (active && state != nullptr) {
        keep_in_sight(ui, many_lines ? caret_line(text, box, state->GetCursorPos()) : box);
    }
    DrawnField field{std::string(label), text, in_sight(box), number, many_lines, active};
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
