#pragma once
// Which flies on which day, so that orders are ready when they are due; and when they can't be.

#include "core/stock/day.h"
#include "core/tally/learning.h"

#include <array>
#include <cstdint>
#include <vector>

namespace wrapwright {

/// One line to plan.
struct PlanAsk {
    std::int64_t line = 0;
    Day due{};            ///< no day: after all that have one
    int starts = 0;       ///< flies still to begin
    int done = 0;         ///< flies already tied, from which the hands have learnt
    Learning pace{};      ///< of one fly, finishing left out
    Duration finishing{}; ///< for the batch, after its last fly
};

/// What one day holds of one line.
struct PlanPiece {
    std::int64_t line = 0;
    int flies = 0; ///< 0: finishing alone
    Duration time{};
};

struct PlanDay {
    Day day{};
    std::vector<PlanPiece> pieces{};
    Duration used{}, room{};
};

struct PlanLine {
    std::int64_t line = 0;
    Day due{}, ready{}; ///< ready: no day where three years are not enough
    Duration time{};    ///< all of it
    Duration late{};    ///< of it, what comes after the due day
    bool met = true;
};

struct DayPlan {
    std::vector<PlanDay> days{}; ///< those with work, in order
    std::vector<PlanLine> lines{};
};

/// Fills days with flies, the earliest due line first.
///
/// A fly longer than a day's room has the day to itself and the rest of it next day.
/// Valid   room >= 0 for Monday to Sunday
/// Source  earliest due date first, which has the least greatest lateness of all orders (Jackson 1955)
[[nodiscard]] DayPlan plan_days(Day today, const std::array<Duration, 7>& room,
                                std::vector<PlanAsk> asks);

} // namespace wrapwright
