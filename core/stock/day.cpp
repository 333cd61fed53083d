#include "core/stock/day.h"

#include <array>

namespace wrapwright {

namespace {

struct Date {
    int year, month, day;
};

// 400 years have 146,097 days; 719,468 days lie between 0000-03-01 and 1970-01-01.
constexpr int era_days = 146'097, epoch = 719'468;

Date date_of(Day of) {
    const int z = of.number + epoch;
    const int era = (z >= 0 ? z : z - era_days + 1) / era_days;
    const int doe = z - era * era_days;
    const int yoe = (doe - doe / 1460 + doe / 36'524 - doe / 146'096) / 365;
    const int doy = doe - (365 * yoe + yoe / 4 - yoe / 100);
    const int mp = (5 * doy + 2) / 153;
    const int month = mp < 10 ? mp + 3 : mp - 9;
    return {yoe + era * 400 + (month <= 2 ? 1 : 0), month, doy - (153 * mp + 2) / 5 + 1};
}

bool leap(int year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); }

int days_in(int year, int month) {
    constexpr std::array<int, 12> days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && leap(year) ? 29 : days[static_cast<std::size_t>(month - 1)];
}

/// The digits at the start of a text, taken off it; -1 where there are none or too many.
int take_digits(std::string_view& text, std::size_t most) {
    int value = 0;
    std::size_t n = 0;
    while (n < text.size() && n < most && text[n] >= '0' && text[n] <= '9') {
        value = 10 * value + (text[n++] - '0');
    }
    text.remove_prefix(n);
    return n == 0 ? -1 : value;
}

bool take(std::string_view& text, char c) {
    if (text.empty() || text.front() != c) return false;
    text.remove_prefix(1);
    return true;
}

} // namespace

Day day_of(int year, int month, int day) {
    const int y = month <= 2 ? year - 1 : year;
    const int era = (y >= 0 ? y : y - 399) / 400;
    const int yoe = y - era * 400;
    const int doy = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + day - 1;
    const int doe = yoe * 365 + yoe / 4 - yoe / 100 + doy;
    return {era * era_days + doe - epoch};
}

Result<Day> read_day(std::string_view text, Day today) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    if (text.empty()) return Day{};
    const auto malformed = [said = std::string(text)] {
        return Error{ErrorCode::malformed,
                     "no day: " + said,
                     "write year-month-day, such as 2026-12-05, or +14 for days from now",
                     {}};
    };
    if (take(text, '+')) {
        const int days = take_digits(text, 5);
        if (days < 0 || !text.empty()) return malformed();
        return Day{today.number + days};
    }
    const int year = take_digits(text, 4);
    if (year < 1000 || !take(text, '-')) return malformed();
    const int month = take_digits(text, 2);
    if (month < 0 || !take(text, '-')) return malformed();
    const int day = take_digits(text, 2);
    if (day < 0 || !text.empty()) return malformed();
    if (year < 1971 || month < 1 || month > 12 || day < 1 || day > days_in(year, month)) {
        return Error{ErrorCode::out_of_range,
                     "there is no such day",
                     "write a day of the calendar, 1971 or later, such as 2026-12-05",
                     {}};
    }
    return day_of(year, month, day);
}

std::string write_day(Day day) {
    if (day == Day{}) return {};
    const Date date = date_of(day);
    const auto two = [](int n) {
        std::string text = std::to_string(n);
        return n < 10 ? std::string(1, '0').append(text) : text;
    };
    std::string out = std::to_string(date.year);
    return out.append(1, '-').append(two(date.month)).append(1, '-').append(two(date.day));
}

int weekday_of(Day day) {
    const int since_monday = (day.number + 3) % 7; // 1970-01-01 was a Thursday
    return since_monday < 0 ? since_monday + 7 : since_monday;
}

} // namespace wrapwright
