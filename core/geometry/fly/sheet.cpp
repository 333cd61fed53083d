#include "core/geometry/fly/sheet.h"

#include "core/assert.h"

#include <algorithm>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

glm::vec3 normal_at(const SheetGrid& grid, int row, int column) {
    const glm::vec3 down =
        grid.at(std::min(row + 1, grid.rows - 1), column) - grid.at(std::max(row - 1, 0), column);
    const glm::vec3 across = grid.at(row, std::min(column + 1, grid.columns - 1)) -
                             grid.at(row, std::max(column - 1, 0));
    const glm::vec3 n = glm::cross(down, across);
    const float length = glm::length(n);
    return length > 1e-12F ? n / length : glm::vec3{0, 1, 0};
}

std::uint32_t push(Mesh& mesh, const glm::vec3& p, const glm::vec3& n) {
    mesh.vertices.push_back({{p.x, p.y, p.z}, {n.x, n.y, n.z}});
    return static_cast<std::uint32_t>(mesh.vertices.size() - 1);
}

void quad(Mesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
    for (const std::uint32_t k : {a, b, c, a, c, d}) mesh.indices.push_back(k);
}

} // namespace

void add_sheet(Mesh& mesh, const SheetGrid& grid, float thickness) {
    WW_ASSERT(grid.rows >= 2 && grid.rows <= SheetGrid::most_rows);
    WW_ASSERT(grid.columns >= 2 && grid.columns <= SheetGrid::most_columns);
    const auto side_of = [&](float lift, float sign) {
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        for (int r = 0; r < grid.rows; ++r) {
            for (int c = 0; c < grid.columns; ++c) {
                const glm::vec3 n = normal_at(grid, r, c);
                push(mesh, grid.at(r, c) + lift * n, sign * n);
            }
        }
        return first;
    };
    const std::uint32_t upper = side_of(0.5F * thickness, 1.0F);
    const std::uint32_t lower = side_of(-0.5F * thickness, -1.0F);
    const auto index = [&](int r, int c) {
        return static_cast<std::uint32_t>(r * grid.columns + c);
    };
    for (int r = 0; r + 1 < grid.rows; ++r) {
        for (int c = 0; c + 1 < grid.columns; ++c) {
            quad(mesh, upper + index(r, c), upper + index(r + 1, c), upper + index(r + 1, c + 1),
                 upper + index(r, c + 1));
            quad(mesh, lower + index(r, c), lower + index(r, c + 1), lower + index(r + 1, c + 1),
                 lower + index(r + 1, c));
        }
    }
    // The rim, one quad for each edge of the border, walked so that it faces outwards.
    const auto rim = [&](int r0, int c0, int r1, int c1) {
        const auto point = [&](std::uint32_t side, int r, int c) {
            const Vertex& v = mesh.vertices[side + index(r, c)];
            return glm::vec3{v.position[0], v.position[1], v.position[2]};
        };
        const glm::vec3 a = point(upper, r0, c0);
        const glm::vec3 b = point(upper, r1, c1);
        const glm::vec3 c = point(lower, r1, c1);
        const glm::vec3 d = point(lower, r0, c0);
        const glm::vec3 face = glm::cross(b - d, a - c);
        const float length = glm::length(face);
        const glm::vec3 n = length > 1e-12F ? face / length : glm::vec3{0, 1, 0};
        const std::uint32_t first = push(mesh, a, n);
        push(mesh, d, n);
        push(mesh, c, n);
        push(mesh, b, n);
        quad(mesh, first, first + 1, first + 2, first + 3);
    };
    const int last_row = grid.rows - 1;
    const int last_column = grid.columns - 1;
    for (int r = 0; r < last_row; ++r) {
        rim(r, 0, r + 1, 0);
        rim(r + 1, last_column, r, last_column);
    }
    for (int c = 0; c < last_column; ++c) {
        rim(last_row, c, last_row, c + 1);
        rim(0, c + 1, 0, c);
    }
}

} // namespace wrapwright
