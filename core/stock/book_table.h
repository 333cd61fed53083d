#pragma once
// Stock and orders as tables for spreadsheets, and what such a table would change here.

#include "core/stock/book.h"
#include "core/stock/table_text.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// A table that was read, before anything is changed: words for each row, and the change itself.
struct BookPreview {
    std::vector<std::string> words{}; ///< a line for each row that is new, changed or refused
    int added = 0, changed = 0, same = 0, refused = 0;
    BookChange change{}; ///< of the rows that are new or changed
};

/// The stock with what is on hand in the column `count`; the orders by line. Nothing that was put away.
[[nodiscard]] std::string stock_table(const Book& book);
[[nodiscard]] std::string order_table(const Book& book);

/// What a table of stock would change: rows are told apart by `what`, and a `count` that is not what
/// is on hand becomes an entry of the ledger.
/// Fails   as read_table and preview_table
[[nodiscard]] Result<BookPreview> preview_stock(std::string_view text, const Book& book,
                                                std::int64_t now);

/// What a table of orders would change: rows with the number of a `line` change it, others are new.
[[nodiscard]] Result<BookPreview> preview_orders(std::string_view text, const Book& book,
                                                 Day today);

} // namespace wrapwright
