#pragma once
// Orders: who wants what by when, line by line.

#include "core/stock/day.h"
#include "core/stock/table_column.h"
#include "core/tally/money.h"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace wrapwright {

enum class LineStatus : unsigned char {
    to_do,
    tying,
    finishing,
    checked,
    packed,
    sent,
    paid,
    cancelled,
};
[[nodiscard]] std::string_view name(LineStatus status);

/// Whether flies of a line are still to be tied.
[[nodiscard]] bool open(LineStatus status);

/// One line of an order. Lines for one person and one day are one order.
struct OrderLine {
    std::int64_t id = 0;
    std::string who;
    Day taken{}, due{};
    std::string recipe; ///< id in the library; may be gone from there
    std::string name;   ///< of the recipe as it was when the line was written
    std::string size, colour;
    std::string weight; ///< the rung, in words or mg
    int flies = 12;
    Money dozen{}; ///< price of twelve
    LineStatus status = LineStatus::to_do;
    std::string model;    ///< the sample that was approved
    double minutes = 0.0; ///< for one fly, as the person says; 0: as was timed
    std::string note;
    bool gone = false; ///< put away
    friend bool operator==(const OrderLine&, const OrderLine&) = default;
};

/// Whether two lines belong to one order.
[[nodiscard]] bool same_order(const OrderLine& a, const OrderLine& b);

/// The price of the whole line, rounded to the minor unit.
[[nodiscard]] Money price_of(const OrderLine& line);

/// The columns of an order line, for tables and files alike. The recipe is typed by its id or name,
/// and found by whoever has the library.
[[nodiscard]] std::span<const TableColumn<OrderLine>> order_fields();

/// "5 dozen", "2.5 dz", "1 gross", "30".
/// Fails   malformed for anything else; out_of_range for none, over 100,000, or part of a fly
[[nodiscard]] Result<int> read_flies(std::string_view text);

/// "5 dozen" where it is whole dozens, else "30".
[[nodiscard]] std::string write_flies(int flies);

} // namespace wrapwright
