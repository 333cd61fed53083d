#pragma once
// The fly as flat lines from its record: for drawings that show how it hangs and rides.

#include "core/recipe/pattern.h"
#include "core/tying/record.h"

#include <array>
#include <glm/vec2.hpp>
#include <vector>

namespace wrapwright {

/// Lines, areas and discs in the plane of the hook: x tailward, y away from the point, mm.
struct FlyOutline {
    struct Stroke {
        std::vector<glm::vec2> points{};
        float thick = 0.0F; ///< mm
    };
    struct Disc {
        glm::vec2 centre{};
        float radius = 0.0F;
        bool ring = false; ///< an eye
    };
    std::vector<Stroke> wires{};
    std::vector<Stroke> fibres{};                 ///< tail, hackle, wing
    std::vector<std::array<glm::vec2, 4>> body{}; ///< from front to rear
    std::vector<Stroke> ribs{};                   ///< each turn of what is wound openly
    std::vector<Disc> discs{};                    ///< beads and eyes
    glm::vec2 low{}, high{};                      ///< bounds of wire and body
};

/// The finished fly, or the fly as it is after one moment of its record.
[[nodiscard]] FlyOutline outline_of(const Pattern& pattern, const Resolved& resolved,
                                    const Tied& tied, int moment = none);

} // namespace wrapwright
