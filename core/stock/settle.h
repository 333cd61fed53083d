#pragma once
// What a sitting does to the stock: a finished fly draws what its record says, once, and gives it
// back when it turns out not to be finished.

#include "core/bench/sitting.h"
#include "core/stock/ledger.h"
#include "core/stock/stock_item.h"
#include "core/stock/uses.h"

#include <span>
#include <vector>

namespace wrapwright {

/// A sitting as the stock sees it.
struct SittingFlies {
    std::int64_t sitting = 0;
    std::int64_t line = 0; ///< of the order that it is for; 0: none
    const Pattern* pattern = nullptr;
    const Resolved* resolved = nullptr;
    const Tied* tied = nullptr;
    const SittingState* state = nullptr;
};

/// The entries that bring the ledger to what the sitting says; none where it says that already.
///
/// Each fly is told by itself: done, it draws from every item that stands for one of its materials;
/// spoilt, it takes what was on it by then; neither, what it took is undone. A material that no item
/// stands for draws nothing. Ids are left at 0, for whoever keeps the entries gives them.
/// Valid   `entries` are all those of this sitting, in order
[[nodiscard]] std::vector<Entry> settle(const SittingFlies& flies, std::span<const Entry> entries,
                                        std::span<const StockItem> items, std::int64_t now);

} // namespace wrapwright
