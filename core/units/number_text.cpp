#include "core/units/number_text.h"

#include "core/units/decimal.h"
#include "core/units/scan.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

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
    return LeadingNumber{detail::nearest_double(digits, static_cast<int>(exponent)), length};
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
    WW_ASSERT(std::isfinite(value) && std::abs(value) <= 1e300);
    if (value == 0.0) return "0"; // exact: also for the zero with a sign
    const double size = std::abs(value);
    const bool plain = size >= 1e-9 && size < 1e15;
    std::array<char, 64> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                      plain ? std::chars_format::fixed : std::chars_format::scientific);
    WW_ASSERT(end.ec == std::errc{});
    return {buffer.data(), end.ptr};
}

std::string write_rounded(double value, int decimals) {
    WW_ASSERT(std::isfinite(value) && std::abs(value) <= 1e300 && decimals >= 0 && decimals <= 30);
    std::array<char, 340> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, decimals);
    WW_ASSERT(end.ec == std::errc{});
    std::string text(buffer.data(), end.ptr);
    if (decimals > 0) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

} // namespace wrapwright
