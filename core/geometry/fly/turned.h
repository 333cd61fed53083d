#pragma once
// Closed bodies turned about an axis in space: beads, cones, balls, rings.

#include "core/geometry/mesh.h"

#include <glm/vec3.hpp>
#include <span>

namespace wrapwright {

/// An axis in space with its directions, all unit vectors: along x out of up, as the wire's are.
struct Axis {
    glm::vec3 centre{};
    glm::vec3 along{1, 0, 0};
    glm::vec3 up{0, 1, 0};
    glm::vec3 out{0, 0, 1};
    [[nodiscard]] glm::vec3 direction(float angle) const;
    [[nodiscard]] glm::vec3 at(float x, float r, float angle) const {
        return centre + along * x + r * direction(angle);
    }
};

/// A corner of an outline that is turned about an axis; a crease keeps two normals.
struct Corner {
    float x = 0.0F;
    float r = 0.0F;
    bool crease = false;
};

/// Turns a closed outline about an axis. The outline runs along the axis on its outside.
void add_turned(Mesh& mesh, const Axis& axis, std::span<const Corner> outline, int sides);

/// A cone sunk into the far end of a bead: how wide at the surface, how deep down to the bore.
struct Sink {
    float mouth = 0.0F;
    float depth = 0.0F;
};

/// A drilled sphere, with a cone sunk into its far end where its mouth is wider than the bore.
/// Units   mm
void add_round_bead(Mesh& mesh, const Axis& axis, float radius, float bore, Sink sink, int sides);

/// A drilled sphere with a slot of `width` from `from` to the far end, open towards axis.up.
/// Valid   bore and width above 0 and below the diameter; from inside the bead
void add_slotted_bead(Mesh& mesh, const Axis& axis, float radius, float bore, float width,
                      float from, int sides);

} // namespace wrapwright
