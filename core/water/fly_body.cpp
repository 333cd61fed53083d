#include "core/water/fly_body.h"

#include "core/geometry/fly/base_shifts.h"
#include "core/material/substance.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

/// The portion of that part and material, made where it is new.
Portion& portion_of(FlyBody& body, int part, int material) {
    for (Portion& p : body.portions) {
        if (p.material != none && p.part == part && p.material == material) return p;
    }
    Portion p;
    p.part = part;
    p.material = material;
    body.portions.push_back(p);
    return body.portions.back();
}

/// Volume from mass and density, and how much of the mass's doubt is the volume's.
void fill_volume(Portion& p, const Estimate<Density>& density) {
    if (!(density.value.si > 0.0)) return;
    p.density_spread = relative_spread(density);
    p.weighed = p.mass.origin == Origin::measured;
    const double mass = relative_spread(p.mass), d = p.density_spread;
    const double spread =
        p.weighed ? std::hypot(mass, d) : std::sqrt(std::max(0.0, mass * mass - d * d));
    p.volume = about(p.mass.value / density.value, std::min(spread, 0.95), p.mass.origin);
}

/// Lumps of one take before they are scaled to its mass.
struct Spread {
    struct Item {
        glm::dvec2 at;
        double weight;
    };
    std::vector<Item> items{};
    double sum = 0.0;

    void add(const glm::dvec2& at, double weight) {
        if (!(weight > 0.0)) return;
        items.push_back({at, weight});
        sum += weight;
    }
};

class Placing {
  public:
    Placing(const Pattern& pattern, const Resolved& numbers, const Tied& tied)
        : numbers_(numbers), tied_(tied), shifts_(base_shifts(pattern, tied)) {}

    [[nodiscard]] glm::dvec2 on_wire(int base, Length at) const {
        const auto b = static_cast<std::size_t>(base);
        return tied_.bases[b].line.position(at) + glm::dvec2{shifts_[b].si, 0.0};
    }
    [[nodiscard]] glm::dvec2 eye() const {
        return tied_.bases.front().line.eye_centre() + glm::dvec2{shifts_[0].si, 0.0};
    }

    void add_stretch(Spread& out, int base, Length from, Length to, double weight) const {
        constexpr int shares = 8; // a body may run round a bend
        for (int i = 0; i < shares; ++i) {
            out.add(on_wire(base, from + (to - from) * ((i + 0.5) / shares)), weight / shares);
        }
    }

    void add_hook(Spread& out, int base) const {
        const BaseRun& run = tied_.bases[static_cast<std::size_t>(base)];
        const Length tip = run.line.stations().tip;
        constexpr int shares = 128;
        for (int i = 0; i < shares; ++i) {
            out.add(on_wire(base, tip * ((i + 0.5) / shares)), tip.si / shares);
        }
        const auto b = static_cast<std::size_t>(base);
        constexpr double loop = 8.2; // wires in the eye's ring, as hook_mass has it
        out.add(run.line.eye_centre() + glm::dvec2{shifts_[b].si, 0.0},
                loop * run.hook.wire.value.si);
    }

    void add_placed(Spread& out, const Placed& p) const;

  private:
    [[nodiscard]] glm::dvec2 up(int base, Length at) const {
        const glm::dvec2 t = tied_.bases[static_cast<std::size_t>(base)].line.tangent(at);
        return {-t.y, t.x};
    }

    const Resolved& numbers_;
    const Tied& tied_;
    BaseShifts shifts_;
};

void Placing::add_placed(Spread& out, const Placed& p) const {
    const glm::dvec2 at = on_wire(p.base, p.at), e = up(p.base, p.at);
    const glm::dvec2 along{e.y, -e.x};
    const double side = p.all_round ? 0.0 : std::cos(p.around.si);
    const MaterialKind kind = p.material == none
                                  ? MaterialKind::other
                                  : numbers_.materials[static_cast<std::size_t>(p.material)].kind;
    const double weight = p.mass.si;
    switch (p.kind) {
    case PlacedKind::bead:
    case PlacedKind::cone: {
        // Anything may be slid on like a bead; what is none has its middle in the middle.
        Length off{};
        if (kind == MaterialKind::bead) {
            off = bead_centre_offset(numbers_.materials[static_cast<std::size_t>(p.material)].bead);
        }
        out.add(on_wire(p.base, p.at + off), weight);
        return;
    }
    case PlacedKind::tube:
    case PlacedKind::dumbbell:
    case PlacedKind::knot:
    case PlacedKind::clump:
    case PlacedKind::joint: out.add(at, weight); return;
    case PlacedKind::butt:
    case PlacedKind::loop:
    case PlacedKind::coat: add_stretch(out, p.base, p.at, p.to, weight); return;
    case PlacedKind::case_strip: {
        const Profile& profile = tied_.profile(p.base);
        constexpr int shares = 8;
        for (int i = 0; i < shares; ++i) {
            const Length x = p.at + (p.to - p.at) * ((i + 0.5) / shares);
            out.add(on_wire(p.base, x) + up(p.base, x) * (0.5 * profile.diameter_at(x).si),
                    weight / shares);
        }
        return;
    }
    case PlacedKind::barbs: {
        const bool round_a_post = !p.all_round;
        const glm::dvec2 middle = on_wire(p.base, 0.5 * (p.at + p.to));
        out.add(middle + along * (round_a_post ? 0.0 : 0.5 * p.reach.si * std::cos(p.lean.si)) +
                    e * (round_a_post ? 0.5 * tied_.profile(p.base).diameter_at(p.at).si : 0.0),
                weight);
        return;
    }
    case PlacedKind::bundle:
    case PlacedKind::post: break;
    }
    if (kind == MaterialKind::dumbbell || kind == MaterialKind::eyes) { // a ball's radius above it
        const Stuff& stuff = numbers_.materials[static_cast<std::size_t>(p.material)];
        out.add(at + e * (side * 0.5 * (p.root.si + stuff.height.value.si)), weight);
        return;
    }
    const double lean = p.lean.si;
    const glm::dvec2 out_from = at + e * (side * (0.5 * p.root.si + 0.35 * p.thick.si));
    const glm::dvec2 direction = along * std::cos(lean) + e * (side * std::sin(lean));
    out.add(out_from + direction * (0.5 * p.reach.si), weight);
}

/// Where the thread hung at the end of a step: the place of what the record puts nowhere.
glm::dvec2 thread_place(const Tied& tied, const Placing& placing, int step) {
    for (auto it = tied.moments.rbegin(); it != tied.moments.rend(); ++it) {
        if (it->step <= step) return placing.on_wire(it->base, it->state.thread.at);
    }
    return placing.on_wire(0, Length{});
}

template <class Q>
Estimate<Q> sum_by_material(const std::vector<Portion>& portions, Estimate<Q> Portion::* what) {
    Estimate<Q> whole{};
    whole.origin = Origin::measured;
    for (std::size_t i = 0; i < portions.size(); ++i) {
        const auto same = [&](const Portion& p) { return p.material == portions[i].material; };
        const auto first = std::find_if(portions.begin(), portions.end(), same);
        if (first != portions.begin() + static_cast<std::ptrdiff_t>(i)) continue; // added before
        Estimate<Q> sum{};
        sum.origin = Origin::measured;
        for (const Portion& p : portions) {
            if (!same(p)) continue;
            const Estimate<Q>& e = p.*what;
            sum = {sum.value + e.value, sum.low + e.low, sum.high + e.high,
                   std::max(sum.origin, e.origin)};
        }
        whole = add_independent(whole, sum);
    }
    return whole;
}

} // namespace

Estimate<Mass> sum_of_masses(const std::vector<Portion>& portions) {
    return sum_by_material(portions, &Portion::mass);
}

Estimate<Volume> sum_of_volumes(const std::vector<Portion>& portions) {
    return sum_by_material(portions, &Portion::volume);
}

FlyBody fly_body(const Pattern& pattern, const Resolved& numbers, const Tied& tied) {
    FlyBody body;
    const Placing placing(pattern, numbers, tied);
    body.eye = placing.eye();
    int base = 0;
    for (const PartTake& take : tied.takes) {
        const bool is_hook = take.material == none;
        if (is_hook) {
            Portion hook;
            hook.base = base;
            body.portions.push_back(hook);
        }
        Portion& portion =
            is_hook ? body.portions.back() : portion_of(body, take.part, take.material);
        portion.mass = {portion.mass.value + take.mass.value, portion.mass.low + take.mass.low,
                        portion.mass.high + take.mass.high, take.mass.origin};
        const int index = static_cast<int>(&portion - body.portions.data());

        Spread spread;
        if (is_hook) {
            placing.add_hook(spread, base++);
        } else {
            const auto ours = [&](const auto& item) {
                return item.part == take.part && item.material == take.material &&
                       item.step == take.step;
            };
            for (const Winding& w : tied.windings) {
                if (ours(w)) placing.add_stretch(spread, w.base, w.from, w.to, w.mass.si);
            }
            for (const Placed& p : tied.placed) {
                if (ours(p)) placing.add_placed(spread, p);
            }
            if (spread.items.empty()) spread.add(thread_place(tied, placing, take.step), 1.0);
        }
        for (const Spread::Item& item : spread.items) {
            const double share = item.weight / spread.sum;
            body.lumps.push_back({item.at, share * take.mass.value, share * take.volume, index});
        }
    }
    for (Portion& p : body.portions) {
        fill_volume(p, p.material == none
                           ? substance_row(Substance::steel).density
                           : numbers.materials[static_cast<std::size_t>(p.material)].density);
    }
    body.mass = tied.mass;
    body.volume = sum_of_volumes(body.portions);
    return body;
}

} // namespace wrapwright
