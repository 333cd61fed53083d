#include "core/units/number_words.h"

#include "core/units/number_text.h"

#include <cmath>

namespace wrapwright {

namespace {

/// Three digits that count, and no more decimals than that asks for.
std::string three_digits(double value) {
    const double size = std::abs(value);
    return write_rounded(value, size < 1.0 ? 3 : size < 10.0 ? 2 : size < 100.0 ? 1 : 0);
}

std::string two(int n) {
    std::string digits = std::to_string(n);
    if (n < 10) digits.insert(0, 1, '0');
    return digits;
}

} // namespace

std::string length_words(Length length, bool inches) {
    const double mm = in_millimetres(length);
    std::string words =
        std::abs(mm) < 1000.0 ? three_digits(mm) + " mm" : three_digits(mm / 1e3) + " m";
    if (inches) words += " (" + three_digits(in_inches(length)) + " in)";
    return words;
}

std::string mass_words(Mass mass) {
    const double mg = in_milligrams(mass);
    return std::abs(mg) < 1000.0 ? three_digits(mg) + " mg" : three_digits(mg / 1e3) + " g";
}

std::string time_words(Duration time) {
    const int all = static_cast<int>(std::ceil(std::fmax(0.0, time.si) - 1e-6));
    const int hours = all / 3600;
    const int minutes = all / 60 % 60;
    const std::string start =
        hours > 0 ? std::to_string(hours) + ':' + two(minutes) : std::to_string(minutes);
    return start + ':' + two(all % 60);
}

std::string turn_words(double turns) { return write_rounded(turns, 1); }

} // namespace wrapwright
