#include "gui/widgets.h"

#include "gui/field.h"
#include "gui/touch.h"

#include <algorithm>
#include <cmath>
#include <imgui_stdlib.h>

namespace wrapwright {

namespace {

ImVec4 vec(Colour c) { return ImGui::ColorConvertU32ToFloat4(im(c)); }

/// The words before "##".
std::string_view shown(std::string_view label) { return label.substr(0, label.find("##")); }

} // namespace

void words_in(Ui& ui, std::string_view words, Colour colour, const Box& box) {
    ImFont* font = ui.fonts.small;
    float size = font->FontSize;
    const auto high_at = [&] {
        return height_of(font, words, box.width * font->FontSize / size) * size / font->FontSize;
    };
    const auto room_at = [&] { return size * std::max(1.0F, std::floor(box.height / size)); };
    if (high_at() > room_at()) size = std::min({size, reach_size(ui), 0.5F * box.height});
    const float high = std::min(high_at(), room_at());
    const float free = std::max(0.0F, 0.5F * (box.height - high));
    write(ui, font, colour, {box.x, box.y + free, box.width, high + 1.0F}, words, size);
}

Scroll::Scroll(Ui& ui, const char* name, const Box& box) : box_(box), y_(0.0F) {
    ImGui::SetCursorScreenPos(corner(box));
    ImGui::PushStyleColor(ImGuiCol_ScrollbarBg, vec(ui.colours.ground));
    ImGui::PushStyleColor(ImGuiCol_ScrollbarGrab, vec(ui.colours.soft));
    ImGui::PushStyleColor(ImGuiCol_ScrollbarGrabHovered, vec(ui.colours.ink));
    ImGui::PushStyleColor(ImGuiCol_ScrollbarGrabActive, vec(ui.colours.ink));
    ImGui::PushStyleVar(ImGuiStyleVar_ScrollbarSize, 2.0F * grid);
    ImGui::BeginChild(name, {box.width, box.height}, ImGuiChildFlags_None,
                      ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NavFlattened);
    // Or a row is taken along, or a slider.
    if (ui.typing.edit_drag.empty() && ui.typing.slide != Slide::sideways) push_scroll(box);
    y_ = ImGui::GetCursorScreenPos().y;
}

Scroll::~Scroll() {
    ImGui::SetCursorScreenPos({box_.x, y_});
    ImGui::Dummy({1.0F, 1.0F});
    ImGui::EndChild();
    ImGui::PopStyleVar();
    ImGui::PopStyleColor(4);
}

Box Scroll::row(float height) {
    const Box row{box_.x, y_, box_.width - 3.0F * grid, height};
    y_ += height;
    return row;
}

bool toggle(Ui& ui, std::string_view label, bool on, const Box& box) {
    const Icon icon = on ? Icon::ticked : Icon::empty;
    return row_button(ui, label, on ? "on" : "off", false, box, &icon);
}

int stepper(Ui& ui, std::string_view label, std::string_view value, const Box& box) {
    const float side = box.height;
    const float room = std::max(3.5F * side, 0.3F * box.width);
    const std::string name(label);
    words_in(ui, shown(label), ui.colours.ink,
             {box.x + grid, box.y, box.width - room - 2.0F * grid, side});
    const float x = box.right() - room;
    int pressed = 0;
    if (button(ui, "-##" + name, {x, box.y, side, side})) pressed = -1;
    if (button(ui, "+##" + name, {box.right() - side, box.y, side, side})) pressed = 1;
    words_in(ui, value, ui.colours.ink, {x + side + grid, box.y, room - 2.0F * side - grid, side});
    return pressed;
}

bool row_button(Ui& ui, std::string_view label, std::string_view aside, bool picked, const Box& box,
                const Icon* icon, bool faint) {
    const std::string name(label);
    ImGui::SetCursorScreenPos(corner(box));
    const bool pressed =
        meant(ui, name, ImGui::InvisibleButton(name.c_str(), {box.width, box.height}));
    note_control(ui, name, box);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Palette& c = ui.colours;
    const bool under = ImGui::IsItemHovered() || ImGui::IsItemActive();
    if (picked || under) list.AddRectFilled(corner(box), far_corner(box), im(c.field), 6.0F);
    if (picked) list.AddRectFilled(corner(box), {box.x + 4.0F, box.bottom()}, im(c.accent));
    if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible) {
        list.AddRect(corner(box), far_corner(box), im(c.ink), 6.0F, 0, 3.0F);
    }
    list.AddLine({box.x, box.bottom()}, far_corner(box), im(c.line));
    float x = box.x + 1.5F * grid;
    if (icon != nullptr) {
        const float side = 0.9F * ui.sizes.small;
        draw_icon(list, *icon, {x, box.y + 0.5F * (box.height - side), side, side}, im(c.ink));
        x += side + 1.5F * grid;
    }
    ImFont* font = ui.fonts.small;
    float aside_width = 0.0F;
    if (!aside.empty()) {
        aside_width = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, aside.data(),
                                          aside.data() + aside.size())
                          .x;
        aside_width = std::min(aside_width + 1.0F, 0.55F * box.width);
        words_in(ui, aside, c.soft,
                 {box.right() - aside_width - grid, box.y, aside_width, box.height});
    }
    words_in(ui, shown(label), faint ? c.soft : c.ink,
             {x, box.y, box.right() - aside_width - 3.0F * grid - x, box.height});
    return pressed;
}

std::optional<float> slider(Ui& ui, std::string_view label, float value, float least, float most,
                            const Box& box) {
    const std::string name(label);
    ImGui::SetCursorScreenPos(corner(box));
    const bool tapped =
        meant(ui, {}, ImGui::InvisibleButton(name.c_str(), {box.width, box.height}));
    note_control(ui, name, box, false);
    const float knob = 0.5F * std::min(box.height, least_control) - 6.0F;
    const float from = box.x + knob;
    const float length = std::max(1.0F, box.width - 2.0F * knob);
    std::optional<float> moved;
    // A finger may be about to push the list, until it is lifted or goes sideways.
    Slide& slide = ui.typing.slide;
    if (ImGui::IsItemActive() && slide == Slide::nowhere) slide = slide_of(box);
    const bool held =
        by_finger() ? slide == Slide::sideways : ImGui::IsMouseDown(ImGuiMouseButton_Left);
    // A second finger, or a palm, takes the pointer away before the button.
    if (((ImGui::IsItemActive() && held) || (by_finger() && tapped)) && ImGui::IsMousePosValid()) {
        const float share = std::clamp((ImGui::GetIO().MousePos.x - from) / length, 0.0F, 1.0F);
        moved = least + share * (most - least);
    }
    const bool focused = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
    if (focused) {
        const float step = (most - least) / 40.0F;
        if (ImGui::IsKeyPressed(ImGuiKey_LeftArrow)) moved = std::max(least, value - step);
        if (ImGui::IsKeyPressed(ImGuiKey_RightArrow)) moved = std::min(most, value + step);
    }
    if (moved) value = *moved;
    const float at = from + length * std::clamp((value - least) / (most - least), 0.0F, 1.0F);
    const float middle = box.y + 0.5F * box.height;
    const Palette& c = ui.colours;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({from, middle - 3.0F}, {from + length, middle + 3.0F}, im(c.line), 3.0F);
    list.AddRectFilled({from, middle - 3.0F}, {at, middle + 3.0F}, im(c.accent), 3.0F);
    list.AddCircleFilled({at, middle}, knob, im(c.accent));
    if (focused) list.AddCircle({at, middle}, knob + 3.0F, im(c.ink), 0, 2.0F);
    return moved;
}

namespace {

/// The colours and letters of what is typed into, while it lives.
class FieldLook {
  public:
    FieldLook(Ui& ui, float margin) {
        ImGui::PushStyleColor(ImGuiCol_FrameBg, vec(ui.colours.field));
        ImGui::PushStyleColor(ImGuiCol_Text, vec(ui.colours.ink));
        ImGui::PushStyleColor(ImGuiCol_TextDisabled, vec(ui.colours.soft));
        ImGui::PushStyleColor(ImGuiCol_Border, vec(ui.colours.soft));
        ImGui::PushStyleColor(ImGuiCol_TextSelectedBg, vec(ui.colours.line));
        ImGui::PushStyleColor(ImGuiCol_NavHighlight, vec(ui.colours.ink));
        ImGui::PushStyleVar(ImGuiStyleVar_FrameRounding, 6.0F);
        ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 1.0F);
        ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {1.5F * grid, std::max(2.0F, margin)});
        ImGui::PushFont(ui.fonts.small);
    }
    FieldLook(const FieldLook&) = delete;
    FieldLook& operator=(const FieldLook&) = delete;
    ~FieldLook() {
        ImGui::PopFont();
        ImGui::PopStyleVar(3);
        ImGui::PopStyleColor(6);
    }
};

} // namespace

bool line_edit(Ui& ui, const char* name, const char* hint, std::string& text, const Box& box,
               bool number) {
    ImGui::SetCursorScreenPos(corner(box));
    const FieldLook look(ui, 0.5F * (box.height - ui.fonts.small->FontSize));
    ImGui::SetNextItemWidth(box.width);
    if (meant(ui, name, false)) ImGui::SetKeyboardFocusHere();
    const bool ended = ImGui::InputTextWithHint(name, hint, &text,
                                                ImGuiInputTextFlags_EnterReturnsTrue |
                                                    ImGuiInputTextFlags_CallbackAlways,
                                                take_outside, &ui.typing.outside);
    note_field(ui, *hint != '\0' ? hint : name, text, box, number, false);
    note_control(ui, name, box);
    return ended;
}

bool text_edit(Ui& ui, const char* name, std::string& text, const Box& box) {
    ImGui::SetCursorScreenPos(corner(box));
    // ImGui wraps no lines in a field: at rest they are drawn here, and typed into as they are.
    const ImGuiID id = ImGui::GetID(name);
    ImGuiStorage& storage = *ImGui::GetStateStorage();
    const bool typing = storage.GetBool(id);
    const std::string shown = text;
    bool changed = false;
    {
        const FieldLook look(ui, 0.5F * grid);
        if (meant(ui, name, false)) ImGui::SetKeyboardFocusHere();
        if (!typing) ImGui::PushStyleColor(ImGuiCol_Text, ImVec4{0.0F, 0.0F, 0.0F, 0.0F});
        changed = ImGui::InputTextMultiline(name, &text, {box.width, box.height},
                                            ImGuiInputTextFlags_NoHorizontalScroll |
                                                ImGuiInputTextFlags_CtrlEnterForNewLine |
                                                ImGuiInputTextFlags_CallbackAlways,
                                            take_outside, &ui.typing.outside);
        note_field(ui, name, text, box, false, true);
        if (!typing) ImGui::PopStyleColor();
    }
    storage.SetBool(id, ImGui::IsItemActive());
    note_control(ui, name, box);
    if (!typing && !shown.empty()) {
        write(ui, ui.fonts.small, ui.colours.ink,
              {box.x + 1.5F * grid, box.y + 0.5F * grid, box.width - 3.0F * grid,
               box.height - grid + 1.0F},
              shown);
    }
    return changed;
}

float heading(Ui& ui, const Box& box, std::string_view text) {
    return write(ui, ui.fonts.small, ui.colours.soft, box, text) + grid;
}

} // namespace wrapwright
