#include "gui/panels.h"
#include "gui/tally_rows.h"
#include "gui/widgets.h"

#include <algorithm>

namespace wrapwright {

namespace {

bool anything(const Drawn& d) { return d.turns > 0.0 || d.count > 0.0 || d.length.si > 0.0; }

/// How much of a part is on the fly: full for what is there, open for what this step takes.
void bar(Ui& ui, const TallyRow& row, const Box& box) {
    const double all = row.used.mass.si + row.now.mass.si + row.to_come.mass.si;
    if (all <= 0.0) return;
    const float used = box.width * static_cast<float>(row.used.mass.si / all);
    const float now = box.width * static_cast<float>(row.now.mass.si / all);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.line), 2.0F);
    list.AddRectFilled(corner(box), {box.x + used, box.bottom()}, im(ui.colours.accent), 2.0F);
    if (now > 0.0F) {
        list.AddRect({box.x + used, box.y - 1.0F}, {box.x + used + now, box.bottom() + 1.0F},
                     im(ui.colours.accent), 2.0F, 0, 2.0F);
    }
}

} // namespace

void panel_tally(Ui& ui, const Box& box) {
    sheet(ui, box);
    const Box in = box.inside(1.5F * grid);
    const float line = ui.fonts.small->FontSize;
    const Palette& c = ui.colours;
    const bool batch = ui.model.flies > 1;
    const float name = 0.26F * in.width;
    constexpr int columns = 3;
    // The scroll bar takes its part at the right.
    const float wide = (in.width - name - 4.0F * grid) / static_cast<float>(columns);
    const auto cell = [&](const Box& row, int column, Colour colour, std::string_view text) {
        const float x = row.x + name + grid + static_cast<float>(column) * wide;
        return write(ui, ui.fonts.small, colour, {x, row.y, wide - grid, row.height}, text);
    };
    const Box head{in.x, in.y, in.width, line};
    write(ui, ui.fonts.small, c.soft, {head.x, head.y, name, line}, "Tally");
    cell(head, 0, c.soft, "so far");
    cell(head, 1, c.soft, "this step");
    cell(head, 2, c.soft, "to come");

    const std::vector<TallyRow> rows = tally_rows(ui.model);
    Scroll scroll(ui, "tally",
                  {in.x, in.y + line + 0.5F * grid, in.width, in.height - line - 0.5F * grid});
    const auto draw = [&](const TallyRow& row) {
        const bool inches = ui.model.settings.inches;
        const std::string cells[] = {drawn_words(row, row.used, inches),
                                     drawn_words(row, row.now, inches),
                                     drawn_words(row, row.to_come, inches)};
        const std::string all =
            batch ? "all flies to come: " + drawn_words(row, row.batch_to_come, inches) : "";
        const float all_high =
            batch ? height_of(ui.fonts.small, all, in.width - 4.0F * grid) : 0.0F;
        const float words = height_of(ui.fonts.small, row.part, name);
        float high = words + 1.5F * grid;
        for (const std::string& text : cells) {
            high = std::max(high, height_of(ui.fonts.small, text, wide - grid));
        }
        const bool now = anything(row.now);
        const Box at = scroll.row(high + all_high + grid);
        if (now) {
            ImGui::GetWindowDrawList()->AddRectFilled(
                {at.x - 0.5F * grid, at.y}, {at.right(), at.bottom() - 2.0F}, im(c.field), 4.0F);
        }
        const Box text{at.x, at.y + 0.5F * grid, at.width, at.height};
        write(ui, ui.fonts.small, c.ink, {text.x, text.y, name, text.height}, row.part);
        bar(ui, row, {text.x, text.y + words + 0.25F * grid, name - grid, 0.75F * grid});
        if (batch) {
            write(ui, ui.fonts.small, c.soft, {text.x, text.y + high, at.width, all_high}, all);
        }
        for (int i = 0; i < columns; ++i) {
            cell(text, i, i == 1 && now ? c.ink : c.soft, cells[i]);
        }
    };
    for (const TallyRow& row : rows) {
        if (anything(row.now)) draw(row);
    }
    for (const TallyRow& row : rows) {
        if (!anything(row.now)) draw(row);
    }
}

} // namespace wrapwright
