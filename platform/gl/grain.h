#pragma once
// Which way the strand runs at each corner of a mesh: found from the mesh alone, for highlights
// that follow thread and fibre.

#include "core/geometry/mesh.h"

#include <array>
#include <cstdint>
#include <vector>

namespace wrapwright {

/// The way along the strand as the vertex shader reads it: a direction in the surface whose length
/// says how sure it is, from 0 (a ball, a plane) to 32767 (a thin strand). The fourth is padding.
using Grain = std::array<std::int16_t, 4>;

/// Fills `out` with one Grain for each corner of the mesh.
///
/// Along is where the normal turns least; where vertices are written ring after ring, as the
/// sweeps do, it points from ring to ring.
/// Source  least-squares fit of the shape operator, turn of the normal over step, to a corner's
///         edges; its principal directions: do Carmo, Differential Geometry of Curves and Surfaces
///         (1976), sec. 3-2
/// Cost    linear
void find_grain(const Mesh& mesh, std::vector<Grain>& out);

} // namespace wrapwright
