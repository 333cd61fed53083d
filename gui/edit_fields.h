#pragma once
// The fields of what is picked while a recipe is written: what was typed, what was understood, help.

#include "gui/edit_work.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

enum class FieldKind : unsigned char {
    words,  ///< a line of them
    number, ///< a line with a bare number
    text,   ///< several lines
    spot,   ///< a place on the hook
    flag,   ///< yes or no
    pick,   ///< one of `options`
};

struct Field {
    std::string path{}; ///< where its words stand in the recipe
    std::string_view label{};
    std::string_view help{}; ///< what the field means, in a sentence
    FieldKind kind = FieldKind::words;
    std::string text{};                 ///< as written, or as it waits to be read
    std::string said{};                 ///< what was understood, with the number on this hook
    std::string wrong{};                ///< why it does not read yet
    std::vector<std::string> options{}; ///< of a pick; empty words stand for nothing picked
};

/// The fields of the row that is picked.
[[nodiscard]] std::vector<Field> fields_of(const EditWork& work);

/// What the row is, for the head of its fields: "Part: tail", "Step 3, action 2: tie in".
[[nodiscard]] std::string row_title(const EditWork& work);

/// A row of the outline.
struct EditRow {
    std::string row{};  ///< its path; empty for the head, or for a heading
    std::string adds{}; ///< the list that a line typed here adds to
    std::string label{}, aside{};
    int depth = 0;
    bool heading = false;
    bool pick = false;    ///< opens the list of operations, to add one at the end of `adds`
    bool trouble = false; ///< a finding, or words that do not read
};
[[nodiscard]] std::vector<EditRow> rows_of(const EditWork& work);

} // namespace wrapwright
