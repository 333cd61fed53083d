#include "core/tying/run.h"

#include <algorithm>
#include <cmath>
#include <numbers>

// How a material is held: tied in, bound down, tied off, trimmed.

namespace wrapwright {

namespace {

using std::numbers::pi;

/// Turns that each way of tying in usually takes. Published: 2 turns hold a rib, 6 to 8 close turns
/// between rib and body (a 1940 manual); 2-3 pinch turns; the rest common practice, no source.
double usual_turns(Op op) {
    switch (op) {
    case Op::pinch_in: return 3.0;
    case Op::loop_in: return 3.0;
    case Op::gather: return 6.0;
    default: return 4.0;
    }
}

/// Fibres that a bundle has when only a word says how many. Common practice, no source.
double usual_count(MaterialKind kind) {
    switch (kind) {
    case MaterialKind::hair: return 25.0;
    case MaterialKind::marabou: return 40.0;
    case MaterialKind::cdc: return 30.0;
    case MaterialKind::fibres: return 6.0;
    case MaterialKind::hackle:
    case MaterialKind::soft_hackle: return 8.0;
    case MaterialKind::flash: return 4.0;
    case MaterialKind::legs:
    case MaterialKind::biot:
    case MaterialKind::herl: return 2.0;
    default: return 1.0;
    }
}

/// How a bundle stands by its role and side. Angles are common practice, no source.
struct Pose {
    double lean = 0.0, spread = 0.0, around = 0.0; // degrees
    bool all_round = false;
};

Pose pose_of(std::string_view role, std::string_view side, MaterialKind kind) {
    Pose pose;
    if (role == "tail" || role == "shuck" || role == "gills") pose = {4.0, 7.0, 0.0, false};
    if (role == "wing" || role == "underwing" || role == "overwing") pose = {12.0, 8.0, 0.0, false};
    if (role == "legs" || role == "beard" || role == "throat") pose = {25.0, 14.0, 180.0, false};
    if (role == "flash") pose = {4.0, 5.0, 0.0, false};
    if (role == "horns" || role == "antennae") pose = {165.0, 12.0, 0.0, false};
    if (kind == MaterialKind::marabou) pose.spread = 10.0;
    if (side == "below" || side == "under") pose.around = 180.0;
    if (side == "near" || side == "near side") pose.around = 270.0;
    if (side == "far" || side == "far side") pose.around = 90.0;
    if (side == "round" || side == "all round") pose.all_round = true;
    return pose;
}

/// Whether what is tied in stands free as it is, or waits to be wound.
bool stands_free(const Run& run, const Act& act, MaterialKind kind) {
    if (run.wound_later(act.part, run.act_index)) return false;
    switch (kind) {
    case MaterialKind::wire:
    case MaterialKind::tinsel:
    case MaterialKind::oval:
    case MaterialKind::floss:
    case MaterialKind::chenille:
    case MaterialKind::herl:
    case MaterialKind::quill: return act.length.given;
    default: return true;
    }
}

/// Adds a bundle of that solid area to the profile over a stretch.
void thicken(BaseWork& w, Length a, Length b, Area area, double packing) {
    const Length low = std::min(a, b), high = std::max(a, b);
    const double added = 4.0 * area.si / (packing * pi);
    for (int i = w.now.index(low); i <= w.now.index(high); ++i) {
        double& d = w.now.diameter[static_cast<std::size_t>(i)];
        d = std::sqrt(d * d + added);
    }
    w.profile_changed = true;
}

/// Solid cross-section of the pieces that a part consists of.
Area section_of(const Stuff& s, double count) {
    if (s.fibre_diameter.value.si > 0.0) return count * disc_area(s.fibre_diameter.value);
    if (s.solid_area.value.si > 0.0) return count * s.solid_area.value;
    return count * (s.width.value * s.height.value);
}

Estimate<Mass> mass_of(const Stuff& s, Area section, Length length) {
    const Mass mass = section * length * s.density.value;
    const double doubt = s.density.value.si > 0.0
                             ? (s.density.high.si - s.density.low.si) / (2.0 * s.density.value.si)
                             : 0.0;
    const double thick =
        s.fibre_diameter.value.si > 0.0
            ? (s.fibre_diameter.high.si - s.fibre_diameter.low.si) /
                  s.fibre_diameter.value.si // twice the half-width: area goes by d^2
            : 0.05;
    return about(mass, std::min(0.9, std::hypot(doubt, thick)));
}

constexpr double bundle_packing = 0.7; ///< of fibres under thread; as thread (physics: phi_b)

void check_case_order(Run& run, const Act& act) {
    // A wing case must be under the thorax: what it is folded over has to come after it.
    if (run.role(act.part) != "wing case" && run.role(act.part) != "shellback") return;
    for (const Winding& winding : run.out.windings) {
        const std::string_view role = run.role(winding.part);
        if (winding.base == act.base && (role == "thorax")) {
            run.find(Level::likely, Rule::case_after_thorax, winding.from);
            return;
        }
    }
}

} // namespace

void do_tie_in(Run& run, const Act& act) {
    if (act.material == none) return;
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const Stuff& s = run.stuff(act.material);
    const Length at = run.place(act.to.given ? act.to : act.from, w.state.thread.at);
    const double usual = usual_turns(act.op);
    const double turns = act.turns.given ? act.turns.value : usual;
    run.check_wet(at, at);
    check_case_order(run, act);
    run.thread_to(at);
    run.check_pull(act.op == Op::gather ? run.limits.pull_gather : run.limits.pull_plain, at);
    const double enough = std::max(usual, run.limits.tie_in_turns * run.limits.thread_turns_spare);
    if (turns > enough) {
        run.find(Level::note, Rule::thread_beyond_need, at,
                 {turns_of(turns), turns_of(run.limits.tie_in_turns)});
    }

    Strand strand;
    strand.part = act.part;
    strand.material = act.material;
    strand.base = act.base;
    strand.tied_in = run.act_index;
    strand.at = at;
    strand.tie_turns = turns;
    strand.springy = s.springy;
    strand.free = s.usable_length.value;
    strand.to_wind = !stands_free(run, act, s.kind);
    strand.count = act.count.given ? act.count.value : 1.0;

    if (!strand.to_wind) {
        const int copies =
            act.part == none ? 1 : run.numbers.parts[static_cast<std::size_t>(act.part)].copies;
        strand.count = run.number_or(act.count, usual_count(s.kind), Kind::count, at);
        const Length reach = act.length.given ? Length{act.length.value}
                                              : 0.5 * run.base_run(act.base).hook.shank.value;
        if (act.length.word) {
            run.find(Level::note, Rule::amount_is_a_word, at, {length_of(reach)});
        }
        if (s.usable_length.value.si > 0.0 && reach > s.usable_length.value) {
            run.find(
                Level::likely, Rule::fibre_too_short, at,
                {length_of(reach), length_of(s.usable_length.value), turns_of(0.0), turns_of(0.0)});
        }
        const double pieces = strand.count * copies;
        const Area section = section_of(s, pieces);
        const Pose pose = pose_of(run.role(act.part), run.side(act.part), s.kind);
        Placed& bundle = run.put(PlacedKind::bundle, at, at);
        bundle.reach = reach;
        bundle.count = pieces;
        bundle.thick = Length{std::sqrt(4.0 * section.si / (bundle_packing * pi))};
        bundle.lean = degrees(pose.lean);
        bundle.spread = degrees(pose.spread);
        bundle.around = degrees(pose.around);
        bundle.all_round = pose.all_round;
        const Estimate<Mass> mass = mass_of(s, section, reach);
        bundle.mass = mass.value;
        run.take(act.part, act.material, pieces, 0.0, reach, mass);
        const Length half = 0.5 * holding_span(run.stuff(w.state.thread.material), turns);
        thicken(w, std::max(Length{}, at - half), at + half, section, bundle_packing);
        run.extend(act.part, at, at);
    } else {
        run.take(act.part, act.material, strand.count, 0.0, Length{}, {});
    }
    run.out.strands.push_back(strand);
    run.thread_turns(at, turns);
    w.state.dressed = true;
    w.foremost = std::min(w.foremost, at);
    run.check_head(at, false);
}

void do_bind_down(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    Strand* strand = run.strand_of(act.part);
    if (strand == nullptr) {
        run.find(Level::stops, Rule::never_tied_in, w.state.thread.at);
        return;
    }
    const Stuff& s = run.stuff(strand->material);
    const double count = strand->count;
    const int material = strand->material;
    const Length from = run.place(act.from, strand->at);
    const Length to = run.place(act.to, w.state.thread.at);
    if (strand->to_wind) strand->at = to; // it leaves the shank where the binding ends
    const Area section = section_of(s, count);
    thicken(w, from, to, section, bundle_packing);
    Placed& butt = run.put(PlacedKind::butt, from, to);
    butt.count = count;
    butt.thick = Length{std::sqrt(4.0 * section.si / (bundle_packing * pi))};
    butt.material = material;
    const Length bound = Length{std::abs((to - from).si)};
    const Estimate<Mass> mass = mass_of(s, section, bound);
    butt.mass = mass.value;
    run.take(act.part, material, 0.0, 0.0, bound, mass);

    run.thread_to(from);
    WrapAsk ask;
    const Stuff& thread = run.stuff(w.state.thread.material);
    ask.from = from;
    ask.to = to;
    ask.has_to = true;
    ask.width = thread.width.value;
    ask.height = thread.height.value;
    ask.build = Build::volume;
    ask.solid = thread.solid_area.value;
    ask.packing = thread.packing;
    ask.has_turns = act.turns.given;
    ask.turns = act.turns.value;
    ask.has_pitch = !act.turns.given;
    ask.pitch = 2.0 * thread.width.value; // open enough to lie flat, close enough to hold
    ask.spacing = Spacing::open;
    run.thread_wrap(ask, none);
    run.extend(act.part, from, to);
    run.check_wet(from, to);
}

void do_tie_off(Run& run, const Act& act) {
    if (!run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    Strand* strand = run.strand_of(act.part);
    if (strand == nullptr) {
        run.find(Level::stops, Rule::never_tied_in, w.state.thread.at);
        return;
    }
    const Length at = run.place(act.to, w.state.thread.at);
    const double least =
        strand->springy ? run.limits.tie_off_turns_springy : run.limits.tie_off_turns;
    const double turns = act.turns.given ? act.turns.value : least + 1.0;
    if (turns < least) {
        run.find(Level::likely, Rule::tied_off_too_few, at, {turns_of(turns), turns_of(least)});
    }
    if (turns > least * run.limits.thread_turns_spare) {
        run.find(Level::note, Rule::thread_beyond_need, at, {turns_of(turns), turns_of(least)});
    }
    strand->tied_off = run.act_index;
    strand->off_turns = turns;
    run.thread_to(at);
    run.check_pull(run.limits.pull_plain, at);
    run.thread_turns(at, turns);
    run.check_head(at, true);
}

void do_trim(Run& run, const Act& act) {
    if (act.part == none) return;
    BaseWork& w = run.work(act.base);
    Strand* strand = run.strand_of(act.part);
    if (strand == nullptr) {
        // A standing thing may be trimmed back: that is `shape`; here it is a strand's waste.
        return;
    }
    if (strand->to_wind && strand->tied_off == none) {
        run.find(Level::stops, Rule::trimmed_too_soon, w.state.thread.at);
    }
    strand->trimmed = run.act_index;
}

} // namespace wrapwright
