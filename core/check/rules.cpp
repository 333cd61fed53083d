#include "core/check/rules.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace wrapwright {

namespace {

constexpr Length plating = millimetres(0.05);
constexpr double covered_enough = 0.98, bare_enough = 0.80; // shares of the ballast's stretch

class Judging {
  public:
    Judging(const RuleSet& rules, const Pattern& pattern, const Resolved& numbers, const Tied& tied)
        : rules_(rules), pattern_(pattern), numbers_(numbers), tied_(tied) {}

    std::vector<RuleRow> all() {
        if (rules_.beads_most >= 0) at_most(RuleKind::bead_count, count(), rules_.beads_most);
        if (rules_.bead_most.si > 0.0) bead_size();
        if (rules_.no_cones) at_most(RuleKind::cones, cones(), 0.0);
        if (rules_.hooks_most >= 0) at_most(RuleKind::hook_count, hooks(), rules_.hooks_most);
        if (rules_.hook_most.si > 0.0) hook_length();
        if (rules_.barbless) barb();
        if (rules_.weight_covered) cover();
        if (rules_.lead_free) at_most(RuleKind::lead, lead(), 0.0);
        if (rules_.mass_most.si > 0.0) {
            interval(RuleKind::mass, tied_.mass.value.si, tied_.mass.low.si, tied_.mass.high.si,
                     rules_.mass_most.si);
        }
        // A leader is no part of a fly: the set's number is shown, and nobody can tell from here.
        if (rules_.flies_most >= 0) beyond_the_fly(RuleKind::fly_count, rules_.flies_most);
        if (rules_.spacing_least.si > 0.0) {
            beyond_the_fly(RuleKind::spacing, rules_.spacing_least.si);
        }
        return std::move(rows_);
    }

  private:
    void interval(RuleKind kind, double value, double low, double high, double limit) {
        RuleRow row;
        row.kind = kind;
        row.has_number = true;
        row.value = value;
        row.low = low;
        row.high = high;
        row.limit = limit;
        row.margin = limit - value;
        constexpr double slack = 1e-9; // of the limit: "at most 4 mm" includes 4 mm
        const double edge = limit + slack * std::abs(limit);
        row.verdict = high <= edge ? RuleVerdict::pass
                      : low > edge ? RuleVerdict::fail
                                   : RuleVerdict::cannot_tell;
        rows_.push_back(row);
    }
    void at_most(RuleKind kind, double value, double limit) {
        interval(kind, value, value, value, limit);
    }
    void beyond_the_fly(RuleKind kind, double limit) {
        RuleRow row;
        row.kind = kind;
        row.limit = limit;
        rows_.push_back(row);
    }

    [[nodiscard]] const Stuff* stuff(int material) const {
        return material == none ? nullptr : &numbers_.materials[static_cast<std::size_t>(material)];
    }

    [[nodiscard]] double count() const {
        double n = 0.0;
        for (const PartTake& take : tied_.takes) {
            const Stuff* s = stuff(take.material);
            if (s && (s->kind == MaterialKind::bead || s->kind == MaterialKind::cone)) {
                n += take.count;
            }
        }
        return n;
    }
    [[nodiscard]] double cones() const {
        double n = 0.0;
        for (const Placed& p : tied_.placed) n += p.kind == PlacedKind::cone ? 1.0 : 0.0;
        return n;
    }
    [[nodiscard]] double lead() const {
        double n = 0.0;
        for (const PartTake& take : tied_.takes) {
            const Stuff* s = stuff(take.material);
            n += s && s->toxic && take.mass.value.si > 0.0 ? 1.0 : 0.0;
        }
        return n;
    }
    [[nodiscard]] double hooks() const {
        double n = 0.0;
        for (const Base& base : pattern_.recipe.bases) {
            n += base.kind.find("hook") != std::string::npos ? 1.0 : 0.0;
        }
        return n;
    }

    void bead_size() {
        std::optional<Estimate<Length>> widest;
        for (const PartTake& take : tied_.takes) {
            const Stuff* s = stuff(take.material);
            if (s == nullptr || take.count <= 0.0) continue;
            if (s->kind != MaterialKind::bead && s->kind != MaterialKind::cone) continue;
            Estimate<Length> d = s->kind == MaterialKind::bead ? s->bead.diameter : s->width;
            if (d.origin != Origin::measured) {
                d.low = std::min(d.low, d.value - plating);
                d.high = std::max(d.high, d.value + plating);
            }
            if (!widest || d.high > widest->high) widest = d;
        }
        const Estimate<Length> d = widest.value_or(Estimate<Length>{});
        interval(RuleKind::bead_size, d.value.si, d.low.si, d.high.si, rules_.bead_most.si);
    }

    void hook_length() {
        double most = 0.0, low = 0.0, high = 0.0;
        for (const BaseRun& base : tied_.bases) {
            constexpr int samples = 128;
            const Length tip = base.line.stations().tip;
            const double half = 0.5 * base.hook.wire.value.si;
            double front = base.line.eye_centre().x - 0.5 * base.hook.eye_length.value.si;
            double rear = front;
            for (int i = 0; i <= samples; ++i) {
                const double x = base.line.position(tip * (i / double{samples})).x;
                front = std::min(front, x - half);
                rear = std::max(rear, x + half);
            }
            const double length = rear - front;
            if (length <= most) continue;
            most = length;
            low = length - (base.hook.shank.value - base.hook.shank.low).si;
            high = length + (base.hook.shank.high - base.hook.shank.value).si;
        }
        interval(RuleKind::hook_length, most, low, high, rules_.hook_most.si);
    }

    void barb() {
        Estimate<Length> highest{};
        for (const BaseRun& base : tied_.bases) {
            if (base.hook.barb_height.value >= highest.value) highest = base.hook.barb_height;
        }
        // A typical hook of this size has a barb; the one in the hand may have none.
        const bool unsure = highest.value.si > 0.0 && highest.origin == Origin::typical;
        interval(RuleKind::barb, highest.value.si, unsure ? 0.0 : highest.low.si, highest.high.si,
                 0.0);
    }

    /// Cells of ballast that something else was wound or laid over afterwards.
    void cover() {
        double bare = 0.0, all = 0.0;
        for (std::size_t i = 0; i < tied_.windings.size(); ++i) {
            const Winding& ballast = tied_.windings[i];
            const Stuff* s = stuff(ballast.material);
            if (s == nullptr || s->kind != MaterialKind::ballast) continue;
            constexpr int cells = 64;
            for (int c = 0; c < cells; ++c) {
                const Length at = ballast.from + (ballast.to - ballast.from) * ((c + 0.5) / cells);
                const double share = std::abs((ballast.to - ballast.from).si) / cells;
                all += share;
                bare += share * (1.0 - cover_at(ballast, i, at));
            }
        }
        RuleRow row;
        row.kind = RuleKind::cover;
        row.has_number = true;
        row.value = row.low = row.high = all > 0.0 ? 1.0 - bare / all : 1.0;
        row.limit = covered_enough;
        row.margin = row.value - row.limit;
        row.verdict = row.value >= covered_enough ? RuleVerdict::pass
                      : row.value < bare_enough   ? RuleVerdict::fail
                                                  : RuleVerdict::cannot_tell;
        rows_.push_back(row);
    }

    /// How much of the ballast is hidden there by what came later: 1 under a close body.
    [[nodiscard]] double cover_at(const Winding& ballast, std::size_t index, Length at) const {
        double open = 1.0;
        for (std::size_t k = index + 1; k < tied_.windings.size(); ++k) {
            const Winding& w = tied_.windings[k];
            const Stuff* s = stuff(w.material);
            if (w.base != ballast.base || (s && s->kind == MaterialKind::ballast)) continue;
            const Length low = std::min(w.from, w.to), high = std::max(w.from, w.to);
            if (at < low || at > high || !(w.pitch.si > 0.0)) continue;
            open *= 1.0 - std::clamp(w.width / w.pitch, 0.0, 1.0);
        }
        for (const Placed& p : tied_.placed) {
            if (p.base != ballast.base || p.act < ballast.act) continue;
            if (p.kind == PlacedKind::bead || p.kind == PlacedKind::cone) continue;
            const Length low = std::min(p.at, p.to), high = std::max(p.at, p.to);
            const bool lies = p.kind == PlacedKind::barbs || p.kind == PlacedKind::clump;
            if (lies && at >= low && at <= high) open *= 0.5;
        }
        return 1.0 - open;
    }

    const RuleSet& rules_;
    const Pattern& pattern_;
    const Resolved& numbers_;
    const Tied& tied_;
    std::vector<RuleRow> rows_;
};

} // namespace

std::vector<RuleRow> check_rules(const RuleSet& rules, const Pattern& pattern,
                                 const Resolved& numbers, const Tied& tied) {
    return Judging(rules, pattern, numbers, tied).all();
}

std::string_view name(RuleVerdict verdict) {
    constexpr std::array<std::string_view, 3> words{"pass", "fail", "cannot tell"};
    return words[static_cast<std::size_t>(verdict)];
}

} // namespace wrapwright
