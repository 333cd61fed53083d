#include "core/stock/book.h"

#include <algorithm>

namespace wrapwright {

namespace {

template <class Row>
const Row* by_id(const std::vector<Row>& rows, std::int64_t id) {
    const auto at = std::lower_bound(rows.begin(), rows.end(), id,
                                     [](const Row& row, std::int64_t of) { return row.id < of; });
    return at != rows.end() && at->id == id ? &*at : nullptr;
}

template <class Row>
void take_back(const std::vector<Row>& kept, const std::vector<Row>& before,
               std::vector<Row>& out) {
    out.reserve(kept.size());
    for (const Row& row : kept) {
        const Row* was = by_id(before, row.id);
        out.push_back(was != nullptr ? *was : row);
        if (was == nullptr) out.back().gone = true;
    }
}

template <class Row>
void put(std::vector<Row>& rows, const std::vector<Row>& kept) {
    for (const Row& row : kept) {
        const auto at = std::lower_bound(rows.begin(), rows.end(), row.id,
                                         [](const Row& a, std::int64_t id) { return a.id < id; });
        if (at != rows.end() && at->id == row.id) {
            *at = row;
        } else {
            rows.insert(at, row);
        }
    }
}

} // namespace

bool merge(Book& book, const BookChange& kept) {
    put(book.items, kept.items);
    put(book.lines, kept.lines);
    for (const Entry& entry : kept.entries) {
        if (entry.undoes != 0) return false;
        book.holdings.take(entry);
    }
    return true;
}

const StockItem* item_of(const Book& book, std::int64_t id) { return by_id(book.items, id); }

const OrderLine* line_of(const Book& book, std::int64_t id) { return by_id(book.lines, id); }

BookChange inverse(const BookChange& kept, const Book& before) {
    BookChange out;
    take_back(kept.items, before.items, out.items);
    take_back(kept.lines, before.lines, out.lines);
    out.entries.reserve(kept.entries.size());
    for (const Entry& entry : kept.entries) {
        Entry undoing;
        undoing.undoes = entry.id;
        undoing.made = entry.made;
        out.entries.push_back(std::move(undoing));
    }
    return out;
}

} // namespace wrapwright
