#include "core/geometry/export.h"

#include <array>
#include <bit>
#include <cstring>
#include <glm/geometric.hpp>
#include <glm/vec3.hpp>

static_assert(std::endian::native == std::endian::little, "both formats are little-endian");

namespace wrapwright {

namespace {

template <class T>
void put(std::string& out, const T& value) {
    char bytes[sizeof(T)];
    std::memcpy(bytes, &value, sizeof(T));
    out.append(bytes, sizeof(T));
}

glm::vec3 place(const Vertex& v) { return {v.position[0], v.position[1], v.position[2]}; }

} // namespace

std::string write_stl(std::span<const NamedMesh> meshes) {
    constexpr std::size_t header_bytes = 80;
    constexpr std::size_t triangle_bytes = 50;
    std::size_t triangles = 0;
    for (const NamedMesh& m : meshes) triangles += m.mesh->indices.size() / 3;
    std::string out = "binary STL, units mm"; // must not begin with "solid"
    out.resize(header_bytes, ' ');
    out.reserve(header_bytes + 4 + triangles * triangle_bytes);
    put(out, static_cast<std::uint32_t>(triangles));
    for (const NamedMesh& m : meshes) {
        const auto& indices = m.mesh->indices;
        for (std::size_t t = 0; t + 2 < indices.size(); t += 3) {
            const glm::vec3 a = place(m.mesh->vertices[indices[t]]);
            const glm::vec3 b = place(m.mesh->vertices[indices[t + 1]]);
            const glm::vec3 c = place(m.mesh->vertices[indices[t + 2]]);
            const glm::vec3 across = glm::cross(b - a, c - a);
            const float length = glm::length(across);
            put(out, length > 0.0F ? across / length : glm::vec3(0.0F));
            put(out, std::array<glm::vec3, 3>{a, b, c});
            put(out, std::uint16_t{0});
        }
    }
    return out;
}

} // namespace wrapwright
