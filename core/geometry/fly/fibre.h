#pragma once
// One fibre: a hair, barb, hackle tip, dubbing strand, leg.

#include "core/geometry/sweep.h"

#include <glm/vec3.hpp>

namespace wrapwright {

/// A fibre that tapers and bends.
///
/// At a share u of its length it is at root + length (u direction + u^2 bend + wave's swing).
/// Units   lengths and thickness in mm; bend and wave are shares of the length
struct Fibre {
    glm::vec3 root{};
    glm::vec3 direction{1.0F, 0.0F, 0.0F};
    glm::vec3 bend{};
    float length = 1.0F;
    float thick = 0.05F;     ///< diameter at the root
    float tip = 0.005F;      ///< and at the tip
    float fullness = 1.0F;   ///< 1 tapers evenly, more keeps its thickness further out
    glm::vec3 face{0, 1, 0}; ///< the way a flat one's broad side looks
    glm::vec3 wave{};        ///< swing of a wavy one, growing along it
    float waves = 0.0F;
    float phase = 0.0F;
};

/// The sections that fibres come in, made once for a drawing.
struct FibreSections {
    Section fine = ellipse_section(3);
    Section round = ellipse_section(5);
    Section blade = ellipse_section(4, 0.3, 1.0);
    Section ribbon = stadium_section(6, 0.12, 1.0);
};

/// Where a fibre is at a share of its length.
[[nodiscard]] glm::vec3 fibre_point(const Fibre& fibre, float share);

/// Adds a fibre, or a stretch of it between two shares of its length, as a thin closed tube.
/// Valid   1 <= segments <= 24, 0 <= from < to <= 1
void add_fibre(Mesh& mesh, const Section& section, const Fibre& fibre, int segments,
               float from = 0.0F, float to = 1.0F);

} // namespace wrapwright
