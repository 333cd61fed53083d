#include "gui/touch.h"

#include <cmath>

namespace wrapwright {

namespace {

bool slid() {
    return ImGui::GetIO().MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] > most_slide * most_slide;
}

} // namespace

bool by_finger() { return ImGui::GetIO().MouseSource == ImGuiMouseSource_TouchScreen; }

bool meant(Ui& ui, std::string_view label, bool pressed) {
    if (!label.empty() && ui.typing.press == label) {
        ui.typing.press.clear();
        return true;
    }
    return pressed && !(by_finger() && slid());
}

bool stayed() {
    const ImGuiIO& io = ImGui::GetIO();
    return by_finger() && ImGui::IsItemActive() && !slid() &&
           io.MouseDownDuration[ImGuiMouseButton_Left] >= stay_s &&
           io.MouseDownDurationPrev[ImGuiMouseButton_Left] < stay_s;
}

bool was_long() {
    return by_finger() && ImGui::GetIO().MouseDownDurationPrev[ImGuiMouseButton_Left] >= stay_s;
}

namespace {

/// How far a finger that went down in the box has pushed, all in all; nothing unless one does.
ImVec2 pushed(const Box& box) {
    const ImGuiIO& io = ImGui::GetIO();
    if (!by_finger() || !io.MouseDown[ImGuiMouseButton_Left] || !slid()) return {};
    const ImVec2 from = io.MouseClickedPos[ImGuiMouseButton_Left];
    const bool inside =
        from.x >= box.x && from.x < box.right() && from.y >= box.y && from.y < box.bottom();
    return inside ? ImVec2{io.MousePos.x - from.x, io.MousePos.y - from.y} : ImVec2{};
}

} // namespace

void push_scroll(const Box& box) {
    const ImVec2 way = pushed(box);
    // A finger that goes sideways is at a slider.
    if (std::abs(way.x) >= std::abs(way.y)) return;
    ImGui::SetScrollY(ImGui::GetScrollY() - ImGui::GetIO().MouseDelta.y);
}

Slide slide_of(const Box& box) {
    const ImVec2 way = pushed(box);
    if (way.x == 0.0F && way.y == 0.0F) return Slide::nowhere; // exact: it has not slid
    return std::abs(way.x) > std::abs(way.y) ? Slide::sideways : Slide::up_or_down;
}

float pushed_sideways(const Box& box) {
    return slide_of(box) == Slide::sideways ? ImGui::GetIO().MouseDelta.x : 0.0F;
}

} // namespace wrapwright
