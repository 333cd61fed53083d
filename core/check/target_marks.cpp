#include "core/check/target_marks.h"

#include "core/geometry/fly/base_shifts.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

namespace wrapwright {

namespace {

glm::vec2 mm(const glm::dvec2& p) {
    return {static_cast<float>(p.x * 1e3), static_cast<float>(p.y * 1e3)};
}

/// The thing that stands free and is as long as the part is said to be.
const Placed* standing_for(const Tied& tied, const OwnMeasure& own) {
    for (const Placed& p : tied.placed) {
        if (p.base == 0 && p.step == own.step && p.reach == own.length) return &p;
    }
    return nullptr;
}

/// The eyeward end of what was wound in that step.
std::optional<Length> front_of(const Pattern& pattern, const Tied& tied, Measured part,
                               const OwnMeasure& own) {
    std::optional<Length> front;
    for (const Winding& w : tied.windings) {
        if (w.base != 0 || w.part == none || w.step != own.step) continue;
        const std::string& role = pattern.recipe.parts[static_cast<std::size_t>(w.part)].role;
        const bool body = role == "body" || role == "abdomen";
        if (part == Measured::thorax ? role != "thorax" : !body) continue;
        const Length low = std::min(w.from, w.to);
        front = front ? std::min(*front, low) : low;
    }
    return front;
}

} // namespace

std::vector<TargetMark> target_marks(const Pattern& pattern, const Tied& tied,
                                     const std::vector<PartTarget>& targets) {
    std::vector<TargetMark> out;
    if (tied.bases.empty()) return out;
    const Centreline& line = tied.bases.front().line;
    const glm::dvec2 shift{base_shifts(pattern, tied)[0].si, 0.0};
    for (const PartTarget& t : targets) {
        const auto own = own_measure(pattern, tied, t.part);
        if (!own) continue;
        std::function<glm::dvec2(Length)> reached;
        glm::dvec2 across{0.0, 1.0};
        if (const Placed* p = standing_for(tied, *own)) {
            const glm::dvec2 along = line.tangent(p->at), up{-along.y, along.x};
            // Barbs stand out all round, tails lie along; anything else leans as it was tied.
            const double lean = p->kind == PlacedKind::barbs ? 0.5 * std::numbers::pi
                                : t.part == Measured::tail   ? 0.0
                                                             : p->lean.si;
            const glm::dvec2 way = std::cos(lean) * along + std::sin(lean) * up;
            const glm::dvec2 root = line.position(p->at) + 0.5 * p->root.si * up;
            across = {-way.y, way.x};
            reached = [=](Length x) { return root + x.si * way; };
        } else if (const auto front = front_of(pattern, tied, t.part, *own)) {
            reached = [&line, front](Length x) {
                return line.position(std::min(*front + x, line.stations().tip));
            };
        } else {
            continue;
        }
        const auto at = [&](Length x) { return mm(shift + reached(x)); };
        out.push_back({t.part, at({}), at(t.length.low), at(t.length.value), at(t.length.high),
                       glm::vec2(across)});
    }
    return out;
}

} // namespace wrapwright
