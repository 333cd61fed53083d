#pragma once
// What lies on the bench before the first wrap: everything a sitting needs, from the record's tally.

#include "core/tying/record.h"

#include <string>
#include <vector>

namespace wrapwright {

/// One thing to lay out.
struct LayOutItem {
    std::string what;    ///< "copper wire, 0.13 mm"
    std::string amount;  ///< "12 pieces of 90 mm", "6", "2.4 m"
    std::string instead; ///< what may replace it; empty where nothing is said
    bool tool = false;
};

/// The list for so many flies: hooks, materials with counts and lengths to cut, then tools.
///
/// Lengths are what the flies take, with the tags that tying needs; whole packs are another matter.
[[nodiscard]] std::vector<LayOutItem> lay_out_list(const Pattern& pattern, const Resolved& resolved,
                                                   const Tied& tied, int flies, bool inches);

} // namespace wrapwright
