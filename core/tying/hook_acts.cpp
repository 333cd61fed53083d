#include "core/tying/run.h"

#include <algorithm>
#include <cmath>

// What is done to the bare hook: barb, vise, beads, joints.

namespace wrapwright {

namespace {

double place_of(Passage verdict, int where) {
    return verdict == Passage::passes ? -1.0 : static_cast<double>(where);
}

/// The worst of the four limits of threading a bead on, and which it is.
struct WorstPassage {
    PassageCheck check{};
    double where = 0.0;
};

WorstPassage worst_passage(const BeadFit& fit) {
    const PassageCheck* const checks[] = {&fit.wire, &fit.barb, &fit.bend, &fit.jig_bend};
    WorstPassage worst;
    for (int i = 0; i < 4; ++i) {
        const PassageCheck& c = *checks[i];
        const bool worse = c.verdict > worst.check.verdict ||
                           (c.verdict == worst.check.verdict && c.verdict != Passage::passes &&
                            c.margin() < worst.check.margin());
        if (worse) worst = {c, place_of(c.verdict, i)};
    }
    return worst;
}

void check_bead(Run& run, const Bead& bead, const Hook& hook) {
    const BeadFit fit = bead_fit(bead, hook, run.limits.bead_clearance);
    const WorstPassage worst = worst_passage(fit);
    if (worst.check.verdict != Passage::passes) {
        const bool sticks = worst.check.verdict == Passage::sticks;
        run.find(sticks ? Level::stops : Level::likely,
                 sticks ? Rule::bead_will_not_pass : Rule::bead_tight, Length{},
                 {length_of(worst.check.needed), length_of(worst.check.has),
                  length_of(worst.check.margin()), count_of(worst.where)});
    }
    if (fit.eye.verdict == Passage::sticks) {
        run.find(Level::likely, Rule::bead_falls_off, Length{},
                 {length_of(fit.eye.has), length_of(fit.eye.needed)});
    }
    if (fit.gape_share < run.limits.gape_left_share) {
        run.find(Level::likely, Rule::gape_left_small, Length{},
                 {length_of(fit.gape_left), ratio_of(fit.gape_share),
                  ratio_of(run.limits.gape_left_share)});
    }
}

} // namespace

void do_flatten_barb(Run& run, const Act& act) {
    BaseRun& base = run.base_run(act.base);
    if (run.work(act.base).state.dressed) {
        run.find(Level::likely, Rule::barb_after_dressing, base.line.stations().barb);
    }
    base.hook.barb_height = exactly(Length{}, Origin::derived);
}

void do_slide_on(Run& run, const Act& act) {
    if (act.material == none) return;
    BaseRun& base = run.base_run(act.base);
    BaseWork& w = run.work(act.base);
    const Stuff& stuff = run.stuff(act.material);
    if (w.state.thread.on || w.state.dressed || w.ballast) {
        run.find(Level::stops, Rule::bead_after_thread, base.bead_rear);
    }
    const bool round = stuff.kind == MaterialKind::bead || stuff.kind == MaterialKind::cone;
    if (round) check_bead(run, stuff.bead, base.hook);

    const auto pieces = static_cast<int>(std::max(1.0, act.count.given ? act.count.value : 1.0));
    for (int piece = 0; piece < pieces; ++piece) {
        // The rim of the bore rests against the eye, or against the bead before it.
        const Length along = round ? bore_length(stuff.bead) : stuff.usable_length.value;
        const Length middle = base.bead_rear + 0.5 * along;
        const PlacedKind kind = stuff.kind == MaterialKind::cone       ? PlacedKind::cone
                                : stuff.kind == MaterialKind::dumbbell ? PlacedKind::dumbbell
                                : stuff.kind == MaterialKind::tube     ? PlacedKind::tube
                                                                       : PlacedKind::bead;
        const Length reach = round ? stuff.bead.diameter.value : stuff.width.value;
        Placed& placed = run.put(kind, middle, base.bead_rear + along);
        placed.reach = reach;
        placed.all_round = true;
        placed.mass = stuff.item_mass.value;
        base.bead = static_cast<int>(run.out.placed.size()) - 1;
        // Cells that lie in the bead altogether: what is wound against it starts on the bare wire.
        const int first = w.now.index(base.bead_rear + 0.999 * w.now.cell);
        const int last = w.now.index(base.bead_rear + along) - 1;
        for (int i = piece == 0 && base.bead_rear.si == 0.0 ? 0 : first; i <= last; ++i) {
            const double off = w.now.at(i).si - middle.si;
            const double chord =
                round ? reach.si * reach.si - 4.0 * off * off : reach.si * reach.si;
            double& d = w.now.diameter[static_cast<std::size_t>(i)];
            if (chord > d * d) d = std::sqrt(chord);
        }
        w.profile_changed = true;
        base.bead_rear += along;
    }
    w.state.thread.at = base.bead_rear;
    run.extend(act.part, Length{}, base.bead_rear);
    const double n = pieces;
    run.take(act.part, act.material, n, 0.0, Length{},
             {n * stuff.item_mass.value, n * stuff.item_mass.low, n * stuff.item_mass.high,
              stuff.item_mass.origin});
}

void do_clamp(Run& run, const Act& act) { run.work(act.base).state.clamped = true; }

void do_unclamp(Run& run, const Act& act) {
    BaseWork& w = run.work(act.base);
    if (w.state.thread.on && !w.state.thread.finished) {
        run.find(Level::stops, Rule::not_finished, w.state.thread.at,
                 {turns_of(w.state.thread.turns_since_lock)});
    }
    w.state.clamped = false;
}

void do_turn_hook(Run&, const Act&) {
    // The hook is turned in the vise or about its shank: nothing on the fly changes.
}

void do_join(Run& run, const Act& act) {
    const Pattern& pattern = run.pattern;
    const auto is_this = [&](const Joint& joint) {
        if (act.other_base == none) return true;
        const std::string& a = pattern.recipe.bases[static_cast<std::size_t>(act.base)].id;
        const std::string& b = pattern.recipe.bases[static_cast<std::size_t>(act.other_base)].id;
        return (joint.from == a && joint.to == b) || (joint.from == b && joint.to == a);
    };
    const auto index_of = [&](const std::string& id) {
        for (std::size_t i = 0; i < pattern.recipe.materials.size(); ++i) {
            if (!id.empty() && pattern.recipe.materials[i].id == id) return static_cast<int>(i);
        }
        return none;
    };
    // The link is bound down along the shank, from where it leaves it.
    const Length at = run.place(act.from, run.base_run(act.base).line.stations().bend);
    const Length to = run.place(act.to, at);
    if (run.work(act.base).state.thread.on) {
        run.thread_to(at);
        run.thread_turns(at, run.number_or(act.turns, 12.0, Kind::turns, at));
        run.thread_to(to);
    }
    for (const Joint& joint : pattern.recipe.joints) {
        if (!is_this(joint)) continue;
        const Reading& said = joint.length.at(run.rig.size);
        const Length gap = said.unit == Unit::length ? Length{said.value} : millimetres(5.0);
        Placed& placed = run.put(PlacedKind::joint, at, to);
        placed.reach = gap;
        const int wire = index_of(joint.material);
        if (wire != none) {
            // A loop: there and back, and both ends bound down along the shank.
            const Length length = 2.0 * gap + 2.0 * Length{std::abs((to - at).si)};
            const Mass mass = run.stuff(wire).linear.value * length;
            placed.mass = mass;
            placed.material = wire;
            run.take(act.part, wire, 1.0, 0.0, length, about(mass, 0.15));
        }
        const int beads = index_of(joint.beads);
        if (beads != none) {
            const Reading& n = joint.bead_count.at(run.rig.size);
            const double pieces = n.kind == AmountKind::none ? 1.0 : n.value;
            placed.count = pieces;
            const Estimate<Mass>& each = run.stuff(beads).item_mass;
            run.take(act.part, beads, pieces, 0.0, Length{},
                     {pieces * each.value, pieces * each.low, pieces * each.high, each.origin});
        }
        return;
    }
}

} // namespace wrapwright
