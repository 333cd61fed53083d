#include "core/tying/run.h"

#include <algorithm>
#include <cmath>
#include <numbers>

// Hackle, wings, hair, cases: what stands free or is folded over.

namespace wrapwright {

namespace {

using std::numbers::pi;

/// What a dry hackle is measured against: barbs of 1.5 gape round a collar, 1.0 along a body.
/// Published in four sources for the collar; a palmer stands out by the body's radius as well.
double barb_gapes(Op op) { return op == Op::palmer ? 1.0 : 1.5; }

void check_hackle(Run& run, const Act& act, const Stuff& s, Length core, Length at) {
    if (s.kind != MaterialKind::hackle) return; // soft hackle goes by the look, to the bend or less
    const Length gape = run.base_run(act.base).hook.gape.value;
    const Length target = barb_gapes(act.op) * gape;
    const Length wire = run.base_run(act.base).hook.wire.value;
    // What shows is the barb and what the body adds to its radius.
    const Length stands =
        s.barb_length.value + (act.op == Op::palmer ? 0.5 * (core - wire) : Length{});
    const double ratio = stands / target;
    if (ratio > run.limits.hackle_high) {
        run.find(Level::likely, Rule::hackle_too_large, at,
                 {length_of(stands), length_of(target), ratio_of(ratio),
                  ratio_of(run.limits.hackle_high)});
    } else if (ratio < run.limits.hackle_low) {
        run.find(Level::likely, Rule::hackle_too_small, at,
                 {length_of(stands), length_of(target), ratio_of(ratio),
                  ratio_of(run.limits.hackle_low)});
    }
}

/// Winds a feather and sets its barbs; one text for collar and palmer.
void wind_feather(Run& run, const Act& act, WrapAsk ask, Spacing spacing) {
    Strand* strand = run.strand_of(act.part);
    if (strand == nullptr) {
        run.find(Level::stops, Rule::never_tied_in, ask.from);
    }
    const Stuff& s = run.stuff(act.material);
    const Wrap done = run.wind_strand(ask, act.part, act.material, act.sense, spacing);
    if (strand != nullptr) {
        strand = run.strand_of(act.part);
        strand->wound = run.act_index;
        strand->wound_turns += done.turns;
        strand->sense = act.sense;
        strand->used += done.length;
        if (strand->free.si > 0.0 && strand->used > strand->free) {
            run.find(Level::likely, Rule::fibre_too_short, done.to,
                     {length_of(strand->used), length_of(strand->free), turns_of(done.turns),
                      turns_of(done.turns * (strand->free / strand->used))});
        }
    }
    Placed& barbs = run.put(PlacedKind::barbs, done.from, done.to);
    barbs.reach = s.barb_length.value;
    barbs.count = std::floor(in_millimetres(done.length) * s.barbs_per_mm);
    barbs.root = done.core + s.height.value;
    barbs.lean = degrees(s.kind == MaterialKind::hackle ? 85.0 : 40.0);
    barbs.spread = degrees(6.0);
    barbs.all_round = true;
    const Mass mass =
        barbs.count * (disc_area(s.fibre_diameter.value) * barbs.reach * s.density.value);
    barbs.mass = mass;
    run.take(act.part, act.material, 0.0, 0.0, Length{}, about(mass, 0.5));
    check_hackle(run, act, s, done.core, done.from);
    run.check_head(std::min(done.from, done.to), false);
}

WrapAsk stem_ask(const Stuff& s, Length from) {
    WrapAsk ask;
    ask.from = from;
    ask.width = s.width.value;
    ask.height = s.height.value;
    ask.tailward = false;
    return ask;
}

} // namespace

void do_collar(Run& run, const Act& act) {
    if (act.material == none || !run.thread_ready()) return;
    const Stuff& s = run.stuff(act.material);
    const Strand* strand = run.strand_of(act.part);
    BaseWork& w = run.work(act.base);
    WrapAsk ask = stem_ask(s, run.place(act.from, strand ? strand->at : w.state.thread.at));
    const double usual = s.kind == MaterialKind::hackle ? 5.0 : 2.0; // common practice, no source
    ask.turns = run.number_or(act.turns, usual, Kind::turns, ask.from);
    ask.has_turns = true;
    ask.to = run.place(act.to, ask.from);
    ask.has_to = act.to.given && act.to.landmark != Landmark::none && ask.to != ask.from;
    wind_feather(run, act, ask, ask.has_to ? Spacing::open : Spacing::touching);
    run.thread_to(run.out.windings.back().to);
}

void do_palmer(Run& run, const Act& act) {
    if (act.material == none || !run.thread_ready()) return;
    const Stuff& s = run.stuff(act.material);
    const Strand* strand = run.strand_of(act.part);
    BaseWork& w = run.work(act.base);
    WrapAsk ask = stem_ask(s, run.place(act.from, strand ? strand->at : w.state.thread.at));
    ask.turns = run.number_or(act.turns, 5.0, Kind::turns, ask.from);
    ask.has_turns = true;
    ask.to = run.place(act.to, w.state.thread.at);
    ask.has_to = true;
    wind_feather(run, act, ask, act.spacing == Spacing::unsaid ? Spacing::open : act.spacing);
}

void do_wind_post(Run& run, const Act& act) {
    if (act.material == none || !run.thread_ready()) return;
    const Stuff& s = run.stuff(act.material);
    Strand* strand = run.strand_of(act.part);
    BaseWork& w = run.work(act.base);
    const Length at = run.place(act.to, strand ? strand->at : w.state.thread.at);
    const double turns = run.number_or(act.turns, 5.0, Kind::turns, at);
    const Length post = act.diameter.given ? Length{act.diameter.value} : millimetres(0.8);
    // Round the post, not round the hook: a helix of the post's diameter and the stem's pitch.
    const double round = pi * (post.si + s.height.value.si);
    const Length length{turns * std::hypot(round, s.width.value.si)};
    Placed& barbs = run.put(PlacedKind::barbs, at, at);
    barbs.reach = s.barb_length.value;
    barbs.count = std::floor(in_millimetres(length) * s.barbs_per_mm);
    barbs.root = post;
    barbs.lean = degrees(0.0);
    barbs.around = degrees(0.0);
    const Mass mass = s.linear.value * length + barbs.count * (disc_area(s.fibre_diameter.value) *
                                                               barbs.reach * s.density.value);
    barbs.mass = mass;
    run.take(act.part, act.material, 0.0, turns, length, about(mass, 0.5));
    if (strand != nullptr) {
        strand->wound = run.act_index;
        strand->wound_turns += turns;
        strand->used += length;
    } else {
        run.find(Level::stops, Rule::never_tied_in, at);
    }
}

void do_set_wing(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    for (auto it = run.out.placed.rbegin(); it != run.out.placed.rend(); ++it) {
        if (it->part != act.part || it->kind != PlacedKind::bundle) continue;
        it->lean = degrees(88.0);
        it->spread = degrees(run.role(act.part) == "post" ? 4.0 : 18.0);
        const Length at = it->at;
        run.thread_to(at);
        run.thread_turns(at, run.number_or(act.turns, 8.0, Kind::turns, at));
        return;
    }
    run.find(Level::stops, Rule::never_tied_in, run.work(act.base).state.thread.at);
}

void do_pull_over(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    Strand* strand = run.strand_of(act.part);
    if (strand == nullptr) {
        run.find(Level::stops, Rule::never_tied_in, w.state.thread.at);
        return;
    }
    const Stuff& s = run.stuff(strand->material);
    const Length from = strand->at;
    const Length to = run.place(act.to, w.state.thread.at);
    strand->wound = run.act_index;
    strand->used = Length{std::abs((to - from).si)};
    const Length length = strand->used;
    const int material = strand->material;
    const double count = strand->count;
    run.thread_to(to);
    Placed& strip = run.put(PlacedKind::case_strip, from, to);
    strip.material = material;
    strip.reach = length;
    strip.count = count;
    strip.thick =
        s.width.value.si > 0.0 ? s.width.value : 0.7 * run.base_run(act.base).hook.gape.value;
    const Area section = s.fibre_diameter.value.si > 0.0 ? count * disc_area(s.fibre_diameter.value)
                                                         : s.width.value * s.height.value;
    const Mass mass = section * length * s.density.value;
    strip.mass = mass;
    run.take(act.part, material, 0.0, 0.0, length, about(mass, 0.3));
    run.extend(act.part, from, to);
    run.check_wet(from, to);
}

void do_stack_hair(Run&, const Act&) {
    // Tips are brought even before the hair goes on: nothing on the hook changes.
}

void do_spin_hair(Run& run, const Act& act) {
    if (act.material == none || !run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const Stuff& s = run.stuff(act.material);
    const Length at = run.place(act.to.given ? act.to : act.from, w.state.thread.at);
    run.check_wet(at, at);
    run.thread_to(at);
    const Length bare = run.base_run(act.base).hook.wire.value;
    const Length under = w.now.diameter_at(at) - bare;
    if (under > 2.0 * run.stuff(w.state.thread.material).height.value) {
        run.find(Level::likely, Rule::spun_on_thread_base, at, {length_of(under)});
    }
    run.check_pull(run.limits.pull_spin, at);
    const double count = run.number_or(act.count, 60.0, Kind::count, at);
    const Length reach =
        act.length.given ? Length{act.length.value} : 0.5 * run.base_run(act.base).hook.gape.value;
    Placed& clump = run.put(PlacedKind::clump, at, at);
    clump.reach = reach;
    clump.count = count;
    clump.all_round = true;
    clump.lean = degrees(90.0);
    clump.spread = degrees(35.0);
    const Area section = count * disc_area(s.fibre_diameter.value);
    const Mass mass = section * (2.0 * reach) * s.density.value;
    clump.mass = mass;
    run.take(act.part, act.material, count, 0.0, 2.0 * reach, about(mass, 0.4));
    run.extend(act.part, at, at);
    run.thread_turns(at, run.number_or(act.turns, 5.0, Kind::turns, at));
}

void do_shape(Run& run, const Act& act) {
    // Cutting to a shape takes away; it never adds. A stated diameter bounds what stands.
    if (!act.diameter.given) return;
    for (auto it = run.out.placed.rbegin(); it != run.out.placed.rend(); ++it) {
        if (it->part == act.part &&
            (it->kind == PlacedKind::clump || it->kind == PlacedKind::bundle)) {
            const Length half{0.5 * act.diameter.value};
            if (it->reach > half) {
                const double kept = half / it->reach;
                it->reach = half;
                it->mass = kept * it->mass;
            }
            return;
        }
    }
}

} // namespace wrapwright
