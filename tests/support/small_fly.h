#pragma once
// A small fly of plain tubes and a ball, for tests of drawing: one piece of every kind of look.

#include "core/geometry/fly/model.h"
#include "core/geometry/sweep.h"
#include "core/hook/centreline.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <glm/geometric.hpp>
#include <numbers>
#include <utility>
#include <vector>

namespace wrapwright::test {

inline FlyPiece& add_piece(FlyModel& fly, Look look, std::array<float, 3> colour, int part) {
    fly.pieces.push_back({{}, look, colour, 1.0F, part, part});
    return fly.pieces.back();
}

/// A ball of rings about the x axis.
inline Mesh ball(glm::vec3 centre, float radius, int rings) {
    Mesh mesh;
    const int sides = 2 * rings;
    for (int i = 0; i <= rings; ++i) {
        const double a = std::numbers::pi * i / rings;
        for (int k = 0; k < sides; ++k) {
            const double b = 2.0 * std::numbers::pi * k / sides;
            const glm::vec3 n(-std::cos(a), std::sin(a) * std::cos(b), std::sin(a) * std::sin(b));
            const glm::vec3 p = centre + radius * n;
            mesh.vertices.push_back({{p.x, p.y, p.z}, {n.x, n.y, n.z}});
        }
    }
    for (int i = 0; i < rings; ++i) {
        for (int k = 0; k < sides; ++k) {
            const auto at = [&](int row, int column) {
                return static_cast<std::uint32_t>(row * sides + column % sides);
            };
            for (const std::uint32_t v : {at(i, k), at(i, k + 1), at(i + 1, k + 1), at(i, k),
                                          at(i + 1, k + 1), at(i + 1, k)}) {
                mesh.indices.push_back(v);
            }
        }
    }
    return mesh;
}

/// Turns of a strand on a spindle-shaped body about the x axis.
inline void wind(Mesh& mesh, float from, float to, float thin, float thick, float strand,
                 double turns) {
    std::array<CoreKnot, 24> knots{};
    for (std::size_t i = 0; i < knots.size(); ++i) {
        const float t = static_cast<float>(i) / static_cast<float>(knots.size() - 1);
        const float x = std::min(from, to) + t * std::abs(to - from);
        const float r = thin + (thick - thin) * std::sin(std::numbers::pi_v<float> * t);
        knots[i] = {{x, 0.0F, 0.0F}, r, {1, 0, 0}, 0.5F * strand, {0, 1, 0}};
    }
    WindingPath path;
    path.knots = knots;
    path.first = std::min(from, to);
    path.spacing = static_cast<double>(std::abs(to - from)) / static_cast<double>(knots.size() - 1);
    path.from = from;
    path.to = to;
    path.turns = turns;
    path.steps_per_turn = 28;
    append_winding(mesh, path, ellipse_section(10));
}

/// A fibre that bends away evenly.
inline void add_fibre(Mesh& mesh, glm::vec3 root, glm::vec3 way, glm::vec3 bend, float length,
                      float thick) {
    std::array<PathPoint, 10> points{};
    for (std::size_t i = 0; i < points.size(); ++i) {
        const float u = static_cast<float>(i) / static_cast<float>(points.size() - 1);
        points[i] = {root + length * (u * way + u * u * bend), 0.5F * thick * (1.0F - 0.85F * u)};
    }
    append_path(mesh, points, ellipse_section(5));
}

inline FlyModel small_fly(const Hook& hook) {
    FlyModel fly;
    const Centreline line(hook);
    const float wire = static_cast<float>(in_millimetres(hook.wire.value));
    const float shank = static_cast<float>(in_millimetres(line.stations().bend));
    std::vector<PathPoint> path;
    const double end = in_millimetres(line.stations().tip);
    for (int i = 0; i <= 120; ++i) {
        const double at = -0.3 + (end + 0.3) * i / 120.0;
        const glm::dvec2 p = line.position(millimetres(at)) * 1e3;
        path.push_back({glm::vec3(p.x, p.y, 0.0F),
                        0.5F * wire * (i > 110 ? 0.1F * (120.5F - static_cast<float>(i)) : 1.0F)});
    }
    append_path(add_piece(fly, Look::steel, {0.30F, 0.26F, 0.22F}, -1).mesh, path,
                ellipse_section(20));
    wind(add_piece(fly, Look::thread, {0.23F, 0.03F, 0.02F}, 0).mesh, 0.15F * shank, shank,
         0.5F * wire, 0.5F * wire + 0.35F, 0.11F, 0.85 * shank / 0.108);
    wind(add_piece(fly, Look::metal, {0.95F, 0.64F, 0.30F}, 1).mesh, 0.98F * shank, 0.3F * shank,
         0.5F * wire + 0.12F, 0.5F * wire + 0.45F, 0.12F, 6.0);
    add_piece(fly, Look::metal, {0.95F, 0.55F, 0.32F}, 2).mesh =
        ball({0.09F * shank, 0, 0}, 0.14F * shank, 32);
    FlyPiece& hackle = add_piece(fly, Look::fibre, {0.20F, 0.10F, 0.05F}, 3);
    for (int i = 0; i < 90; ++i) {
        const float a = 2.39996F * static_cast<float>(i);
        const glm::vec3 out(0, std::cos(a), std::sin(a));
        add_fibre(
            hackle.mesh,
            glm::vec3((0.24F + 0.0004F * static_cast<float>(i)) * shank, 0, 0) + 0.3F * out,
            glm::normalize(out + glm::vec3(0.25F + 0.004F * static_cast<float>(i % 13), 0, 0)),
            glm::vec3(0.2F, 0, 0), 0.55F * shank, 0.045F);
    }
    FlyPiece& tail = add_piece(fly, Look::hair, {0.35F, 0.22F, 0.10F}, 4);
    for (int i = 0; i < 24; ++i) {
        const float a = 2.39996F * static_cast<float>(i);
        const float r = 0.012F * std::sqrt(static_cast<float>(i)) * 3.0F;
        add_fibre(tail.mesh, {0.95F * shank, 0.25F + 0.2F * r * std::cos(a), r * std::sin(a)},
                  glm::normalize(glm::vec3(1.0F, 0.12F + r * std::cos(a), 1.5F * r * std::sin(a))),
                  {0, -0.1F, 0}, 0.9F * shank, 0.05F);
    }
    fly.low = fly.high = {0, 0, 0};
    for (const FlyPiece& piece : fly.pieces) {
        for (const Vertex& v : piece.mesh.vertices) {
            for (std::size_t k = 0; k < 3; ++k) {
                fly.low[k] = std::min(fly.low[k], v.position[k]);
                fly.high[k] = std::max(fly.high[k], v.position[k]);
            }
        }
    }
    return fly;
}

} // namespace wrapwright::test
