#include "core/stock/plan.h"

#include <algorithm>
#include <tuple>

namespace wrapwright {

namespace {

constexpr int horizon = 3 * 366; // days

/// Days that are being filled.
struct Calendar {
    const std::array<Duration, 7>& room;
    Day day{};
    int passed = 0;
    Duration left{};
    DayPlan& out;

    [[nodiscard]] Duration room_of(Day of) const {
        return room[static_cast<std::size_t>(weekday_of(of))];
    }
    [[nodiscard]] bool over() const { return passed >= horizon; }

    void next_day() {
        ++day.number;
        ++passed;
        left = room_of(day);
    }

    /// Puts time of a line on the days that have room; what of it came after `due`.
    Duration put(std::int64_t line, int flies, Duration time, Day due) {
        Duration late{};
        bool first = true;
        while (!over() && (time.si > 0.0 || first)) {
            if (left.si <= 0.0) {
                next_day();
                continue;
            }
            const Duration part = std::min(time, left);
            PlanDay& today = open_day();
            if (today.pieces.empty() || today.pieces.back().line != line) {
                today.pieces.push_back({line, 0, {}});
            }
            today.pieces.back().time += part;
            time -= part;
            if (time.si <= 1e-9) today.pieces.back().flies += flies;
            today.used += part;
            left -= part;
            if (due != Day{} && day > due) late += part;
            if (time.si <= 1e-9) return late;
            first = false;
        }
        return late;
    }

    PlanDay& open_day() {
        if (out.days.empty() || out.days.back().day != day) {
            out.days.push_back({day, {}, {}, room_of(day)});
        }
        return out.days.back();
    }
};

} // namespace

DayPlan plan_days(Day today, const std::array<Duration, 7>& room, std::vector<PlanAsk> asks) {
    DayPlan out;
    std::sort(asks.begin(), asks.end(), [](const PlanAsk& a, const PlanAsk& b) {
        return std::tuple(a.due == Day{}, a.due, a.line) <
               std::tuple(b.due == Day{}, b.due, b.line);
    });
    Calendar calendar{room, today, 0, room[static_cast<std::size_t>(weekday_of(today))], out};
    for (const PlanAsk& ask : asks) {
        PlanLine line;
        line.line = ask.line;
        line.due = ask.due;
        const auto add = [&](int flies, Duration time) {
            if (time.si <= 0.0) return;
            line.time += time;
            line.late += calendar.put(ask.line, flies, time, ask.due);
        };
        for (int i = 1; i <= ask.starts; ++i) add(1, ask.pace.unit(ask.done + i));
        add(0, ask.finishing);
        line.ready = calendar.over() ? Day{} : calendar.day;
        line.met = line.ready != Day{} && (ask.due == Day{} || line.ready <= ask.due);
        if (ask.starts == 0 && ask.finishing.si <= 0.0) line.met = true; // nothing is left to do
        out.lines.push_back(line);
    }
    return out;
}

} // namespace wrapwright
