#pragma once
// How many flies the stock makes.

#include "core/stock/ledger.h"
#include "core/stock/stock_item.h"
#include "core/stock/uses.h"

#include <span>
#include <vector>

namespace wrapwright {

inline constexpr int plenty_of_flies = 9'999;

/// Flies that what is free of the stock makes, if nothing else is tied of it; none where the stock does not
/// have one of the materials, or counts it in what the fly has no amount of.
///
/// Error   net amounts: what falls to the floor is not in them
/// Valid   `names` are those of `items`
[[nodiscard]] int flies_from_stock(const std::vector<StockUse>& uses, const StockNames& names,
                                   std::span<const StockItem> items, const Holdings& holdings);

} // namespace wrapwright
