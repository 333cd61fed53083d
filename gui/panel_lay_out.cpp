#include "core/tally/lay_out.h"
#include "core/units/hook_size.h"
#include "gui/panels.h"
#include "gui/widgets.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// The recipe's sizes as buttons, largest hook first; how high they are.
float size_buttons(Ui& ui, const Box& box) {
    std::vector<HookSize> sizes = ui.model.fly->pattern.recipe.size_list;
    std::sort(sizes.begin(), sizes.end());
    if (sizes.empty()) return 0.0F;
    const float high = control_height(ui);
    const float wide = std::max(2.0F * high, 5.0F * grid);
    float x = box.x;
    float y = box.y;
    for (const HookSize size : sizes) {
        if (x + wide > box.right() && x > box.x) {
            x = box.x;
            y += high + grid;
        }
        std::string label = write_hook_size(size);
        label.insert(0, 1, '#');
        if (button(ui, label, {x, y, wide, high}, size == ui.model.fly->size)) {
            ui.want(wish(WishKind::open_size, 0, write_hook_size(size)));
        }
        x += wide + grid;
    }
    return y + high + grid - box.y;
}

float width_of(const Ui& ui, const std::string& words) {
    ImFont* font = ui.fonts.small;
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, words.c_str()).x;
}

} // namespace

void panel_lay_out(Ui& ui, const Box& box) {
    sheet(ui, box);
    if (!ui.model.fly) return;
    Box in = box.inside(2.0F * grid);
    const auto take = [&](float high) {
        in.y += high;
        in.height -= high;
    };
    take(write(ui, ui.fonts.main, ui.colours.ink, in, "Lay out") + grid);
    if (ui.model.first_start) {
        take(write(
                 ui, ui.fonts.small, ui.colours.soft, in,
                 ui.model.picks_files // in a browser, at a tablet
                     ? "Tick things off one by one, then begin. A tap anywhere on the step, or the "
                       "space bar, ties the whole fly."
                     : "Space ticks things off one by one, then begins the fly. The whole fly can "
                       "be tied with that one key.") +
             grid);
    }
    const bool begun = at_work(ui.model);
    const float high = control_height(ui);
    if (!begun) {
        take(size_buttons(ui, in));
        const int step = stepper(ui, "Flies in this sitting", std::to_string(ui.model.flies),
                                 {in.x, in.y, std::min(in.width, 30.0F * ui.sizes.small), high});
        if (step != 0) ui.want(wish(WishKind::flies, ui.model.flies + step));
        take(high + grid);
    }
    const Box foot{in.x, in.bottom() - high, in.width, high};
    in.height -= high + grid;

    const std::vector<LayOutItem> items =
        lay_out_list(ui.model.fly->pattern, ui.model.fly->resolved, ui.model.fly->tied,
                     ui.model.flies, ui.model.settings.inches);
    const auto ticked = [&](std::size_t i) {
        return i < ui.model.laid_out.size() && ui.model.laid_out[i];
    };
    const std::string tool_word = "tool";
    std::size_t next = 0;
    while (next < items.size() && ticked(next)) ++next;
    {
        Scroll scroll(ui, "things", in);
        int& seen = *ImGui::GetStateStorage()->GetIntRef(ImGui::GetID("next in sight"), -1);
        if (ui.typing.fresh) seen = -1;
        for (std::size_t i = 0; i < items.size(); ++i) {
            const LayOutItem& item = items[i];
            const Icon icon = ticked(i) ? Icon::ticked : Icon::empty;
            const std::string label = item.what + "##" + std::to_string(i);
            const bool is_next = i == next;
            const std::string& amount = item.tool ? tool_word : item.amount;
            const float lines =
                height_of(ui.fonts.small, item.what,
                          in.width - width_of(ui, amount) - ui.sizes.small - 10.0F * grid);
            if (row_button(ui, label, amount, is_next, scroll.row(std::max(high, lines + grid)),
                           &icon)) {
                ui.want(wish(WishKind::tick_off, static_cast<int>(i)));
            }
            if (is_next &&
                seen != static_cast<int>(next)) { // once: a finger may push on from there
                ImGui::SetScrollHereY(0.7F);
                seen = static_cast<int>(next);
            }
            if (item.instead.empty()) continue;
            const std::string instead = "or: " + item.instead;
            const float indent = 3.0F * ui.sizes.small;
            const float room = in.width - indent - 4.0F * grid;
            const Box row = scroll.row(height_of(ui.fonts.small, instead, room) + grid);
            write(ui, ui.fonts.small, ui.colours.soft,
                  {row.x + indent, row.y + 0.5F * grid, room, row.height}, instead);
        }
    }
    const bool all = next >= items.size();
    const float half = 0.5F * (foot.width - grid);
    if (all || begun) {
        const std::string words = begun ? "Back to the fly" : "Begin";
        if (button(ui, words, {foot.x, foot.y, foot.width, high}, true)) {
            ui.want(begun ? wish(WishKind::show, static_cast<int>(Screen::bench))
                          : wish(WishKind::begin, ui.model.flies));
        }
        return;
    }
    if (button(ui, "Tick the next", {foot.x, foot.y, half, high}, true)) {
        ui.want(wish(WishKind::tick_next));
    }
    if (button(ui, "Begin now", {foot.x + half + grid, foot.y, half, high})) {
        ui.want(wish(WishKind::begin, ui.model.flies));
    }
}

} // namespace wrapwright
