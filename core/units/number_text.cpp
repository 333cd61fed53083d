#include "core/units/number_text.h"

#include "core/units/decimal.h"
#include "core/units/scan.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

namespace wrapwright {

namespace {

using detail::is_digit;

Error no_number(std::string_view text) {
    return {ErrorCode::not_found, "no number at the start of " + detail::quoted(text),
            "start with a number, such as 2.8, .015, 7/64 or 1 1/2"};
}

Error beyond(std::string_view text) {
    return {ErrorCode::out_of_range, detail::quoted(text) + " is beyond any size",
            "check the digits"};
}

std::string_view digits_at(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && is_digit(text[end])) ++end;
    return text.substr(at, end - at);
}

/// A short run of digits as a whole number; nothing for none or more than nine.
std::optional<double> small_whole(std::string_view digits) {
    if (digits.empty() || digits.size() > 9) return std::nullopt;
    long whole = 0;
    for (const char c : digits) whole = whole * 10 + (c - '0');
    return static_cast<double>(whole);
}

struct Fraction {
    double numerator = 0.0;
    double denominator = 1.0;
    std::size_t length = 0;
};

/// A fraction such as 7/64 or the one character for a half; the slash may be U+2044.
std::optional<Fraction> fraction_at(std::string_view text, std::size_t at) {
    struct Glyph {
        std::string_view bytes;
        double numerator, denominator;
    };
    constexpr Glyph glyphs[] = {
        {"\u00bd", 1, 2}, {"\u00bc", 1, 4}, {"\u00be", 3, 4}, {"\u2153", 1, 3}, {"\u2154", 2, 3},
        {"\u215b", 1, 8}, {"\u215c", 3, 8}, {"\u215d", 5, 8}, {"\u215e", 7, 8},
    };
    const std::string_view rest = text.substr(at);
    for (const Glyph& glyph : glyphs) {
        if (rest.starts_with(glyph.bytes)) {
            return Fraction{glyph.numerator, glyph.denominator, glyph.bytes.size()};
        }
    }
    const std::string_view above = digits_at(rest, 0);
    std::size_t slash = 0;
    if (rest.substr(above.size()).starts_with('/')) slash = 1;
    if (rest.substr(above.size()).starts_with("\u2044")) slash = 3;
    if (slash == 0) return std::nullopt;
    const std::string_view below = digits_at(rest, above.size() + slash);
    const auto numerator = small_whole(above);
    const auto denominator = small_whole(below);
    if (!numerator || !denominator || *denominator == 0.0) return std::nullopt;
    return Fraction{*numerator, *denominator, above.size() + slash + below.size()};
}

/// A whole number and a fraction below 1: "1 1/2", "1-1/2" or a digit with a fraction's character.
std::optional<LeadingNumber> mixed_at(std::string_view text) {
    const std::string_view digits = digits_at(text, 0);
    const auto whole = small_whole(digits);
    if (!whole) return std::nullopt;
    std::size_t at = digits.size();
    const std::size_t blanks = detail::blanks_at(text, at);
    const bool hyphen = text.substr(at).starts_with('-');
    at += hyphen ? 1 : blanks;
    const bool joined = at == digits.size();
    const auto fraction = fraction_at(text, at);
    if (!fraction || fraction->numerator >= fraction->denominator) return std::nullopt;
    if (joined && is_digit(text[at])) return std::nullopt;
    const double numerator = *whole * fraction->denominator + fraction->numerator;
    if (numerator > 9e15) return std::nullopt; // beyond the whole numbers that doubles can hold
    return LeadingNumber{numerator / fraction->denominator, at + fraction->length};
}

/// "e-7" after a decimal number: its value and length; 0 and 0 where there is none.
LeadingNumber exponent_at(std::string_view text, std::size_t at) {
    if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) return {};
    std::size_t digits = at + 1;
    bool negative = false;
    if (digits < text.size() && (text[digits] == '-' || text[digits] == '+')) {
        negative = text[digits] == '-';
        ++digits;
    }
    const std::string_view run = digits_at(text, digits);
    if (run.empty()) return {};
    const double size = small_whole(run).value_or(1e9);
    return {negative ? -size : size, digits + run.size() - at};
}

/// A number with digits, a point and an exponent.
Result<LeadingNumber> decimal_at(std::string_view text) {
    const std::string_view whole = digits_at(text, 0);
    std::size_t at = whole.size();
    std::string_view part;
    if (at < text.size() && text[at] == '.') {
        part = digits_at(text, at + 1);
        if (!whole.empty() || !part.empty()) at += 1 + part.size();
    }
    if (whole.empty() && part.empty()) return no_number(text);
    const LeadingNumber power = exponent_at(text, at);
    const std::size_t length = at + power.length;

    std::string digits(whole);
    digits += part;
    const std::size_t last = digits.find_last_not_of('0');
    if (last == std::string::npos) return LeadingNumber{0.0, length};
    double exponent = power.value - static_cast<double>(part.size()) +
                      static_cast<double>(digits.size() - 1 - last);
    digits.resize(last + 1);
    digits.erase(0, digits.find_first_not_of('0'));
    if (digits.size() > detail::max_digits) {
        return Error{ErrorCode::too_large, "a number of more than 400 digits",
                     "round it: no size needs more than 6 digits"};
    }
    const double magnitude = exponent + static_cast<double>(digits.size()); // 10^(m-1) <= v < 10^m
    if (magnitude > detail::max_power + 1 || magnitude <= -detail::max_power) {
        return beyond(text.substr(0, length));
    }
    const double value = detail::nearest_double(digits, static_cast<int>(exponent));
    if (value > detail::largest_number || value < detail::smallest_number)
        return beyond(text.substr(0, length));
    return LeadingNumber{value, length};
}

/// With the sign of the value, which a zero has not.
std::string signed_text(double value, std::string text) {
    if (value < 0.0 && text != "0") text.insert(text.begin(), '-');
    return text;
}

/// With a point and as many zeros as it takes.
std::string plain_text(const detail::Decimal& decimal) {
    if (decimal.digits.empty()) return "0";
    std::string text = decimal.digits;
    if (decimal.exponent >= 0) return text.append(static_cast<std::size_t>(decimal.exponent), '0');
    const auto below = static_cast<std::size_t>(-decimal.exponent);
    if (text.size() <= below) text.insert(0, below + 1 - text.size(), '0');
    text.insert(text.size() - below, 1, '.');
    return text;
}

} // namespace

Result<LeadingNumber> leading_number(std::string_view text) {
    std::size_t start = detail::blanks_at(text, 0);
    double sign = 1.0;
    for (const std::string_view mark : {"-", "+", "\u2212"}) {
        if (!text.substr(start).starts_with(mark)) continue;
        start += mark.size();
        if (mark != "+") sign = -1.0;
        break;
    }
    const std::string_view rest = text.substr(start);
    if (const auto mixed = mixed_at(rest)) {
        return LeadingNumber{sign * mixed->value, start + mixed->length};
    }
    if (const auto fraction = fraction_at(rest, 0)) {
        return LeadingNumber{sign * (fraction->numerator / fraction->denominator),
                             start + fraction->length};
    }
    Result<LeadingNumber> decimal = decimal_at(rest);
    if (!decimal.ok()) return decimal;
    return LeadingNumber{sign * decimal.value().value, start + decimal.value().length};
}

Result<double> read_number(std::string_view text) {
    const Result<LeadingNumber> number = leading_number(text);
    if (!number.ok()) return number.error();
    const std::string_view rest = detail::trimmed(text.substr(number.value().length));
    if (rest.empty()) return number.value().value;
    if (rest.starts_with(',')) return detail::decimal_comma(text);
    return Error{ErrorCode::malformed,
                 detail::quoted(rest) + " after the number in " + detail::quoted(text),
                 "write a number alone, such as 2.8, .015, 7/64 or 1 1/2"};
}

std::string write_number(double value) {
    WW_ASSERT(std::isfinite(value) && std::abs(value) <= detail::largest_number);
    const double size = std::abs(value);
    if (size < detail::smallest_number) return "0"; // also for the zero with a sign
    const detail::Decimal exact = detail::exact_decimal(size);
    // What has 15 digits or fewer comes back from a double as it was, and 17 tell every double.
    const int top = exact.exponent + static_cast<int>(exact.digits.size());
    detail::Decimal shortest;
    for (const int digits : {15, 16, 17}) {
        shortest = detail::rounded_to(exact, top - digits);
        if (detail::nearest_double(shortest.digits, shortest.exponent) == size) break; // exact
    }
    if (size >= 1e-9 && size < 1e15) return signed_text(value, plain_text(shortest));
    std::string text = shortest.digits;
    if (text.size() > 1) text.insert(text.begin() + 1, '.');
    const int power = shortest.exponent + static_cast<int>(shortest.digits.size()) - 1;
    text += power < 0 ? "e-" : "e+";
    return signed_text(value, text + std::to_string(std::abs(power)));
}

std::string write_rounded(double value, int decimals) {
    WW_ASSERT(std::isfinite(value) && std::abs(value) <= detail::largest_number);
    WW_ASSERT(decimals >= 0 && decimals <= 30);
    const detail::Decimal exact = detail::exact_decimal(std::abs(value));
    return signed_text(value, plain_text(detail::rounded_to(exact, -decimals)));
}

} // namespace wrapwright
