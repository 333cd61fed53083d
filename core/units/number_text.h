#pragma once
// Numbers as people write them: .015, 2.8, 7/64, 1 1/2, 1-1/2. The only place in core that reads
// a decimal number; no locale, and the same double on every system.

#include "core/result.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace wrapwright {

/// A number at the start of a text, and how many bytes of the text it took.
struct LeadingNumber {
    double value = 0.0;
    std::size_t length = 0;
};

/// The longest number at the start of text, after blanks, which `length` includes.
///
/// Reads a sign, digits with a point (a leading or trailing one too), an exponent, a fraction, a
/// whole number and a fraction below 1 joined by a blank or a hyphen, and the fractions of Unicode.
/// A comma ends the number. "1/0" is 1 followed by "/0".
/// Error   correctly rounded: the double nearest to what is written, for a fraction too
/// Fails   not_found where no number starts; out_of_range beyond 1e-300..1e300; too_large over
///         400 digits
/// Source  Clinger 1990, How to read floating point numbers accurately, for up to 15 digits and
///         powers of ten up to 22; exact whole numbers beyond
[[nodiscard]] Result<LeadingNumber> leading_number(std::string_view text);

/// The number that the whole text is, blanks around it aside.
///
/// Fails   as leading_number does, and malformed when something follows the number
[[nodiscard]] Result<double> read_number(std::string_view text);

/// The shortest decimal text from which read_number gives the same double; "0" below 1e-300, which it
/// does not read.
///
/// Valid   |value| <= 1e300
[[nodiscard]] std::string write_number(double value);

/// The value rounded to at most that many decimals, without trailing zeros: 2.50 gives "2.5".
///
/// Valid   |value| <= 1e300, 0 <= decimals <= 30
[[nodiscard]] std::string write_rounded(double value, int decimals);

} // namespace wrapwright
