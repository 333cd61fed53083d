#include "gui/apply.h"

#include "core/units/hook_size.h"
#include "gui/lay_out.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

constexpr Duration notice_time = seconds(4.0);
constexpr double usual_pace_s = 1.0; ///< where the person has set none
constexpr float least_zoom = 0.5F;
constexpr float most_zoom = 30.0F;
constexpr int most_flies = 500;

/// Whether the number of a wish names one of what its kind counts.
bool names_something(const Wish& wish) {
    const auto within = [&](int count) { return wish.number >= 0 && wish.number < count; };
    switch (wish.kind) {
    case WishKind::command:
    case WishKind::set_key: return within(command_count);
    case WishKind::show: return within(static_cast<int>(Screen::keys) + 1);
    case WishKind::sheet: return within(static_cast<int>(Sheet::restore) + 1);
    case WishKind::view: return within(static_cast<int>(PictureView::eye) + 1);
    case WishKind::tick_off: return wish.number >= 0;
    default: return true;
    }
}

/// One wish at work on the next model.
class Answer {
  public:
    Answer(const Model& before, Duration now) : m_{before, {}} {
        m_.model.now = now;
        if (!model().notice.empty() && now >= model().notice_until) model().notice.clear();
    }
    Applied take(const Wish& wish);

  private:
    Model& model() { return m_.model; }
    Effect& effect(EffectKind kind, std::string text = {}) {
        Effect& e = m_.effects.emplace_back();
        e.kind = kind;
        e.text = std::move(text);
        return e;
    }
    void say(std::string words) {
        model().notice = std::move(words);
        model().notice_until = model().now + notice_time;
    }
    /// Whether what happens can be kept; says so where it cannot.
    bool may_write() {
        if (model().read_only) say("Another window keeps the library; this one only looks on");
        return !model().read_only;
    }
    void happen(EventKind kind, int number = 0, std::string text = {});
    void command(Command command);
    void press(bool skip);
    void press_in_lay_out();
    void begin(int flies);
    void back();
    void undo();
    void ask(Sheet sheet);
    void count();
    void pass_time();
    void set(const std::string& key, const std::string& text);
    void toggle(const std::string& key, bool now) { set(key, now ? "off" : "on"); }
    void show(Screen screen) {
        model().screen = screen;
        model().sheet = Sheet::closed;
        if (screen == Screen::library) effect(EffectKind::search, model().search);
    }
    void tick_next();
    void set_flies(int flies);
    void next_size();
    /// Turns that a press still counts at this stop.
    [[nodiscard]] double turns_left() {
        if (!at_work(model())) return 0.0;
        const double all = counted_at(*model().fly, moment_of(model())).turns;
        return std::max(0.0, std::round(all) - model().state.turns);
    }

    Applied m_;
};

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
    if (m.screen != Screen::bench) return show(Screen::bench);
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
    if (!m.counting) return;
    if (turns_left() <= 0.0) {
        m.counting = false;
    } else if (m.now >= m.next_turn) {
        count();
        m.next_turn = m.now + seconds(m.settings.pace_s > 0.0 ? m.settings.pace_s : usual_pace_s);
    }
}

void Answer::set(const std::string& key, const std::string& text) {
    if (!take_setting(model().settings, key, text)) return say("'" + text + "' does not fit there");
    Effect& e = effect(EffectKind::save_setting, text);
    e.key = key;
}

void Answer::command(Command command) {
    Model& m = model();
    switch (command) {
    case Command::press: press(false); break;
    case Command::skip: press(true); break;
    case Command::back: back(); break;
    case Command::undo: undo(); break;
    case Command::thread_broke: ask(Sheet::thread_broke); break;
    case Command::otherwise: ask(Sheet::otherwise); break;
    case Command::spoilt: ask(Sheet::spoilt); break;
    case Command::strip: ask(Sheet::strip); break;
    case Command::more_words: m.more_words = !m.more_words; break;
    case Command::count_by_itself:
        if (turns_left() <= 0.0) break;
        m.counting = !m.counting && may_write();
        m.next_turn = m.now + seconds(m.settings.pace_s > 0.0 ? m.settings.pace_s : usual_pace_s);
        break;
    case Command::turn_fly: {
        constexpr float quarter = std::numbers::pi_v<float> / 2.0F;
        m.wraps.turn = std::remainder(m.wraps.turn + quarter, 4.0F * quarter);
        break;
    }
    case Command::next_view: {
        const auto next = (static_cast<int>(m.wraps.view) + 1) % 4;
        m.wraps = {static_cast<PictureView>(next), m.wraps.turn};
        break;
    }
    case Command::overlays: {
        const bool any = std::any_of(std::begin(m.settings.overlays), std::end(m.settings.overlays),
                                     [](bool on) { return on; });
        const Settings usual;
        for (std::size_t i = 0; i < overlay_count; ++i) {
            const std::string key = "show " + std::string(name(static_cast<Overlay>(i)));
            const bool on = !any && usual.overlays[i];
            if (m.settings.overlays[i] != on) set(key, on ? "on" : "off");
        }
        break;
    }
    case Command::units: toggle("inches", m.settings.inches); break;
    case Command::lay_out:
        show(m.screen == Screen::lay_out ? Screen::bench : Screen::lay_out);
        break;
    case Command::library:
        show(m.screen == Screen::library ? Screen::bench : Screen::library);
        break;
    case Command::settings:
        show(m.screen == Screen::settings ? Screen::bench : Screen::settings);
        break;
    case Command::keys: show(m.screen == Screen::keys ? Screen::bench : Screen::keys); break;
    case Command::hand: toggle("left hand", m.settings.left_handed); break;
    case Command::theme: {
        const auto next = (static_cast<int>(m.settings.theme) + 1) % 3;
        set("theme", std::string(name(static_cast<Theme>(next))));
        break;
    }
    case Command::more_flies: set_flies(m.flies + 1); break;
    case Command::fewer_flies: set_flies(m.flies - 1); break;
    case Command::next_size: next_size(); break;
    case Command::close:
        if (m.sheet != Sheet::closed) {
            m.sheet = Sheet::closed;
        } else {
            show(Screen::bench);
        }
        break;
    case Command::count_: break;
    }
}

Applied Answer::take(const Wish& wish) {
    Model& m = model();
    switch (wish.kind) {
    case WishKind::command: command(static_cast<Command>(wish.number)); break;
    case WishKind::begin: begin(wish.number); break;
    case WishKind::go_to:
        if (at_work(m) && may_write()) happen(EventKind::go_to, wish.number);
        break;
    case WishKind::broke:
        if (at_work(m) && may_write()) happen(EventKind::thread_broke);
        break;
    case WishKind::otherwise:
        if (at_work(m) && may_write() && !wish.text.empty()) {
            happen(EventKind::done_otherwise, 0, wish.text);
            say("Noted for this fly");
        }
        break;
    case WishKind::spoilt:
        if (at_work(m) && may_write()) happen(EventKind::fly_spoilt, 0, wish.text);
        break;
    case WishKind::strip:
        if (at_work(m) && may_write()) happen(EventKind::strip);
        break;
    case WishKind::tick_off: {
        const auto i = static_cast<std::size_t>(wish.number);
        if (i < m.laid_out.size()) m.laid_out[i] = !m.laid_out[i];
        break;
    }
    case WishKind::tick_next: tick_next(); break;
    case WishKind::show: show(static_cast<Screen>(wish.number)); break;
    case WishKind::sheet: m.sheet = static_cast<Sheet>(wish.number); break;
    case WishKind::open_recipe: effect(EffectKind::open_recipe, wish.text); break;
    case WishKind::open_size: effect(EffectKind::open_size, wish.text); break;
    case WishKind::duplicate:
        if (may_write()) effect(EffectKind::duplicate, wish.text);
        break;
    case WishKind::favourite:
        if (may_write()) effect(EffectKind::favourite, wish.text).number = wish.number;
        break;
    case WishKind::search:
        m.search = wish.text;
        effect(EffectKind::search, wish.text);
        break;
    case WishKind::set: set(wish.key, wish.text); break;
    case WishKind::set_key:
        set("key map",
            text_of(with_key(m.settings.keys, static_cast<Command>(wish.number), wish.text)));
        break;
    case WishKind::flies: set_flies(wish.number); break;
    case WishKind::orbit:
        m.wraps.yaw = std::remainder(m.wraps.yaw + wish.x, 2.0F * std::numbers::pi_v<float>);
        m.wraps.elevation = std::clamp(m.wraps.elevation + wish.y, -1.5F, 1.5F);
        break;
    case WishKind::zoom:
        m.wraps.zoom = std::clamp(m.wraps.zoom * wish.x, least_zoom, most_zoom);
        break;
    case WishKind::shift:
        m.wraps.shift_x = std::clamp(m.wraps.shift_x + wish.x, -2.0F, 2.0F);
        m.wraps.shift_y = std::clamp(m.wraps.shift_y + wish.y, -2.0F, 2.0F);
        break;
    case WishKind::view: m.wraps = {static_cast<PictureView>(wish.number), m.wraps.turn}; break;
    case WishKind::whole_fly: m.wraps = {}; break;
    case WishKind::put_away: m.trouble.clear(); break;
    case WishKind::back_up: effect(EffectKind::back_up, wish.text); break;
    case WishKind::look_into: effect(EffectKind::look_into, wish.text); break;
    case WishKind::restore:
        if (may_write()) effect(EffectKind::restore);
        m.sheet = Sheet::closed;
        break;
    case WishKind::tick_clock: pass_time(); break;
    case WishKind::quit: effect(EffectKind::quit); break;
    }
    return std::move(m_);
}

} // namespace

Applied apply(const Model& model, const Wish& wish, Duration now) {
    return names_something(wish) ? Answer(model, now).take(wish) : Applied{model, {}};
}

Model with_fly(Model model, std::shared_ptr<const OpenFly> fly, std::vector<Event> events) {
    model.fly = std::move(fly);
    model.events = std::move(events);
    model.course.clear();
    model.state = {};
    model.sheet = Sheet::closed;
    model.counting = false;
    model.more_words = false;
    model.wraps = {};
    model.stop_since = model.now;
    const std::size_t items = lay_out_list(*model.fly, 1, false).size();
    model.laid_out.assign(items, !model.events.empty());
    if (!model.events.empty()) {
        model.state = fold(model.fly->pattern, model.fly->tied, model.events);
        model.flies = model.state.flies;
        model.course = course_of(model.fly->pattern, model.fly->tied, model.flies);
    }
    return model;
}

} // namespace wrapwright
