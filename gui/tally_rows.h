#pragma once
// The live tally: what each part took so far, takes in this step, and will take.

#include "gui/model.h"

#include <string>
#include <vector>

namespace wrapwright {

/// What was or will be drawn of one part: sums of the record's own takes.
struct Drawn {
    double turns = 0.0;
    double count = 0.0;
    Length length{};
    Mass mass{};
};

struct TallyRow {
    std::string part;     ///< "rib"
    std::string material; ///< "copper wire, fine"
    bool by_length = false;
    Drawn used, now, to_come; ///< of this fly: in steps before, in this one, in those after
    Drawn batch_to_come;      ///< of all flies, from this step on
};

/// A row for each part and material, in the order in which they are drawn.
[[nodiscard]] std::vector<TallyRow> tally_rows(const Model& model);

/// "5 turns, 41 mm, 2.1 mg"; "-" for nothing.
[[nodiscard]] std::string drawn_words(const TallyRow& row, const Drawn& drawn, bool inches);

} // namespace wrapwright
