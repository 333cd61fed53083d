#include "core/check/rib_measure.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

double GreyView::at(const glm::dvec2& p) const {
    const double x = std::clamp(p.x, 0.0, width - 1.0), y = std::clamp(p.y, 0.0, height - 1.0);
    const int i = std::min(static_cast<int>(x), std::max(0, width - 2));
    const int j = std::min(static_cast<int>(y), std::max(0, height - 2));
    const double u = x - i, v = y - j;
    const auto pixel = [&](int c, int r) {
        return static_cast<double>(grey[static_cast<std::size_t>(std::min(r, height - 1)) *
                                            static_cast<std::size_t>(width) +
                                        static_cast<std::size_t>(std::min(c, width - 1))]);
    };
    return (1.0 - v) * ((1.0 - u) * pixel(i, j) + u * pixel(i + 1, j)) +
           v * ((1.0 - u) * pixel(i, j + 1) + u * pixel(i + 1, j + 1));
}

std::vector<double> strip_along(const GreyView& photo, const PhotoScale& scale, const glm::dvec2& a,
                                const glm::dvec2& b, int half_width) {
    WW_ASSERT(half_width >= 0);
    const glm::dvec2 from = scale.to_plane(a), way = scale.to_plane(b) - from;
    const double pixels = glm::length(b - a);
    const auto count = static_cast<std::size_t>(std::clamp(std::ceil(pixels) + 1.0, 2.0, 4000.0));
    const glm::dvec2 along = (b - a) / pixels, across{-along.y, along.x};
    std::vector<double> samples, row;
    for (std::size_t i = 0; i < count; ++i) {
        const double share = static_cast<double>(i) / static_cast<double>(count - 1);
        const glm::dvec2 p = scale.to_pixel(from + share * way);
        row.clear();
        for (int k = -half_width; k <= half_width; ++k) {
            row.push_back(photo.at(p + across * static_cast<double>(k)));
        }
        const auto middle = row.begin() + half_width;
        std::nth_element(row.begin(), middle, row.end());
        samples.push_back(*middle);
    }
    return samples;
}

Result<RibMeasure> measure_ribs(const GreyView& photo, const PhotoScale& scale, const glm::dvec2& a,
                                const glm::dvec2& b, int half_width, const PhotoDoubt& doubt) {
    const auto refused = [](ErrorCode code, std::string message, std::string remedy) {
        return Error{code, std::move(message), std::move(remedy), {0, "line"}};
    };
    const auto inside = [&](const glm::dvec2& p) { // false for a NaN
        return p.x >= 0.0 && p.y >= 0.0 && p.x <= photo.width - 1.0 && p.y <= photo.height - 1.0;
    };
    if (!inside(a) || !inside(b)) {
        return refused(ErrorCode::out_of_range, "the line leaves the photo",
                       "give places within its width and height");
    }
    if (!scale.reaches(a) || !scale.reaches(b)) {
        return refused(ErrorCode::out_of_range, "the scale does not reach to the line",
                       "set the card's corners, or the two points, nearer to the fly");
    }
    if (glm::length(b - a) < 24.0) {
        return refused(ErrorCode::out_of_range, "the line is shorter than 24 pixels",
                       "draw it along the whole body, or take a larger photo");
    }
    const std::vector<double> samples = strip_along(photo, scale, a, b, half_width);
    const Period found = period_of(samples);
    if (!(found.value > 0.0) || found.marks.size() < 3) {
        return refused(ErrorCode::not_found, "fewer than three ribs are seen along the line",
                       "draw it along the ribbed body, in even light");
    }
    // The line's own ends say nothing of the spacing: what is left of the doubt is the scale's.
    PhotoDoubt of_scale = doubt;
    of_scale.point_px = 0.0;
    const Estimate<Length> length = scale.distance(a, b, of_scale);
    const auto steps = static_cast<double>(samples.size() - 1);
    const Length step = length.value / steps;
    RibMeasure out;
    const Length value = found.value * step;
    const double by_scale =
        std::max((length.high - length.value).si, (length.value - length.low).si) / length.value.si;
    const double half =
        value.si * std::hypot(1.959964 * found.sd / found.value, std::min(by_scale, 0.9));
    out.period = {value, Length{std::max(0.0, value.si - half)}, value + Length{half},
                  Origin::measured};
    out.by_spectrum = found.by_spectrum * step;
    out.by_shift = found.by_shift * step;
    out.turns = steps / found.value;
    out.unevenness = found.unevenness;
    out.agree = found.agree;
    const glm::dvec2 from = scale.to_plane(a), way = scale.to_plane(b) - from;
    for (const double mark : found.marks) {
        out.marks.push_back(scale.to_pixel(from + (mark / steps) * way));
    }
    return out;
}

} // namespace wrapwright
