#include "core/tying/run.h"

#include "core/tying/op_table.h"

#include <algorithm>

namespace wrapwright {

std::string_view Run::role(int part) const {
    return part == none
               ? std::string_view{}
               : std::string_view{pattern.recipe.parts[static_cast<std::size_t>(part)].role};
}

std::string_view Run::side(int part) const {
    return part == none
               ? std::string_view{}
               : std::string_view{pattern.recipe.parts[static_cast<std::size_t>(part)].side};
}

Strand* Run::strand_of(int part) {
    for (auto it = out.strands.rbegin(); it != out.strands.rend(); ++it) {
        if (it->part == part && it->trimmed == none) return &*it;
    }
    return nullptr;
}

bool Run::wound_later(int part, int after) const {
    for (auto i = static_cast<std::size_t>(after); i < numbers.acts.size(); ++i) {
        const Act& a = numbers.acts[i];
        if (a.part == part && winds(a.op)) return true;
    }
    return false;
}

Length Run::place(const Anchor& anchor, Length otherwise) {
    if (!anchor.given) return otherwise;
    const int base = act().base;
    const BaseRun& run = base_run(base);
    const Stations& s = run.line.stations();
    Length at = otherwise;
    switch (anchor.landmark) {
    case Landmark::none: break;
    case Landmark::eye: at = s.eye; break;
    case Landmark::bead: at = run.bead_rear; break;
    case Landmark::front: at = s.front; break;
    case Landmark::middle: at = s.middle; break;
    case Landmark::point: at = s.point; break;
    case Landmark::barb: at = s.barb; break;
    case Landmark::bend: at = s.bend; break;
    case Landmark::bend_bottom: at = s.bend_bottom; break;
    case Landmark::head: at = run.bead == none ? run.no_go : run.bead_rear; break;
    case Landmark::thread: at = work(base).state.thread.at; break;
    case Landmark::part_front:
    case Landmark::part_rear:
        if (anchor.part != none) {
            const Extent& e = out.extents[static_cast<std::size_t>(anchor.part)];
            if (e.set) at = anchor.landmark == Landmark::part_front ? e.front : e.rear;
        }
        break;
    }
    at += Length{anchor.offset};
    const Length last = work(base).now.end();
    const Length first = run.bead == none ? Length{} : run.bead_rear;
    constexpr double slack = 1e-5; // m: a hundredth of a millimetre is nobody's mistake
    if (at.si > last.si + slack || at.si < first.si - slack) {
        find(Level::likely, Rule::off_the_wire, at,
             {length_of(at), length_of(at.si > last.si ? last : first)});
    }
    return std::clamp(at, first, last);
}

void Run::extend(int part, Length a, Length b) {
    if (part == none) return;
    Extent& e = out.extents[static_cast<std::size_t>(part)];
    const Length low = std::min(a, b), high = std::max(a, b);
    if (!e.set) {
        e = {low, high, true};
    } else {
        e.front = std::min(e.front, low);
        e.rear = std::max(e.rear, high);
    }
}

Finding& Run::find(Level level, Rule rule, Length at, std::initializer_list<Evidence> evidence) {
    Finding f;
    f.level = level;
    f.rule = rule;
    f.at = at;
    f.act = act_index;
    if (act_index < static_cast<int>(numbers.acts.size())) {
        f.step = act().step;
        f.base = act().base;
        f.part = act().part;
        f.material = act().material;
    } else {
        f.act = none;
    }
    std::copy_n(evidence.begin(), std::min<std::size_t>(evidence.size(), f.evidence.size()),
                f.evidence.begin());
    // The same trouble in the same act is said once.
    for (auto it = out.findings.rbegin(); it != out.findings.rend() && it->act == f.act; ++it) {
        if (it->rule == rule && it->part == f.part) return *it;
    }
    out.findings.push_back(f);
    return out.findings.back();
}

void Run::take(int part, int material, double count, double turns, Length length,
               const Estimate<Mass>& mass) {
    const int step = act_index < static_cast<int>(numbers.acts.size()) ? act().step : none;
    for (auto it = out.takes.rbegin(); it != out.takes.rend() && it->step == step; ++it) {
        if (it->part == part && it->material == material) {
            it->count += count;
            it->turns += turns;
            it->length += length;
            // One strand's errors go together: its pieces add straight, not in quadrature.
            it->mass = {it->mass.value + mass.value, it->mass.low + mass.low,
                        it->mass.high + mass.high, std::max(it->mass.origin, mass.origin)};
            return;
        }
    }
    PartTake t;
    t.part = part;
    t.material = material;
    t.step = step;
    t.count = count;
    t.turns = turns;
    t.length = length;
    t.mass = mass;
    out.takes.push_back(t);
}

Placed& Run::put(PlacedKind kind, Length at, Length to) {
    Placed p;
    p.kind = kind;
    p.act = act_index;
    p.step = act().step;
    p.base = act().base;
    p.part = act().part;
    p.material = act().material;
    p.at = at;
    p.to = to;
    p.root = work(p.base).now.diameter_at(at);
    out.placed.push_back(p);
    if (kind != PlacedKind::bead && kind != PlacedKind::cone && kind != PlacedKind::coat &&
        kind != PlacedKind::knot) {
        BaseWork& w = work(p.base);
        w.foremost = std::min(w.foremost, std::min(at, to));
        w.state.dressed = true;
    }
    return out.placed.back();
}

double Run::number_or(const Number& n, double usual, Kind kind, Length at) {
    if (n.given) return n.value;
    if (n.word) find(Level::note, Rule::amount_is_a_word, at, {{kind, usual}});
    return usual;
}

} // namespace wrapwright
