#pragma once
// A fly's record against a dated set of limits: within, beyond, or not to be told. No verdict on law.

#include "core/recipe/rule_set.h"
#include "core/tying/record.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

enum class RuleKind : unsigned char {
    bead_count,
    bead_size,
    cones,
    hook_count,
    hook_length,
    barb,
    cover,
    lead,
    mass,
    fly_count,
    spacing,
};

enum class RuleVerdict : unsigned char { pass, fail, cannot_tell };
[[nodiscard]] std::string_view name(RuleVerdict verdict);

/// One limit and how this fly stands to it.
struct RuleRow {
    RuleKind kind = RuleKind::bead_count;
    RuleVerdict verdict = RuleVerdict::cannot_tell;
    bool has_number = false;
    double value = 0.0, low = 0.0, high = 0.0; ///< SI, a count, or a share
    double limit = 0.0;
    double margin = 0.0; ///< from value to limit, positive inside
};

/// Every limit of the set against the record, in the set's order.
///
/// Within only where the whole interval is; beyond only where the whole interval is. A bead's label
/// is taken as true to 0.05 mm until it was measured: plating.
/// Error   cover by what is wound over the ballast, along the hook; who looks at the fly decides
[[nodiscard]] std::vector<RuleRow> check_rules(const RuleSet& rules, const Pattern& pattern,
                                               const Resolved& numbers, const Tied& tied);

/// "bead size: 3.3 mm (3.25 to 3.35), at most 4 mm, 0.7 mm to spare".
[[nodiscard]] std::string rule_words(const RuleRow& row);

/// What would settle or mend it; empty where it passes.
[[nodiscard]] std::string rule_remedy(const RuleRow& row);

} // namespace wrapwright
