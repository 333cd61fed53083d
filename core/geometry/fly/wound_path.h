#pragma once
// Where the strand of one winding runs, turn by turn, on the profile below it.

#include "core/geometry/fly/surface.h"
#include "core/geometry/sweep.h"

#include <optional>

namespace wrapwright {

/// A point of a wound strand and its directions, all unit vectors but the origin.
struct StrandFrame {
    glm::vec3 origin{}; ///< centre of the strand, mm
    glm::vec3 along{};  ///< the way it is wound
    WireFrame wire{};   ///< of the hook there
    float angle = 0.0F; ///< round the hook: 0 on top, growing away from a right-hander
};

/// The path of one winding.
///
/// Wound with the thread the angle grows. Turn t of n lies along the wire as its pitch grows; its
/// centre is half the local diameter and half the strand's height from the wire's centre.
class WoundPath {
  public:
    WoundPath(const Sketch& sketch, const Winding& winding);
    /// The strand at turn t, 0 <= t <= turns.
    [[nodiscard]] StrandFrame frame(double t) const;
    /// Adds the strand as a tube, moved tailward and outwards from its centre by so much.
    void add(Mesh& mesh, const Section& section, float tailward_mm = 0.0F,
             float lift_mm = 0.0F) const;
    /// Adds what the strand lies on as a plain body, so that turns round a bundle are no empty
    /// shell.
    void add_filling(Mesh& mesh, const Sketch& sketch) const;
    [[nodiscard]] double turns() const { return winding_.turns; }

  private:
    [[nodiscard]] float radius_mm(Length at) const;

    const Winding& winding_;
    const BasePlace& base_;
    Surface below_;
    std::optional<Surface> after_; ///< where turns pile up on themselves
    Length from_{}, to_{};         ///< of the strand's centre
    int steps_per_turn_ = 12;
};

} // namespace wrapwright
