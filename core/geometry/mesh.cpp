#include "core/geometry/mesh.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>
#include <glm/mat3x3.hpp>
#include <glm/vec3.hpp>
#include <numeric>
#include <span>
#include <utility>

namespace wrapwright {

namespace {

using Place = std::array<float, 3>;

Place place(const Vertex& v) { return {v.position[0], v.position[1], v.position[2]}; }

// For each vertex, the number of its place: equal for vertices at exactly the same place.
std::vector<std::uint32_t> number_places(std::span<const Vertex> vertices) {
    std::vector<std::uint32_t> order(vertices.size());
    std::iota(order.begin(), order.end(), 0U);
    std::ranges::sort(order, {}, [&](std::uint32_t i) { return place(vertices[i]); });
    std::vector<std::uint32_t> number(vertices.size());
    std::uint32_t count = 0;
    for (std::size_t k = 0; k < order.size(); ++k) {
        if (k > 0 && place(vertices[order[k]]) != place(vertices[order[k - 1]])) ++count;
        number[order[k]] = count;
    }
    return number;
}

} // namespace

MeshCheck check_mesh(const Mesh& mesh) {
    using Edge = std::pair<std::uint32_t, std::uint32_t>;
    const std::vector<std::uint32_t> number = number_places(mesh.vertices);
    std::vector<Edge> edges;
    std::vector<Edge> reversed;
    std::vector<std::uint32_t> corners;
    double six_volumes = 0.0;
    int faces = 0;
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3) {
        const std::array<std::uint32_t, 3> at{mesh.indices[t], mesh.indices[t + 1],
                                              mesh.indices[t + 2]};
        std::array<glm::dvec3, 3> x{};
        std::array<std::uint32_t, 3> n{};
        for (std::size_t i = 0; i < 3; ++i) {
            const Vertex& v = mesh.vertices[at[i]];
            x[i] = {v.position[0], v.position[1], v.position[2]};
            n[i] = number[at[i]];
        }
        if (n[0] == n[1] || n[1] == n[2] || n[2] == n[0]) continue;
        ++faces;
        six_volumes += glm::dot(x[0], glm::cross(x[1], x[2]));
        for (std::size_t i = 0; i < 3; ++i) {
            const std::size_t j = (i + 1) % 3;
            edges.emplace_back(n[i], n[j]);
            reversed.emplace_back(n[j], n[i]);
            corners.push_back(n[i]);
        }
    }
    std::ranges::sort(edges);
    std::ranges::sort(reversed);
    std::ranges::sort(corners);
    const auto places = std::ranges::unique(corners).begin() - corners.begin();
    MeshCheck check;
    check.closed =
        faces > 0 && edges == reversed && std::ranges::adjacent_find(edges) == edges.end();
    check.euler = static_cast<int>(places) - static_cast<int>(edges.size() / 2) + faces;
    check.volume_mm3 = six_volumes / 6.0;
    return check;
}

void append(Mesh& mesh, const Mesh& part) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    mesh.vertices.insert(mesh.vertices.end(), part.vertices.begin(), part.vertices.end());
    mesh.indices.reserve(mesh.indices.size() + part.indices.size());
    for (const std::uint32_t i : part.indices) mesh.indices.push_back(first + i);
}

void transform(Mesh& mesh, std::size_t first, const glm::mat4& placing) {
    const glm::mat3 turn(placing);
    const float scale = std::sqrt(glm::dot(turn[0], turn[0]));
    for (std::size_t i = first; i < mesh.vertices.size(); ++i) {
        Vertex& v = mesh.vertices[i];
        const glm::vec3 p =
            turn * glm::vec3(v.position[0], v.position[1], v.position[2]) + glm::vec3(placing[3]);
        const glm::vec3 n = turn * glm::vec3(v.normal[0], v.normal[1], v.normal[2]) / scale;
        v = {{p.x, p.y, p.z}, {n.x, n.y, n.z}};
    }
}

} // namespace wrapwright
