#pragma once
// Which way up a fly hangs, sinks and rides, from the places of its masses and volumes.

#include "core/water/fly_body.h"

#include <optional>
#include <string_view>

namespace wrapwright {

/// The centres of a set of lumps.
struct Centres {
    Mass mass{};
    Volume volume{};
    glm::dvec2 of_mass{};   ///< m
    glm::dvec2 of_volume{}; ///< where the water lifts
    glm::dvec2 of_weight{}; ///< where what is left of the weight acts; of_mass where neutral
    bool neutral = false;   ///< weight and lift are within 1e-6 of each other
};

/// Source  r_w = (m r_m - rho V r_V) / (m - rho V): one resultant of two parallel forces
[[nodiscard]] Centres centres_of(const std::vector<Lump>& lumps, const Water& water);

/// The angle of the shank from straight down when the fly hangs still from its eye: 0 hangs bend down.
/// Source  the line from the eye to the weight's centre is plumb
[[nodiscard]] Angle hang_angle(const glm::dvec2& eye, const Centres& centres);

/// The angle of the shank from upright when it sinks freely: 0 sinks head first, 180 bend first.
/// Source  the drag's centre lies above the weight's
[[nodiscard]] Angle sink_angle(const glm::dvec2& drag_centre, const Centres& centres);

/// How far the weight lies off the line from the eye through `through`, towards the point.
///
/// Below 0: it lies away from the point, so that the point rides up.
/// Units   m
/// Source  (r_w - r_eye) . n, n the normal of that line on the point's side
[[nodiscard]] double roll_offset(const glm::dvec2& eye, const glm::dvec2& through,
                                 const glm::dvec2& weight);

enum class Ride : unsigned char { point_up, undecided, point_down };
[[nodiscard]] std::string_view name(Ride ride);

/// What would turn the fly over, each by itself; nothing where it cannot.
struct TurnOver {
    std::optional<Mass> ballast{};    ///< laid on the far side of the shank from the point
    std::optional<Length> bead_out{}; ///< the front bead's centre so much further from the point
};

struct RideCheck {
    Ride verdict = Ride::undecided;
    Length delta{};        ///< mean of the two lines below
    Length doubt{};        ///< half-width
    Length along_shank{};  ///< with the line parallel to the shank
    Length through_drag{}; ///< with the line through what trails
    Force weight{};        ///< in water
    TurnOver up{};         ///< what would make it ride point up; empty where it does
};

/// Offsets below this are called undecided whatever their doubt.
inline constexpr Length least_offset = millimetres(0.2);

/// Which way up the fly rides on a tight line.
///
/// `trailing` is the centre of what drags behind, `ballast_height` how far from the wire's middle
/// extra ballast of that density would lie.
/// Error   heights +-0.2 mm and soaked bodies of 0.9 to 1.2 give +-0.15 mm; where the two lines differ
///         the doubt holds both. Lift of wings and shear of the current can roll a light fly
///         whatever this says
[[nodiscard]] RideCheck ride(const FlyBody& body, const glm::dvec2& trailing, const Water& water,
                             Length ballast_height, Density ballast);

/// The weight in water that a bead must have so that the point rides up, its centre at `bead`.
///
/// `others` is the sum over the rest of weight times height over the eye's line, towards the point.
/// Nothing where no weight does it; 0 where any does.
/// Source  sum of w (y - y_eye) < 0, y towards the point
[[nodiscard]] std::optional<Mass> bead_needed(double others, Length eye, Length bead);

} // namespace wrapwright
