#pragma once
// Strands as tubes: a section carried along a path or wound on a core, into buffers of the caller.
//
// Everything here is in MILLIMETRES and float, as the mesh is. A tube of m points and n sides is m
// rings of n vertices; its ends are fans over the end rings' own vertices. Its triangles depend on
// m and n alone, so they are built once and kept (SweepIndices).

#include "core/geometry/mesh.h"

#include <array>
#include <cstdint>
#include <glm/vec3.hpp>
#include <span>

namespace wrapwright {

inline constexpr int max_sides = 64;

/// A strand's cross-section as a polygon, for a strand of radius 1.
///
/// Height runs along the frame's normal (away from the core in a winding), width across both
/// height and strand. Made by the functions below.
struct Section {
    int sides = 0;
    double area_share = 1.0; ///< of the polygon in the outline that it stands for
    // Six factors a vertex, as the ring loop reads them: position three times, normal three times.
    alignas(32) std::array<float, std::size_t{6} * max_sides> along_height{};
    alignas(32) std::array<float, std::size_t{6} * max_sides> along_width{};
};

/// An ellipse (a circle when both are equal), its corners on the outline.
/// Valid   3 <= sides <= max_sides
[[nodiscard]] Section ellipse_section(int sides, double half_height = 1.0, double half_width = 1.0);

/// A flat strand: a rectangle with round ends, its corners on the outline.
/// Valid   4 <= sides <= max_sides, even; half_height <= half_width
[[nodiscard]] Section stadium_section(int sides, double half_height, double half_width);

/// The section blown up so that the polygon has the area of the outline that it stands for.
[[nodiscard]] Section with_true_area(const Section& section);

/// A point of a path.
struct PathPoint {
    glm::vec3 position{0.0F};
    float radius = 0.0F; ///< scales the section here
};

/// Sweeps a section along a path of two or more points; a tangent is halfway between its chords.
///
/// The frames turn as little as can be (core/geometry/frame.h), from `first_normal` made square to
/// the path, or from any normal when it is zero. Normals lean where the radius changes.
/// Shape   path.size() * section.sides vertices
/// Valid   neighbouring points apart; a corner sharper than a step of a smooth curve pinches the
///         tube, so round it first
/// Cost    no allocation
void sweep_path(std::span<const PathPoint> path, const Section& section, std::span<Vertex> out,
                glm::vec3 first_normal = glm::vec3(0.0F));

/// A place on a core: the wire and all that lies on it, up to the strand's centre.
struct CoreKnot {
    glm::vec3 axis{0.0F};        ///< on the core's axis
    float radius = 0.0F;         ///< from the axis to the strand's centre
    glm::vec3 along{1.0F, 0, 0}; ///< unit vector along the axis
    float section = 0.0F;        ///< scales the strand's section here
    glm::vec3 up{0, 1.0F, 0};    ///< unit vector across, where turns start from
};

/// A strand wound on a core.
struct WindingPath {
    std::span<const CoreKnot> knots{}; ///< two or more, evenly along the axis, linear in between
    double first = 0.0;                ///< place of the first knot along the axis, mm
    double spacing = 0.0;              ///< between knots, mm
    double from = 0.0, to = 0.0;       ///< the strand's centre, in the order of winding, mm
    double turns = 0.0;                ///< > 0
    double growth = 1.0;               ///< of the pitch, each turn over the one before
    double start_turn = 0.0;           ///< where round the core it starts: 0 at `up`, in turns
    bool away = true; ///< turns run from `up` towards cross(along, up): over the top, away
    int steps_per_turn = 32;
};

/// Points of a winding: its steps, evenly in angle, and one.
[[nodiscard]] int winding_points(const WindingPath& winding);

/// Sweeps a section along a winding, with the frames of the surface that it lies on.
///
/// The section's height stands on the surface, its width lies in it.
/// Shape   winding_points(winding) * section.sides vertices
/// Cost    no allocation; out of the cache it runs at the speed of memory
/// Source  the strand's direction is the derivative of axis(z) + radius(z) e(theta), by the chain
///         rule with z of core/geometry/helix_kernel.h place_of_turn
void sweep_winding(const WindingPath& winding, const Section& section, std::span<Vertex> out);

/// The triangles of one shape of tube, rebuilt only when the shape changes.
struct SweepIndices {
    int points = 0;
    int sides = 0;
    Buffer<std::uint32_t> indices{};

    /// Does nothing when it holds that shape already.
    void build(int new_points, int new_sides);
};

/// Triangles of a tube, caps included.
[[nodiscard]] constexpr std::size_t sweep_triangles(int points, int sides) {
    return 2 * static_cast<std::size_t>(sides) * static_cast<std::size_t>(points - 1) +
           2 * static_cast<std::size_t>(sides - 2);
}

/// Puts a tube's triangles behind those in `indices`; its first vertex has the number given.
void append_sweep_indices(Buffer<std::uint32_t>& indices, int points, int sides,
                          std::uint32_t first_vertex);

/// Sweeps a path and puts the tube behind what the mesh holds.
void append_path(Mesh& mesh, std::span<const PathPoint> path, const Section& section,
                 glm::vec3 first_normal = glm::vec3(0.0F));

/// Sweeps a winding and puts the tube behind what the mesh holds.
void append_winding(Mesh& mesh, const WindingPath& winding, const Section& section);

} // namespace wrapwright
