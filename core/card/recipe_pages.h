#pragma once
// A recipe at one size on paper: a card, a handout, tags, labels, the list of what to lay out.

#include "core/card/page.h"
#include "core/recipe/pattern.h"
#include "core/tying/record.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// What the pages are made from; all of it must outlive the call.
struct PageFacts {
    const Pattern& pattern;
    const Resolved& resolved;
    const Tied& tied;
    bool left_handed = false; ///< the pictures mirror; words do not
    std::string maker{}, date{};
    int flies = 12; ///< in the box, in the batch, or tags
};

/// Whether any part that stays on the fly is of lead.
[[nodiscard]] bool contains_lead(const Resolved& resolved, const Tied& tied);

/// The whole recipe on one card: letters as large as it leaves room for.
///
/// A recipe of words alone is printed as it was written.
[[nodiscard]] std::string recipe_card(const PageSize& size, const PageFacts& facts);

/// What to lay out, each step with its picture, words, numbers and cautions; room for notes.
[[nodiscard]] std::string handout(const PageSize& size, const PageFacts& facts);

/// A tag for each fly, to cut out: who tied it, what it is, whether it has lead in it.
[[nodiscard]] std::string toe_tags(const PageSize& size, const PageFacts& facts);

/// Tags for a swap or a class: so many for each person, with his name, and lines to fill in for the fly
/// and for lead.
[[nodiscard]] std::string blank_tags(const PageSize& size, const std::vector<std::string>& people,
                                     int each, std::string_view date);

/// A large label for a drawer and a small one for a box.
[[nodiscard]] std::string box_labels(const PageSize& size, const PageFacts& facts);

/// Everything that so many flies need, with boxes to tick.
[[nodiscard]] std::string lay_out_page(const PageSize& size, const PageFacts& facts);

} // namespace wrapwright
