#include "gui/field.h"

#include <algorithm>
#include <utility>

namespace wrapwright {

namespace {

/// Whether a field asks for a number alone, by its hint: then a tablet shows the keypad of numbers.
bool asks_number(std::string_view hint) {
    const auto ends = [&](std::string_view unit) { return hint.ends_with(unit); };
    return ends(" mm") || ends(" mg") || ends("metres") || ends("seconds") || ends("number");
}

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
                bool many_lines) {
    const bool active = ImGui::IsItemActive();
    if (active && !ImGui::IsItemVisible()) ImGui::SetScrollHereY(0.5F); // a keyboard came up
    ui.fields.push_back(
        {std::string(label), text, in_sight(box), asks_number(label), many_lines, active});
}

void note_field_to_be(Ui& ui, std::string label, const Box& box, bool number) {
    const Box seen = in_sight(box);
    if (seen.height > 0.0F) ui.fields.push_back({std::move(label), {}, seen, number, false, false});
}

} // namespace wrapwright
