#pragma once
// A sitting at the bench: a list of events, and what they add up to.
//
// The list is what gets stored, one event at a time, and never changed. Where the person stands,
// what is counted, how long steps took and what was done differently are folded from it. Undo is an
// event too: it takes back the newest event that still holds, so it has no end.

#include "core/bench/course.h"
#include "core/units/quantity.h"

#include <cstdint>
#include <string>
#include <vector>

namespace wrapwright {

enum class EventKind : unsigned char {
    begin, ///< the sitting starts: number = flies
    next,  ///< on to the next action
    back,
    turn,           ///< one turn counted
    go_to,          ///< straight to a stop of the course: number = its index
    thread_broke,   ///< back to the last restore point of this fly
    done_otherwise, ///< text = what was changed: a substitution, a count, a note
    fly_spoilt,     ///< text = why; on to the next fly
    strip,          ///< this fly starts again
    undo,           ///< the newest event that holds does not hold any more
};

/// One thing that happened. `at` is the person's clock, in seconds from any fixed moment.
struct Event {
    EventKind kind = EventKind::next;
    Duration at{};
    int number = 0;
    std::string text{};
    friend bool operator==(const Event&, const Event&) = default;
};

enum class FlyState : unsigned char { waiting, on_vise, done, spoilt };

/// Something that was not done as the recipe says.
struct Otherwise {
    Stop stop;
    std::string text;
};

/// What the events add up to.
struct SittingState {
    int flies = 0;
    int at = 0;          ///< index into the course; its size when all is done
    double turns = 0.0;  ///< counted at this stop
    int redo_until = -1; ///< after a break: stops up to this one are done again
    int breaks = 0;
    std::vector<FlyState> fly_state{};
    std::vector<std::string> spoilt_why{}; ///< for each fly
    std::vector<int> spoilt_step{};        ///< for each fly: the step at which it was; none
    std::vector<Otherwise> otherwise{};
    std::vector<std::vector<double>> step_seconds{}; ///< for each step, the times it took

    [[nodiscard]] bool finished(const std::vector<Stop>& course) const {
        return at >= static_cast<int>(course.size());
    }
};

/// A silence of this length means that nobody was at the vise: it is left out of the step's time.
inline constexpr Duration pause_noticed = minutes(5.0);

/// A second press within this time is a slip and does nothing.
inline constexpr Duration double_press = seconds(0.5);

/// Folds events over a recipe's record.
///
/// Events that cannot apply where they stand (back at the start, a turn after the end) change
/// nothing.
/// Valid   the first event is begin; the pattern and record are those the sitting began with
[[nodiscard]] SittingState fold(const Pattern& pattern, const Tied& tied,
                                const std::vector<Event>& events);

/// The events that still hold: every undo and what it took back left out.
[[nodiscard]] std::vector<Event> standing(const std::vector<Event>& events);

/// Whether a press at that time is the second of a double press.
[[nodiscard]] bool is_double_press(const std::vector<Event>& events, Duration at);

/// The stop to which a thread that breaks now falls back: the first after the last restore point of
/// this fly, or its first stop where there is none.
[[nodiscard]] int restore_stop(const Tied& tied, const std::vector<Stop>& course, int at);

/// Median of times; 0 where there are none.
[[nodiscard]] double median_of(std::vector<double> seconds);

} // namespace wrapwright
