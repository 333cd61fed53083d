// Stock and orders at the size of a large shop, against the bare queries of the same run.
//
// 20,000 lines of stock, 200,000 entries of the ledger, 2,000 lines of orders. An argument names the
// folder to write in.

#include "core/stock/needs.h"
#include "core/stock/table_text.h"
#include "platform/store/store.h"
#include "tests/bench/disk.h"
#include "tests/bench/measure.h"
#include "tests/support/dice.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>

using namespace wrapwright;
using bench::clock_seconds;
using bench::must;

namespace {

constexpr int items = 20'000, entries = 200'000, lines = 2'000, rounds = 9;

void fill(Store& store) {
    test::Dice dice{7};
    BookChange change;
    for (int i = 0; i < items; ++i) {
        StockItem item;
        item.what = "bead number " + std::to_string(i);
        item.pack = 20;
        item.place = "drawer " + std::to_string(i % 40);
        change.items.push_back(std::move(item));
    }
    for (int i = 0; i < lines; ++i) {
        OrderLine line;
        line.who = "person " + std::to_string(i % 90);
        line.recipe = line.name = "fly " + std::to_string(i % 200);
        line.due = {20'800 + i % 60};
        change.lines.push_back(std::move(line));
    }
    for (int i = 0; i < entries; ++i) {
        Entry entry;
        entry.kind = static_cast<EntryKind>(dice.roll(6));
        entry.item = 1 + dice.roll(items);
        entry.amount = dice.roll(50);
        entry.line = dice.roll(lines);
        change.entries.push_back(std::move(entry));
    }
    (void)must(store.keep(change, 0));
}

} // namespace

int main(int argc, char** argv) {
    const std::filesystem::path folder =
        std::filesystem::path(argc > 1 ? argv[1] : ".") / "bench-book";
    std::filesystem::remove_all(folder);
    Store store = must(Store::open(folder, 0));
    fill(store);
    Database bare = must(Database::open(store.file(), true));
    const auto walk = [&](std::string_view sql, int texts) {
        Query q = must(bare.query(sql));
        std::size_t sum = 0;
        while (must(q.step())) {
            for (int c = 0; c < texts; ++c) sum += q.text(c).size();
        }
        return sum;
    };
    std::vector<double> books, queries, needs;
    Book book;
    for (int i = 0; i < rounds; ++i) {
        queries.push_back(clock_seconds([&] {
            (void)walk("SELECT * FROM stock_line AS a WHERE version = (SELECT max(version) FROM "
                       "stock_line WHERE id = a.id)",
                       14);
            (void)walk("SELECT * FROM order_line AS a WHERE version = (SELECT max(version) FROM "
                       "order_line WHERE id = a.id)",
                       16);
            (void)walk("SELECT * FROM ledger ORDER BY id", 11);
        }));
        books.push_back(clock_seconds([&] { book = must(store.book()); }));
        std::vector<LineAsk> asks;
        asks.reserve(book.lines.size());
        for (const OrderLine& line : book.lines) {
            asks.push_back({&line, {{"bead number " + std::to_string(line.id % 500), 1, 0, 0}}});
        }
        needs.push_back(
            clock_seconds([&] { (void)needs_of(asks, book.items, book.holdings, NeedTerms{}); }));
    }
    std::printf("stock and orders opened: %.0f ms; bare queries: %.0f ms; ratio %.2f (goal 2)\n",
                1e3 * bench::median(books), 1e3 * bench::median(queries),
                bench::median(books) / bench::median(queries));
    std::printf("needs of %d lines over %d items: %.1f ms\n", lines, items,
                1e3 * bench::median(needs));
    std::filesystem::remove_all(folder);
}
