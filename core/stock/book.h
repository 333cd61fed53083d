#pragma once
// The stock and the orders together, and a change of them that is kept whole or not at all.

#include "core/stock/ledger.h"
#include "core/stock/order.h"
#include "core/stock/stock_item.h"

#include <vector>

namespace wrapwright {

/// Rows as they are to be from now on, and what happened with the stock.
///
/// A row with id 0 is new. An entry of a new item names it by -1 for the first of `items`, -2 for the
/// second, and so on.
struct BookChange {
    std::vector<StockItem> items{};
    std::vector<OrderLine> lines{};
    std::vector<Entry> entries{};
    [[nodiscard]] bool empty() const { return items.empty() && lines.empty() && entries.empty(); }
};

struct Book {
    std::vector<StockItem> items{}; ///< by id; those that are gone too
    std::vector<OrderLine> lines{}; ///< by id; those that are gone too
    Holdings holdings{};
};

/// The row with an id; nullptr where there is none.
[[nodiscard]] const StockItem* item_of(const Book& book, std::int64_t id);
[[nodiscard]] const OrderLine* line_of(const Book& book, std::int64_t id);

/// Takes a change that was kept into the book; whether that was enough. A change that undoes entries
/// needs the whole list again.
///
/// Valid   `kept` has all its ids
[[nodiscard]] bool merge(Book& book, const BookChange& kept);

/// What takes a change back that was kept: the rows as they were in `before`, new rows put away, its
/// entries undone.
///
/// Valid   `kept` has all its ids
[[nodiscard]] BookChange inverse(const BookChange& kept, const Book& before);

} // namespace wrapwright
