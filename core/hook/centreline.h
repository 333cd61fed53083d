#pragma once
// The hook's wire as one smooth curve, and the stations along it that tyers name.

#include "core/hook/hook.h"

#include <array>
#include <cstddef>
#include <glm/vec2.hpp>
#include <string_view>

namespace wrapwright {

/// Places along the wire, each as a distance behind the back of the eye.
///
/// Order: eye 0 <= leg_end <= front <= point <= barb <= bend < bend_bottom < tip, where `point` and
/// `barb` are the places of the shank straight above them; `middle` lies before or behind `point`.
struct Stations {
    Length eye;         ///< back of the eye ring: 0
    Length leg_end;     ///< jig: where the jig bend starts; otherwise 0
    Length front;       ///< front of the shank: behind the jig bend; otherwise 0
    Length middle;      ///< half the shank
    Length point;       ///< above the point
    Length barb;        ///< above the barb
    Length bend;        ///< where the shank ends and the bend starts
    Length bend_bottom; ///< halfway round the bend
    Length tip;         ///< the point itself: the end of the wire
};

/// One piece of the centreline: a straight line (curvature 0) or an arc.
struct WirePiece {
    Length length;
    glm::dvec2 start{};     ///< m
    double heading = 0.0;   ///< rad from +x, growing towards +y
    double curvature = 0.0; ///< 1/m, positive turns towards +y
};

/// The hook's centreline in its own plane, from the front of the eye to the point.
///
/// x runs tailward along the shank with 0 at its front, y away from the point (up, as the hook sits
/// in the vise), so the point lies at negative y. A curved shank has its chord along x. Tangent
/// continuous everywhere.
/// Error   every bend is taken as round: sproat and limerick bends are not modelled
/// Units   m; distances `at` are measured from the back of the eye, negative inside the eye ring
class Centreline {
  public:
    explicit Centreline(const Hook& hook);

    [[nodiscard]] const Stations& stations() const { return stations_; }
    /// The middle of the wire; before the eye and behind the tip, the nearer end.
    [[nodiscard]] glm::dvec2 position(Length at) const;
    /// Unit vector tailward along the wire.
    [[nodiscard]] glm::dvec2 tangent(Length at) const;
    /// The centre of the eye ring.
    [[nodiscard]] glm::dvec2 eye_centre() const { return eye_centre_; }
    [[nodiscard]] const std::array<WirePiece, 8>& pieces() const { return pieces_; }
    [[nodiscard]] int piece_count() const { return count_; }
    /// The main bend: the arc between shank and spear, turning towards the point.
    [[nodiscard]] const WirePiece& bend() const {
        return pieces_[static_cast<std::size_t>(count_ - 2)];
    }

  private:
    [[nodiscard]] const WirePiece& piece_at(Length at, Length& into) const;

    std::array<WirePiece, 8> pieces_{};
    int count_ = 0;
    Length first_{}; ///< where piece 0 starts, as `at`
    Stations stations_{};
    glm::dvec2 eye_centre_{};
};

} // namespace wrapwright
