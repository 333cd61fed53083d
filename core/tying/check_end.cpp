#include "core/tying/run.h"

#include <algorithm>

// What can only be seen when everything has been done: strands left over, ends left standing.

namespace wrapwright {

namespace {

void blame(Finding& finding, const Run& run, int act, int part, int material) {
    finding.part = part;
    finding.material = material;
    if (act != none) {
        finding.act = act;
        finding.step = run.numbers.acts[static_cast<std::size_t>(act)].step;
        finding.base = run.numbers.acts[static_cast<std::size_t>(act)].base;
    }
}

Finding& add(Run& run, Level level, Rule rule, Length at,
             std::initializer_list<Evidence> evidence) {
    Finding f;
    f.level = level;
    f.rule = rule;
    f.at = at;
    std::copy_n(evidence.begin(), std::min<std::size_t>(evidence.size(), f.evidence.size()),
                f.evidence.begin());
    run.out.findings.push_back(f);
    return run.out.findings.back();
}

/// Thread turns that pass a place after an act, before the end there was cut.
double turns_passing(const Run& run, const Strand& strand, Length at) {
    const int until =
        strand.trimmed == none ? static_cast<int>(run.numbers.acts.size()) : strand.trimmed;
    double turns = 0.0;
    for (const Winding& w : run.out.windings) {
        if (w.base != strand.base || w.act <= strand.tied_off || w.act >= until) continue;
        if (run.stuff(w.material).kind != MaterialKind::thread) continue;
        const Length low = std::min(w.from, w.to), high = std::max(w.from, w.to);
        if (low <= at && at <= high)
            turns += std::max(1.0, w.pitch.si > 0.0 ? w.width / w.pitch : 1.0);
    }
    return turns;
}

void check_strand(Run& run, const Strand& s) {
    if (!s.to_wind) return;
    if (s.wound == none) {
        blame(add(run, Level::likely, Rule::never_wound, s.at, {}), run, s.tied_in, s.part,
              s.material);
        return;
    }
    if (s.tied_off == none && s.trimmed == none) {
        blame(add(run, Level::stops, Rule::never_tied_off, s.at, {turns_of(s.wound_turns)}), run,
              s.wound, s.part, s.material);
    }
    if (s.springy && s.tied_off != none) {
        Length off = s.at;
        for (const Winding& w : run.out.windings) {
            if (w.part == s.part && w.base == s.base) off = w.to;
        }
        const double passing = turns_passing(run, s, off);
        if (passing > 0.0) {
            blame(add(run, Level::likely, Rule::hard_end_standing, off, {turns_of(passing)}), run,
                  s.tied_off, s.part, s.material);
        }
    }
}

bool is_used(const Run& run, int part) {
    const auto is_its = [&](const Act& a) { return a.part == part || a.other_part == part; };
    return std::any_of(run.numbers.acts.begin(), run.numbers.acts.end(), is_its);
}

} // namespace

void check_end(Run& run) {
    for (const Strand& strand : run.out.strands) check_strand(run, strand);
    for (std::size_t b = 0; b < run.out.bases.size(); ++b) {
        const BaseWork& w = run.bases[b];
        if (w.state.thread.on) {
            Finding& f = add(run, Level::stops, Rule::not_finished, w.state.thread.at,
                             {turns_of(w.state.thread.turns_since_lock)});
            f.base = static_cast<int>(b);
        }
        if (w.ballast && !w.ballast_locked) {
            Finding& f =
                add(run, Level::likely, Rule::ballast_not_locked, w.ballast_front,
                    {turns_of(w.ballast_turns), length_of(w.ballast_rear - w.ballast_front)});
            blame(f, run, w.ballast_act,
                  run.numbers.acts[static_cast<std::size_t>(w.ballast_act)].part,
                  run.numbers.acts[static_cast<std::size_t>(w.ballast_act)].material);
        }
    }
    if (run.numbers.acts.empty()) return; // words only: nothing was meant to be run
    for (std::size_t p = 0; p < run.numbers.parts.size(); ++p) {
        if (run.numbers.parts[p].present && !is_used(run, static_cast<int>(p))) {
            Finding& f = add(run, Level::note, Rule::part_never_used, Length{}, {});
            f.part = static_cast<int>(p);
        }
    }
}

} // namespace wrapwright
