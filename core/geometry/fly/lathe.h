#pragma once
// A closed body turned round the wire, whose radius may differ all round.

#include "core/geometry/fly/sketch.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

/// Adds a body round a base's wire from one place to another, capped at both ends.
///
/// `radius(at_mm, angle)` gives its radius in mm, and the radius alone shapes the normals.
/// Valid   from < to, steps >= 1, sides >= 3
template <class Radius>
void add_lathe(Mesh& mesh, const BasePlace& base, Length from, Length to, int steps, int sides,
               Radius&& radius) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    const auto push = [&mesh](const glm::vec3& p, const glm::vec3& n) {
        mesh.vertices.push_back({{p.x, p.y, p.z}, {n.x, n.y, n.z}});
    };
    const float step_mm = mm(to - from) / static_cast<float>(steps);
    const float turn = 2.0F * std::numbers::pi_v<float>;
    for (int i = 0; i <= steps; ++i) {
        const Length at = from + (static_cast<double>(i) / steps) * (to - from);
        const WireFrame frame = base.frame(at);
        const float x = mm(at);
        for (int k = 0; k < sides; ++k) {
            const float angle = turn * static_cast<float>(k) / static_cast<float>(sides);
            const float da = 0.35F * turn / static_cast<float>(sides);
            const float dx = 0.35F * step_mm;
            const float r = radius(x, angle);
            const float rise = (radius(x + dx, angle) - radius(x - dx, angle)) / (2.0F * dx);
            const float swell = (radius(x, angle + da) - radius(x, angle - da)) / (2.0F * da);
            const glm::vec3 e = frame.radial(angle);
            const glm::vec3 n =
                e - rise * frame.along - swell / std::max(r, 1e-4F) * frame.round(angle);
            push(frame.origin + r * e, glm::normalize(n));
        }
    }
    const auto count = static_cast<std::uint32_t>(sides);
    const auto quad = [&mesh](std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
        for (const std::uint32_t k : {a, b, c, a, c, d}) mesh.indices.push_back(k);
    };
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(steps); ++i) {
        for (std::uint32_t k = 0; k < count; ++k) {
            const std::uint32_t next = k + 1 == count ? 0 : k + 1;
            const std::uint32_t row = first + i * count;
            quad(row + k, row + next, row + count + next, row + count + k);
        }
    }
    for (const bool at_start : {true, false}) {
        const WireFrame frame = base.frame(at_start ? from : to);
        const auto centre = static_cast<std::uint32_t>(mesh.vertices.size());
        push(frame.origin, at_start ? -frame.along : frame.along);
        const std::uint32_t row =
            at_start ? first : first + static_cast<std::uint32_t>(steps) * count;
        for (std::uint32_t k = 0; k < count; ++k) {
            const std::uint32_t next = k + 1 == count ? 0 : k + 1;
            mesh.indices.push_back(centre);
            mesh.indices.push_back(row + (at_start ? next : k));
            mesh.indices.push_back(row + (at_start ? k : next));
        }
    }
}

} // namespace wrapwright
