#pragma once
// What one fly takes of the stock, from the record of its tying.

#include "core/stock/stock_item.h"
#include "core/tying/record.h"

#include <optional>
#include <string>
#include <vector>

namespace wrapwright {

/// One material of a fly under the name that the stock knows it by, in every unit that it has.
struct StockUse {
    std::string what; ///< "jig hook #14", "slotted tungsten bead, copper 2.8 mm"
    double count = 0.0;
    double metres = 0.0;
    double grams = 0.0;
    friend bool operator==(const StockUse&, const StockUse&) = default;
};

/// What one fly takes up to a step and with it; all of it where none is said. Hooks first.
///
/// Error   net amounts with the tags that tying needs; what falls to the floor is not in them
[[nodiscard]] std::vector<StockUse> stock_uses(const Pattern& pattern, const Resolved& resolved,
                                               const Tied& tied, int until_step = none);

/// How much of a unit a use is; nothing where it has no such amount.
[[nodiscard]] std::optional<double> use_in(StockUnit unit, const StockUse& use);

/// The unit that a use is usually bought in: pieces, else metres, else grams.
[[nodiscard]] StockUnit usual_unit(const StockUse& use);

} // namespace wrapwright
