// What a table that was read would change, before it does.

#include "gui/panel_orders_parts.h"

#include <algorithm>

namespace wrapwright {

void preview_view(Ui& ui, const Box& box) {
    const BookWork& b = ui.model.book;
    Box in = box;
    const float high = control_height(ui);
    std::string words(b.table);
    words.append(": ").append(std::to_string(b.preview->added)).append(" new, ");
    words.append(std::to_string(b.preview->changed)).append(" changed, ");
    words.append(std::to_string(b.preview->same)).append(" the same, ");
    words.append(std::to_string(b.preview->refused)).append(" refused. Nothing was changed yet.");
    const float told = height_of(ui.fonts.small, words, in.width) + grid;
    write(ui, ui.fonts.small, ui.colours.ink, {in.x, in.y, in.width, told}, words);
    in.y += told;
    in.height -= told + high + grid;
    {
        Scroll scroll(ui, "preview", in);
        const auto count = static_cast<int>(b.preview->words.size());
        const float line = 1.4F * ui.sizes.small;
        const int first = std::max(0, static_cast<int>(ImGui::GetScrollY() / line) - 1);
        const int last = std::min(count, first + static_cast<int>(in.height / line) + 3);
        (void)scroll.row(line * static_cast<float>(first));
        for (int i = first; i < last; ++i) {
            const std::string& said = b.preview->words[static_cast<std::size_t>(i)];
            const bool bad = said.find(", refused: ") != std::string::npos;
            write(ui, ui.fonts.small, bad ? ui.colours.warn : ui.colours.ink, scroll.row(line),
                  said);
        }
        (void)scroll.row(line * static_cast<float>(count - last));
    }
    const float half = 0.5F * (box.width - grid);
    const float y = box.bottom() - high;
    if (button(ui, "Take these changes", {box.x, y, half, high}, true)) {
        ui.want(wish(WishKind::table_take, 1));
    }
    if (button(ui, "Leave all as it is", {box.x + half + grid, y, half, high})) {
        ui.want(wish(WishKind::table_take, 0));
    }
}

} // namespace wrapwright
