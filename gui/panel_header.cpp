#include "core/units/hook_size.h"
#include "gui/icons.h"
#include "gui/panels.h"

#include <algorithm>
#include <array>
#include <span>

namespace wrapwright {

namespace {

struct Door {
    Icon icon;
    Command command;
    std::string_view label;
};

constexpr std::array<Door, 10> doors{{
    {Icon::film, Command::film, "Film"},
    {Icon::what_if, Command::what_if, "What if"},
    {Icon::drop, Command::in_water, "Water"},
    {Icon::caliper, Command::check, "Check"},
    {Icon::write, Command::write, "Write"},
    {Icon::orders, Command::orders, "Orders"},
    {Icon::lay_out, Command::lay_out, "Lay out"},
    {Icon::library, Command::library, "Recipes"},
    {Icon::settings, Command::settings, "Settings"},
    {Icon::keys, Command::keys, "Keys"},
}};

struct ActRow {
    Icon icon;
    Command command;
    std::string_view label;
};

constexpr std::array<ActRow, 5> usual_acts{{
    {Icon::back, Command::back, "Back"},
    {Icon::undo, Command::undo, "Undo"},
    {Icon::broken, Command::thread_broke, "Thread broke"},
    {Icon::changed, Command::otherwise, "Differently"},
    {Icon::spoilt, Command::spoilt, "Spoilt"},
}};

constexpr std::array<ActRow, 4> more_acts{{
    {Icon::on, Command::skip, "Skip the count"},
    {Icon::turn, Command::count_by_itself, "Count by itself"},
    {Icon::caliper, Command::caliper, "Measure"},
    {Icon::bare, Command::strip, "Strip"},
}};

float width_of(ImFont* font, std::string_view words) {
    return font
        ->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, words.data(), words.data() + words.size())
        .x;
}

/// The size, `most` or less, at which words stand in a box with none of them broken; no less than can be
/// read at all.
float size_in(ImFont* font, std::string_view words, float room, float high, float most) {
    constexpr float least = 11.0F;
    float longest = 0.0F;
    for (std::size_t from = 0; from < words.size();) {
        const std::size_t to = std::min(words.find(' ', from), words.size());
        longest = std::max(longest, width_of(font, words.substr(from, to - from)));
        from = to + 1;
    }
    float size = std::min(most, font->FontSize * room / std::max(1.0F, longest));
    const auto tall = [&] {
        return font->CalcTextSizeA(size, FLT_MAX, room, words.data(), words.data() + words.size())
            .y;
    };
    while (size > least && tall() > high) size *= 0.95F;
    return std::max(size, least);
}

} // namespace

int header_rows(float width) {
    return width < static_cast<float>(doors.size()) * 1.2F * least_control ? 2 : 1;
}

void panel_header(Ui& ui, const Box& box) {
    const bool two = header_rows(box.width) == 2;
    const float high = two ? 0.5F * (box.height - grid) : box.height;
    const float side =
        two ? box.width / 6.0F
            : std::min(std::max(high, std::min(2.6F * ui.sizes.small, 0.085F * box.width)),
                       box.width / static_cast<float>(doors.size()));
    // From the right, the last ones first; of two rows the upper one has four, and the name.
    float x = box.right();
    float y = two ? box.y + high + grid : box.y;
    for (std::size_t i = doors.size(); i-- > 0;) {
        if (two && i == 3) {
            x = box.right();
            y = box.y;
        }
        x -= side;
        if (icon_button(ui, doors[i].icon, doors[i].label, {x, y, side, high})) {
            ui.want(doors[i].command);
        }
    }
    std::string words = "Wrapwright";
    if (ui.model.fly) {
        const Recipe& recipe = ui.model.fly->pattern.recipe;
        words = recipe.name.empty() ? recipe.id : recipe.name;
        words += "  #" + write_hook_size(ui.model.fly->size);
        if (ui.model.fly->own) words += ", measured";
    }
    if (ui.model.read_only) words += "  (looking on)";
    ImFont* font = ui.fonts.small;
    const float room = x - box.x - 2.0F * grid;
    // Where the doors leave little room the name stands in two lines, as small as they have to be.
    if (width_of(font, words) > room) {
        const float size = size_in(font, words, room, high, reach_size(ui));
        const ImVec4 clip(box.x, box.y, x - 0.5F * grid, box.y + high);
        ImGui::GetWindowDrawList()->AddText(
            font, size, {box.x + grid, box.y + 0.5F * std::max(0.0F, high - 2.0F * size)},
            im(ui.colours.ink), words.data(), words.data() + words.size(), room, &clip);
        ui.texts.push_back({words, size, true});
        return;
    }
    const float line = font->FontSize;
    write(ui, font, ui.colours.ink, {box.x + grid, box.y + 0.5F * (high - line), room, line},
          words);
}

namespace {

void row_of_acts(Ui& ui, const Box& box, std::span<const ActRow> acts) {
    const auto count = static_cast<float>(acts.size());
    const float gaps = (count - 1.0F) * grid;
    // Words beside the signs where all of them fit, else below them: all as wide, unless that cuts one.
    float wanted = 0.0F;
    float captions = 0.0F;
    float longest = 0.0F;
    const float sign = 1.1F * ui.sizes.small;
    const auto caption = [&](std::string_view label) {
        return width_of(ui.fonts.small, label) * reach_size(ui) / ui.fonts.small->FontSize +
               3.0F * grid;
    };
    for (const ActRow& act : acts) {
        wanted += width_of(ui.fonts.small, act.label) + sign + 4.0F * grid;
        captions += caption(act.label);
        longest = std::max(longest, caption(act.label));
    }
    const bool words = wanted + gaps <= box.width;
    const float spare = words ? (box.width - wanted - gaps) / count : 0.0F;
    const float room = box.width - gaps;
    const auto share = [&](std::string_view label) {
        return longest <= room / count ? 1.0F / count : caption(label) / captions;
    };
    float x = box.x;
    for (const ActRow& act : acts) {
        const float wide = words ? width_of(ui.fonts.small, act.label) + sign + 4.0F * grid + spare
                                 : room * share(act.label);
        const Box at{x, box.y, wide, box.height};
        x += wide + grid;
        if (!words) {
            sheet(ui, at);
            if (icon_button(ui, act.icon, act.label, at)) ui.want(act.command);
            continue;
        }
        if (button(ui, "##" + std::string(act.label), at)) ui.want(act.command);
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const float from = at.x + 1.5F * grid + 0.5F * spare;
        draw_icon(list, act.icon, {from, at.y + 0.5F * (at.height - sign), sign, sign},
                  im(ui.colours.ink));
        const float line = ui.fonts.small->FontSize;
        write(ui, ui.fonts.small, ui.colours.ink,
              {from + sign + grid, at.y + 0.5F * (at.height - line), at.width, line}, act.label);
    }
}

} // namespace

void panel_acts(Ui& ui, const Box& box) { row_of_acts(ui, box, usual_acts); }

void panel_more_acts(Ui& ui, const Box& box) { row_of_acts(ui, box, more_acts); }

} // namespace wrapwright
