#include "platform/store/store.h"

// Stock and orders: rows in versions, and the ledger.

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

template <class Kind, std::size_t n>
Kind kind_named(const std::string& said, Kind otherwise) {
    for (std::size_t i = 0; i < n; ++i) {
        if (said == name(static_cast<Kind>(i))) return static_cast<Kind>(i);
    }
    return otherwise;
}

constexpr std::size_t units = static_cast<std::size_t>(StockUnit::flies) + 1;
constexpr std::size_t statuses = static_cast<std::size_t>(LineStatus::cancelled) + 1;

/// The id after the greatest of a table.
Result<std::int64_t> next_id(Database& db, std::string_view sql) {
    Result<Query> query = db.query(sql);
    if (!query.ok()) return query.error();
    const Result<bool> row = query.value().step();
    if (!row.ok()) return row.error();
    return query.value().whole(0) + 1;
}

/// The kind of an entry that a text names; nothing for one of a newer program.
std::optional<EntryKind> entry_kind(const std::string& said) {
    for (int i = 0; i <= static_cast<int>(EntryKind::wasted); ++i) {
        if (said == name(static_cast<EntryKind>(i))) return static_cast<EntryKind>(i);
    }
    return std::nullopt;
}

} // namespace

Result<bool> Store::keep_items(BookChange& change, std::int64_t now) {
    if (change.items.empty()) return true;
    const Result<std::int64_t> next = next_id(db_, "SELECT ifnull(max(id), 0) FROM stock_line");
    if (!next.ok()) return next.error();
    std::int64_t id = next.value();
    Result<Query> query = db_.query(
        "INSERT INTO stock_line VALUES (?1, (SELECT ifnull(max(version), 0) + 1 FROM stock_line "
        "WHERE id = ?1), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (!query.ok()) return query.error();
    for (StockItem& item : change.items) {
        if (item.id == 0) item.id = id++;
        Query& q = query.value();
        q.bind(item.id).bind(item.what).bind(item.also).bind(name(item.unit)).bind(item.pack);
        q.bind(item.price.minor).bind(item.low).bind(item.place).bind(item.opened);
        q.bind(item.lot).bind(item.supplier).bind(item.origin).bind(item.note);
        q.bind(std::int64_t{item.gone ? 1 : 0}).bind(now);
        if (const Result<bool> done = q.run(); !done.ok()) return done;
    }
    return true;
}

Result<bool> Store::keep_lines(BookChange& change, std::int64_t now) {
    if (change.lines.empty()) return true;
    const Result<std::int64_t> next = next_id(db_, "SELECT ifnull(max(id), 0) FROM order_line");
    if (!next.ok()) return next.error();
    std::int64_t id = next.value();
    Result<Query> query = db_.query(
        "INSERT INTO order_line VALUES (?1, (SELECT ifnull(max(version), 0) + 1 FROM order_line "
        "WHERE id = ?1), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (!query.ok()) return query.error();
    for (OrderLine& line : change.lines) {
        if (line.id == 0) line.id = id++;
        Query& q = query.value();
        q.bind(line.id).bind(line.who).bind(std::int64_t{line.taken.number});
        q.bind(std::int64_t{line.due.number}).bind(line.recipe).bind(line.name).bind(line.size);
        q.bind(line.colour).bind(line.weight).bind(std::int64_t{line.flies});
        q.bind(line.dozen.minor).bind(name(line.status)).bind(line.model).bind(line.minutes);
        q.bind(line.note).bind(std::int64_t{line.gone ? 1 : 0}).bind(now);
        if (const Result<bool> done = q.run(); !done.ok()) return done;
    }
    return true;
}

Result<bool> Store::keep_entries(BookChange& change) {
    if (change.entries.empty()) return true;
    const Result<std::int64_t> next = next_id(db_, "SELECT ifnull(max(id), 0) FROM ledger");
    if (!next.ok()) return next.error();
    std::int64_t id = next.value();
    Result<Query> query = db_.query("INSERT INTO ledger VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (!query.ok()) return query.error();
    for (Entry& entry : change.entries) {
        entry.id = id++;
        if (entry.item < 0) entry.item = change.items[static_cast<std::size_t>(-entry.item - 1)].id;
        Query& q = query.value();
        q.bind(entry.id).bind(entry.item).bind(name(entry.kind)).bind(entry.amount);
        q.bind(entry.line).bind(entry.sitting).bind(std::int64_t{entry.fly}).bind(entry.undoes);
        q.bind(entry.price.minor).bind(entry.note).bind(entry.made);
        if (const Result<bool> done = q.run(); !done.ok()) return done;
    }
    return true;
}

Result<bool> Store::keep(BookChange& change, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    if (change.empty()) return true;
    return db_.together([&]() -> Result<bool> {
        if (const Result<bool> done = keep_items(change, now); !done.ok()) return done;
        if (const Result<bool> done = keep_lines(change, now); !done.ok()) return done;
        return keep_entries(change);
    });
}

Result<std::vector<StockItem>> Store::stock_items() {
    Result<Query> query =
        db_.query("SELECT id, what, also, unit, pack, price, low, place, opened, lot, "
                  "supplier, origin, note, gone FROM stock_line AS a WHERE version = "
                  "(SELECT max(version) FROM stock_line WHERE id = a.id) ORDER BY id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    std::vector<StockItem> out;
    const Result<bool> all = q.each([&] {
        out.push_back({q.whole(0),
                       q.text(1),
                       q.text(2),
                       kind_named<StockUnit, units>(q.text(3), StockUnit::pieces),
                       q.number(4),
                       {q.whole(5)},
                       q.number(6),
                       q.text(7),
                       q.text(8),
                       q.text(9),
                       q.text(10),
                       q.text(11),
                       q.text(12),
                       q.whole(13) != 0});
    });
    if (!all.ok()) return all.error();
    return out;
}

Result<Book> Store::book() {
    Book out;
    auto items = stock_items();
    if (!items.ok()) return items.error();
    out.items = std::move(items).value();
    {
        Result<Query> query =
            db_.query("SELECT id, who, taken, due, recipe, name, size, colour, weight, "
                      "flies, dozen, status, model, minutes, note, gone FROM order_line AS a "
                      "WHERE version = (SELECT max(version) FROM order_line WHERE id = a.id) "
                      "ORDER BY id");
        if (!query.ok()) return query.error();
        Query& q = query.value();
        const Result<bool> all = q.each([&] {
            out.lines.push_back({q.whole(0),
                                 q.text(1),
                                 {static_cast<int>(q.whole(2))},
                                 {static_cast<int>(q.whole(3))},
                                 q.text(4),
                                 q.text(5),
                                 q.text(6),
                                 q.text(7),
                                 q.text(8),
                                 static_cast<int>(q.whole(9)),
                                 {q.whole(10)},
                                 kind_named<LineStatus, statuses>(q.text(11), LineStatus::to_do),
                                 q.text(12),
                                 q.number(13),
                                 q.text(14),
                                 q.whole(15) != 0});
        });
        if (!all.ok()) return all.error();
    }
    Result<Query> query = db_.query("SELECT * FROM ledger ORDER BY id");
    if (!query.ok()) return query.error();
    const auto entries = read_entries(query.value());
    if (!entries.ok()) return entries.error();
    out.holdings = replay(entries.value());
    return out;
}

Result<std::vector<Entry>> Store::read_entries(Query& q) {
    std::vector<Entry> out;
    const Result<bool> all = q.each([&] {
        const std::optional<EntryKind> kind = entry_kind(q.text(2));
        if (!kind) return; // of a newer program: it does not stand in the way
        out.push_back({q.whole(0),
                       q.whole(1),
                       *kind,
                       q.number(3),
                       q.whole(4),
                       q.whole(5),
                       static_cast<int>(q.whole(6)),
                       q.whole(7),
                       {q.whole(8)},
                       q.text(9),
                       q.whole(10)});
    });
    if (!all.ok()) return all.error();
    return out;
}

Result<std::vector<Entry>> Store::entries_of_sitting(std::int64_t sitting) {
    Result<Query> query =
        db_.query("SELECT * FROM ledger WHERE sitting = ? AND sitting > 0 ORDER BY id");
    if (!query.ok()) return query.error();
    query.value().bind(sitting);
    return read_entries(query.value());
}

Result<std::vector<Entry>> Store::entries_of_item(std::int64_t item, int most) {
    Result<Query> query = db_.query("SELECT * FROM (SELECT * FROM ledger WHERE item = ? "
                                    "ORDER BY id DESC LIMIT ?) ORDER BY id");
    if (!query.ok()) return query.error();
    query.value().bind(item).bind(std::int64_t{most});
    return read_entries(query.value());
}

} // namespace wrapwright
