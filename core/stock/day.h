#pragma once
// Days of the calendar as whole numbers, and as people type them.

#include "core/result.h"

#include <string>
#include <string_view>

namespace wrapwright {

/// Days since 1970-01-01, of the proleptic Gregorian calendar; 0 stands for "no day".
struct Day {
    int number = 0;
    friend auto operator<=>(const Day&, const Day&) = default;
};

/// The day of a date.
/// Source  Gregorian rules; counted from 1 March so that the leap day comes last
[[nodiscard]] Day day_of(int year, int month, int day);

/// "2026-12-05" (ISO 8601), or "+14" for days after `today`; nothing typed is no day.
/// Fails   malformed for anything else; out_of_range for a date that there is not
[[nodiscard]] Result<Day> read_day(std::string_view text, Day today);

/// "2026-12-05"; empty for no day.
[[nodiscard]] std::string write_day(Day day);

/// 0 Monday to 6 Sunday.
[[nodiscard]] int weekday_of(Day day);

} // namespace wrapwright
