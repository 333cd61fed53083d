// What can be written for a printer: the open fly on a card, a handout, tags, labels, a strip.

#include "gui/panel_orders_parts.h"

#include "core/units/hook_size.h"

#include <array>

namespace wrapwright {

namespace {

struct PaperRow {
    std::string_view what, aside;
};
// In the order of Paper.
constexpr std::array<PaperRow, 8> rows{{
    {"Card", "the whole recipe on one side"},
    {"Handout", "each step with its picture, for a right-handed tier"},
    {"Handout, left", "the same with the pictures mirrored"},
    {"Toe tags", "one for each fly of a sitting"},
    {"Labels", "for a drawer and a box"},
    {"Lay-out list", "everything that a sitting needs, to tick off"},
    {"Gauge strip", "to hold the fly against"},
    {"Swap tags", "for everybody of the roster, with the fly left to fill in"},
}};

} // namespace

void paper_view(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const BookSettings& s = m.settings.book;
    const float high = control_height(ui);
    Scroll scroll(ui, "paper", box);
    const Box first = scroll.row(high + grid);
    const float half = 0.5F * (first.width - grid);
    const Box choice{first.x, first.y, half, high};
    if (button(ui, s.letter ? "Letter and 3 x 5 in cards" : "A4 and A6 cards", choice)) {
        Wish w = wish(WishKind::set, 0, s.letter ? "A4" : "letter");
        w.key = "paper";
        ui.want(std::move(w));
    }
    setting_field(ui, {first.x + half + grid, first.y, half, high}, "tied by", "tied by", s.maker);
    std::string words("No recipe is open");
    if (m.fly) {
        words = m.fly->pattern.recipe.name;
        words.append(" #").append(write_hook_size(m.fly->size)).append(", ");
        words.append(std::to_string(m.flies)).append(m.flies == 1 ? " fly" : " flies");
    }
    (void)heading(ui, scroll.row(1.6F * ui.fonts.small->FontSize), words);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const bool swap = i == static_cast<std::size_t>(Paper::swap_tags);
        if (swap ? s.roster.empty() : !m.fly) continue;
        std::string label(rows[i].what);
        if (row_button(ui, label.append("##paper"), rows[i].aside, false, scroll.row(high))) {
            ui.want(wish(WishKind::page, static_cast<int>(i)));
        }
    }
    const std::string_view note =
        "Pages go into the folder \"pages\" beside your data; any browser "
        "prints them. Print at 100 %, and measure the bar.";
    write(ui, ui.fonts.small, ui.colours.soft,
          scroll.row(height_of(ui.fonts.small, note, box.width - 3.0F * grid) + grid), note);
}

} // namespace wrapwright
