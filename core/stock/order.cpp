#include "core/stock/order.h"

#include "core/stock/stock_item.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"

#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 8> statuses{"to do",  "tying", "finishing", "checked",
                                                   "packed", "sent",  "paid",      "cancelled"};

template <std::string OrderLine::* member>
TableColumn<OrderLine> text_field(std::string_view key, std::string_view title) {
    return {key,
            title,
            false,
            false,
            [](const OrderLine& line) { return line.*member; },
            [](OrderLine& line, std::string_view text) -> Result<bool> {
                line.*member = text;
                return true;
            }};
}

template <Day OrderLine::* member>
TableColumn<OrderLine> day_field(std::string_view key, std::string_view title) {
    return {key,
            title,
            false,
            false,
            [](const OrderLine& line) { return write_day(line.*member); },
            [](OrderLine& line, std::string_view text) -> Result<bool> {
                // "+14" counts from the day that the order was taken on.
                const Result<Day> day = read_day(text, line.taken);
                if (!day.ok()) return day.error();
                line.*member = day.value();
                return true;
            }};
}

Result<bool> read_line(OrderLine& line, std::string_view text) {
    if (plain_name(text).empty()) return true; // a new one
    const Result<double> number = read_amount(text, 1.0);
    if (!number.ok()) return number.error();
    line.id = static_cast<std::int64_t>(number.value());
    return true;
}

Result<bool> read_size(OrderLine& line, std::string_view text) {
    if (plain_name(text).empty()) {
        line.size.clear();
        return true;
    }
    const Result<WrittenHookSize> size = parse_hook_size(text);
    if (!size.ok()) return size.error();
    line.size = write_hook_size(size.value().size);
    return true;
}

Result<bool> read_count(OrderLine& line, std::string_view text) {
    const Result<int> flies = read_flies(text);
    if (!flies.ok()) return flies.error();
    line.flies = flies.value();
    return true;
}

Result<bool> read_dozen(OrderLine& line, std::string_view text) {
    if (plain_name(text).empty()) {
        line.dozen = {};
        return true;
    }
    const Result<Money> money = read_money(text);
    if (!money.ok()) return money.error();
    if (money.value().minor < 0) {
        return Error{ErrorCode::out_of_range, "a price below nothing", "write 0 or more", {}};
    }
    line.dozen = money.value();
    return true;
}

Result<bool> read_status(OrderLine& line, std::string_view text) {
    const std::string said = plain_name(text);
    // The first letters do, where they are those of one status alone.
    int found = -1, hits = 0;
    for (std::size_t i = 0; i < statuses.size(); ++i) {
        if (said == statuses[i]) {
            found = static_cast<int>(i);
            hits = 1;
            break;
        }
        if (!said.empty() && statuses[i].starts_with(said)) {
            found = static_cast<int>(i);
            ++hits;
        }
    }
    if (hits != 1) {
        std::string message("'");
        message.append(text).append("' is no status");
        return Error{ErrorCode::unknown_word,
                     std::move(message),
                     "write to do, tying, finishing, checked, packed, sent, paid or cancelled",
                     {}};
    }
    line.status = static_cast<LineStatus>(found);
    return true;
}

Result<bool> read_minutes(OrderLine& line, std::string_view text) {
    if (plain_name(text).empty()) {
        line.minutes = 0.0;
        return true;
    }
    const Result<double> minutes = read_amount(text, 0.0);
    if (!minutes.ok()) return minutes.error();
    line.minutes = minutes.value();
    return true;
}

const std::array<TableColumn<OrderLine>, 14> fields{{
    {"line", "no.", true, true,
     [](const OrderLine& line) { return line.id == 0 ? std::string() : std::to_string(line.id); },
     read_line},
    text_field<&OrderLine::who>("who", "who"),
    day_field<&OrderLine::due>("due", "due"),
    {"recipe", "recipe", false, false,
     [](const OrderLine& line) { return line.name.empty() ? line.recipe : line.name; },
     [](OrderLine& line, std::string_view text) -> Result<bool> {
         line.recipe = text;
         line.name = text;
         return true;
     }},
    {"size", "size", true, false, [](const OrderLine& line) { return line.size; }, read_size},
    text_field<&OrderLine::colour>("colour", "colour"),
    text_field<&OrderLine::weight>("weight", "weight"),
    {"flies", "flies", true, false, [](const OrderLine& line) { return write_flies(line.flies); },
     read_count},
    {"dozen", "a dozen", true, false,
     [](const OrderLine& line) {
         return line.dozen.minor == 0 ? std::string() : write_money(line.dozen);
     },
     read_dozen},
    {"status", "status", false, false,
     [](const OrderLine& line) { return std::string(name(line.status)); }, read_status},
    {"minutes", "min each", true, false,
     [](const OrderLine& line) {
         return line.minutes > 0.0 ? write_number(line.minutes) : std::string();
     },
     read_minutes},
    text_field<&OrderLine::model>("model", "approved model"),
    day_field<&OrderLine::taken>("taken", "taken"),
    text_field<&OrderLine::note>("note", "note"),
}};

} // namespace

std::string_view name(LineStatus status) { return statuses[static_cast<std::size_t>(status)]; }

bool open(LineStatus status) { return status <= LineStatus::finishing; }

bool same_order(const OrderLine& a, const OrderLine& b) {
    return a.due == b.due && plain_name(a.who) == plain_name(b.who);
}

Money price_of(const OrderLine& line) {
    return money_of(static_cast<double>(line.dozen.minor) * line.flies / 12.0);
}

std::span<const TableColumn<OrderLine>> order_fields() { return fields; }

Result<int> read_flies(std::string_view text) {
    const auto malformed = [&] {
        std::string message("no number of flies: ");
        message.append(text);
        return Error{
            ErrorCode::malformed, std::move(message), "write 30, 5 dozen, 2.5 dz or 1 gross", {}};
    };
    const Result<LeadingNumber> number = leading_number(text);
    if (!number.ok()) return malformed();
    const std::string unit = plain_name(text.substr(number.value().length));
    double each = 0.0;
    if (unit.empty() || unit == "flies" || unit == "fly") each = 1.0;
    if (unit == "dozen" || unit == "dozens" || unit == "dz" || unit == "doz") each = 12.0;
    if (unit == "gross") each = 144.0;
    if (each == 0.0) return malformed();
    const double flies = each * number.value().value;
    const double whole = std::round(flies);
    if (!(whole >= 1.0 && whole <= 100'000.0 && std::abs(flies - whole) < 1e-6)) {
        std::string message("not so many flies: ");
        message.append(text);
        return Error{
            ErrorCode::out_of_range, std::move(message), "write whole flies, from 1 to 100000", {}};
    }
    return static_cast<int>(whole);
}

std::string write_flies(int flies) {
    if (flies < 12 || flies % 12 != 0) return std::to_string(flies);
    return std::to_string(flies / 12).append(" dozen");
}

} // namespace wrapwright
