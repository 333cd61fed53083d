#include "core/stock/enough.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

int flies_from_stock(const std::vector<StockUse>& uses, const StockNames& names,
                     std::span<const StockItem> items, const Holdings& holdings) {
    if (uses.empty()) return 0;
    double flies = plenty_of_flies;
    for (const StockUse& use : uses) {
        const int at = names.find(use.what);
        if (at < 0) return 0;
        const StockItem& item = items[static_cast<std::size_t>(at)];
        const std::optional<double> each = use_in(item.unit, use);
        if (!each || item.gone) return 0;
        // A rounding's worth more, so that 0.3 m makes three flies of 0.1 m.
        flies = std::min(flies, std::floor(holdings.of(item.id).free() / *each + 1e-9));
    }
    return static_cast<int>(std::max(0.0, flies));
}

} // namespace wrapwright
