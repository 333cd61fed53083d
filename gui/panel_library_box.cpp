// The fly box: each cell says how many there are and, after a stroke, how many there should be.

#include "gui/grid.h"
#include "gui/panel_library_parts.h"

namespace wrapwright {

namespace {

/// The columns: what a row comes to stands before the sizes, where it is in sight in any window.
enum Columns : int { pattern_column, all_column, missing_column, first_size };
static_assert(first_size == first_box_column);

std::string number_or_nothing(int number) {
    return number == 0 ? std::string() : std::to_string(number);
}

} // namespace

void library_box(Ui& ui, const Box& box) {
    const LibraryWork& work = ui.model.library;
    Box in = box;
    const auto say = [&](Colour colour, std::string_view words) {
        const float high = height_of(ui.fonts.small, words, in.width);
        write(ui, ui.fonts.small, colour, {in.x, in.bottom() - high, in.width, high + 1.0F}, words);
        in.height -= high + grid;
    };
    if (!work.box || work.box->rows.empty()) {
        return say(ui.colours.soft, "No recipe is among these; the box shows those of the list.");
    }
    const BoxGrid& of = *work.box;
    if (!work.refused.empty()) {
        say(ui.colours.warn, work.refused);
    } else if (box.height > 8.0F * control_height(ui)) { // a low window has better use for the room
        say(ui.colours.soft,
            "7/12: seven there, twelve wanted. Flies finished at the bench come in.");
    }
    const int sizes = static_cast<int>(of.sizes.size());
    std::vector<std::string> titles;
    for (const HookSize size : of.sizes) titles.push_back(write_hook_size(size).insert(0, 1, '#'));
    std::vector<GridColumn> columns{{"pattern", 17.0F, false, true, true},
                                    {"all", 6.0F, true, true, true},
                                    {"missing", 4.0F, true, true, false}};
    for (const std::string& title : titles)
        columns.push_back({title, 6.0F, true, false, false, true});
    columns.push_back({"on order", 4.0F, true, true, false});
    const auto row_at = [&](int r) -> const BoxGrid::Row& {
        return of.rows[static_cast<std::size_t>(r)];
    };
    GridRows rows;
    rows.count = static_cast<int>(of.rows.size());
    const auto size_at = [&](int c) {
        return c >= first_size && c < first_size + sizes ? c - first_size : none;
    };
    rows.text = [&](int r, int c) {
        const BoxGrid::Row& row = row_at(r);
        if (size_at(c) != none) {
            const auto s = static_cast<std::size_t>(size_at(c));
            const bool shown = row.written[s] || row.counts[s] != BoxCount{};
            return shown ? write_box_cell(row.counts[s]) : std::string();
        }
        switch (c) {
        case pattern_column: return row.pattern.name;
        case all_column: return write_box_cell(row.all);
        case missing_column: return number_or_nothing(row.missing);
        default: return number_or_nothing(row.pattern.ordered);
        }
    };
    rows.colour = [&](int r, int c) {
        if (c == pattern_column) return ui.colours.ink;
        if (size_at(c) == none) return c == missing_column ? ui.colours.warn : ui.colours.soft;
        const BoxCount& count = row_at(r).counts[static_cast<std::size_t>(size_at(c))];
        if (count.have < count.want) return ui.colours.warn;
        return count == BoxCount{} ? ui.colours.soft : ui.colours.ink;
    };
    rows.sums = {"all that is shown", write_box_cell(of.all), number_or_nothing(of.missing)};
    for (const BoxCount& sum : of.sums) rows.sums.push_back(write_box_cell(sum));
    rows.sums.push_back(number_or_nothing(of.ordered));
    const float high = control_height(ui);
    const Box foot{in.x, in.bottom() - high, in.width, high};
    in.height -= high + grid;
    const GridAnswer answer = draw_grid(ui, "box", in, columns, rows, ui.typing.grid, none, false);
    if (answer.edited && size_at(answer.column) != none && answer.row < rows.count) {
        Wish w = wish(WishKind::box_cell, size_at(answer.column), answer.text);
        w.key = row_at(answer.row).pattern.id;
        ui.want(std::move(w));
    }
    const auto at = static_cast<std::size_t>(ui.typing.grid.row);
    if (at < ui.model.library.rows.size()) library_acts(ui, foot, ui.model.library.rows[at]);
}

} // namespace wrapwright
