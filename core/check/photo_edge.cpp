// Edges near a place that a person has pointed at.

#include "core/check/photo_marks.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <vector>

namespace wrapwright {

namespace {

constexpr double least_edge = 0.03; ///< of the range from black to white, over three pixels

/// How steep the picture is along a direction, over three pixels.
double slope(const GreyView& photo, const glm::dvec2& p, const glm::dvec2& way) {
    return 0.5 * (photo.at(p + 1.5 * way) - photo.at(p - 1.5 * way));
}

glm::dvec2 gradient(const GreyView& photo, const glm::dvec2& p) {
    return {slope(photo, p, {1.0, 0.0}), slope(photo, p, {0.0, 1.0})};
}

/// Where between three even samples their parabola is highest, in steps from the middle one.
double peak_of(double before, double here, double after) {
    const double bend = before - 2.0 * here + after;
    return bend < 0.0 ? std::clamp(0.5 * (before - after) / bend, -0.5, 0.5) : 0.0;
}

/// The steepest place along a direction within a radius; nothing where there is no edge.
std::optional<double> steepest(const GreyView& photo, const glm::dvec2& p, const glm::dvec2& way,
                               double radius) {
    constexpr double step = 0.5;
    const int n = std::max(1, static_cast<int>(radius / step));
    const auto at = [&](int i) { return std::abs(slope(photo, p + (i * step) * way, way)); };
    int best = 0;
    double most = least_edge;
    bool found = false;
    for (int i = -n; i <= n; ++i) {
        const double s = at(i);
        if (s <= most) continue;
        most = s;
        best = i;
        found = true;
    }
    if (!found) return std::nullopt;
    return step * (best + peak_of(at(best - 1), most, at(best + 1)));
}

struct Line {
    glm::dvec2 at{}, way{};
};

/// The line through most of the points: least squares, then once more without the far ones.
std::optional<Line> line_through(std::vector<glm::dvec2> points) {
    Line out;
    for (int round = 0; round < 3; ++round) {
        if (points.size() < 8) return std::nullopt;
        out.at = {};
        for (const glm::dvec2& p : points) out.at += p / static_cast<double>(points.size());
        double xx = 0.0, xy = 0.0, yy = 0.0;
        for (const glm::dvec2& p : points) {
            const glm::dvec2 d = p - out.at;
            xx += d.x * d.x;
            xy += d.x * d.y;
            yy += d.y * d.y;
        }
        const double angle = 0.5 * std::atan2(2.0 * xy, xx - yy);
        out.way = {std::cos(angle), std::sin(angle)};
        const auto off = [&](const glm::dvec2& p) {
            const glm::dvec2 d = p - out.at;
            return std::abs(d.x * out.way.y - d.y * out.way.x);
        };
        std::vector<double> offs;
        offs.reserve(points.size());
        for (const glm::dvec2& p : points) offs.push_back(off(p));
        const auto middle = offs.begin() + static_cast<std::ptrdiff_t>(offs.size() / 2);
        std::nth_element(offs.begin(), middle, offs.end());
        const double far = std::max(0.5, 3.0 * *middle);
        std::erase_if(points, [&](const glm::dvec2& p) { return off(p) > far; });
    }
    return out;
}

} // namespace

glm::dvec2 snap_to_edge(const GreyView& photo, const glm::dvec2& place, double radius) {
    const bool inside = place.x >= 0.0 && place.y >= 0.0 && place.x <= photo.width - 1.0 &&
                        place.y <= photo.height - 1.0; // false for a NaN
    if (!inside || !(radius >= 1.0)) return place;
    const int n = static_cast<int>(std::min(radius, 60.0));
    glm::dvec2 best = place, way{};
    double most = 0.0;
    for (int y = -n; y <= n; ++y) {
        for (int x = -n; x <= n; ++x) {
            const glm::dvec2 p = place + glm::dvec2(x, y);
            const double far = glm::length(glm::dvec2(x, y)) / radius;
            if (far > 1.0) continue;
            const glm::dvec2 g = gradient(photo, p);
            const double steep = glm::length(g);
            const double worth = steep * std::exp(-2.0 * far * far);
            if (steep <= least_edge || worth <= most) continue;
            most = worth;
            best = p;
            way = g / steep;
        }
    }
    if (most <= 0.0) return place;
    const auto shift = steepest(photo, best, way, 1.5);
    return shift ? best + *shift * way : best;
}

std::array<glm::dvec2, 4> card_by_edges(const GreyView& photo,
                                        const std::array<glm::dvec2, 4>& corners, double radius) {
    std::array<Line, 4> lines{};
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 a = corners[i], b = corners[(i + 1) % 4];
        const double length = glm::length(b - a);
        if (!(length >= 16.0) || !(length < 1e6)) return corners;
        const glm::dvec2 way = (b - a) / length, across{-way.y, way.x};
        std::vector<glm::dvec2> points;
        constexpr int samples = 60;
        for (int k = 0; k <= samples; ++k) {
            const glm::dvec2 p = a + (0.15 + 0.7 * k / samples) * (b - a);
            if (const auto off = steepest(photo, p, across, radius)) {
                points.push_back(p + *off * across);
            }
        }
        const auto line = line_through(std::move(points));
        if (!line) return corners;
        lines[i] = *line;
    }
    std::array<glm::dvec2, 4> out = corners;
    for (std::size_t i = 0; i < 4; ++i) {
        const Line &p = lines[(i + 3) % 4], &q = lines[i];
        const double turn = p.way.x * q.way.y - p.way.y * q.way.x;
        if (std::abs(turn) < 0.1) return corners;
        const glm::dvec2 d = q.at - p.at;
        out[i] = p.at + (d.x * q.way.y - d.y * q.way.x) / turn * p.way;
        if (!(glm::length(out[i] - corners[i]) <= 2.0 * radius)) return corners;
    }
    return out;
}

} // namespace wrapwright
