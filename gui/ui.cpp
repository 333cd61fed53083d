#include "gui/ui.h"

#include "gui/touch.h"

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

/// Where a line ends that begins there: at the last blank that fits, for numbers hold together.
/// A word wider than the box is broken by letters.
const char* line_end(ImFont* font, const char* from, const char* to, float width) {
    const float size = font->FontSize;
    const char* good = from;
    const char* at = from;
    while (at < to && *at != '\n') {
        const char* word = at;
        while (word < to && *word == ' ') ++word;
        while (word < to && *word != ' ' && *word != '\n') ++word;
        if (font->CalcTextSizeA(size, FLT_MAX, 0.0F, from, word).x > width) break;
        good = word;
        at = word;
    }
    if (good > from || at == to || *at == '\n') return good;
    const char* fits = nullptr;
    font->CalcTextSizeA(size, width, 0.0F, from, to, &fits);
    return std::max(fits, from + 1);
}

/// The beginning of the line after one that ends there.
const char* next_line(const char* end, const char* to) {
    while (end < to && *end == ' ') ++end;
    return end < to && *end == '\n' ? end + 1 : end;
}

} // namespace

ImU32 im(Colour c, float opacity) {
    return IM_COL32(c.r, c.g, c.b, static_cast<int>(std::lround(255.0F * opacity)));
}

void note_control(Ui& ui, std::string_view label, const Box& box, bool pressed) {
    ui.controls.push_back({std::string(label), box, ImGui::IsItemFocused(), pressed});
}

float reach_size(const Ui& ui) {
    constexpr double reach_m = 0.5;
    const double share = std::min(1.0, reach_m / ui.model.settings.reading_m);
    return std::max(13.0F, static_cast<float>(share) * ui.sizes.small);
}

float control_height(const Ui& ui) {
    const float wanted = std::max(least_control, ui.sizes.small + 2.0F * grid);
    return grid * std::ceil(wanted / grid);
}

float height_of(ImFont* font, std::string_view text, float width) {
    float high = 0.0F;
    auto [from, to] = span(text);
    while (from < to) {
        from = next_line(line_end(font, from, to, width), to);
        high += font->FontSize;
    }
    return high;
}

float write(Ui& ui, ImFont* font, Colour colour, const Box& box, std::string_view text,
            float size) {
    auto [from, to] = span(text);
    const float line = size > 0.0F ? size : font->FontSize;
    const auto room = [&](float dots) { return dots * font->FontSize / line; };
    float y = box.y;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto fits = [&](float top) { return top + line <= box.bottom() + 0.5F; };
    while (from < to && fits(y)) {
        const char* end = line_end(font, from, to, room(box.width));
        if (next_line(end, to) < to && !fits(y + line)) { // the last that there is room for
            constexpr const char* more = " ...";
            const float dots = font->CalcTextSizeA(line, FLT_MAX, 0.0F, more).x;
            end = line_end(font, from, to, room(std::max(0.0F, box.width - dots)));
            const float at = font->CalcTextSizeA(line, FLT_MAX, 0.0F, from, end).x;
            list.AddText(font, line, {box.x + at, y}, im(colour), more);
        }
        list.AddText(font, line, {box.x, y}, im(colour), from, end);
        from = next_line(end, to);
        y += line;
    }
    if (!text.empty()) ui.texts.push_back({std::string(text), line, from == to});
    return y - box.y;
}

bool button(Ui& ui, std::string_view label, const Box& box, bool primary) {
    const std::string name(label);
    ImGui::SetCursorScreenPos(corner(box));
    const bool pressed =
        meant(ui, name, ImGui::InvisibleButton(name.c_str(), {box.width, box.height}));
    note_control(ui, name, box);
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
    // Letters shrink to fit, as far as an arm's length allows: that is where the hand is. Where not even
    // that does, in a narrow window, a small word is still better than half a word.
    ImFont* font = ui.fonts.small;
    const auto [from, to] = span(words);
    const float room = box.width - grid;
    const float whole = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, from, to).x;
    const float fit = font->FontSize * std::min(1.0F, room / std::max(1.0F, whole));
    float size = std::max(fit, reach_size(ui));
    const ImU32 ink = im(primary ? c.accent_ink : c.ink);
    list.PushClipRect(corner(box), far_corner(box), true);
    const auto shrink_to = [&](std::string_view part) {
        const auto [a, b] = span(part);
        const float wide = font->CalcTextSizeA(size, FLT_MAX, 0.0F, a, b).x;
        if (wide > room) size = std::min(size, std::max(10.0F, size * room / wide));
    };
    const auto line = [&](std::string_view part, float y) {
        const auto [a, b] = span(part);
        const ImVec2 taken = font->CalcTextSizeA(size, FLT_MAX, 0.0F, a, b);
        list.AddText(font, size, {box.x + std::max(0.5F * grid, 0.5F * (box.width - taken.x)), y},
                     ink, a, b);
        return taken.x <= box.width;
    };
    // The blank that is nearest to the middle.
    std::size_t blank = words.find(' ', words.size() / 2);
    const std::size_t before = words.rfind(' ', words.size() / 2);
    if (before != words.npos &&
        (blank == words.npos || words.size() / 2 - before < blank - words.size() / 2)) {
        blank = before;
    }
    bool fits = true;
    if (whole * size > room * font->FontSize && blank != words.npos) { // then over two lines
        size = std::min(size, 0.48F * box.height);
        shrink_to(words.substr(0, blank));
        shrink_to(words.substr(blank + 1));
        const float y = box.y + 0.5F * box.height;
        fits = line(words.substr(0, blank), y - size);
        fits = line(words.substr(blank + 1), y) && fits;
    } else {
        shrink_to(words);
        fits = line(words, box.y + 0.5F * (box.height - size));
    }
    list.PopClipRect();
    ui.texts.push_back({std::string(words), size, fits});
    return pressed;
}

void sheet(Ui& ui, const Box& box) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.sheet), corner_radius);
    list.AddRect(corner(box), far_corner(box), im(ui.colours.line), corner_radius);
}

} // namespace wrapwright
