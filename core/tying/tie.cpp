#include "core/tying/tie.h"

#include "core/tying/op_table.h"
#include "core/tying/run.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

/// Dressing reaches halfway round the bend at most; a little beyond is kept for bodies that do.
Length dressable(const Stations& s) { return s.bend_bottom; }

void lay_out(Run& run) {
    Tied& out = run.out;
    out.size = run.rig.size;
    out.bases.clear();
    out.profiles.clear();
    out.last_profile.clear();
    out.moments.clear();
    out.windings.clear();
    out.placed.clear();
    out.strands.clear();
    out.takes.clear();
    out.findings.clear();
    out.extents.assign(run.numbers.parts.size(), Extent{});
    for (std::size_t b = 0; b < run.rig.hooks.size(); ++b) {
        const Hook& hook = run.rig.hooks[b];
        out.bases.push_back(BaseRun{hook, Centreline(hook)});
        BaseRun& base = out.bases.back();
        base.no_go = run.limits.head_eye_lengths * hook.eye_length.value;
        BaseWork& w = run.bases[b];
        w.now.cell = dressable(base.line.stations()) / profile_cells;
        w.now.diameter.fill(hook.wire.value.si);
        out.last_profile.push_back(static_cast<int>(out.profiles.size()));
        out.profiles.push_back(w.now);
    }
}

void take_hooks(Run& run) {
    for (std::size_t b = 0; b < run.rig.hooks.size(); ++b) {
        PartTake t;
        t.count = 1.0;
        t.mass = hook_mass(run.rig.hooks[b]);
        run.out.takes.push_back(t);
    }
}

void check_needs(Run& run, const Act& act) {
    const Need need = op_row(act.op).need;
    const BaseWork& w = run.work(act.base);
    if ((need == Need::clamped || need == Need::thread) && !w.state.clamped) {
        run.find(Level::note, Rule::hook_not_clamped, Length{});
        run.work(act.base).state.clamped = true; // said once is enough
    }
}

void end_act(Run& run, const Act& act) {
    BaseWork& w = run.work(act.base);
    const auto b = static_cast<std::size_t>(act.base);
    if (w.profile_changed) {
        run.out.last_profile[b] = static_cast<int>(run.out.profiles.size());
        run.out.profiles.push_back(w.now);
        w.profile_changed = false;
    }
    const BaseRun& base = run.base_run(act.base);
    const Length front = base.bead == none ? Length{} : base.bead_rear;
    w.state.head_room = std::max(Length{}, std::min(w.foremost, base.line.stations().bend) - front);

    Moment m;
    m.act = run.act_index;
    m.step = act.step;
    m.base = act.base;
    m.profile = run.out.last_profile[b];
    m.windings = static_cast<int>(run.out.windings.size());
    m.placed = static_cast<int>(run.out.placed.size());
    m.strands = static_cast<int>(run.out.strands.size());
    m.findings = static_cast<int>(run.out.findings.size());
    const auto next = static_cast<std::size_t>(run.act_index) + 1;
    const bool last_of_step =
        next >= run.numbers.acts.size() || run.numbers.acts[next].step != act.step;
    m.restore_point =
        last_of_step && run.pattern.recipe.steps[static_cast<std::size_t>(act.step)].restore_point;
    m.state = w.state;
    m.thread_length = run.thread_length;
    run.out.moments.push_back(m);
}

/// Solid volumes follow from mass and density; the whole mass is the sum of the lines. Lines of one
/// material share its errors and add straight, materials add in quadrature.
void add_up(Run& run) {
    Tied& out = run.out;
    Estimate<Mass> whole{};
    whole.origin = Origin::measured;
    const auto materials = static_cast<int>(run.numbers.materials.size());
    for (int m = none; m < materials; ++m) {
        const Density density =
            m == none ? substance_row(Substance::steel).density.value : run.stuff(m).density.value;
        Estimate<Mass> sum{};
        sum.origin = Origin::measured;
        bool any = false;
        for (PartTake& t : out.takes) {
            if (t.material != m) continue;
            any = true;
            if (density.si > 0.0) t.volume = t.mass.value / density;
            sum = {sum.value + t.mass.value, sum.low + t.mass.low, sum.high + t.mass.high,
                   std::max(sum.origin, t.mass.origin)};
        }
        if (any) whole = add_independent(whole, sum);
    }
    out.mass = whole;
}

} // namespace

void tie(const Pattern& pattern, const Rig& rig, const Resolved& numbers, const Limits& limits,
         Tied& out) {
    WW_ASSERT(rig.hooks.size() <= std::tuple_size_v<decltype(Run::bases)>);
    Run run{pattern, rig, numbers, limits, out};
    lay_out(run);
    take_hooks(run);
    for (std::size_t i = 0; i < numbers.acts.size(); ++i) {
        const Act& act = numbers.acts[i];
        run.act_index = static_cast<int>(i);
        check_needs(run, act);
        op_row(act.op).effect(run, act);
        end_act(run, act);
    }
    run.act_index = static_cast<int>(numbers.acts.size());
    check_end(run);
    add_up(run);
}

Result<Tied> tie_once(const Pattern& pattern, HookSize size, const Hook* own,
                      const Limits& limits) {
    const Result<Rig> rig = make_rig(pattern, size, own);
    if (!rig.ok()) return rig.error();
    Resolved numbers;
    const Result<bool> resolved = resolve(pattern, rig.value(), numbers);
    if (!resolved.ok()) return resolved.error();
    Tied tied;
    tie(pattern, rig.value(), numbers, limits, tied);
    return tied;
}

} // namespace wrapwright
