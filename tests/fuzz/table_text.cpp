// Fuzz target: tables of stock and orders from any bytes, and what must hold of what they would change.

#include "core/stock/table_text.h"
#include "core/assert.h"
#include "core/stock/book_table.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

using namespace wrapwright;

namespace {

void check_error(const Error& error) { WW_ASSERT(!error.message.empty() && !error.remedy.empty()); }

/// What was read comes back from its written form, cell for cell.
void check_text(std::string_view text) {
    const Result<TableText> table = read_table(text);
    if (!table.ok()) return check_error(table.error());
    WW_ASSERT(table.value().rows.size() == table.value().lines.size());
    const Result<TableText> again = read_table(write_table(table.value().rows));
    WW_ASSERT(again.ok() && again.value().rows == table.value().rows);
}

void check_preview(const Result<BookPreview>& read) {
    if (!read.ok()) return check_error(read.error());
    const BookPreview& p = read.value();
    WW_ASSERT(p.added >= 0 && p.changed >= 0 && p.same >= 0 && p.refused >= 0);
    WW_ASSERT(p.words.size() >= static_cast<std::size_t>(p.added + p.changed + p.refused));
    for (const std::string& line : p.words) WW_ASSERT(!line.empty());
    if (p.added + p.changed == 0) WW_ASSERT(p.change.empty());
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    check_text(text);
    const Book empty;
    check_preview(preview_stock(text, empty, 1'700'000'000));
    check_preview(preview_orders(text, empty, day_of(2026, 11, 29)));
    return 0;
}
