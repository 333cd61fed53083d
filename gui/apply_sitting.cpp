// What changes the sitting: presses, counts, and the events that they become.

#include "gui/answer.h"

#include "core/units/hook_size.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

constexpr int most_flies = 500;

} // namespace

void Answer::happen(EventKind kind, int number, std::string text) {
    Model& m = model();
    const int stood = m.state.at;
    Event event{kind, m.now, number, std::move(text)};
    m.events.push_back(event);
    effect(EffectKind::append).event = std::move(event);
    m.state = fold(m.fly->pattern, m.fly->tied, m.events);
    if (m.state.at != stood) {
        m.stop_since = m.now;
        m.counting = false;
        m.more_words = false;
    }
    m.sheet = Sheet::closed;
}

void Answer::begin(int flies) {
    Model& m = model();
    if (!m.fly || m.fly->tied.moments.empty() || !may_write()) return;
    m.flies = std::clamp(flies, 1, most_flies);
    const Event first{EventKind::begin, m.now, m.flies, {}};
    Effect& e = effect(EffectKind::begin_sitting);
    e.event = first;
    e.number = m.flies;
    m.events = {first};
    m.course = course_of(m.fly->pattern, m.fly->tied, m.flies);
    m.state = fold(m.fly->pattern, m.fly->tied, m.events);
    m.stop_since = m.now;
    m.counting = false;
    m.first_start = false;
    show(Screen::bench);
}

void Answer::press_in_lay_out() {
    Model& m = model();
    if (!m.fly || m.fly->tied.moments.empty()) return show(Screen::bench);
    const bool all = std::all_of(m.laid_out.begin(), m.laid_out.end(), [](bool on) { return on; });
    if (!all) return tick_next();
    if (m.events.empty() || m.state.finished(m.course)) return begin(m.flies);
    show(Screen::bench);
}

void Answer::tick_next() {
    auto& ticks = model().laid_out;
    const auto it = std::find(ticks.begin(), ticks.end(), false);
    if (it != ticks.end()) *it = true;
}

/// A sitting keeps the number that it began with.
void Answer::set_flies(int flies) {
    if (at_work(model())) return say("This sitting is for " + std::to_string(model().flies));
    model().flies = std::clamp(flies, 1, most_flies);
}

void Answer::next_size() {
    if (!model().fly) return;
    if (at_work(model())) return say("Finish or strip this fly first");
    std::vector<HookSize> sizes = model().fly->pattern.recipe.size_list;
    if (sizes.empty()) return;
    std::sort(sizes.begin(), sizes.end());
    const auto at = std::upper_bound(sizes.begin(), sizes.end(), model().fly->size);
    effect(EffectKind::open_size, write_hook_size(at == sizes.end() ? sizes.front() : *at));
}

void Answer::press(bool skip) {
    Model& m = model();
    if (m.sheet == Sheet::thread_broke) return happen(EventKind::thread_broke);
    if (m.sheet == Sheet::strip) return happen(EventKind::strip);
    if (m.sheet != Sheet::closed) return;
    if (m.screen == Screen::lay_out) return press_in_lay_out();
    if (m.screen == Screen::film) return skip ? film_go(m.film_at + 1) : film_play();
    if (m.screen != Screen::bench) return show(Screen::bench);
    if (!m.fly || m.fly->tied.moments.empty()) {
        return say("This recipe is words alone: there are no steps to walk through");
    }
    if (m.events.empty() || m.state.finished(m.course)) {
        m.laid_out.assign(m.laid_out.size(), false);
        return show(Screen::lay_out);
    }
    if (!may_write()) return;
    const bool counts = !skip && m.settings.count_turns && turns_left() > 0.0;
    if (counts) return count();
    const bool just_counted =
        m.events.back().kind == EventKind::turn && (m.now - m.events.back().at) < double_press;
    if (is_double_press(m.events, m.now) || just_counted) {
        return say("Twice in half a second: the second press did nothing");
    }
    happen(EventKind::next);
}

void Answer::count() {
    happen(EventKind::turn);
    if (model().settings.tick) effect(EffectKind::tick);
    if (turns_left() <= 0.0) model().counting = false;
}

void Answer::back() {
    Model& m = model();
    if (m.sheet != Sheet::closed) {
        m.sheet = Sheet::closed;
    } else if (m.screen == Screen::film) {
        film_go(m.film_at - 1);
    } else if (m.screen != Screen::bench) {
        show(Screen::bench);
    } else if (!m.events.empty() && may_write()) {
        if (is_double_press(m.events, m.now)) {
            return say("Twice in half a second: the second press did nothing");
        }
        if (m.state.at == 0) return say("This is the first action");
        happen(EventKind::back);
    }
}

void Answer::undo() {
    Model& m = model();
    if (m.events.empty() || standing(m.events).size() < 2)
        return say("There is nothing to take back");
    if (may_write()) happen(EventKind::undo);
}

void Answer::ask(Sheet sheet) {
    if (!at_work(model())) return say("Begin a fly first");
    if (!may_write()) return;
    model().screen = Screen::bench;
    model().sheet = sheet;
}

void Answer::pass_time() {
    Model& m = model();
    if (m.screen != Screen::film) m.film_playing = false;
    if (m.film_playing && m.now >= m.film_next) film_go(m.film_at + 1);
    if (!m.counting) return;
    if (turns_left() <= 0.0) {
        m.counting = false;
    } else if (m.now >= m.next_turn) {
        count();
        m.next_turn = m.now + pace();
    }
}

void Answer::set(const std::string& key, const std::string& text) {
    if (!take_setting(model().settings, key, text)) return say("'" + text + "' does not fit there");
    Effect& e = effect(EffectKind::save_setting, text);
    e.key = key;
    if (model().screen == Screen::water) dip(model());
    if (model().screen == Screen::orders) {
        reckon(model().book, terms_of(model().settings.book, model().book.today));
    }
}

} // namespace wrapwright::detail
