#pragma once
// A fly as meshes with looks: what a renderer draws and an exporter writes. Mass never comes from
// it.

#include "core/geometry/mesh.h"

#include <array>
#include <vector>

namespace wrapwright {

/// How a surface takes light. One shader branch each.
enum class Look : unsigned char {
    steel,  ///< hook wire, vise jaws
    metal,  ///< bead, coloured wire, tinsel
    lead,   ///< dull ballast
    thread, ///< spun fibres: a soft highlight along the strand
    fibre,  ///< feather barbs, herl flue
    hair,
    fur,  ///< dubbing, chenille: no highlight, fuzzy rim
    film, ///< clear: resin, varnish, vinyl
    foam,
    ground,
};

/// One piece of the fly: a closed mesh, or thin blades, in one look and colour.
struct FlyPiece {
    Mesh mesh; ///< mm; x tailward, y away from the point, z away from a right-hander
    Look look = Look::steel;
    std::array<float, 3> colour{0.5F, 0.5F, 0.5F}; ///< linear RGB
    float opacity = 1.0F;                          ///< below 1 for film
    int part = -1;                                 ///< pattern part, -1 for the hook and the vise
    int act = -1;                                  ///< the act that made it
};

/// A whole fly, one base after the other, the first base's shank front at the origin.
struct FlyModel {
    std::vector<FlyPiece> pieces;
    std::array<float, 3> low{}, high{}; ///< bounds of everything but the vise, mm
};

} // namespace wrapwright
