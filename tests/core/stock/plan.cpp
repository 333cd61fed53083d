#include "core/stock/plan.h"

#include "core/stock/order.h"
#include "tests/support/close.h"
#include "tests/support/dice.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

constexpr std::array<Duration, 7> two_hours_on_weekdays{
    minutes(120), minutes(120), minutes(120), minutes(120), minutes(120), {}, {}};

PlanAsk ask(std::int64_t line, Day due, int starts, double minutes_each, double finishing = 0.0) {
    PlanAsk out;
    out.line = line;
    out.due = due;
    out.starts = starts;
    out.pace = {LearningModel::crawford, minutes(minutes_each), 1.0, {}};
    out.finishing = minutes(finishing);
    return out;
}

} // namespace

TEST_CASE("days are those of the calendar") {
    // Source  ISO 8601 dates; their weekdays and numbers from the GNU date program
    CHECK(day_of(1970, 1, 1).number == 0);
    CHECK(day_of(2000, 2, 29).number == 11'016);
    CHECK(day_of(2026, 11, 29).number == 20'786);
    CHECK(weekday_of(day_of(2026, 11, 29)) == 6); // a Sunday
    CHECK(weekday_of(day_of(2024, 2, 29)) == 3);
    const Day today = day_of(2026, 11, 29);
    CHECK(read_day("2026-12-05", today).value() == day_of(2026, 12, 5));
    CHECK(read_day(" +14 ", today).value() == day_of(2026, 12, 13));
    CHECK(read_day("", today).value() == Day{});
    for (const char* odd : {"2026-13-01", "2026-02-29", "1900-01-01", "2026-1", "5.12.2026", "+",
                            "+1x", "2026-12-05T10", "-5", "99999-01-01"}) {
        CAPTURE(odd);
        CHECK_FALSE(read_day(odd, today).ok());
    }
    for (int n = 366; n < 60'000; n += 13) {
        CHECK(read_day(write_day({n}), today).value() == Day{n});
        CHECK(weekday_of({n + 1}) == (weekday_of({n}) + 1) % 7);
    }
}

TEST_CASE("dozens are read as people write them, and never as part of a fly") {
    CHECK(read_flies("5 dozen").value() == 60);
    CHECK(read_flies("2.5dz").value() == 30);
    CHECK(read_flies("1 gross").value() == 144);
    CHECK(read_flies("30").value() == 30);
    CHECK(read_flies("1/2 dozen").value() == 6);
    for (const char* odd :
         {"", "0", "-12", "2.3", "1/5 dozen", "a dozen", "5 dozens of", "1e9", "100001", "nan"}) {
        CAPTURE(odd);
        CHECK_FALSE(read_flies(odd).ok());
    }
    CHECK(write_flies(60) == "5 dozen");
    CHECK(write_flies(30) == "30");
    for (int n = 1; n < 2000; ++n) CHECK(read_flies(write_flies(n)).value() == n);
}

TEST_CASE("sixty-three flies at four and a half minutes fill the days worked by hand") {
    // Source  worked by hand: 283.5 min; 120 on Monday, Tuesday, 43.5 on Wednesday
    const Day monday = day_of(2026, 11, 30);
    const DayPlan plan =
        plan_days(monday, two_hours_on_weekdays, {ask(1, {monday.number + 4}, 63, 4.5)});
    REQUIRE(plan.days.size() == 3);
    CHECK(within(plan.days[0].used.si, 7200.0, 1e-6)); // sums of 63 times
    CHECK(within(plan.days[2].used.si, 43.5 * 60.0, 1e-6));
    CHECK(plan.days[0].pieces[0].flies + plan.days[1].pieces[0].flies +
              plan.days[2].pieces[0].flies ==
          63);
    CHECK(plan.lines[0].ready == Day{monday.number + 2});
    CHECK(plan.lines[0].met);
    CHECK(within(plan.lines[0].time.si, 283.5 * 60.0, 1e-6));
}

TEST_CASE("a due day that cannot be met says so, with the time that comes too late") {
    // Source  worked by hand: Friday has two hours of the five; the rest is on Monday and Tuesday
    const Day friday = day_of(2026, 12, 4);
    const DayPlan plan =
        plan_days(friday, two_hours_on_weekdays, {ask(1, friday, 50, 6.0), ask(2, {}, 0, 6.0, 30)});
    CHECK_FALSE(plan.lines[0].met);
    CHECK(plan.lines[0].ready == Day{friday.number + 4});
    CHECK(within(plan.lines[0].late.si, 3.0 * 3600.0, 1e-6));
    CHECK(plan.lines[1].met);                             // no day: never late
    CHECK(plan.lines[1].ready == Day{friday.number + 4}); // finishing alone, on the same Tuesday
    const DayPlan never = plan_days(friday, {}, {ask(1, friday, 1, 6.0)});
    CHECK_FALSE(never.lines[0].met);
    CHECK(never.lines[0].ready == Day{});
    CHECK(never.days.empty());
}

TEST_CASE(
    "the earliest due line goes first, and no order of lines has a smaller greatest lateness") {
    // Source  Jackson's rule, held against all orders of four lines
    Dice dice{77};
    const Day today{20'000};
    for (int run = 0; run < 60; ++run) {
        std::vector<PlanAsk> asks;
        for (int i = 1; i <= 4; ++i) {
            asks.push_back(ask(i, {today.number + 1 + dice.roll(6)}, 1 + dice.roll(30), 7.0));
        }
        const auto worst = [](const DayPlan& plan, const std::vector<PlanAsk>& due) {
            int most = -1000;
            for (const PlanLine& l : plan.lines) {
                most = std::max(most, l.ready.number -
                                          due[static_cast<std::size_t>(l.line - 1)].due.number);
            }
            return most;
        };
        const int ours = worst(plan_days(today, two_hours_on_weekdays, asks), asks);
        std::vector<int> order{0, 1, 2, 3};
        do {
            // Another order is forced by due days of its own.
            std::vector<PlanAsk> forced = asks;
            for (int i = 0; i < 4; ++i) {
                forced[static_cast<std::size_t>(order[static_cast<std::size_t>(i)])].due = {
                    today.number + 1 + i};
            }
            CHECK(worst(plan_days(today, two_hours_on_weekdays, forced), asks) >= ours);
        } while (std::next_permutation(order.begin(), order.end()));
    }
}

TEST_CASE("every fly is planned once, and no day holds more than its room") {
    Dice dice{78};
    for (int run = 0; run < 100; ++run) {
        std::array<Duration, 7> room{};
        for (Duration& d : room) d = minutes(dice.roll(3) * 40.0);
        room[2] = minutes(30);
        std::vector<PlanAsk> asks;
        int flies = 0;
        double time = 0.0;
        for (int i = 1; i <= 3; ++i) {
            asks.push_back(ask(i, {20'000 + dice.roll(20)}, dice.roll(40), dice.between(1, 50),
                               dice.roll(30)));
            asks.back().pace.rate = dice.between(0.7, 1.0);
            asks.back().done = dice.roll(10);
            flies += asks.back().starts;
            time += asks.back().finishing.si;
            for (int k = 1; k <= asks.back().starts; ++k) {
                time += asks.back().pace.unit(asks.back().done + k).si;
            }
        }
        const DayPlan plan = plan_days({20'000}, room, asks);
        double used = 0.0;
        for (const PlanDay& day : plan.days) {
            CHECK(day.used.si <= day.room.si + 1e-6);
            used += day.used.si;
            for (const PlanPiece& piece : day.pieces) flies -= piece.flies;
        }
        CHECK(flies == 0);
        CHECK(within(used, time, 1e-5));
    }
}
