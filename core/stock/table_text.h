#pragma once
// Tables as text with separators, for spreadsheets and back.

#include "core/result.h"
#include "core/stock/table_column.h"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// A table as it was read: each row with the line that it starts in.
struct TableText {
    char separator = ',';
    std::vector<std::vector<std::string>> rows{};
    std::vector<int> lines{};
};

/// The most rows that are read.
inline constexpr std::size_t most_table_rows = 200'000;

/// Reads a table with commas, semicolons or tabs, whichever the first line has most of.
///
/// Takes a byte order mark, lines that end in CR LF, LF or CR, quotes with separators and line ends
/// within them, doubled quotes; leaves empty lines out.
/// Fails   malformed where a quote does not end, naming its line; too_large over most_table_rows rows
/// Source  RFC 4180; the other separators are common practice
[[nodiscard]] Result<TableText> read_table(std::string_view text);

/// Rows with commas and CR LF, quoted where a field needs it.
/// Source  RFC 4180
[[nodiscard]] std::string write_table(const std::vector<std::vector<std::string>>& rows);

/// What one row of a file would do.
template <class Row>
struct RowChange {
    enum class Kind : unsigned char { added, changed, same, refused } kind = Kind::same;
    int line = 0; ///< in the file
    Row before{}, after{};
    std::string words{}; ///< "place: drawer 2, was drawer 1"; or why it is refused
};

/// What a file would change, before anything is changed.
template <class Row>
struct TablePreview {
    std::vector<RowChange<Row>> rows{};
    std::vector<std::string> passed_over{}; ///< columns that mean nothing here
    int added = 0, changed = 0, same = 0, refused = 0;
};

namespace detail {
/// For each column of the heading the field that it names, -1 for none.
/// Fails   malformed where no column is `least_key`; duplicate where two are the same
[[nodiscard]] Result<std::vector<int>> columns_of(const std::vector<std::string>& heading,
                                                  const std::vector<std::string_view>& keys,
                                                  std::string_view least_key);
} // namespace detail

/// Reads rows by their heading and holds each against what is there.
///
/// `find` gives the row that a read one stands for, or nullptr where it is new. A column that the
/// file does not have keeps what is there.
template <class Row, class Find>
[[nodiscard]] Result<TablePreview<Row>>
preview_table(const TableText& table, std::span<const TableColumn<Row>> fields,
              std::string_view least_key, const Row& fresh, Find find) {
    if (table.rows.empty()) {
        return Error{ErrorCode::malformed,
                     "the file holds no table",
                     "its first line names the columns",
                     {}};
    }
    std::vector<std::string_view> keys;
    keys.reserve(fields.size());
    for (const TableColumn<Row>& field : fields) keys.push_back(field.key);
    const auto columns = detail::columns_of(table.rows.front(), keys, least_key);
    if (!columns.ok()) return columns.error();
    TablePreview<Row> out;
    for (std::size_t c = 0; c < columns.value().size(); ++c) {
        if (columns.value()[c] < 0) out.passed_over.push_back(table.rows.front()[c]);
    }
    using Told = RowChange<Row>;
    for (std::size_t r = 1; r < table.rows.size(); ++r) {
        const std::vector<std::string>& cells = table.rows[r];
        Told change;
        change.line = table.lines[r];
        const auto take = [&](Row& row) {
            for (std::size_t c = 0; c < cells.size() && c < columns.value().size(); ++c) {
                const int f = columns.value()[c];
                if (f < 0) continue;
                const TableColumn<Row>& field = fields[static_cast<std::size_t>(f)];
                const Result<bool> read = field.read(row, cells[c]);
                if (read.ok()) continue;
                change.kind = Told::Kind::refused;
                change.words.assign(field.key).append(": ").append(read.error().message);
                change.words.append("; ").append(read.error().remedy);
                return false;
            }
            return true;
        };
        Row row = fresh;
        if (take(row)) {
            if (const Row* there = find(row)) {
                change.before = row = *there;
                (void)take(row);
                for (const TableColumn<Row>& field : fields) {
                    const std::string was = field.write(*there), is = field.write(row);
                    if (was == is || field.fixed) continue;
                    change.words.append(change.words.empty() ? "" : "; ").append(field.key);
                    change.words.append(": ").append(is.empty() ? "nothing" : is);
                    change.words.append(", was ").append(was.empty() ? "nothing" : was);
                }
                change.kind = change.words.empty() ? Told::Kind::same : Told::Kind::changed;
            } else {
                change.kind = Told::Kind::added;
            }
            change.after = std::move(row);
        }
        switch (change.kind) {
        case Told::Kind::added: ++out.added; break;
        case Told::Kind::changed: ++out.changed; break;
        case Told::Kind::same: ++out.same; break;
        case Told::Kind::refused: ++out.refused; break;
        }
        out.rows.push_back(std::move(change));
    }
    return out;
}

} // namespace wrapwright
