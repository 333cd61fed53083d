#include "core/tying/run.h"

#include <algorithm>
#include <cmath>

// What thread does: start, base, travel, build-up, and the turns that hold everything else.

namespace wrapwright {

namespace {

/// Turns over the standing end when thread is started. Published: 5 to 6 (a 1940 manual).
constexpr double start_turns = 6.0;

WrapAsk thread_ask(const Stuff& thread, Length from) {
    WrapAsk ask;
    ask.from = from;
    ask.width = thread.width.value;
    ask.height = thread.height.value;
    ask.build = Build::volume;
    ask.solid = thread.solid_area.value;
    ask.packing = thread.packing;
    return ask;
}

/// Turns per metre of thread that fill one diameter up to another: the inverse of build-up.
double filling(const Stuff& thread, double from_diameter, double to_diameter) {
    return std::max(0.0, to_diameter - from_diameter) * thread.packing /
           (2.0 * thread.solid_area.value.si);
}

} // namespace

Length holding_span(const Stuff& thread, double turns) {
    // Turn against turn for the first four, then they climb. Common practice, no source.
    return std::clamp(turns, 2.0, 4.0) * thread.width.value;
}

bool Run::thread_ready() {
    const BaseWork& w = work(act().base);
    if (w.state.thread.on) return true;
    find(Level::stops, Rule::no_thread, w.state.thread.at);
    return false;
}

Wrap Run::thread_wrap(const WrapAsk& ask, int part, bool stays) {
    const int base = act().base;
    BaseWork& w = work(base);
    const int material = w.state.thread.material;
    const Stuff& thread = stuff(material);
    const int profile_below = out.last_profile[static_cast<std::size_t>(base)];
    const Wrap done = wrap(w.now, stays ? &w.now : nullptr, ask);
    w.profile_changed = true;

    Winding winding;
    winding.act = act_index;
    winding.step = act().step;
    winding.base = base;
    winding.part = part == none ? w.thread_part : part;
    winding.material = material;
    winding.from = done.from;
    winding.to = done.to;
    winding.turns = done.turns;
    winding.pitch = done.pitch;
    winding.width = ask.width;
    winding.height = ask.height;
    winding.core = done.core;
    winding.length = done.length;
    winding.mass = thread.linear.value * done.length;
    winding.spacing = ask.spacing;
    winding.profile_below = profile_below;
    winding.start_turn = w.state.thread.turns - std::floor(w.state.thread.turns);
    winding.slope = done.slope;
    winding.grip = done.grip;
    out.windings.push_back(winding);

    ThreadState& t = w.state.thread;
    t.at = done.to;
    t.turns += done.turns;
    t.turns_since_lock += done.turns;
    t.finished = false;
    w.hitches = 0.0;
    w.finish_turns = 0.0;
    thread_length += done.length.si;
    const double doubt = 0.10; // denier on spools is nominal, +-10 %
    take(winding.part, material, 0.0, done.turns, done.length, about(winding.mass, doubt));
    return done;
}

void Run::thread_turns(Length at, double turns, bool spread) {
    const BaseWork& w = work(act().base);
    const Stuff& thread = stuff(w.state.thread.material);
    const double span = holding_span(thread, turns).si;
    const double first = std::clamp(at.si - 0.5 * span, 0.0, w.now.end().si - span);
    WrapAsk ask = thread_ask(thread, Length{first + span});
    ask.to = Length{first};
    ask.has_to = true;
    ask.turns = turns;
    ask.has_turns = true;
    thread_wrap(ask, none, false);
    BaseWork& here = work(act().base);
    here.state.thread.at = at;
    if (spread) return;
    // A heap of turns slides off at its sides and settles as a cone: the same volume and height,
    // twice the stretch.
    const double peak = 2.0 * turns / span * thread.solid_area.value.si / thread.packing;
    const Length low{at.si - span}, high{at.si + span};
    for (int i = here.now.index(low); i <= here.now.index(high); ++i) {
        const double away = std::abs(here.now.at(i).si - at.si) / span;
        if (away < 1.0) here.now.diameter[static_cast<std::size_t>(i)] += peak * (1.0 - away);
    }
}

void Run::thread_to(Length at) {
    BaseWork& w = work(act().base);
    if (!w.state.thread.on) return;
    const Stuff& thread = stuff(w.state.thread.material);
    const Length from = w.state.thread.at;
    const double pitch = limits.travel_widths * thread.width.value.si;
    if (std::abs(at.si - from.si) < pitch) {
        w.state.thread.at = at;
        return;
    }
    WrapAsk ask = thread_ask(thread, from);
    ask.to = at;
    ask.has_to = true;
    ask.pitch = Length{pitch};
    ask.has_pitch = true;
    ask.spacing = Spacing::open;
    thread_wrap(ask, none);
}

void Run::check_pull(Force pull, Length at) {
    const BaseWork& w = work(act().base);
    if (!w.state.thread.on) return;
    const Force strength = limits.bent_strand_share * stuff(w.state.thread.material).strength.value;
    if (strength.si <= 0.0) return;
    const double margin = strength / pull;
    if (margin < limits.load_margin) {
        find(margin < 1.0 ? Level::stops : Level::likely, Rule::thread_near_breaking, at,
             {force_of(pull), force_of(strength), ratio_of(margin), ratio_of(limits.load_margin)});
    }
}

void do_start_thread(Run& run, const Act& act) {
    BaseWork& w = run.work(act.base);
    if (w.state.thread.on) {
        run.find(Level::likely, Rule::thread_already_on, w.state.thread.at);
        return;
    }
    if (act.material == none) {
        run.find(Level::stops, Rule::no_thread, Length{});
        return;
    }
    ThreadState& t = w.state.thread;
    t = {};
    t.on = true;
    t.material = act.material;
    w.thread_part = act.part;
    const BaseRun& base = run.base_run(act.base);
    const Length front = base.bead == none ? base.no_go : base.bead_rear;
    t.at = run.place(act.to.given ? act.to : act.from, front);
    w.state.dressed = true;
    WrapAsk ask = thread_ask(run.stuff(act.material), t.at);
    ask.turns = run.number_or(act.turns, start_turns, Kind::turns, t.at);
    ask.has_turns = true;
    const Wrap done = run.thread_wrap(ask, none);
    run.extend(w.thread_part, done.from, done.to);
}

void do_lay_base(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const Length from = run.place(act.from, w.state.thread.at);
    run.thread_to(from);
    WrapAsk ask = thread_ask(run.stuff(w.state.thread.material), from);
    ask.to = run.place(act.to, run.base_run(act.base).line.stations().bend);
    ask.has_to = act.to.given || !act.turns.given;
    ask.turns = act.turns.value;
    ask.has_turns = act.turns.given;
    run.thread_wrap(ask, act.part);
    run.check_wet(from, ask.to);
}

void do_travel(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const Length to = run.place(act.to, w.state.thread.at);
    if (!act.turns.given) {
        run.thread_to(to);
    } else {
        WrapAsk ask = thread_ask(run.stuff(w.state.thread.material), w.state.thread.at);
        ask.to = to;
        ask.has_to = true;
        ask.turns = act.turns.value;
        ask.has_turns = true;
        ask.spacing = Spacing::open;
        run.thread_wrap(ask, none);
    }
    run.check_head(to, true);
}

void do_build_up(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const Stuff& thread = run.stuff(w.state.thread.material);
    const Length from = run.place(act.from, w.state.thread.at);
    const Length to = run.place(act.to, from);
    run.thread_to(from);
    WrapAsk ask = thread_ask(thread, from);
    ask.to = to;
    ask.has_to = true;
    ask.has_turns = true;
    ask.turns = act.turns.value;
    if (act.diameter.given) {
        // Turns fill each cell up to a straight line from one diameter to the other.
        const double d0 = act.diameter.value;
        const double d1 = act.diameter_end.given ? act.diameter_end.value : d0;
        const double low = std::min(from, to).si, high = std::max(from, to).si;
        Profile target = w.now; // the same volume, laid where it is wanted
        double turns = 0.0;
        for (int i = w.now.index(Length{low}); i <= w.now.index(Length{high}); ++i) {
            const double at = w.now.at(i).si;
            if (at < low || at > high) continue;
            const double f = to.si == from.si ? 0.0 : (at - from.si) / (to.si - from.si);
            const auto k = static_cast<std::size_t>(i);
            turns += filling(thread, w.now.diameter[k], d0 + f * (d1 - d0)) * w.now.cell.si;
            target.diameter[k] = std::max(w.now.diameter[k], d0 + f * (d1 - d0));
        }
        ask.turns = turns;
        if (turns > 0.0 && high > low) {
            run.thread_wrap(ask, act.part, false);
            w.now = target;
        }
    } else if (from != to) { // turns as said, or touching turns where nothing is said
        ask.has_turns = ask.turns > 0.0;
        run.thread_wrap(ask, act.part);
    } else if (ask.turns > 0.0) {
        run.thread_turns(to, ask.turns);
    }
    run.extend(act.part, from, to);
    run.check_wet(from, to);
    run.check_head(std::min(from, to), true);
}

} // namespace wrapwright
