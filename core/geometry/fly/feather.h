#pragma once
// What feathers are made of: barred barbs, fluff, whole vanes on a stem.

#include "core/geometry/fly/dice.h"
#include "core/geometry/fly/sketch.h"

namespace wrapwright {

/// Whether a material's words say that it is barred, speckled or mottled across.
[[nodiscard]] bool is_barred(const RecipeMaterial& material);

/// A fibre in bands of two pieces; `offset` 0 or 1 says which begins.
void add_barred(const Sketch& sketch, Mesh& light, Mesh& dark, const Fibre& fibre, int bands,
                int offset);

/// Fine flue along a soft barb, `length` mm long, shorter towards the tip, `most` fibres of it.
/// Valid   most >= 6
void add_fluff(const Sketch& sketch, Mesh& mesh, const Fibre& barb, Dice& dice, float length,
               int most);

/// One whole feather.
/// Units   mm
struct FeatherShape {
    glm::vec3 root{};
    glm::vec3 direction{1, 0, 0};
    glm::vec3 face{0, 0, 1}; ///< the way its good side looks
    float length = 10.0F;
    float width = 3.0F;  ///< over both vanes
    float curve = 0.05F; ///< away from the face, share of the length
    float bare = 0.06F;  ///< share of the stem without barbs
};

/// Adds a stem and two vanes of barbs.
void add_feather(Sketch& sketch, int material, int part, int act, const FeatherShape& shape,
                 int seed);

} // namespace wrapwright
