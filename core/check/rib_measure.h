#pragma once
// Rib spacing and lengths on a photo, in millimetres.

#include "core/check/period.h"
#include "core/check/photo_scale.h"

#include <span>

namespace wrapwright {

/// A grey picture that somebody else holds: rows from the top, 0 dark to 1 light.
struct GreyView {
    int width = 0, height = 0;
    std::span<const float> grey{};

    /// Between pixels; outside, the nearest one. Pixel centres are at whole numbers.
    [[nodiscard]] double at(const glm::dvec2& p) const;
};

/// The same, with its own pixels.
struct GreyPicture {
    int width = 0, height = 0;
    std::vector<float> grey{};

    [[nodiscard]] GreyView view() const { return {width, height, grey}; }
};

/// Samples along a line of the photo, evenly spaced in the plane of the scale, each the median across.
///
/// Valid   a and b apart; half_width >= 0, px
[[nodiscard]] std::vector<double> strip_along(const GreyView& photo, const PhotoScale& scale,
                                              const glm::dvec2& a, const glm::dvec2& b,
                                              int half_width);

/// The ribs along one line.
struct RibMeasure {
    Estimate<Length> period{};        ///< spacing
    Length by_spectrum{}, by_shift{}; ///< both ways, for where they do not agree
    double turns = 0.0;               ///< of the line's length
    double unevenness = 0.0;          ///< as a share of the spacing
    bool agree = false;
    std::vector<glm::dvec2> marks{}; ///< px
};

/// The ribs along a line of a photo.
///
/// Fails   out_of_range for a line of no length or outside the photo; not_found where fewer than three
///         ribs are seen
[[nodiscard]] Result<RibMeasure> measure_ribs(const GreyView& photo, const PhotoScale& scale,
                                              const glm::dvec2& a, const glm::dvec2& b,
                                              int half_width = 5, const PhotoDoubt& doubt = {});

} // namespace wrapwright
