#include "core/geometry/primitives.h"

#include "core/assert.h"

#include <array>
#include <cmath>
#include <glm/geometric.hpp>
#include <glm/vec2.hpp>
#include <numbers>
#include <vector>

namespace wrapwright {

namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;

// One ring of vertices, its normal as (along, away from the axis).
std::uint32_t add_ring(Mesh& mesh, const MeridianPoint& p, const glm::vec2& normal, int sides) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (int k = 0; k < sides; ++k) {
        const double a = two_pi * k / sides;
        const auto c = static_cast<float>(std::cos(a));
        const auto s = static_cast<float>(std::sin(a));
        mesh.vertices.push_back(
            {{p.along, p.radius * c, p.radius * s}, {normal.x, normal.y * c, normal.y * s}});
    }
    return first;
}

// The band between two rings; on the axis a ring is one point and half the triangles fall away.
void add_band(Mesh& mesh, std::uint32_t from, std::uint32_t to, int sides, bool from_axis,
              bool to_axis) {
    const auto n = static_cast<std::uint32_t>(sides);
    for (std::uint32_t k = 0; k < n; ++k) {
        const std::uint32_t next = k + 1 == n ? 0 : k + 1;
        if (!from_axis) mesh.indices.insert(mesh.indices.end(), {from + k, from + next, to + k});
        if (!to_axis) mesh.indices.insert(mesh.indices.end(), {from + next, to + next, to + k});
    }
}

glm::vec2 outward(const MeridianPoint& a, const MeridianPoint& b) {
    return glm::normalize(glm::vec2(a.radius - b.radius, b.along - a.along));
}

// The normal where two bands meet, or that of the first where the edge between them is sharp.
glm::vec2 meet(const glm::vec2& own, const glm::vec2& other, float smooth_cosine) {
    return glm::dot(own, other) >= smooth_cosine ? glm::normalize(own + other) : own;
}

} // namespace

void append_lathe(Mesh& mesh, std::span<const MeridianPoint> line, int sides, Angle crease) {
    WW_ASSERT(line.size() >= 2 && sides >= 3);
    const bool ring = line.front() == line.back();
    std::vector<MeridianPoint> points;
    if (!ring && line.front().radius > 0.0F) points.push_back({line.front().along, 0.0F});
    points.insert(points.end(), line.begin(), line.end());
    if (!ring && line.back().radius > 0.0F) points.push_back({line.back().along, 0.0F});

    const std::size_t bands = points.size() - 1;
    std::vector<glm::vec2> normals(bands);
    for (std::size_t i = 0; i < bands; ++i) normals[i] = outward(points[i], points[i + 1]);
    const auto smooth_cosine = static_cast<float>(std::cos(crease.si));
    // Beyond a pole the surface goes on as its own mirror image.
    const auto mirror = [](const glm::vec2& n) { return glm::vec2(n.x, -n.y); };
    for (std::size_t i = 0; i < bands; ++i) {
        const glm::vec2 own = normals[i];
        const glm::vec2 before = i > 0 ? normals[i - 1] : ring ? normals.back() : mirror(own);
        const glm::vec2 after = i + 1 < bands ? normals[i + 1]
                                : ring        ? normals.front()
                                              : mirror(own);
        const auto from = add_ring(mesh, points[i], meet(own, before, smooth_cosine), sides);
        const auto to = add_ring(mesh, points[i + 1], meet(own, after, smooth_cosine), sides);
        add_band(mesh, from, to, sides, points[i].radius == 0.0F, points[i + 1].radius == 0.0F);
    }
}

void append_sphere(Mesh& mesh, float radius, int sides) {
    const int bands = std::max(2, sides / 2);
    std::vector<MeridianPoint> line;
    for (int i = 0; i <= bands; ++i) {
        const double a = std::numbers::pi * i / bands;
        const bool pole = i == 0 || i == bands; // exactly on the axis
        line.push_back({static_cast<float>(-radius * std::cos(a)),
                        pole ? 0.0F : static_cast<float>(radius * std::sin(a))});
    }
    append_lathe(mesh, line, sides, degrees(180.0));
}

void append_cone(Mesh& mesh, float length, float radius_at_start, float radius_at_end, int sides) {
    const std::array<MeridianPoint, 2> line{{{0.0F, radius_at_start}, {length, radius_at_end}}};
    append_lathe(mesh, line, sides);
}

void append_torus(Mesh& mesh, float ring_radius, float section_radius, int sides, int steps) {
    std::vector<MeridianPoint> line;
    for (int i = 0; i < sides; ++i) {
        const double a = two_pi * i / sides;
        line.push_back({static_cast<float>(section_radius * std::sin(a)),
                        static_cast<float>(ring_radius + section_radius * std::cos(a))});
    }
    line.push_back(line.front());
    append_lathe(mesh, line, steps, degrees(180.0));
}

void append_slab(Mesh& mesh, const glm::vec3& size) {
    const glm::vec3 half = 0.5F * size;
    for (int axis = 0; axis < 3; ++axis) {
        for (const float side : {-1.0F, 1.0F}) {
            glm::vec3 normal(0.0F), u(0.0F), v(0.0F);
            normal[axis] = side;
            u[(axis + 1) % 3] = half[(axis + 1) % 3];
            v[(axis + 2) % 3] = side * half[(axis + 2) % 3]; // u x v points along the normal
            const glm::vec3 centre = half[axis] * normal;
            const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
            for (const glm::vec3& p :
                 {centre - u - v, centre + u - v, centre + u + v, centre - u + v}) {
                mesh.vertices.push_back({{p.x, p.y, p.z}, {normal.x, normal.y, normal.z}});
            }
            mesh.indices.insert(mesh.indices.end(),
                                {first, first + 1, first + 2, first, first + 2, first + 3});
        }
    }
}

} // namespace wrapwright
