#include "core/stock/stock_item.h"

#include "core/units/number_text.h"

#include <array>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 4> unit_names{"pieces", "metres", "grams", "flies"};

template <std::string StockItem::* member>
TableColumn<StockItem> text_field(std::string_view key, std::string_view title) {
    return {key,
            title,
            false,
            false,
            [](const StockItem& item) { return item.*member; },
            [](StockItem& item, std::string_view text) -> Result<bool> {
                item.*member = text;
                return true;
            }};
}

Result<bool> read_what(StockItem& item, std::string_view text) {
    if (plain_name(text).empty()) {
        return Error{ErrorCode::malformed,
                     "a line of the stock needs a name",
                     "write what it is, such as tungsten bead 2.8 mm",
                     {}};
    }
    item.what = text;
    return true;
}

Result<bool> read_unit(StockItem& item, std::string_view text) {
    const std::string said = plain_name(text);
    for (std::size_t i = 0; i < unit_names.size(); ++i) {
        // "piece", "m" and "g" as people write them.
        const std::string_view full = unit_names[i];
        if (said == full || (said.size() == 1 && said[0] == full[0] && full[0] != 'f') ||
            (said.size() + 1 == full.size() && full.starts_with(said))) {
            item.unit = static_cast<StockUnit>(i);
            return true;
        }
    }
    std::string message("'");
    message.append(text).append("' is nothing that stock is counted in");
    return Error{
        ErrorCode::unknown_word, std::move(message), "write pieces, metres, grams or flies", {}};
}

Result<bool> read_pack(StockItem& item, std::string_view text) {
    const Result<double> pack = read_amount(text, 0.0);
    if (!pack.ok()) return pack.error();
    if (!(pack.value() > 0.0)) {
        return Error{ErrorCode::out_of_range,
                     "a pack of nothing",
                     "write how many pieces, metres, grams or flies one pack has",
                     {}};
    }
    item.pack = pack.value();
    return true;
}

Result<bool> read_price(StockItem& item, std::string_view text) {
    if (plain_name(text).empty()) {
        item.price = {};
        return true;
    }
    const Result<Money> price = read_money(text);
    if (!price.ok()) return price.error();
    if (price.value().minor < 0) {
        return Error{ErrorCode::out_of_range, "a price below nothing", "write 0 or more", {}};
    }
    item.price = price.value();
    return true;
}

Result<bool> read_low(StockItem& item, std::string_view text) {
    if (plain_name(text).empty()) {
        item.low = 0.0;
        return true;
    }
    const Result<double> low = read_amount(text, 0.0);
    if (!low.ok()) return low.error();
    item.low = low.value();
    return true;
}

const std::array<TableColumn<StockItem>, 12> fields{{
    {"what", "what", false, false, [](const StockItem& item) { return item.what; }, read_what},
    {"unit", "unit", false, false,
     [](const StockItem& item) { return std::string(name(item.unit)); }, read_unit},
    {"pack", "pack", true, false, [](const StockItem& item) { return write_number(item.pack); },
     read_pack},
    {"price", "price", true, false,
     [](const StockItem& item) {
         return item.price.minor == 0 ? std::string() : write_money(item.price);
     },
     read_price},
    {"low", "low", true, false,
     [](const StockItem& item) { return item.low > 0.0 ? write_number(item.low) : std::string(); },
     read_low},
    text_field<&StockItem::place>("place", "place"),
    text_field<&StockItem::also>("also", "also for"),
    text_field<&StockItem::opened>("opened", "opened"),
    text_field<&StockItem::lot>("lot", "lot"),
    text_field<&StockItem::supplier>("supplier", "supplier"),
    text_field<&StockItem::origin>("origin", "lawful origin"),
    text_field<&StockItem::note>("note", "note"),
}};

} // namespace

Result<double> read_amount(std::string_view text, double least) {
    const Result<double> number = read_number(text);
    if (!number.ok()) return number.error();
    if (!(number.value() >= least && number.value() <= 1e9)) {
        std::string message("out of range: ");
        message.append(text);
        std::string remedy("write a number from ");
        remedy.append(write_number(least)).append(" to 1000000000");
        return Error{ErrorCode::out_of_range, std::move(message), std::move(remedy), {}};
    }
    return number.value();
}

std::string_view name(StockUnit unit) { return unit_names[static_cast<std::size_t>(unit)]; }

std::span<const TableColumn<StockItem>> stock_fields() { return fields; }

std::string plain_name(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    bool gap = false;
    for (const char c : text) {
        if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
            gap = !out.empty();
            continue;
        }
        if (gap) out.push_back(' ');
        gap = false;
        out.push_back(c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c);
    }
    return out;
}

StockNames::StockNames(std::span<const StockItem> items) {
    names_.reserve(items.size());
    const auto add = [&](std::string_view called, std::size_t i) {
        std::string plain = plain_name(called);
        if (!plain.empty()) names_.emplace(std::move(plain), static_cast<int>(i));
    };
    // Its own name first: another's "also" does not take it away.
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (!items[i].gone) add(items[i].what, i);
    }
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].gone) continue;
        std::string_view rest = items[i].also;
        while (!rest.empty()) {
            const std::size_t end = std::min(rest.find(';'), rest.size());
            add(rest.substr(0, end), i);
            rest.remove_prefix(std::min(end + 1, rest.size()));
        }
    }
}

int StockNames::find(std::string_view what) const {
    const auto at = names_.find(plain_name(what));
    return at == names_.end() ? -1 : at->second;
}

} // namespace wrapwright
