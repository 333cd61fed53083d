#include "gui/dimensions.h"

#include "core/geometry/helix_kernel.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

constexpr float beside_mm = 0.9F; // from what is measured to its line

glm::vec2 mm(glm::dvec2 metres) { return glm::vec2(metres * 1e3); }
float mm(Length x) { return static_cast<float>(in_millimetres(x)); }

std::string text(Length x, bool about = false) {
    const double v = in_millimetres(x);
    std::string number = write_rounded(v, v < 3.0 ? 2 : 1);
    if (number.find('.') == std::string::npos) number += ".0"; // 8.0 says more than 8
    return (about ? "about " : "") + number + " mm";
}

std::string text(const Estimate<Length>& x) { return text(x.value, x.origin == Origin::typical); }

class Finder {
  public:
    Finder(const Pattern& pattern, const Tied& tied, int moment)
        : pattern_(pattern), tied_(tied), base_(tied.bases.front()) {
        if (tied.moments.empty()) return;
        const Moment& now = tied.moments[static_cast<std::size_t>(moment)];
        act_ = now.act;
        windings_ = static_cast<std::size_t>(now.windings);
        placed_ = static_cast<std::size_t>(now.placed);
    }

    std::vector<Measure> find() {
        add_rib();
        for (std::size_t i = 0; i < placed_; ++i) add_bundle(tied_.placed[i]);
        for (std::size_t part = 0; part < pattern_.recipe.parts.size(); ++part) add_body(part);
        const Stations& s = base_.line.stations();
        add_row(s.front, s.bend, "shank " + text(base_.hook.shank));
        add_gape();
        for (std::size_t i = 0; i < placed_; ++i) add_barbs(tied_.placed[i]);
        for (std::size_t i = 0; i < placed_; ++i) add_bead(tied_.placed[i]);
        return std::move(found_);
    }

  private:
    [[nodiscard]] std::string_view role(int part) const {
        if (part == none) return {};
        return pattern_.recipe.parts[static_cast<std::size_t>(part)].role;
    }
    [[nodiscard]] bool there(const Placed& p) const {
        return p.base == 0 && (p.removed_act == none || p.removed_act > act_);
    }
    [[nodiscard]] bool shown(std::string_view what) const {
        return std::any_of(found_.begin(), found_.end(),
                           [&](const Measure& m) { return m.label.starts_with(what); });
    }
    void add_row(Length from, Length to, std::string label) {
        found_.push_back({Measure::Where::row,
                          mm(base_.line.position(from)),
                          mm(base_.line.position(to)),
                          {},
                          std::move(label)});
    }

    // From one turn of the rib to the next on the side that the tyer sees, near its middle.
    void add_rib() {
        for (std::size_t i = 0; i < windings_; ++i) {
            const Winding& w = tied_.windings[i];
            if (w.base != 0 || role(w.part) != "rib" || w.turns < 2.0) continue;
            // Wound with the thread it leaves the top away from the tyer and comes up on the near
            // side after three quarters of a turn.
            const double near_side = w.sense == Sense::with_thread ? 0.75 : 0.25;
            const double phase = near_side - w.start_turn - std::floor(near_side - w.start_turn);
            const double first = std::floor(0.5 * (w.turns - 1.0)) + phase;
            const double turn = first + 1.0 <= w.turns ? first : first - 1.0;
            if (turn < 0.0) continue;
            const auto at = [&](double u) {
                return w.from + kernel::place_of_turn(u, w.turns, w.growth) * (w.to - w.from);
            };
            const Length a = at(turn);
            const Length b = at(turn + 1.0);
            add_row(a, b, "rib pitch " + text(Length{std::abs(b.si - a.si)}));
            return;
        }
    }

    void add_bundle(const Placed& p) {
        const std::string_view what = role(p.part);
        const bool lies_back = in_degrees(p.lean) <= 15.0;
        if (!there(p) || p.kind != PlacedKind::bundle || !lies_back) return;
        if (what != "tail" && what != "wing") return;
        const glm::vec2 root = mm(base_.line.position(p.at));
        found_.push_back({Measure::Where::row,
                          root,
                          root + glm::vec2(mm(p.reach), 0.0F),
                          {},
                          std::string(what) + " " + text(p.reach)});
    }

    void add_body(std::size_t part) {
        const std::string& what = pattern_.recipe.parts[part].role;
        if (what != "body" && what != "abdomen" && what != "thorax") return;
        Length front{1.0};
        Length rear{-1.0};
        for (std::size_t i = 0; i < windings_; ++i) {
            const Winding& w = tied_.windings[i];
            if (w.base != 0 || w.part != static_cast<int>(part)) continue;
            front = std::min({front, w.from, w.to});
            rear = std::max({rear, w.from, w.to});
        }
        if (front < rear) add_row(front, rear, what + " " + text(rear - front));
    }

    void add_gape() {
        const glm::vec2 tip = mm(base_.line.position(base_.line.stations().tip));
        const glm::vec2 shank(tip.x, mm(base_.line.position(base_.line.stations().point)).y);
        found_.push_back({Measure::Where::beside,
                          shank,
                          tip,
                          {-beside_mm, 0.0F},
                          "gape " + text(base_.hook.gape)});
    }

    // The barbs that stand up at the front of a hackle.
    void add_barbs(const Placed& p) {
        const std::string_view what = role(p.part);
        if (!there(p) || p.kind != PlacedKind::barbs || p.reach.si <= 0.0 || what != "hackle")
            return;
        if (shown(what)) return;
        const Length front = std::min(p.at, p.to);
        const glm::vec2 along = glm::vec2(base_.line.tangent(front));
        const glm::vec2 up(-along.y, along.x);
        const auto lean = static_cast<float>(p.lean.si);
        const glm::vec2 way = std::cos(lean) * along + std::sin(lean) * up;
        const glm::vec2 root = mm(base_.line.position(front)) + 0.5F * mm(p.root) * up;
        const glm::vec2 eyeward(-way.y, way.x);
        found_.push_back({Measure::Where::beside, root, root + mm(p.reach) * way,
                          beside_mm * eyeward, std::string(what) + " " + text(p.reach)});
    }

    void add_bead(const Placed& p) {
        if (!there(p) || p.kind != PlacedKind::bead || shown("bead")) return;
        const glm::vec2 middle = mm(base_.line.position(p.at));
        const float radius = 0.5F * mm(p.reach);
        found_.push_back({Measure::Where::beside,
                          middle + glm::vec2(0.0F, radius),
                          middle - glm::vec2(0.0F, radius),
                          {-radius - beside_mm, 0.0F},
                          "bead " + text(p.reach)});
    }

    const Pattern& pattern_;
    const Tied& tied_;
    const BaseRun& base_;
    int act_ = none;
    std::size_t windings_ = 0;
    std::size_t placed_ = 0;
    std::vector<Measure> found_;
};

} // namespace

std::vector<Measure> measures_of(const Pattern& pattern, const Tied& tied, int moment) {
    return Finder(pattern, tied, moment).find();
}

} // namespace wrapwright
