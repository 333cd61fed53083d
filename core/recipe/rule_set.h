#pragma once
// A dated set of limits that an event or a water puts on a fly, as somebody wrote it down.

#include "core/result.h"
#include "core/units/quantity.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// The limits; 0, -1 or false: this set says nothing of it.
struct RuleSet {
    std::string id, name;
    std::string date; ///< as written: from when on it is known to hold
    std::string note; ///< where it is from, verbatim
    int beads_most = -1;
    Length bead_most{}; ///< diameter
    bool no_cones = false;
    int hooks_most = -1;
    Length hook_most{}; ///< front of the eye to the rear of the bend
    bool barbless = false;
    bool weight_covered = false; ///< all ballast under dressing
    bool lead_free = false;
    Mass mass_most{};
    int flies_most = -1;    ///< on one leader
    Length spacing_least{}; ///< between them
    friend bool operator==(const RuleSet&, const RuleSet&) = default;
};

/// A rule set from its text form (assets/rules.schema.json).
///
/// Fails   as read_recipe does; unknown_word for a key that no rule set has; malformed without name
///         or date
[[nodiscard]] Result<RuleSet> read_rules(std::string_view text);

} // namespace wrapwright
