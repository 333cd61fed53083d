#pragma once
// Where somebody stands in a table, and how its rows are sorted and filtered.

#include <string>
#include <vector>

namespace wrapwright {

/// Where somebody stands in a table.
struct GridPlace {
    int row = 0, column = 0;
    bool editing = false;
    bool fresh_edit = false;
    int began = 0, ended = -2; ///< the frames in which the last edit did
    std::string text{};
    int left = 0;        ///< the first column in sight
    float pushed = 0.0F; ///< by a finger, and not answered by a column yet
};

/// The rows of a table in the order in which they are shown; found anew only when something changed.
struct TableOrder {
    const void* of = nullptr; ///< the book that it was found for
    int view = -1, column = -1;
    bool down = false;
    int count = 0, all = 0; ///< rows of the book, and those of them that are not put away
    std::string filter{};
    std::vector<int> rows{}; ///< indices
};

} // namespace wrapwright
