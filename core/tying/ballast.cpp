#include "core/tying/run.h"

#include <algorithm>
#include <cmath>

// Weighting wire on the bare shank, and the thread that keeps it where it is.

namespace wrapwright {

void do_wind_ballast(Run& run, const Act& act) {
    if (act.material == none) return;
    BaseWork& w = run.work(act.base);
    const BaseRun& base = run.base_run(act.base);
    const Stations& s = base.line.stations();
    const Stuff& wire = run.stuff(act.material);
    if (w.state.thread.on) run.find(Level::note, Rule::ballast_after_thread, w.state.thread.at);

    const Length clear = run.limits.ballast_clear_eyes * base.hook.eye_length.value;
    const Length first = base.bead == none ? clear : base.bead_rear;
    WrapAsk ask;
    ask.from = run.place(act.from, first);
    ask.width = wire.width.value;
    ask.height = wire.height.value;
    ask.to = run.place(act.to, Length{});
    ask.has_to = act.to.given;
    ask.tailward = !act.to.given || ask.to > ask.from;
    ask.turns = run.number_or(act.turns, 8.0, Kind::turns, ask.from);
    ask.has_turns = act.turns.given || !act.to.given;
    ask.spacing = Spacing::touching;

    const Wrap done = run.wind_strand(ask, act.part, act.material, act.sense, Spacing::touching);
    const Length front = std::min(done.from, done.to), rear = std::max(done.from, done.to);
    w.ballast = true;
    w.ballast_locked = false;
    w.ballast_act = run.act_index;
    w.ballast_front = front;
    w.ballast_rear = rear;
    w.ballast_turns = done.turns;

    // The bend is where the room ends: turns there ride up and cannot be covered.
    if (rear > s.bend || done.clipped) {
        run.find(Level::stops, Rule::ballast_does_not_fit, rear,
                 {length_of(rear - front), length_of(s.bend - front), length_of(rear - s.bend)});
    } else if (done.layers > 1.05) {
        const Length needs = done.layers * (rear - front);
        run.find(Level::likely, Rule::ballast_does_not_fit, rear,
                 {length_of(needs), length_of(rear - front), length_of(needs - (rear - front))});
    }
    if (base.bead == none && front.si < clear.si - 1e-6) {
        run.find(Level::likely, Rule::ballast_crowds_eye, front,
                 {length_of(front), length_of(clear)});
    }
}

namespace {

/// A ramp of thread from a step down to the shank; the tan that its turns reach.
///
/// Derivation: the ramp's section is a triangle of height h and length h / tan, so its volume per
/// circumference is h^2 / (2 tan); N turns bring N A / phi. With h half the step of diameter,
/// tan = phi step^2 / (8 A N).
struct Ramp {
    double slope = 0.0;
    double turns = 0.0;
};

Ramp ramp_of(const Stuff& thread, double step, const Number& asked, double wanted_slope) {
    const double k = thread.packing * step * step / (8.0 * thread.solid_area.value.si);
    if (asked.given && asked.value > 0.0) {
        const double half = 0.5 * asked.value;
        return {std::max(k / half, wanted_slope), half};
    }
    return {wanted_slope, k / wanted_slope};
}

void lay_ramp(Run& run, Length edge, bool tailward, double top, const Ramp& ramp) {
    BaseWork& w = run.work(run.act().base);
    run.thread_to(edge);
    run.thread_turns(edge, ramp.turns, true); // they lie in the ramp, not in a heap on the edge
    for (int k = 0; k < profile_cells; ++k) {
        const int i = tailward ? w.now.index(edge) + 1 + k : w.now.index(edge) - 1 - k;
        if (i < 0 || i >= profile_cells) break;
        const double away = std::abs(w.now.at(i).si - edge.si);
        const double d = top - 2.0 * ramp.slope * away;
        double& here = w.now.diameter[static_cast<std::size_t>(i)];
        if (d <= here) break;
        here = d;
    }
}

} // namespace

void do_lock_ballast(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    if (!w.ballast) return;
    const Stuff& thread = run.stuff(w.state.thread.material);
    const Length front = w.ballast_front, rear = w.ballast_rear;
    const double top = w.now.diameter_at(0.5 * (front + rear)).si;
    const double step = top - run.rig.hooks[static_cast<std::size_t>(act.base)].wire.value.si;
    const Ramp ramp = ramp_of(thread, std::max(0.0, step), act.turns, run.limits.ramp_slope);
    const Length pitch = run.limits.travel_widths * thread.width.value;

    run.thread_to(front);
    const bool room_in_front =
        run.base_run(act.base).bead == none || front - run.base_run(act.base).bead_rear > pitch;
    if (room_in_front) lay_ramp(run, front, false, top, ramp);
    run.thread_to(rear);
    lay_ramp(run, rear, true, top, ramp);
    run.thread_to(run.place(act.to, rear));
    w.ballast_locked = true;
    w.profile_changed = true;
}

} // namespace wrapwright
