#include "gui/ui.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr float corner_radius = 6.0F;

/// The text as ImGui takes it: from and to.
struct Span {
    const char* from;
    const char* to;
};

Span span(std::string_view text) { return {text.data(), text.data() + text.size()}; }

} // namespace

ImU32 im(Colour c, float opacity) {
    return IM_COL32(c.r, c.g, c.b, static_cast<int>(std::lround(255.0F * opacity)));
}

float control_height(const Ui& ui) {
    const float wanted = std::max(least_control, ui.sizes.small + 2.0F * grid);
    return grid * std::ceil(wanted / grid);
}

float height_of(ImFont* font, std::string_view text, float width) {
    const auto [from, to] = span(text);
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, width, from, to).y;
}

float write(Ui& ui, ImFont* font, Colour colour, const Box& box, std::string_view text) {
    if (text.empty()) return 0.0F;
    auto [from, to] = span(text);
    const float line = font->FontSize;
    float y = box.y;
    bool whole = true;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    while (from < to) {
        const char* end = font->CalcWordWrapPositionA(1.0F, from, to, box.width);
        const char* broken = std::find(from, end, '\n');
        end = broken;
        if (end == from && *from != '\n') ++end; // a box narrower than a letter
        const bool last = y + 2.0F * line > box.bottom() + 0.5F;
        if (y + line > box.bottom() + 0.5F) {
            whole = false;
            break;
        }
        list.AddText(font, line, {box.x, y}, im(colour), from, end);
        const char* next = end;
        while (next < to && (*next == ' ' || *next == '\n')) {
            const bool newline = *next == '\n';
            ++next;
            if (newline) break;
        }
        if (last && next < to) {
            const float at = font->CalcTextSizeA(line, FLT_MAX, 0.0F, from, end).x;
            const float dots = font->CalcTextSizeA(line, FLT_MAX, 0.0F, " ...").x;
            list.AddText(font, line, {std::min(box.x + at, box.right() - dots), y}, im(colour),
                         " ...");
        }
        from = next;
        y += line;
    }
    ui.texts.push_back({std::string(text), line, whole});
    return y - box.y;
}

bool button(Ui& ui, std::string_view label, const Box& box, bool primary) {
    const std::string name(label);
    ImGui::SetCursorScreenPos(corner(box));
    const bool pressed = ImGui::InvisibleButton(name.c_str(), {box.width, box.height});
    ui.controls.push_back({name, box});
    const bool under = ImGui::IsItemHovered();
    const bool down = ImGui::IsItemActive();
    const bool focused = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Palette& c = ui.colours;
    const Colour ground = primary ? c.accent : c.field;
    list.AddRectFilled(corner(box), far_corner(box), im(ground, down ? 0.75F : 1.0F),
                       corner_radius);
    list.AddRect(corner(box), far_corner(box), im(under || focused ? c.ink : c.line), corner_radius,
                 0,
                 focused ? 3.0F
                 : under ? 2.0F
                         : 1.0F);
    // What follows "##" tells controls of the same words apart.
    const std::string_view words = label.substr(0, label.find("##"));
    ImFont* font = ui.fonts.small;
    const auto [from, to] = span(words);
    const ImVec2 size = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, from, to);
    const float x = box.x + std::max(grid, 0.5F * (box.width - size.x));
    list.PushClipRect(corner(box), far_corner(box), true);
    list.AddText(font, font->FontSize, {x, box.y + 0.5F * (box.height - size.y)},
                 im(primary ? c.accent_ink : c.ink), from, to);
    list.PopClipRect();
    ui.texts.push_back({std::string(words), font->FontSize, size.x + grid <= box.width});
    return pressed;
}

void sheet(Ui& ui, const Box& box) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.sheet), corner_radius);
    list.AddRect(corner(box), far_corner(box), im(ui.colours.line), corner_radius);
}

} // namespace wrapwright
