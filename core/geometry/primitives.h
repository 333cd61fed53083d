#pragma once
// Plain solids, closed and facing outwards, put behind what a mesh already holds.
//
// Millimetres, as the mesh is. Solids of revolution stand about the x axis; transform() of
// core/geometry/mesh.h puts them in place.

#include "core/geometry/mesh.h"
#include "core/units/quantity.h"

#include <glm/vec3.hpp>
#include <span>

namespace wrapwright {

/// A point of the line that is turned about the x axis.
struct MeridianPoint {
    float along = 0.0F;
    float radius = 0.0F;
    friend bool operator==(const MeridianPoint&, const MeridianPoint&) = default;
};

/// Turns a line about the x axis.
///
/// The solid lies to the right of the line as it runs, so an outer surface runs towards +x and a
/// bore back. A line that ends where it began makes a ring; otherwise ends off the axis are closed
/// by discs. Where the line turns by more than `crease` the edge stays sharp.
/// Valid   two or more points, radii >= 0, no two neighbours equal, sides >= 3
void append_lathe(Mesh& mesh, std::span<const MeridianPoint> line, int sides,
                  Angle crease = degrees(35.0));

/// A ball about the origin.
/// Shape   `sides` round the axis, half as many from pole to pole
void append_sphere(Mesh& mesh, float radius, int sides);

/// A cylinder or cone from x = 0 to `length`; one radius may be 0.
void append_cone(Mesh& mesh, float length, float radius_at_start, float radius_at_end, int sides);

/// A ring about the x axis.
/// Shape   `sides` round its own section, `steps` round the axis
void append_torus(Mesh& mesh, float ring_radius, float section_radius, int sides, int steps);

/// A slab with its edges along the axes, about the origin.
void append_slab(Mesh& mesh, const glm::vec3& size);

} // namespace wrapwright
