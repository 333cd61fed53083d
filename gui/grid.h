#pragma once
// A table whose cells are typed into, as quick as a spreadsheet: arrows walk, typing writes, enter
// goes down, tab goes on, escape leaves the cell as it was. A finger taps a cell to write into it and
// pushes rows and columns.

#include "gui/ui.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

struct GridColumn {
    std::string_view title{};
    float letters = 8.0F; ///< least width, in letters
    bool number = false;
    bool fixed = false;
    bool pinned = false; ///< stays in sight where others are scrolled away
    bool slash = false;  ///< its numbers may be written with one, which a keypad of numbers has not
    [[nodiscard]] bool keypad() const { return number && !slash; }
};

/// What a grid shows. Rows are counted as they are shown; the last may be an empty one to begin anew.
struct GridRows {
    int count = 0;
    std::function<std::string(int row, int column)> text{};
    std::function<Colour(int row, int column)> colour{}; ///< of the words; none: ink
    std::vector<std::string> sums{};                     ///< a last line that stays; empty: none
    int fresh = -1; ///< the row to begin anew, whose words are hints and no text
};

struct GridAnswer {
    bool edited = false; ///< `text` of row and column was ended with enter or tab
    int row = 0, column = 0;
    std::string text{};
    std::optional<int> heading{}; ///< that was pressed: sort by it
    bool remove = false;          ///< delete was pressed on `row`
    bool moved = false;           ///< another row is picked
};

[[nodiscard]] GridAnswer draw_grid(Ui& ui, const char* name, const Box& box,
                                   const std::vector<GridColumn>& columns, const GridRows& rows,
                                   GridPlace& at, int sorted_by, bool sorted_down);

} // namespace wrapwright
