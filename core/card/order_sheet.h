#pragma once
// An order on paper: what was asked for, how far it is, what lacks, what it comes to.

#include "core/card/page.h"
#include "core/stock/order_work.h"

namespace wrapwright {

/// One order: its lines, with what all open orders need and what these lines cost.
struct OrderFacts {
    std::vector<const OrderLine*> lines{}; ///< at least one
    const Book& book;
    const OrderWork& work;
    const OrderCost& cost;
    std::string currency{};
};

/// The sheet: lines with ticks for each stage, shortages with packs, days, and the price. What it
/// costs to make is not on it, for it goes into the box.
[[nodiscard]] std::string order_sheet(const PageSize& size, const OrderFacts& facts);

} // namespace wrapwright
