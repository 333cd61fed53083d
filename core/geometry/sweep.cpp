#include "core/geometry/sweep.h"

#include "core/assert.h"

namespace wrapwright {

void append_sweep_indices(Buffer<std::uint32_t>& indices, int points, int sides,
                          std::uint32_t first_vertex) {
    WW_ASSERT(points >= 2 && sides >= 3);
    const std::size_t before = indices.size();
    indices.resize(before + 3 * sweep_triangles(points, sides));
    std::uint32_t* out = indices.data() + before;
    const auto n = static_cast<std::uint32_t>(sides);
    std::uint32_t ring = first_vertex;
    for (int i = 0; i + 1 < points; ++i, ring += n) {
        // Where frames turn about the strand its sides are twisted, and the diagonal that splits
        // one adds to the solid or takes from it; the other way at every other step evens it out.
        const bool rising = i % 2 == 0;
        for (std::uint32_t k = 0; k < n; ++k, out += 6) {
            const std::uint32_t a = ring + k;
            const std::uint32_t b = k + 1 == n ? ring : a + 1;
            out[0] = a;
            out[1] = b;
            out[2] = rising ? a + n : b + n;
            out[3] = rising ? b : a;
            out[4] = b + n;
            out[5] = a + n;
        }
    }
    for (std::uint32_t k = 1; k + 1 < n; ++k, out += 6) {
        out[0] = first_vertex;
        out[1] = first_vertex + k + 1;
        out[2] = first_vertex + k;
        out[3] = ring;
        out[4] = ring + k;
        out[5] = ring + k + 1;
    }
}

void SweepIndices::build(int new_points, int new_sides) {
    if (points == new_points && sides == new_sides) return;
    points = new_points;
    sides = new_sides;
    indices.clear();
    append_sweep_indices(indices, points, sides, 0);
}

namespace {

// Room for one more tube behind what the mesh holds, its triangles written.
std::span<Vertex> add_tube(Mesh& mesh, std::size_t points, int sides) {
    const std::size_t first = mesh.vertices.size();
    const std::size_t count = points * static_cast<std::size_t>(sides);
    append_sweep_indices(mesh.indices, static_cast<int>(points), sides,
                         static_cast<std::uint32_t>(first));
    mesh.vertices.resize(first + count);
    return {mesh.vertices.data() + first, count};
}

} // namespace

void append_path(Mesh& mesh, std::span<const PathPoint> path, const Section& section,
                 glm::vec3 first_normal) {
    sweep_path(path, section, add_tube(mesh, path.size(), section.sides), first_normal);
}

void append_winding(Mesh& mesh, const WindingPath& winding, const Section& section) {
    const auto points = static_cast<std::size_t>(winding_points(winding));
    sweep_winding(winding, section, add_tube(mesh, points, section.sides));
}

} // namespace wrapwright
