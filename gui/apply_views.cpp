// Other looks at the fly: the whole tying as a film, and what if it were done otherwise.

#include "gui/answer.h"
#include "gui/tour.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

constexpr Duration film_pace = seconds(0.8); ///< from one action to the next

} // namespace

void Answer::next_water() {
    const double depth = model().settings.depth_m;
    const char* deeper = depth < 1.0 ? "1" : depth < 2.0 ? "2" : depth < 4.0 ? "4" : "0";
    set("water", deeper);
    if (deeper[0] == '0') return say("In air");
    say(std::string("Under ") + deeper + " m of clear water; fluorescent colours keep more");
}

/// All on as they come, or, where any is on, all off.
void Answer::all_overlays() {
    const auto& shown = model().settings.overlays;
    const bool any = std::any_of(std::begin(shown), std::end(shown), [](bool on) { return on; });
    const Settings usual;
    for (std::size_t i = 0; i < overlay_count; ++i) {
        const bool on = !any && usual.overlays[i];
        if (shown[i] == on) continue;
        set("show " + std::string(name(static_cast<Overlay>(i))), on ? "on" : "off");
    }
}

void Answer::film_go(int moment) {
    Model& m = model();
    if (!m.fly || m.fly->tied.moments.empty()) return;
    const int last = static_cast<int>(m.fly->tied.moments.size()) - 1;
    m.film_at = std::clamp(moment, 0, last);
    m.film_next = m.now + film_pace;
    if (m.film_at == last) m.film_playing = false;
}

void Answer::film_play() {
    Model& m = model();
    if (!m.fly || m.fly->tied.moments.empty()) return;
    m.film_playing = !m.film_playing;
    const int last = static_cast<int>(m.fly->tied.moments.size()) - 1;
    if (m.film_playing && m.film_at >= last) m.film_at = 0;
    m.film_next = m.now + film_pace;
}

void Answer::take_tour(int stop) {
    const auto stops = tour_stops();
    const bool on = stop >= 0 && static_cast<std::size_t>(stop) < stops.size();
    model().tour = on ? stop : -1;
    if (on) show(stops[static_cast<std::size_t>(stop)].screen);
}

void Answer::open_what_if() {
    Model& m = model();
    if (m.screen == Screen::what_if) return show(Screen::bench);
    if (!m.fly || !trial_ranges(*m.fly, moment_of(m))) {
        return say("Nothing is wound in this action; try it where something is");
    }
    m.trials = {};
    m.tried = m.fly;
    try_neighbours();
    show(Screen::what_if);
}

void Answer::what_set(int which, double value) {
    Model& m = model();
    if (!m.tried || which < 0 || which >= static_cast<int>(trial_count)) return;
    const auto ranges = trial_ranges(*m.fly, moment_of(m));
    if (!ranges) return;
    const auto i = static_cast<std::size_t>(which);
    m.trials[i] = std::clamp(value, (*ranges)[i].least, (*ranges)[i].most);
    // The last one moved of these two says how many turns there are.
    if (which == static_cast<int>(Trial::turns)) {
        m.trials[static_cast<std::size_t>(Trial::pitch)].reset();
    }
    if (which == static_cast<int>(Trial::pitch)) {
        m.trials[static_cast<std::size_t>(Trial::turns)].reset();
    }
    m.tried = try_out(*m.fly, moment_of(m), m.trials);
    try_neighbours();
}

/// The flies with two turns fewer and two more than what is tried.
void Answer::try_neighbours() {
    Model& m = model();
    const int moment = moment_of(m);
    if (!m.beside || !m.tried || !trial_ranges(*m.fly, moment)) return;
    const Counted own = counted_at(*m.tried, moment);
    const double turns = m.tried->tied.windings[static_cast<std::size_t>(own.first)].turns;
    const auto with = [&](double wanted) {
        Trials trials = m.trials;
        trials[static_cast<std::size_t>(Trial::turns)] = std::max(1.0, wanted);
        trials[static_cast<std::size_t>(Trial::pitch)].reset();
        return try_out(*m.fly, moment, trials);
    };
    m.fewer = with(turns - 2.0);
    m.more = with(turns + 2.0);
}

void Answer::what_keep() {
    Model& m = model();
    if (!m.tried || m.tried == m.fly) return show(Screen::bench);
    const int moment = moment_of(m);
    if (at_work(m)) {
        if (!may_write()) return;
        happen(EventKind::done_otherwise, 0, trial_words(*m.tried, moment));
    }
    m.fly = m.tried;
    m.tried.reset();
    say("Kept for this sitting, and noted");
    show(Screen::bench);
}

} // namespace wrapwright::detail
