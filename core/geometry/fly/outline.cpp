#include "core/geometry/fly/outline.h"

#include "core/geometry/fly/base_shifts.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

class Outlining {
  public:
    Outlining(const Pattern& pattern, const Resolved& resolved, const Tied& tied, int moment)
        : resolved_(resolved), tied_(tied), shifts_(base_shifts(pattern, tied)), moment_(moment) {}

    FlyOutline made() {
        for (std::size_t b = 0; b < tied_.bases.size(); ++b) {
            add_wire(static_cast<int>(b));
            add_body(static_cast<int>(b));
        }
        for (int i = 0; i < windings(); ++i) {
            if (!covered(i)) add_turns(tied_.windings[static_cast<std::size_t>(i)]);
        }
        for (int i = 0; i < placed(); ++i) {
            const Placed& p = tied_.placed[static_cast<std::size_t>(i)];
            if (p.removed_act == none || p.removed_act > act()) add(p);
        }
        bound();
        return std::move(out_);
    }

  private:
    [[nodiscard]] const Moment* now() const {
        return moment_ == none ? nullptr : &tied_.moments[static_cast<std::size_t>(moment_)];
    }
    [[nodiscard]] int windings() const {
        return now() != nullptr ? now()->windings : static_cast<int>(tied_.windings.size());
    }
    [[nodiscard]] int placed() const {
        return now() != nullptr ? now()->placed : static_cast<int>(tied_.placed.size());
    }
    [[nodiscard]] int act() const {
        return now() != nullptr ? now()->act : static_cast<int>(resolved_.acts.size());
    }
    /// The base's diameters as they are then.
    [[nodiscard]] const Profile& profile(int base) const {
        if (now() == nullptr) return tied_.profile(base);
        for (int i = moment_; i >= 0; --i) {
            const Moment& m = tied_.moments[static_cast<std::size_t>(i)];
            if (m.base == base) return tied_.profiles[static_cast<std::size_t>(m.profile)];
        }
        return tied_.profiles[static_cast<std::size_t>(base)]; // bare
    }
    [[nodiscard]] glm::vec2 at(int base, Length where, double off = 0.0) const {
        const auto b = static_cast<std::size_t>(base);
        const Centreline& line = tied_.bases[b].line;
        const glm::dvec2 t = line.tangent(where);
        const glm::dvec2 p = line.position(where) + glm::dvec2{-t.y, t.x} * off;
        return {static_cast<float>((p.x + shifts_[b].si) * 1e3), static_cast<float>(p.y * 1e3)};
    }

    void add_wire(int base) {
        const BaseRun& run = tied_.bases[static_cast<std::size_t>(base)];
        FlyOutline::Stroke wire;
        wire.thick = static_cast<float>(in_millimetres(run.hook.wire.value));
        constexpr int shares = 72;
        for (int i = 0; i <= shares; ++i) {
            wire.points.push_back(
                at(base, run.line.stations().tip * (static_cast<double>(i) / shares)));
        }
        out_.wires.push_back(std::move(wire));
        const glm::dvec2 eye = run.line.eye_centre() * 1e3;
        const double shift = in_millimetres(shifts_[static_cast<std::size_t>(base)]);
        out_.discs.push_back({{static_cast<float>(eye.x + shift), static_cast<float>(eye.y)},
                              static_cast<float>(0.5 * in_millimetres(run.hook.eye_length.value)),
                              true});
    }

    void add_body(int base) {
        const BaseRun& run = tied_.bases[static_cast<std::size_t>(base)];
        const Profile& profile = this->profile(base);
        const double bare = 1.03 * run.hook.wire.value.si;
        for (int i = profile.index(run.bead_rear); i + 1 < profile_cells; ++i) {
            const double a = profile.diameter[static_cast<std::size_t>(i)];
            const double b = profile.diameter[static_cast<std::size_t>(i) + 1];
            if (a <= bare) continue;
            const Length x = profile.at(i), y = profile.at(i + 1);
            out_.body.push_back({at(base, x, 0.5 * a), at(base, y, 0.5 * b), at(base, y, -0.5 * b),
                                 at(base, x, -0.5 * a)});
        }
    }

    /// Whether most of a winding lies below a closed one that came later.
    [[nodiscard]] bool covered(int index) const {
        const Winding& w = tied_.windings[static_cast<std::size_t>(index)];
        const Length low = std::min(w.from, w.to), high = std::max(w.from, w.to);
        for (int i = index + 1; i < windings(); ++i) {
            const Winding& over = tied_.windings[static_cast<std::size_t>(i)];
            if (over.base != w.base || over.pitch > 1.5 * over.width) continue;
            const Length from = std::max(low, std::min(over.from, over.to));
            const Length to = std::min(high, std::max(over.from, over.to));
            if (to - from > 0.6 * (high - low)) return true;
        }
        return false;
    }

    /// The near side of each turn of an open winding, from below to above.
    void add_turns(const Winding& w) {
        const bool open = w.spacing != Spacing::touching && w.part != none && w.turns >= 1.0 &&
                          w.pitch > 1.5 * w.width;
        if (!open) return;
        const Profile& below = tied_.profiles[static_cast<std::size_t>(w.profile_below)];
        const Length half = (w.to > w.from ? 0.25 : -0.25) * w.pitch;
        const int turns = static_cast<int>(std::lround(w.turns));
        for (int i = 0; i < turns; ++i) {
            const double turn = i + 0.5;
            const Length middle = w.from + (w.to - w.from) * (turn / w.turns);
            const double off = 0.5 * below.diameter_at(middle).si;
            out_.ribs.push_back({{at(w.base, middle - half, -off), at(w.base, middle + half, off)},
                                 static_cast<float>(in_millimetres(w.width))});
        }
    }

    /// So many of the fibres as a drawing can show, fanned about their lean.
    void add_fan(const Placed& p, double side, int lines) {
        const Centreline& line = tied_.bases[static_cast<std::size_t>(p.base)].line;
        const glm::dvec2 t = line.tangent(p.at);
        const double heading = std::atan2(t.y, t.x);
        const glm::vec2 root = at(p.base, p.at, side * 0.5 * p.root.si);
        for (int i = 0; i < lines; ++i) {
            const double k = lines > 1 ? 2.0 * i / (lines - 1) - 1.0 : 0.0;
            const double a = heading + (side < 0.0 ? -1.0 : 1.0) * p.lean.si + k * p.spread.si;
            const double reach = in_millimetres(p.reach);
            out_.fibres.push_back(
                {{root, root + glm::vec2{static_cast<float>(reach * std::cos(a)),
                                         static_cast<float>(reach * std::sin(a))}},
                 0.08F});
        }
    }

    void add_barbs(const Placed& p) {
        const MaterialKind kind =
            p.material == none ? MaterialKind::hackle
                               : resolved_.materials[static_cast<std::size_t>(p.material)].kind;
        const bool stiff = kind == MaterialKind::hackle;
        const double lean = p.all_round ? (stiff ? 1.45 : 0.8) : 0.05;
        const double reach = in_millimetres(p.reach);
        const int pairs = std::clamp(static_cast<int>(p.count / 6.0), 3, 12);
        for (int i = 0; i < pairs; ++i) {
            const double share = (i + 0.5) / pairs;
            const glm::vec2 root = at(p.base, p.at + (p.to - p.at) * share);
            const double wave = 0.12 * std::sin(7.0 * i); // they never stand like a comb
            for (const double side : {1.0, -1.0}) {
                const double a = side * (lean + wave);
                out_.fibres.push_back(
                    {{root, root + glm::vec2{static_cast<float>(reach * std::cos(a)),
                                             static_cast<float>(reach * std::sin(a))}},
                     0.06F});
            }
        }
    }

    void add(const Placed& p) {
        switch (p.kind) {
        case PlacedKind::bead:
        case PlacedKind::cone:
        case PlacedKind::dumbbell:
            out_.discs.push_back(
                {at(p.base, p.at), static_cast<float>(0.5 * in_millimetres(p.reach)), false});
            return;
        case PlacedKind::barbs: add_barbs(p); return;
        case PlacedKind::bundle:
        case PlacedKind::post: {
            const double side = p.all_round ? 1.0 : std::cos(p.around.si) < 0.0 ? -1.0 : 1.0;
            add_fan(p, side, std::clamp(static_cast<int>(p.count), 1, 7));
            return;
        }
        default: return;
        }
    }

    void bound() {
        out_.low = {1e9F, 1e9F};
        out_.high = {-1e9F, -1e9F};
        const auto take = [&](const glm::vec2& p, float margin) {
            out_.low = {std::min(out_.low.x, p.x - margin), std::min(out_.low.y, p.y - margin)};
            out_.high = {std::max(out_.high.x, p.x + margin), std::max(out_.high.y, p.y + margin)};
        };
        for (const auto& s : out_.wires) {
            for (const glm::vec2& p : s.points) take(p, 0.5F * s.thick);
        }
        for (const auto& s : out_.fibres) {
            for (const glm::vec2& p : s.points) take(p, 0.0F);
        }
        for (const auto& d : out_.discs) take(d.centre, d.radius);
        for (const auto& q : out_.body) {
            for (const glm::vec2& p : q) take(p, 0.0F);
        }
    }

    const Resolved& resolved_;
    const Tied& tied_;
    BaseShifts shifts_;
    int moment_;
    FlyOutline out_;
};

} // namespace

FlyOutline outline_of(const Pattern& pattern, const Resolved& resolved, const Tied& tied,
                      int moment) {
    return Outlining(pattern, resolved, tied, moment).made();
}

} // namespace wrapwright
