#include "core/assert.h"
#include "core/geometry/sweep.h"

#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

struct Corner {
    double height, width;               // place
    double normal_height, normal_width; // unit
};

double polygon_area(std::span<const Corner> corners) {
    double twice = 0.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Corner& a = corners[i];
        const Corner& b = corners[(i + 1) % corners.size()];
        twice += a.height * b.width - b.height * a.width;
    }
    return 0.5 * twice;
}

Section make_section(std::span<const Corner> corners, double outline_area) {
    Section s;
    s.sides = static_cast<int>(corners.size());
    s.area_share = polygon_area(corners) / outline_area;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            s.along_height[6 * i + axis] = static_cast<float>(corners[i].height);
            s.along_width[6 * i + axis] = static_cast<float>(corners[i].width);
            s.along_height[6 * i + 3 + axis] = static_cast<float>(corners[i].normal_height);
            s.along_width[6 * i + 3 + axis] = static_cast<float>(corners[i].normal_width);
        }
    }
    return s;
}

} // namespace

Section ellipse_section(int sides, double half_height, double half_width) {
    WW_ASSERT(sides >= 3 && sides <= max_sides);
    std::array<Corner, max_sides> corners{};
    for (int i = 0; i < sides; ++i) {
        const double a = 2.0 * std::numbers::pi * i / sides;
        // The normal of x^2/a^2 + y^2/b^2 = 1 points along (x/a^2, y/b^2).
        const double nh = std::cos(a) * half_width;
        const double nw = std::sin(a) * half_height;
        const double length = std::sqrt(nh * nh + nw * nw);
        corners[static_cast<std::size_t>(i)] = {half_height * std::cos(a), half_width * std::sin(a),
                                                nh / length, nw / length};
    }
    return make_section(std::span(corners).first(static_cast<std::size_t>(sides)),
                        std::numbers::pi * half_height * half_width);
}

Section stadium_section(int sides, double half_height, double half_width) {
    WW_ASSERT(sides >= 4 && sides <= max_sides && sides % 2 == 0);
    WW_ASSERT(half_height <= half_width);
    std::array<Corner, max_sides> corners{};
    const int per_end = sides / 2;
    const double centre = half_width - half_height; // of each round end
    for (int i = 0; i < sides; ++i) {
        const bool far = i >= per_end;
        // Each end runs through half a turn, from the flat on one face to the flat on the other.
        const double a = std::numbers::pi * (far ? i - per_end : i) / (per_end - 1);
        const double nh = far ? -std::cos(a) : std::cos(a);
        const double nw = far ? -std::sin(a) : std::sin(a);
        corners[static_cast<std::size_t>(i)] = {
            half_height * nh, half_height * nw + (far ? -centre : centre), nh, nw};
    }
    return make_section(std::span(corners).first(static_cast<std::size_t>(sides)),
                        std::numbers::pi * half_height * half_height + 4.0 * half_height * centre);
}

Section with_true_area(const Section& section) {
    Section s = section;
    const auto scale = static_cast<float>(1.0 / std::sqrt(section.area_share));
    for (std::size_t i = 0; i < s.along_height.size(); i += 6) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            s.along_height[i + axis] *= scale;
            s.along_width[i + axis] *= scale;
        }
    }
    s.area_share = 1.0;
    return s;
}

} // namespace wrapwright
