#pragma once
// Where the targets of a standard lie on the fly that is open, for drawings of it.

#include "core/check/proportions.h"

#include <glm/vec2.hpp>

namespace wrapwright {

/// One target from where its part begins; mm in the plane of the hook, x tailward, y away from the
/// point.
struct TargetMark {
    Measured part{};
    glm::vec2 root{}, low{}, aim{}, high{};
    glm::vec2 across{0.0F, 1.0F}; ///< along the ticks
};

/// A mark for each target whose part is on the fly.
[[nodiscard]] std::vector<TargetMark> target_marks(const Pattern& pattern, const Tied& tied,
                                                   const std::vector<PartTarget>& targets);

} // namespace wrapwright
