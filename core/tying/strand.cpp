#include "core/tying/run.h"

#include <algorithm>
#include <cmath>

// Winding a strand: the one place where a winding, its profile and its tally are written.

namespace wrapwright {

void Run::check_wet(Length a, Length b) {
    BaseWork& w = work(act().base);
    if (w.state.coat_act == none || act().over_wet) return;
    const Length low = std::min(a, b), high = std::max(a, b);
    if (high < w.wet_from || low > w.wet_to) return;
    find(Level::likely, Rule::wound_over_wet, low, {time_of(w.wet_for)});
}

void Run::check_head(Length at, bool is_thread) {
    const BaseRun& base = base_run(act().base);
    if (base.bead != none) return; // the bead is the head
    const Length zone = base.no_go;
    if (at >= zone) return;
    const Length left = std::max(at, Length{});
    if (!is_thread) {
        find(Level::likely, Rule::head_used_up, at, {length_of(left), length_of(zone)});
    } else if (at.si < 0.25 * zone.si) {
        find(Level::likely, Rule::head_crowded, at, {length_of(left), length_of(zone)});
    }
}

Wrap Run::wind_strand(const WrapAsk& ask, int part, int material, Sense sense, Spacing spacing) {
    const int base = act().base;
    BaseWork& w = work(base);
    const Stuff& s = stuff(material);
    const int profile_below = out.last_profile[static_cast<std::size_t>(base)];
    WrapAsk whole = ask;
    whole.spacing = spacing;
    const Wrap done =
        wrap(w.now, &w.now, whole, std::max(limits.flat_window, ask.width), limits.held_end);
    w.profile_changed = true;

    Winding winding;
    winding.act = act_index;
    winding.step = act().step;
    winding.base = base;
    winding.part = part;
    winding.material = material;
    winding.from = done.from;
    winding.to = done.to;
    winding.turns = done.turns;
    winding.pitch = done.pitch;
    winding.growth = done.growth;
    winding.width = ask.width;
    winding.height = ask.height;
    winding.core = done.core;
    winding.length = done.length;
    winding.pieces = std::max(1.0, ask.width / s.width.value);
    winding.mass = winding.pieces * (s.linear.value * done.length);
    winding.sense = sense;
    winding.against_thread = sense != Sense::with_thread;
    winding.spacing = spacing;
    winding.layer = static_cast<int>(std::ceil(done.layers - 0.05));
    winding.profile_below = profile_below;
    winding.slope = done.slope;
    winding.grip = done.grip;
    out.windings.push_back(winding);
    extend(part, done.from, done.to);
    w.foremost = std::min(w.foremost, std::min(done.from, done.to));

    // Hand-wound strands: turns lie within +-5 %; the strand's own spread adds to that.
    const double strand_doubt =
        s.linear.value.si > 0.0 ? (s.linear.high.si - s.linear.low.si) / (2.0 * s.linear.value.si)
                                : 0.0;
    const double doubt = std::hypot(0.05, strand_doubt);
    take(part, material, 0.0, done.turns, done.length, about(winding.mass, doubt, s.linear.origin));

    check_wet(done.from, done.to);
    if (done.grip > limits.slope_safe && done.step > limits.least_step && part != none) {
        find(done.grip > limits.slope_slides ? Level::likely : Level::note, Rule::step_too_steep,
             done.slope_at,
             {ratio_of(done.grip), ratio_of(limits.slope_safe), ratio_of(limits.slope_slides),
              length_of(done.step)});
    }
    return done;
}

namespace {

/// A strand as it is wound; several fibres or herls of one part lie side by side.
WrapAsk strand_ask(const Stuff& s, Length from, const Strand* strand) {
    const bool together = s.kind == MaterialKind::fibres || s.kind == MaterialKind::herl;
    const double pieces = together && strand != nullptr ? std::max(1.0, strand->count) : 1.0;
    WrapAsk ask;
    ask.from = from;
    ask.width = pieces * s.width.value;
    ask.height = s.height.value;
    const bool fills = s.kind == MaterialKind::thread || s.kind == MaterialKind::floss ||
                       s.kind == MaterialKind::yarn;
    ask.build = fills && s.solid_area.value.si > 0.0 ? Build::volume : Build::section;
    ask.solid = s.solid_area.value;
    ask.packing = s.packing;
    return ask;
}

/// The strand of the act's part, or a finding and nothing.
Strand* strand_or_find(Run& run, const Act& act) {
    Strand* strand = run.strand_of(act.part);
    if (strand == nullptr) {
        run.find(Level::stops, Rule::never_tied_in, run.work(act.base).state.thread.at);
    }
    return strand;
}

/// Butts beneath a body that end short of the ballast, or ride up on it, show as a bump.
void check_bump(Run& run, Length a, Length b) {
    const BaseWork& w = run.work(run.act().base);
    const Length low = std::min(a, b), high = std::max(a, b);
    if (!w.ballast || w.ballast_rear < low || w.ballast_rear > high) return;
    for (const Placed& butt : run.out.placed) {
        if (butt.kind != PlacedKind::butt || butt.base != run.act().base) continue;
        const Length front = std::min(butt.at, butt.to);
        const Length gap = front - w.ballast_rear;
        if (std::abs(gap.si) <= run.limits.butt_gap.si) continue;
        // Measured on the profile: a dip between two rises, or a rise above both its sides.
        const Length from = std::min(front, w.ballast_rear), to = std::max(front, w.ballast_rear);
        const double left = w.now.diameter_at(from - run.limits.butt_gap).si;
        const double right = w.now.diameter_at(to + run.limits.butt_gap).si;
        double least = left, most = left;
        for (int i = w.now.index(from); i <= w.now.index(to); ++i) {
            const double d = w.now.diameter[static_cast<std::size_t>(i)];
            least = std::min(least, d);
            most = std::max(most, d);
        }
        const double dip = std::min(left, right) - least;
        const double rise = most - std::max(left, right);
        const double bump = std::max(dip, rise);
        const double share = bump / std::max(left, right);
        if (share > run.limits.butt_step) {
            run.find(Level::likely, Rule::butt_bump, 0.5 * (from + to),
                     {length_of(Length{bump}), ratio_of(share), length_of(gap)});
        }
    }
}

/// What a strand of finite length cannot give.
void check_reach(Run& run, Strand& strand, const Wrap& done) {
    strand.used += done.length;
    if (strand.free.si <= 0.0 || strand.used <= strand.free) return;
    const double reaches =
        done.turns * std::max(0.0, 1.0 - (strand.used - strand.free) / done.length);
    run.find(
        Level::likely, Rule::fibre_too_short, done.to,
        {length_of(strand.used), length_of(strand.free), turns_of(done.turns), turns_of(reaches)});
}

void mark_wound(Run& run, Strand& strand, const Wrap& done, Sense sense) {
    strand.wound = run.act_index;
    strand.wound_turns += done.turns;
    strand.sense = sense;
    check_reach(run, strand, done);
}

/// Whether a winding is a body that a rib may lie on.
bool is_body(const Run& run, const Winding& winding) {
    switch (run.numbers.acts[static_cast<std::size_t>(winding.act)].op) {
    case Op::wind:
    case Op::dub:
    case Op::dubbing_loop:
    case Op::build_up:
    case Op::palmer: return winding.part != none;
    default: return false;
    }
}

/// The body below a rib: how much of the stretch it covers and which way it runs.
struct Body {
    double share = 0.0;
    Sense sense = Sense::with_thread;
    MaterialKind kind = MaterialKind::other;
    double turns = 0.0; ///< of the body, within the rib's stretch
};

Body body_below(const Run& run, const Act& act, Length a, Length b) {
    const double low = std::min(a, b).si, high = std::max(a, b).si;
    Body body;
    if (high <= low) return body;
    for (const Winding& winding : run.out.windings) {
        if (winding.base != act.base || winding.part == act.part || !is_body(run, winding))
            continue;
        if (act.other_part != none && winding.part != act.other_part) continue;
        const double from = std::min(winding.from, winding.to).si;
        const double to = std::max(winding.from, winding.to).si;
        const double over = std::min(high, to) - std::max(low, from);
        if (over <= 0.0) continue;
        body.share += over / (high - low);
        body.sense = winding.sense;
        body.kind = winding.material == none
                        ? MaterialKind::other
                        : run.numbers.materials[static_cast<std::size_t>(winding.material)].kind;
        body.turns += winding.turns * over / std::max(1e-9, to - from);
    }
    return body;
}

/// Whether a body for this rib is wound only later.
bool body_comes_later(const Run& run, const Act& rib) {
    for (auto i = static_cast<std::size_t>(run.act_index) + 1; i < run.numbers.acts.size(); ++i) {
        const Act& a = run.numbers.acts[i];
        if (a.base != rib.base || a.part == none || a.part == rib.part) continue;
        const bool winds =
            a.op == Op::wind || a.op == Op::dub || a.op == Op::dubbing_loop || a.op == Op::build_up;
        if (!winds) continue;
        if (rib.other_part != none ? a.part == rib.other_part
                                   : run.role(a.part) == "body" || run.role(a.part) == "abdomen") {
            return true;
        }
    }
    return false;
}

bool is_soft(MaterialKind kind) {
    return kind == MaterialKind::herl || kind == MaterialKind::fibres ||
           kind == MaterialKind::dubbing || kind == MaterialKind::hackle ||
           kind == MaterialKind::soft_hackle || kind == MaterialKind::quill;
}

} // namespace

void do_wind(Run& run, const Act& act) {
    if (act.material == none) return;
    const Stuff& s = run.stuff(act.material);
    if (s.kind == MaterialKind::thread) { // a body of thread is wound with the thread itself
        do_build_up(run, act);
        return;
    }
    if (!run.thread_ready()) return;
    Strand* strand = strand_or_find(run, act);
    BaseWork& w = run.work(act.base);
    WrapAsk ask =
        strand_ask(s, run.place(act.from, strand ? strand->at : w.state.thread.at), strand);
    ask.to = run.place(act.to, w.state.thread.at);
    ask.has_to = act.to.given || !act.turns.given;
    ask.turns = act.turns.value;
    ask.has_turns = act.turns.given;
    ask.pitch = Length{act.pitch.value};
    ask.has_pitch = act.pitch.given;
    ask.tailward = false;
    const bool loose = ask.has_turns && ask.has_to;
    const Spacing spacing = act.spacing != Spacing::unsaid ? act.spacing
                            : loose || ask.has_pitch       ? Spacing::open
                                                           : Spacing::touching;
    if (ask.has_to) run.thread_to(ask.to); // the thread waits where the strand will end
    check_bump(run, ask.from, ask.has_to ? ask.to : Length{});
    const Wrap done = run.wind_strand(ask, act.part, act.material, act.sense, spacing);
    if (!ask.has_to) run.thread_to(done.to);
    if (strand != nullptr) {
        strand = run.strand_of(act.part);
        mark_wound(run, *strand, done, act.sense);
    }
    run.check_head(std::min(done.from, done.to), false);
}

void do_rib(Run& run, const Act& act) {
    if (act.material == none || !run.thread_ready()) return;
    Strand* strand = strand_or_find(run, act);
    BaseWork& w = run.work(act.base);
    WrapAsk ask = strand_ask(run.stuff(act.material),
                             run.place(act.from, strand ? strand->at : w.state.thread.at), strand);
    ask.to = run.place(act.to, w.state.thread.at);
    ask.has_to = true;
    ask.turns = run.number_or(act.turns, 5.0, Kind::turns, ask.from);
    ask.has_turns = act.turns.given || !act.pitch.given;
    ask.pitch = Length{act.pitch.value};
    ask.has_pitch = act.pitch.given && !act.turns.given;
    const Spacing spacing = act.spacing == Spacing::unsaid ? Spacing::open : act.spacing;

    const Body body = body_below(run, act, ask.from, ask.to);
    Sense sense = act.sense;
    if (!act.sense_said && act.op == Op::counter_rib) {
        const bool against = body.share <= 0.0 || body.sense == Sense::with_thread;
        sense = against ? Sense::against_thread : Sense::with_thread;
    }
    if (body.share < 0.5 && body_comes_later(run, act)) {
        run.find(Level::stops, Rule::rib_before_body, ask.from);
    } else if (body.share > 0.0 && body.sense == sense && is_soft(body.kind)) {
        run.find(Level::likely, Rule::rib_locks_nothing, ask.from,
                 {count_of(ask.turns), count_of(std::abs(ask.turns - body.turns))});
    }
    if (sense == Sense::against_thread) {
        run.find(Level::note, Rule::rib_hard_to_catch, ask.to);
    }
    run.thread_to(ask.to);
    const Wrap done = run.wind_strand(ask, act.part, act.material, sense, spacing);
    if (strand != nullptr) {
        strand = run.strand_of(act.part);
        mark_wound(run, *strand, done, sense);
    }
}

} // namespace wrapwright
