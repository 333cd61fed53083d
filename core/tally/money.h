#pragma once
// Money in whole minor units: cents, pence. Which currency is a word beside it.

#include "core/result.h"

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

namespace wrapwright {

struct Money {
    std::int64_t minor = 0;
    friend auto operator<=>(const Money&, const Money&) = default;
    Money& operator+=(Money b) {
        minor += b.minor;
        return *this;
    }
    friend Money operator+(Money a, Money b) { return {a.minor + b.minor}; }
    friend Money operator-(Money a, Money b) { return {a.minor - b.minor}; }
};

/// So many minor units, rounded half away from zero.
[[nodiscard]] Money money_of(double minor);

/// "4.50", "4,50" and "4": major units with up to two decimals.
/// Fails   malformed for anything else; out_of_range above 10,000,000
[[nodiscard]] Result<Money> read_money(std::string_view text);

/// "4.50".
[[nodiscard]] std::string write_money(Money money);

} // namespace wrapwright
