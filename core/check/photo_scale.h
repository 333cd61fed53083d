#pragma once
// Millimetres on a photo: from two points of known distance, or from a card's four corners.

#include "core/result.h"
#include "core/units/estimate.h"

#include <array>
#include <glm/vec2.hpp>

namespace wrapwright {

/// The identity card that most people carry: 85.60 x 53.98 mm.
/// Source  ISO/IEC 7810, size ID-1; an unused one within 0.15 % and 0.1 % (from memory)
inline constexpr Length card_width = millimetres(85.60);
inline constexpr Length card_height = millimetres(53.98);

/// How well a point is set on a photo, and how the fly stood to what gives the scale.
struct PhotoDoubt {
    double scale_px = 1.0;    ///< standard error of the points that give the scale
    double point_px = 1.0;    ///< of those that are measured
    double scale_share = 0.0; ///< relative standard error of the known distance
    double tilt = 0.0;        ///< rad, of what is measured out of the picture's plane
    double off_plane = 0.0;   ///< how much nearer or farther it stood, over the camera's distance
};

/// The map from a photo's pixels to millimetres in the plane of its scale.
class PhotoScale {
  public:
    /// A scale by two points that are so far apart.
    ///
    /// Fails   out_of_range for points closer than 2 px, or a distance that is none
    [[nodiscard]] static Result<PhotoScale> two_points(const glm::dvec2& a, const glm::dvec2& b,
                                                       Length apart);
    /// A scale by the corners of an ID-1 card, in the order round it, a long side first.
    ///
    /// Perspective is taken out. A card that begins with a short side is turned.
    /// Fails   out_of_range for corners that coincide, lie in a line, or are crossed
    /// Source  direct linear transformation of four points, Hartley & Zisserman 2004, 4.1
    [[nodiscard]] static Result<PhotoScale> card(const std::array<glm::dvec2, 4>& corners);

    /// Whether a pixel shows a place of the plane, this side of its horizon and within 10 m.
    [[nodiscard]] bool reaches(const glm::dvec2& pixel) const;
    /// A point in the plane of the scale, m; for a pixel that it reaches.
    [[nodiscard]] glm::dvec2 to_plane(const glm::dvec2& pixel) const;
    /// The pixel of a point in the plane.
    [[nodiscard]] glm::dvec2 to_pixel(const glm::dvec2& plane) const;

    /// How far two pixels are apart, with its interval (95 in 100).
    ///
    /// Valid   pixels that it reaches
    /// Error   first order in every point that it rests on
    /// Source  GUM 5.1.2, the derivatives by differences; tilt shortens by 1 - cos, a distance off
    ///         the plane by dz / Z: both as they are said
    [[nodiscard]] Estimate<Length> distance(const glm::dvec2& a, const glm::dvec2& b,
                                            const PhotoDoubt& doubt = {}) const;

    [[nodiscard]] bool is_card() const { return is_card_; }

  private:
    [[nodiscard]] static bool solve(const std::array<glm::dvec2, 4>& from,
                                    const std::array<glm::dvec2, 4>& to,
                                    std::array<double, 9>& out);
    [[nodiscard]] static Result<PhotoScale> from_points(const std::array<glm::dvec2, 4>& points,
                                                        bool is_card, Length apart);

    std::array<double, 9> h_{}, back_{}; ///< row by row
    std::array<glm::dvec2, 4> points_{}; ///< what it was made from: two or four
    Length apart_{};
    bool is_card_ = false;
};

} // namespace wrapwright
