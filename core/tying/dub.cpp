#include "core/tying/run.h"

#include <algorithm>
#include <cmath>
#include <numbers>

// Dubbing: fibre on the thread, wound to a wanted diameter. The volume it fills is the amount.

namespace wrapwright {

namespace {

/// How thick dubbing is laid on when only a word says so, in gapes of added diameter.
/// Common practice, no source: a thorax of 1.5 to 2 times a slim body.
constexpr double usual_growth_gapes = 0.22;

/// The narrowest noodle that holds fibre. From memory.
constexpr double least_noodle = 3e-4; // m

} // namespace

void do_dub(Run& run, const Act& act) {
    if (act.material == none || !run.thread_ready()) return;
    BaseWork& w = run.work(act.base);
    const Stuff& fur = run.stuff(act.material);
    const Length from = run.place(act.from, w.state.thread.at);
    const Length to = run.place(act.to, w.state.thread.at);
    run.thread_to(from);
    const double low = std::min(from, to).si, high = std::max(from, to).si;
    const double span = high - low;
    const Length growth = usual_growth_gapes * run.base_run(act.base).hook.gape.value;
    const double start =
        act.diameter.given ? act.diameter.value : (w.now.diameter_at(from) + growth).si;
    const double end = act.diameter_end.given ? act.diameter_end.value
                       : act.diameter.given   ? act.diameter.value
                                              : (w.now.diameter_at(to) + growth).si;
    if (act.diameter.word) {
        run.find(Level::note, Rule::amount_is_a_word, from, {length_of(Length{start})});
    }
    if (span <= 0.0) {
        run.extend(act.part, from, to);
        return;
    }

    // Volume between what is there and a straight line from one diameter to the other.
    const int below = run.out.last_profile[static_cast<std::size_t>(act.base)];
    Profile after = w.now;
    double volume = 0.0, mean = 0.0, core = 0.0, covered = 0.0;
    for (int i = w.now.index(Length{low}); i <= w.now.index(Length{high}); ++i) {
        const auto k = static_cast<std::size_t>(i);
        const double left = std::max(low, i * w.now.cell.si);
        const double right = std::min(high, (i + 1) * w.now.cell.si);
        const double dx = right - left;
        if (dx <= 0.0) continue;
        const double f = std::abs(0.5 * (left + right) - from.si) / span;
        const double d0 = w.now.diameter[k];
        // Where the core is already as thick, a thin veil of fibre still goes over it.
        const double d1 = std::max(d0 + least_noodle, start + f * (end - start));
        volume += std::numbers::pi / 4.0 * (d1 * d1 - d0 * d0) * dx;
        mean += 0.5 * (d0 + d1) * dx;
        core += d0 * dx;
        covered += dx;
        after.diameter[k] = d0 + (d1 - d0) * dx / w.now.cell.si;
    }
    mean /= covered;
    core /= covered;
    // A noodle as thick as the layer it makes, laid turn against turn.
    const double noodle =
        std::max(least_noodle, 0.5 * volume / (std::numbers::pi * mean * span) * 2.0);
    const double turns = act.turns.given ? act.turns.value : std::max(1.0, span / noodle);
    const double length = turns * std::hypot(std::numbers::pi * mean, span / turns);

    // Thread runs inside the noodle; in a loop it runs there twice.
    const double strands = act.op == Op::dubbing_loop ? 2.0 : 1.0;
    const Stuff& thread = run.stuff(w.state.thread.material);
    const Mass thread_mass = thread.linear.value * Length{strands * length};
    run.take(w.thread_part, w.state.thread.material, 0.0, turns, Length{strands * length},
             about(thread_mass, 0.10));
    run.thread_length += strands * length;

    const Mass mass = Volume{volume} * fur.wound_density.value;
    const double doubt = fur.wound_density.value.si > 0.0
                             ? (fur.wound_density.high.si - fur.wound_density.low.si) /
                                   (2.0 * fur.wound_density.value.si)
                             : 0.5;
    run.take(act.part, act.material, 0.0, turns, Length{length}, about(mass, std::min(0.9, doubt)));
    w.now = after;
    w.profile_changed = true;

    Winding winding;
    winding.act = run.act_index;
    winding.step = act.step;
    winding.base = act.base;
    winding.part = act.part;
    winding.material = act.material;
    winding.from = from;
    winding.to = to;
    winding.turns = turns;
    winding.pitch = Length{span / turns};
    winding.width = winding.height = Length{noodle};
    winding.core = Length{core};
    winding.length = Length{length};
    winding.mass = mass;
    winding.sense = act.sense;
    winding.against_thread = act.sense != Sense::with_thread;
    winding.profile_below = below;
    run.out.windings.push_back(winding);
    run.extend(act.part, from, to);
    w.foremost = std::min(w.foremost, Length{low});
    w.state.thread.at = to;
    w.state.thread.turns += turns;
    w.state.thread.turns_since_lock += turns;
    w.state.thread.finished = false;
    w.hitches = w.finish_turns = 0.0;
    run.check_wet(from, to);
    run.check_head(Length{low}, false);
}

} // namespace wrapwright
