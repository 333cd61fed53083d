#include "core/stock/book_table.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <unordered_map>

namespace wrapwright {

namespace {

constexpr std::string_view count_key = "count";

template <class Row>
std::vector<std::string> heading(std::span<const TableColumn<Row>> fields) {
    std::vector<std::string> out;
    out.reserve(fields.size() + 1);
    for (const TableColumn<Row>& field : fields) out.emplace_back(field.key);
    return out;
}

template <class Row>
std::vector<std::string> cells(const Row& row, std::span<const TableColumn<Row>> fields) {
    std::vector<std::string> out;
    out.reserve(fields.size() + 1);
    for (const TableColumn<Row>& field : fields) out.push_back(field.write(row));
    return out;
}

/// Words for a row: "line 4, new: bead 2.8 mm".
template <class Row>
void tell(BookPreview& out, const RowChange<Row>& row, std::string_view what) {
    using Kind = typename RowChange<Row>::Kind;
    if (row.kind == Kind::same) return;
    std::string words("line ");
    words.append(std::to_string(row.line));
    words.append(row.kind == Kind::added     ? ", new: "
                 : row.kind == Kind::changed ? ", changed: "
                                             : ", refused: ");
    words.append(what);
    if (!row.words.empty()) words.append(what.empty() ? "" : ": ").append(row.words);
    out.words.push_back(std::move(words));
}

template <class Row>
void tell_passed_over(BookPreview& out, const TablePreview<Row>& table) {
    for (const std::string& column : table.passed_over) {
        if (column == count_key) continue;
        std::string words("passed over: the column ");
        out.words.push_back(words.append(column.empty() ? "without a name" : column));
    }
}

/// The counts of the rows, if there is such a column: text as it was typed, empty for none.
std::vector<std::string> counts_of(const TableText& table) {
    std::vector<std::string> out(table.rows.size());
    const std::vector<std::string>& head = table.rows.front();
    const auto at = std::find_if(head.begin(), head.end(), [](const std::string& cell) {
        return plain_name(cell) == count_key;
    });
    if (at == head.end()) return out;
    const auto column = static_cast<std::size_t>(at - head.begin());
    for (std::size_t r = 1; r < table.rows.size(); ++r) {
        if (column < table.rows[r].size()) out[r] = plain_name(table.rows[r][column]);
    }
    return out;
}

} // namespace

std::string stock_table(const Book& book) {
    std::vector<std::vector<std::string>> rows{heading(stock_fields())};
    rows.front().emplace_back(count_key);
    for (const StockItem& item : book.items) {
        if (item.gone) continue;
        rows.push_back(cells(item, stock_fields()));
        rows.back().push_back(write_number(book.holdings.of(item.id).on_hand));
    }
    return write_table(rows);
}

std::string order_table(const Book& book) {
    std::vector<std::vector<std::string>> rows{heading(order_fields())};
    for (const OrderLine& line : book.lines) {
        if (!line.gone) rows.push_back(cells(line, order_fields()));
    }
    return write_table(rows);
}

Result<BookPreview> preview_stock(std::string_view text, const Book& book, std::int64_t now) {
    const Result<TableText> table = read_table(text);
    if (!table.ok()) return table.error();
    std::unordered_map<std::string, const StockItem*> there;
    there.reserve(book.items.size());
    for (const StockItem& item : book.items) {
        if (!item.gone) there.emplace(plain_name(item.what), &item);
    }
    std::unordered_map<std::string, int> seen; // the file's own names, with their lines
    auto read = preview_table<StockItem>(table.value(), stock_fields(), "what", StockItem{},
                                         [&](const StockItem& row) -> const StockItem* {
                                             const auto at = there.find(plain_name(row.what));
                                             return at == there.end() ? nullptr : at->second;
                                         });
    if (!read.ok()) return read.error();
    BookPreview out;
    tell_passed_over(out, read.value());
    const std::vector<std::string> counts = counts_of(table.value());
    using Kind = RowChange<StockItem>::Kind;
    for (std::size_t r = 0; r < read.value().rows.size(); ++r) {
        RowChange<StockItem>& row = read.value().rows[r];
        const auto refuse = [&](std::string words) {
            row.kind = Kind::refused;
            row.words = std::move(words);
        };
        double count = 0.0;
        const bool counted = row.kind != Kind::refused && !counts[r + 1].empty();
        if (row.kind != Kind::refused) {
            const auto [at, fresh] = seen.emplace(plain_name(row.after.what), row.line);
            if (!fresh) {
                std::string words("the same name is in line ");
                refuse(words.append(std::to_string(at->second)));
            }
        }
        if (counted && row.kind != Kind::refused) {
            const Result<double> said = read_amount(counts[r + 1], 0.0);
            if (said.ok()) {
                count = said.value();
            } else {
                std::string words("count: ");
                refuse(words.append(said.error().message).append("; ").append(said.error().remedy));
            }
        }
        const double was = row.kind == Kind::added ? 0.0 : book.holdings.of(row.before.id).on_hand;
        const bool moves = counted && row.kind != Kind::refused && count != was;
        if (moves) {
            row.words.append(row.words.empty() ? "" : "; ").append("count: ");
            row.words.append(write_number(count)).append(", was ").append(write_number(was));
            if (row.kind == Kind::same) row.kind = Kind::changed;
        }
        tell(out, row, row.kind == Kind::refused ? std::string_view() : row.after.what);
        switch (row.kind) {
        case Kind::same: ++out.same; continue;
        case Kind::refused: ++out.refused; continue;
        case Kind::added: ++out.added; break;
        case Kind::changed: ++out.changed; break;
        }
        Entry entry;
        entry.kind = EntryKind::counted;
        entry.amount = count;
        entry.made = now;
        entry.note = "from a table";
        entry.item = row.after.id;
        if (row.kind == Kind::added || !(row.before == row.after)) {
            out.change.items.push_back(std::move(row.after));
            if (entry.item == 0) entry.item = -static_cast<std::int64_t>(out.change.items.size());
        }
        if (moves) out.change.entries.push_back(std::move(entry));
    }
    return out;
}

Result<BookPreview> preview_orders(std::string_view text, const Book& book, Day today) {
    const Result<TableText> table = read_table(text);
    if (!table.ok()) return table.error();
    OrderLine fresh;
    fresh.taken = today;
    auto read = preview_table<OrderLine>(table.value(), order_fields(), "recipe", fresh,
                                         [&](const OrderLine& row) -> const OrderLine* {
                                             const OrderLine* line = line_of(book, row.id);
                                             return line == nullptr || line->gone ? nullptr : line;
                                         });
    if (!read.ok()) return read.error();
    BookPreview out;
    tell_passed_over(out, read.value());
    using Kind = RowChange<OrderLine>::Kind;
    for (RowChange<OrderLine>& row : read.value().rows) {
        if (row.kind == Kind::added && plain_name(row.after.recipe).empty()) {
            row.kind = Kind::refused;
            row.words = "recipe: nothing said; write the name or the id of one";
        }
        if (row.kind == Kind::added) row.after.id = 0;
        std::string what;
        if (row.kind != Kind::refused) {
            what.append(write_flies(row.after.flies)).append(1, ' ').append(row.after.name);
        }
        tell(out, row, what);
        switch (row.kind) {
        case Kind::same: ++out.same; continue;
        case Kind::refused: ++out.refused; continue;
        case Kind::added: ++out.added; break;
        case Kind::changed: ++out.changed; break;
        }
        out.change.lines.push_back(std::move(row.after));
    }
    return out;
}

} // namespace wrapwright
