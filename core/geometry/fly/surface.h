#pragma once
// The profile as a surface to draw on: what a record keeps in cells, smooth and never too steep.

#include "core/geometry/fly/sketch.h"

namespace wrapwright {

/// The radius of the fly along one base, from one of its profiles.
///
/// Strands bridge a step rather than climb it, so hollows beside a step are filled to a slope. What
/// is on a bead's cells is the bead itself: the surface behind it goes on forward instead.
/// Units   mm
class Surface {
  public:
    Surface(const BasePlace& base, const Profile& profile);
    [[nodiscard]] float radius(float at_mm) const;

  private:
    float cell_ = 0.05F;
    std::array<float, profile_cells> radius_{};
};

} // namespace wrapwright
