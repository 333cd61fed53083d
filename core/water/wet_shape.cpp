#include "core/water/wet_shape.h"

#include "core/geometry/fly/base_shifts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

using std::numbers::pi;

constexpr double dressed_share = 1.03; // of the wire: what is thicker has something on it
constexpr Angle swept = degrees(45.0); // soft feather in the stream, from memory

bool is_soft(MaterialKind kind) {
    return kind == MaterialKind::soft_hackle || kind == MaterialKind::marabou ||
           kind == MaterialKind::cdc;
}

class Wetting {
  public:
    Wetting(const Pattern& pattern, const Resolved& numbers, const Tied& tied)
        : numbers_(numbers), tied_(tied), shifts_(base_shifts(pattern, tied)) {}

    [[nodiscard]] WetShape shape() {
        for (std::size_t b = 0; b < tied_.bases.size(); ++b) {
            add_body(static_cast<int>(b));
            add_bend(static_cast<int>(b));
        }
        for (const Placed& p : tied_.placed) add(p);
        const double widest = widest_;
        const double bead = out_.bead.si;
        out_.blunt = {std::max(clumps_, pi / 4.0 * std::max(0.0, widest * widest - bead * bead))};
        if (out_.skin.si > 0.0) out_.body_at /= out_.skin.si;
        return std::move(out_);
    }

  private:
    [[nodiscard]] const Stuff* stuff(int material) const {
        return material == none ? nullptr : &numbers_.materials[static_cast<std::size_t>(material)];
    }
    [[nodiscard]] glm::dvec2 place(int base, Length at) const {
        const auto b = static_cast<std::size_t>(base);
        return tied_.bases[b].line.position(at) + glm::dvec2{shifts_[b].si, 0.0};
    }

    /// The skin of what is dressed: cells thicker than the wire, the bead's own left out.
    void add_body(int base) {
        const BaseRun& run = tied_.bases[static_cast<std::size_t>(base)];
        const Profile& profile = tied_.profile(base);
        const double bare = dressed_share * run.hook.wire.value.si;
        for (int i = profile.index(run.bead_rear); i < profile_cells; ++i) {
            const double d = profile.diameter[static_cast<std::size_t>(i)];
            if (d <= bare) continue;
            const double area = pi * d * profile.cell.si;
            out_.skin.si += area;
            out_.skin_length += profile.cell;
            out_.body_at += area * place(base, profile.at(i));
            if (base == 0) widest_ = std::max(widest_, d);
        }
    }

    /// Bare wire by the length of it that crosses the flow: the sum of sin^3 along it.
    void add_bend(int base) {
        const BaseRun& run = tied_.bases[static_cast<std::size_t>(base)];
        const Profile& profile = tied_.profile(base);
        const double bare = dressed_share * run.hook.wire.value.si;
        const Length tip = run.line.stations().tip;
        constexpr int shares = 96;
        double crossing = 0.0;
        glm::dvec2 at{};
        for (int i = 0; i < shares; ++i) {
            const Length here = tip * ((i + 0.5) / shares);
            if (here < run.bead_rear) continue;
            if (here < profile.end() && profile.diameter_at(here).si > bare) continue;
            const double s = std::abs(run.line.tangent(here).y);
            const double part = s * s * s * tip.si / shares;
            crossing += part;
            at += part * place(base, here);
        }
        if (!(crossing > 0.0)) return;
        WetFibres wire;
        wire.diameter = run.hook.wire.value;
        wire.length = {crossing};
        wire.at = at / crossing;
        out_.fibres.push_back(wire);
    }

    void add(const Placed& p) {
        switch (p.kind) {
        case PlacedKind::bead:
        case PlacedKind::cone:
            if (p.base == 0 && p.reach > out_.bead) {
                out_.bead = p.reach;
                out_.bead_at = place(p.base, p.at);
            }
            return;
        case PlacedKind::dumbbell: add_rod(p); return;
        case PlacedKind::barbs: add_barbs(p); return;
        case PlacedKind::bundle:
        case PlacedKind::post: add_bundle(p); return;
        case PlacedKind::clump:
            clumps_ += pi * (p.reach.si + 0.5 * p.root.si) * (p.reach.si + 0.5 * p.root.si);
            return;
        default: return;
        }
    }

    void add_rod(const Placed& p) {
        const Stuff* s = stuff(p.material);
        if (s == nullptr) return;
        WetFibres rod;
        rod.diameter = s->height.value;
        rod.length = s->width.value;
        rod.at = place(p.base, p.at);
        out_.fibres.push_back(rod);
    }

    void add_barbs(const Placed& p) {
        const Stuff* s = stuff(p.material);
        if (s == nullptr) return;
        WetFibres barbs;
        barbs.count = p.count;
        barbs.diameter = s->fibre_diameter.value;
        barbs.length = p.reach;
        barbs.at = place(p.base, 0.5 * (p.at + p.to));
        if (!p.all_round) { // level round a post: the mean of |sin|^3 over a turn is 4 / (3 pi)
            barbs.across = std::cbrt(4.0 / (3.0 * pi));
        } else {
            const double angle = is_soft(s->kind) ? swept.si : 0.5 * pi;
            barbs.across = std::sin(angle);
            const double root = 0.5 * p.root.si, tip = root + p.reach.si * barbs.across;
            barbs.most = {pi * (tip * tip - root * root)};
            barbs.at.x += 0.5 * p.reach.si * std::cos(angle);
        }
        out_.fibres.push_back(barbs);
    }

    void add_bundle(const Placed& p) {
        const Stuff* s = stuff(p.material);
        if (s == nullptr) return;
        if (s->kind == MaterialKind::dumbbell || s->kind == MaterialKind::eyes) {
            add_rod(p);
            return;
        }
        WetFibres f;
        f.count = p.count;
        f.diameter = s->fibre_diameter.value.si > 0.0 ? s->fibre_diameter.value : s->width.value;
        f.length = p.reach;
        double lean = std::min(p.lean.si, pi - p.lean.si);
        if (is_soft(s->kind)) lean = std::min(lean, swept.si);
        const double fan = 0.5 * p.spread.si;
        f.across = std::sin(std::min(0.5 * pi, std::hypot(lean, fan)));
        const double wide = p.thick.si + p.reach.si * std::sin(fan) * 2.0;
        f.most = {std::max(p.reach.si * std::sin(lean) * wide, pi / 4.0 * wide * wide)};
        const double side = p.all_round ? 0.0 : std::cos(p.around.si);
        f.at = place(p.base, p.at) + glm::dvec2{0.5 * p.reach.si * std::cos(lean),
                                                0.5 * side * p.reach.si * std::sin(lean)};
        out_.fibres.push_back(f);
    }

    const Resolved& numbers_;
    const Tied& tied_;
    BaseShifts shifts_;
    WetShape out_;
    double widest_ = 0.0, clumps_ = 0.0;
};

} // namespace

WetShape wet_shape(const Pattern& pattern, const Resolved& numbers, const Tied& tied) {
    return Wetting(pattern, numbers, tied).shape();
}

std::vector<Lying> lying_parts(const Pattern& pattern, const Resolved& numbers, const Tied& tied,
                               const Water& water) {
    std::vector<Lying> out;
    const BaseShifts shifts = base_shifts(pattern, tied);
    const double line = film_hold(water, degrees(90.0)); // N/m: both sides of what lies on it
    const auto add = [&](double from, double to, double newtons) {
        out.push_back({Length{std::min(from, to)}, Length{std::max(from, to)}, Force{newtons}});
    };
    for (std::size_t b = 0; b < tied.bases.size(); ++b) {
        const BaseRun& run = tied.bases[b];
        const double from = run.line.eye_centre().x + shifts[b].si;
        const double to = run.line.position(run.line.stations().bend_bottom).x + shifts[b].si;
        add(from, to, line * (to - from));
    }
    for (const Placed& p : tied.placed) {
        const auto b = static_cast<std::size_t>(p.base);
        const double at = tied.bases[b].line.position(0.5 * (p.at + p.to)).x + shifts[b].si;
        const double reach = p.reach.si;
        if (p.kind == PlacedKind::barbs) {
            // Its outline on the water: out and back on both sides.
            const double half = std::max(0.5 * std::abs((p.to - p.at).si), 0.25 * reach);
            add(at - half, at + half, 2.0 * line * reach);
        } else if (p.kind == PlacedKind::bundle || p.kind == PlacedKind::post) {
            const double lean = p.lean.si;
            const bool level = std::abs(std::cos(p.around.si)) < 0.8 || std::sin(lean) < 0.5;
            if (!level) continue; // it stands up from the water or down into it
            const MaterialKind kind =
                p.material == none ? MaterialKind::other
                                   : numbers.materials[static_cast<std::size_t>(p.material)].kind;
            if (kind == MaterialKind::dumbbell || kind == MaterialKind::eyes) continue;
            add(at, at + reach * std::cos(lean), line * reach);
        }
    }
    return out;
}

} // namespace wrapwright
