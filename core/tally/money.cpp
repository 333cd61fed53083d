#include "core/tally/money.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace wrapwright {

Money money_of(double minor) { return {std::llround(std::clamp(minor, -1e15, 1e15))}; }

Result<Money> read_money(std::string_view text) {
    std::string words("'");
    words.append(text).append("' is no amount of money");
    const Error unclear{
        ErrorCode::malformed, std::move(words), "write it as 4.50, without the currency", {}};
    bool minus = false;
    if (text.starts_with('-')) {
        minus = true;
        text.remove_prefix(1);
    }
    std::int64_t minor = 0;
    int decimals = -1; // none yet
    bool digits = false;
    for (const char c : text) {
        if ((c == '.' || c == ',') && decimals < 0 && digits) {
            decimals = 0;
            continue;
        }
        if (c < '0' || c > '9' || decimals == 2) return unclear;
        digits = true;
        minor = 10 * minor + (c - '0');
        if (decimals >= 0) ++decimals;
        if (minor > 1'000'000'000) {
            return Error{ErrorCode::out_of_range,
                         "more money than any order of flies",
                         "give at most 10,000,000",
                         {}};
        }
    }
    if (!digits || decimals == 0) return unclear;
    for (int i = std::max(0, decimals); i < 2; ++i) minor *= 10;
    return Money{minus ? -minor : minor};
}

std::string write_money(Money money) {
    const bool minus = money.minor < 0;
    const auto size =
        static_cast<std::uint64_t>(minus ? -(money.minor + 1) : money.minor) + (minus ? 1U : 0U);
    std::string out;
    if (minus) out.push_back('-');
    out.append(std::to_string(size / 100)).append(".");
    out.push_back(static_cast<char>('0' + size / 10 % 10));
    out.push_back(static_cast<char>('0' + size % 10));
    return out;
}

} // namespace wrapwright
