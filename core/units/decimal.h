#pragma once
// The double nearest to a decimal number, on whole numbers as long as it takes. Only for
// number_text.cpp.

#include <string_view>

namespace wrapwright::detail {

inline constexpr int max_digits = 400;
inline constexpr int max_power = 300; ///< of ten, of any number read or written

/// The double nearest to digits x 10^exponent, ties to the even one.
///
/// Shape   digits are '0'..'9' alone, the first and last of them not '0', at most max_digits
/// Valid   1e-300 <= digits x 10^exponent < 1e301
[[nodiscard]] double nearest_double(std::string_view digits, int exponent);

} // namespace wrapwright::detail
