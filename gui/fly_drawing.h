#pragma once
// The fly's outline on the screen, in any pose and scale.

#include "core/geometry/fly/outline.h"
#include "gui/ui.h"

#include <cmath>

namespace wrapwright {

/// A place of the fly on the screen: turned about a pivot, perhaps rolled over, scaled.
struct FlyPose {
    glm::vec2 pivot{};     ///< mm
    float turn = 0.0F;     ///< counter-clockwise
    bool rolled = false;   ///< y mirrored first: point up
    bool mirrored = false; ///< for the other hand
    float scale = 1.0F;    ///< dots per mm
    ImVec2 at{};           ///< of the pivot

    [[nodiscard]] glm::vec2 turned(const glm::vec2& p) const {
        glm::vec2 q = p - pivot;
        if (rolled) q.y = -q.y;
        const float s = std::sin(turn), k = std::cos(turn);
        const glm::vec2 r{k * q.x - s * q.y, s * q.x + k * q.y};
        return {mirrored ? -r.x : r.x, r.y};
    }
    [[nodiscard]] ImVec2 on(const glm::vec2& p) const {
        const glm::vec2 r = turned(p);
        return {at.x + scale * r.x, at.y - scale * r.y};
    }
};

/// Scales and places a pose so that the whole fly lies in the box.
void fit(FlyPose& pose, const FlyOutline& fly, const Box& box);

/// Bounds of the fly as it is turned, mm from the pivot.
struct FlyBounds {
    glm::vec2 low{}, high{};
};
[[nodiscard]] FlyBounds bounds_of(const FlyPose& pose, const FlyOutline& fly);

void draw_fly(ImDrawList& list, const FlyOutline& fly, const FlyPose& pose, const Palette& c);

} // namespace wrapwright
