#pragma once
// The views of the orders' screen; for gui/panel_orders*.cpp and panel_stock.cpp alone.

#include "gui/grid.h"
#include "gui/panels.h"
#include "gui/widgets.h"

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace wrapwright {

void stock_view(Ui& ui, const Box& box);
void needs_view(Ui& ui, const Box& box);
void days_view(Ui& ui, const Box& box);
void cost_view(Ui& ui, const Box& box);
void people_view(Ui& ui, const Box& box);
void paper_view(Ui& ui, const Box& box);
/// What a table would change, before it does.
void preview_view(Ui& ui, const Box& box);

/// Whether there is room for the table alone: a cell is typed into, and a keyboard may lie over the rest.
[[nodiscard]] bool only_table(const Ui& ui, const Box& box);

/// A line below a table: what was refused, or nothing; how high it is.
float refused_line(Ui& ui, const Box& box);

/// A field for a table's file and buttons for out and in, or what such a file would change; whether
/// that takes the whole box.
bool table_files(Ui& ui, const Box& box, const char* key);

/// The rows of a table in the order in which they are shown, found anew when book, filter or sorting
/// changed: those for which `text` of any column has the filter in it, sorted by one column's words,
/// numbers by their value.
const std::vector<int>& ordered(Ui& ui, int view, int count, int columns,
                                const std::function<bool(int)>& shown,
                                const std::function<std::string(int row, int column)>& text);

/// Takes a press on a heading: by that column, and down at the second press.
void sort_by(Ui& ui, int column);

/// A setting that is typed: its words, its key, and what it is now.
struct SettingRow {
    std::string_view words;
    const char* key;
    std::string shown;
    bool number = true;
};

/// Settings in rows, so many beside each other.
void setting_rows(Ui& ui, Scroll& scroll, std::span<const SettingRow> rows, int across);

/// One setting that is typed, with its words before it.
void setting_field(Ui& ui, const Box& box, std::string_view words, const char* key,
                   std::string_view shown, bool number = false);

/// The flies and the name of a line: "5 dozen Weirfoot Jig #14, for Slate Weir anglers".
[[nodiscard]] std::string line_words(const OrderLine& line);

} // namespace wrapwright
