#include "core/bench/sitting.h"

#include "core/assert.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// The fold at work: the state, and since when the present stop is being worked.
struct Fold {
    const Tied& tied;
    const std::vector<Stop>& course;
    SittingState state{};
    Duration last{};     ///< time of the event before
    double worked = 0.0; ///< seconds at the present step so far

    [[nodiscard]] int end() const { return static_cast<int>(course.size()); }
    [[nodiscard]] const Stop& stop(int i) const { return course[static_cast<std::size_t>(i)]; }
    [[nodiscard]] int step(int i) const {
        return tied.moments[static_cast<std::size_t>(stop(i).moment)].step;
    }
    [[nodiscard]] FlyState& fly(int f) { return state.fly_state[static_cast<std::size_t>(f)]; }

    [[nodiscard]] int last_stop_of(int f) const {
        for (int i = end() - 1; i >= 0; --i) {
            if (stop(i).fly == f) return i;
        }
        return -1;
    }
    [[nodiscard]] int first_stop_of(int f) const {
        for (int i = 0; i < end(); ++i) {
            if (stop(i).fly == f) return i;
        }
        return end();
    }

    /// Stops of spoilt flies are not worked any more.
    [[nodiscard]] int skip_spoilt(int i, int way) {
        while (i >= 0 && i < end() && fly(stop(i).fly) == FlyState::spoilt) i += way;
        return i;
    }

    void stand_at(int i) {
        state.at = std::clamp(i, 0, end());
        state.turns = 0.0;
        if (state.at >= state.redo_until) state.redo_until = -1;
        if (state.at < end()) {
            FlyState& f = fly(stop(state.at).fly);
            if (f == FlyState::waiting || f == FlyState::done) f = FlyState::on_vise;
        }
    }

    void note_time(Duration at) {
        const Duration gap = at - last;
        if (gap.si > 0.0 && gap < pause_noticed) worked += gap.si;
        last = at;
    }

    void leave_step(int from, int to) {
        if (to < end() && step(from) == step(to) && stop(from).fly == stop(to).fly) return;
        // A step that is gone back from was not finished: its time runs on.
        if (to > from) state.step_seconds[static_cast<std::size_t>(step(from))].push_back(worked);
        worked = 0.0;
    }

    void next() {
        if (state.at >= end()) return;
        const int from = state.at, to = skip_spoilt(from + 1, 1);
        leave_step(from, to);
        const int f = stop(from).fly;
        if (last_stop_of(f) == from) fly(f) = FlyState::done;
        stand_at(to);
    }

    void back() {
        const int to = skip_spoilt(state.at - 1, -1);
        if (to < 0) return;
        if (state.at < end()) leave_step(state.at, to);
        stand_at(to);
    }

    void spoil(const std::string& why) {
        if (state.at >= end()) return;
        const int f = stop(state.at).fly;
        fly(f) = FlyState::spoilt;
        state.spoilt_why[static_cast<std::size_t>(f)] = why;
        state.spoilt_step[static_cast<std::size_t>(f)] = step(state.at);
        worked = 0.0;
        stand_at(skip_spoilt(state.at, 1));
    }

    void apply(const Event& event) {
        note_time(event.at);
        switch (event.kind) {
        case EventKind::begin: break; // handled where the fold starts
        case EventKind::next: next(); break;
        case EventKind::back: back(); break;
        case EventKind::turn:
            if (state.at < end()) state.turns += 1.0;
            break;
        case EventKind::go_to:
            if (event.number >= 0 && event.number < end()) {
                worked = 0.0;
                stand_at(event.number);
            }
            break;
        case EventKind::thread_broke:
            if (state.at < end()) {
                const int until = std::max(state.at, state.redo_until);
                ++state.breaks;
                stand_at(restore_stop(tied, course, state.at));
                state.redo_until = until > state.at ? until : -1;
            }
            break;
        case EventKind::done_otherwise:
            if (state.at < end()) state.otherwise.push_back({stop(state.at), event.text});
            break;
        case EventKind::fly_spoilt: spoil(event.text); break;
        case EventKind::strip:
            if (state.at < end()) {
                worked = 0.0;
                stand_at(first_stop_of(stop(state.at).fly));
            }
            break;
        case EventKind::undo: break; // standing() has taken these out
        }
    }
};

} // namespace

std::vector<Event> standing(const std::vector<Event>& events) {
    std::vector<Event> out;
    for (const Event& event : events) {
        if (event.kind != EventKind::undo) {
            out.push_back(event);
        } else if (out.size() > 1) { // the beginning cannot be undone
            out.pop_back();
        }
    }
    return out;
}

int restore_stop(const Tied& tied, const std::vector<Stop>& course, int at) {
    const int fly = course[static_cast<std::size_t>(at)].fly;
    int first = at;
    for (int i = at - 1; i >= 0; --i) {
        const Stop& stop = course[static_cast<std::size_t>(i)];
        if (stop.fly != fly) continue;
        if (tied.moments[static_cast<std::size_t>(stop.moment)].restore_point) return first;
        first = i;
    }
    return first;
}

SittingState fold(const Pattern& pattern, const Tied& tied, const std::vector<Event>& events) {
    const std::vector<Event> held = standing(events);
    WW_ASSERT(!held.empty() && held.front().kind == EventKind::begin);
    const int flies = std::max(1, held.front().number);
    const std::vector<Stop> course = course_of(pattern, tied, flies);
    Fold fold{tied, course};
    fold.state.flies = flies;
    fold.state.fly_state.assign(static_cast<std::size_t>(flies), FlyState::waiting);
    fold.state.spoilt_why.assign(static_cast<std::size_t>(flies), std::string{});
    fold.state.spoilt_step.assign(static_cast<std::size_t>(flies), none);
    fold.state.step_seconds.resize(pattern.recipe.steps.size());
    fold.last = held.front().at;
    fold.stand_at(0);
    for (const Event& event : held) fold.apply(event);
    return fold.state;
}

bool is_double_press(const std::vector<Event>& events, Duration at) {
    if (events.empty()) return false;
    const Event& last = events.back();
    const bool moves = last.kind == EventKind::next || last.kind == EventKind::back;
    return moves && at >= last.at && at - last.at < double_press;
}

double median_of(std::vector<double> seconds) {
    if (seconds.empty()) return 0.0;
    std::sort(seconds.begin(), seconds.end());
    const std::size_t n = seconds.size();
    return n % 2 == 1 ? seconds[n / 2] : 0.5 * (seconds[n / 2 - 1] + seconds[n / 2]);
}

} // namespace wrapwright
