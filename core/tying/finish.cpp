#include "core/tying/run.h"

#include <algorithm>
#include <cmath>

// Knots, the cut, and coats.

namespace wrapwright {

namespace {

/// A knot of so many turns where the thread is: it is wound, and it locks what was wound before.
void knot(Run& run, const Act& act, double turns) {
    BaseWork& w = run.work(act.base);
    const Length at = run.place(act.to.given ? act.to : act.from, w.state.thread.at);
    run.thread_to(at);
    run.check_head(at, true);
    run.thread_turns(at, turns);
    run.put(PlacedKind::knot, at, at).count = turns;
    w.state.thread.turns_since_lock = 0.0;
}

} // namespace

void do_half_hitch(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const double before = w.hitches;
    const double n = act.turns.given ? act.turns.value : act.count.given ? act.count.value : 1.0;
    knot(run, act, n);
    w.hitches = before + n;
    w.state.thread.finished = w.hitches >= run.limits.half_hitches_as_finish;
}

void do_whip_finish(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const double turns = run.number_or(act.turns, 5.0, Kind::turns, w.state.thread.at);
    if (turns < run.limits.finish_turns) {
        run.find(Level::likely, Rule::finish_too_few, w.state.thread.at,
                 {turns_of(turns), turns_of(run.limits.finish_turns)});
    }
    run.check_pull(run.limits.pull_finish, w.state.thread.at);
    knot(run, act, turns);
    w.finish_turns = turns;
    w.state.thread.finished = true;
}

void do_cut_thread(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    ThreadState& t = run.work(act.base).state.thread;
    if (!t.finished) {
        run.find(Level::stops, Rule::cut_unfinished, t.at, {turns_of(t.turns_since_lock)});
    }
    t.on = false;
}

void do_coat(Run& run, const Act& act) {
    if (act.material == none) return;
    BaseWork& w = run.work(act.base);
    const Stuff& s = run.stuff(act.material);
    const Length at = run.place(act.from, w.state.thread.at);
    const Length to = run.place(act.to, at);
    const Length half = to == at ? millimetres(0.5) : Length{};
    const Length front = std::max(Length{}, std::min(at, to) - half);
    const Length rear = std::max(at, to) + half;
    const double drops = act.count.given ? act.count.value : 1.0;
    Placed& coat = run.put(PlacedKind::coat, front, rear);
    coat.count = drops;
    coat.all_round = true;
    coat.mass = drops * s.item_mass.value;
    run.take(act.part, act.material, drops, 0.0, Length{},
             {drops * s.item_mass.value, drops * s.item_mass.low, drops * s.item_mass.high,
              s.item_mass.origin});
    run.extend(act.part, front, rear);
    if (s.coat != CoatKind::wax) {
        w.state.coat_act = run.act_index;
        w.wet_from = front;
        w.wet_to = rear;
        w.wet_for = s.cure;
    }
    const BaseRun& base = run.base_run(act.base);
    if (base.bead == none && front.si < 0.1 * base.no_go.si) {
        run.find(Level::note, Rule::eye_coated, front, {length_of(front)});
    }
}

void do_cure(Run& run, const Act& act) { run.work(act.base).state.coat_act = none; }

void do_clear_eye(Run&, const Act&) {
    // The eye is pierced before a coat sets: nothing else changes.
}

void do_mark(Run&, const Act&) {
    // Colour, picked-out fibre, a singed end: it shows, and neither length nor mass is known of it.
}

} // namespace wrapwright
