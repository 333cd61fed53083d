#include "core/bench/sitting.h"

#include "tests/support/close.h"
#include "tests/support/dice.h"
#include "tests/support/fly_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// The good nymph with a step for all flies first, one for all last, and a restore point.
Run1 bench_fly() {
    Recipe r = good_nymph();
    r.steps.front().batch = BatchStage::all_first;
    r.steps.back().batch = BatchStage::all_last;
    r.steps[2].restore_point = true;
    return run(r);
}

Event event(EventKind kind, double at_s, int number = 0, std::string text = {}) {
    return {kind, seconds(at_s), number, std::move(text)};
}

std::vector<Event> begun(int flies) { return {event(EventKind::begin, 0.0, flies)}; }

void press(std::vector<Event>& events, int times, double every = 10.0) {
    for (int i = 0; i < times; ++i) {
        events.push_back(event(EventKind::next, events.back().at.si + every));
    }
}

bool same(const SittingState& a, const SittingState& b) {
    return a.at == b.at && a.turns == b.turns && a.redo_until == b.redo_until &&
           a.breaks == b.breaks && a.fly_state == b.fly_state && a.spoilt_why == b.spoilt_why &&
           a.otherwise.size() == b.otherwise.size() && a.step_seconds == b.step_seconds;
}

} // namespace

TEST_CASE("steps for the whole batch are done for all flies first or last") {
    const Run1 fly = bench_fly();
    const std::vector<Stop> course = course_of(fly.pattern, fly.tied, 3);
    CHECK(course.size() == 3 * fly.tied.moments.size());
    const auto step = [&](std::size_t i) {
        return fly.tied.moments[static_cast<std::size_t>(course[i].moment)].step;
    };
    // Three actions of step 0 for each of three flies, then fly 0 goes on.
    for (std::size_t i = 0; i < 9; ++i) {
        CHECK(step(i) == 0);
        CHECK(course[i].fly == static_cast<int>(i / 3));
    }
    CHECK(course[9].fly == 0);
    CHECK(step(9) == 1);
    for (std::size_t i = course.size() - 3; i < course.size(); ++i) CHECK(step(i) == 6);
}

TEST_CASE("one key from the beginning finishes every fly of the batch") {
    const Run1 fly = bench_fly();
    std::vector<Event> events = begun(2);
    const int stops_in_all = static_cast<int>(course_of(fly.pattern, fly.tied, 2).size());
    press(events, stops_in_all);
    const SittingState s = fold(fly.pattern, fly.tied, events);
    CHECK(s.finished(course_of(fly.pattern, fly.tied, 2)));
    for (const FlyState f : s.fly_state) CHECK(f == FlyState::done);
    SUBCASE("and further presses change nothing") {
        press(events, 3);
        CHECK(same(s, fold(fly.pattern, fly.tied, events)));
    }
}

TEST_CASE("turns are counted at the stop where they are wound and start again at the next") {
    const Run1 fly = bench_fly();
    std::vector<Event> events = begun(1);
    press(events, 3);
    for (int i = 0; i < 3; ++i) events.push_back(event(EventKind::turn, 40.0 + i));
    CHECK(fold(fly.pattern, fly.tied, events).turns == 3.0);
    press(events, 1);
    CHECK(fold(fly.pattern, fly.tied, events).turns == 0.0);
    events.push_back(event(EventKind::undo, 60.0));
    CHECK(fold(fly.pattern, fly.tied, events).turns == 3.0);
}

TEST_CASE("a thread that breaks goes back to the restore point, and undo takes that back") {
    // The scenario of needs: a break after a restore point shows what to redo, counts start at 0,
    // and undo returns to the step.
    const Run1 fly = bench_fly();
    std::vector<Event> events = begun(1);
    press(events, 11); // into the step after the restore point's
    const SittingState before = fold(fly.pattern, fly.tied, events);
    const std::vector<Stop> course = course_of(fly.pattern, fly.tied, 1);
    events.push_back(event(EventKind::turn, 200.0));
    events.push_back(event(EventKind::thread_broke, 201.0));
    const SittingState broken = fold(fly.pattern, fly.tied, events);
    CHECK(broken.breaks == 1);
    CHECK(broken.turns == 0.0);
    CHECK(broken.at < before.at);
    CHECK(broken.redo_until == before.at);
    const auto moment =
        static_cast<std::size_t>(course[static_cast<std::size_t>(broken.at)].moment);
    CHECK(fly.tied.moments[moment - 1].restore_point);
    for (const FlyState f : broken.fly_state) CHECK(f != FlyState::done);
    events.push_back(event(EventKind::undo, 202.0));
    const SittingState mended = fold(fly.pattern, fly.tied, events);
    CHECK(mended.at == before.at);
    CHECK(mended.turns == 1.0);
    CHECK(mended.breaks == 0);
}

TEST_CASE("a spoilt fly keeps its reason and the next one goes on the vise") {
    const Run1 fly = bench_fly();
    std::vector<Event> events = begun(3);
    press(events, 12); // nine for the batch, three on fly 0
    events.push_back(event(EventKind::fly_spoilt, 130.0, 0, "point broke"));
    const SittingState s = fold(fly.pattern, fly.tied, events);
    CHECK(s.fly_state[0] == FlyState::spoilt);
    CHECK(s.spoilt_why[0] == "point broke");
    CHECK(course_of(fly.pattern, fly.tied, 3)[static_cast<std::size_t>(s.at)].fly == 1);
    SUBCASE("and it gets no finishing step for all") {
        press(events, 200);
        const SittingState end = fold(fly.pattern, fly.tied, events);
        CHECK(end.finished(course_of(fly.pattern, fly.tied, 3)));
        CHECK(end.fly_state[0] == FlyState::spoilt);
        CHECK(end.fly_state[1] == FlyState::done);
        CHECK(end.fly_state[2] == FlyState::done);
    }
}

TEST_CASE("a silence of five minutes is left out of the time that a step took") {
    const Run1 fly = bench_fly();
    std::vector<Event> events = begun(1);
    events.push_back(event(EventKind::next, 20.0));
    events.push_back(event(EventKind::next, 50.0));
    events.push_back(event(EventKind::next, 1050.0)); // a thousand seconds: nobody was there
    const SittingState s = fold(fly.pattern, fly.tied, events);
    REQUIRE(s.step_seconds[0].size() == 1);
    CHECK(s.step_seconds[0][0] == 50.0);
}

TEST_CASE("the second press of a double press is known as one") {
    std::vector<Event> events = begun(1);
    events.push_back(event(EventKind::next, 10.0));
    CHECK(is_double_press(events, seconds(10.3)));
    CHECK_FALSE(is_double_press(events, seconds(10.6)));
}

TEST_CASE("undoing everything gives the start, whatever happened") {
    const Run1 fly = bench_fly();
    Dice dice{7};
    for (int round = 0; round < 50; ++round) {
        std::vector<Event> events = begun(3);
        const SittingState start = fold(fly.pattern, fly.tied, events);
        const int n = 1 + dice.roll(60);
        for (int i = 0; i < n; ++i) {
            const auto kind = static_cast<EventKind>(1 + dice.roll(9));
            events.push_back(event(kind, 10.0 * i + 10.0, dice.roll(60), "x"));
        }
        const SittingState there = fold(fly.pattern, fly.tied, events);
        CHECK(same(there, fold(fly.pattern, fly.tied, standing(events)))); // a replay is the same
        for (int i = 0; i < n; ++i) events.push_back(event(EventKind::undo, 10000.0 + i));
        CHECK(same(start, fold(fly.pattern, fly.tied, events)));
    }
}

TEST_CASE("the median of times is the middle one, or between the two middle ones") {
    CHECK(median_of({}) == 0.0);
    CHECK(median_of({3.0, 1.0, 2.0}) == 2.0);
    CHECK(median_of({4.0, 1.0, 2.0, 3.0}) == 2.5);
}
