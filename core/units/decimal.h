#pragma once
// Between doubles and decimal numbers, on whole numbers as long as it takes. Only for
// number_text.cpp. Not the library's own: its tables hardly compress, and the web would have to load them.

#include <string>
#include <string_view>

namespace wrapwright::detail {

inline constexpr int max_digits = 400;
inline constexpr int max_power = 300;             ///< of ten, of any number read or written
inline constexpr double largest_number = 1e300;   ///< that is read or written
inline constexpr double smallest_number = 1e-300; ///< the same, beside zero

/// The double nearest to digits x 10^exponent, ties to the even one.
///
/// Shape   digits are '0'..'9' alone, the first and last of them not '0', at most max_digits
/// Valid   1e-300 <= digits x 10^exponent < 1e301
[[nodiscard]] double nearest_double(std::string_view digits, int exponent);

/// digits x 10^exponent; the first and the last digit are not '0', and zero has no digits.
struct Decimal {
    std::string digits;
    int exponent = 0;
};

/// A double, exactly: 0.1 has 55 digits.
///
/// Valid   value >= 0 and finite
/// Error   exact, as m x 2^-k = m x 5^k x 10^-k
/// Cost    up to 767 digits for the smallest doubles; some twenty for sizes in millimetres
[[nodiscard]] Decimal exact_decimal(double value);

/// The same with no digit below 10^exponent; a tie goes to the even digit.
[[nodiscard]] Decimal rounded_to(Decimal value, int exponent);

} // namespace wrapwright::detail
