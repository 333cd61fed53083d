// Herl, chenille and yarn: a core with a pile of short fibres all along it.

#include "core/geometry/fly/dice.h"
#include "core/geometry/fly/wound_path.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

/// What the pile of a strand looks like.
struct Pile {
    float core = 0.3F;   ///< diameter of the core, mm
    float sunk = 0.0F;   ///< how far the core lies below the strand's centre
    float length = 1.0F; ///< of a fibre from the strand's centre
    float per_mm = 20.0F;
    float thick = 0.03F;
    float fan = 0.8F; ///< half-angle that fibres take, across the strand
    float uneven = 0.2F;
};

Pile pile_of(const Sketch& sketch, const Winding& winding, MaterialKind kind) {
    const float wide = mm(winding.width);
    const float high = mm(winding.height);
    const float gape = mm(sketch.base(winding.base).run->hook.gape.value);
    const RecipeMaterial* material = sketch.material(winding.material);
    if (kind == MaterialKind::herl) {
        const float flue = material ? sketch.given_mm(material->barb_length, 1.6F) : 1.6F;
        const float core = std::max(0.7F * high, 0.12F);
        // Herl lies on the body with its edge; its flue stands to both sides.
        return {core,
                0.5F * (high - core),
                std::min(flue, 0.24F * gape) + 0.5F * high,
                80.0F,
                0.020F,
                0.95F,
                0.12F};
    }
    const float outer = std::max(wide, high);
    if (kind == MaterialKind::chenille) {
        return {0.96F * outer, 0.0F, 0.66F * outer, 80.0F, 0.045F, 1.7F, 0.25F};
    }
    return {0.90F * outer, 0.0F, 0.64F * outer, 26.0F, 0.025F, 1.6F, 0.5F};
}

} // namespace

void draw_flue(Sketch& sketch, const Winding& winding) {
    const MaterialKind kind = sketch.kind(winding.material);
    const WoundPath path(sketch, winding);
    const Pile pile = pile_of(sketch, winding, kind);
    const Colour colour = sketch.colour(winding.material);
    const Look look = kind == MaterialKind::herl ? Look::fibre : Look::fur;
    const int core = sketch.open(look, shade(colour, 0.55F), winding.part, winding.act);
    const Shades shades = sketch.open_shades(look, colour, winding.part, winding.act, 0.28F);

    const float half = 0.5F * pile.core;
    // As broad as the strand lies, so that touching turns hide what is below them.
    path.add(
        sketch.mesh(core),
        ellipse_section(sketch.sides(half, 6), half, std::max(half, 0.52F * mm(winding.width))),
        0.0F, -pile.sunk);

    const auto length = static_cast<float>(in_millimetres(winding.length));
    const float radius = 0.5F * mm(winding.core + winding.height);
    const float strand = std::max(length, 2.0F * std::numbers::pi_v<float> * radius *
                                              static_cast<float>(winding.turns));
    const int count = std::clamp(static_cast<int>(strand * pile.per_mm), 40, 6000);
    Dice dice(winding.act, 401);
    for (int i = 0; i < count; ++i) {
        const double t = path.turns() * (i + static_cast<double>(dice.even())) / count;
        const StrandFrame f = path.frame(t);
        const glm::vec3 outward = f.wire.radial(f.angle);
        const glm::vec3 across = glm::cross(f.along, outward);
        const float lean = pile.fan * (2.0F * dice.even() - 1.0F);
        Fibre fibre;
        fibre.direction = glm::normalize(outward * std::cos(lean) + across * std::sin(lean) +
                                         f.along * (0.25F + 0.3F * dice.bell()));
        fibre.root = f.origin;
        fibre.bend = 0.25F * f.wire.along + 0.18F * dice.bell() * across;
        fibre.length = pile.length * (1.0F - pile.uneven * dice.even());
        fibre.thick = sketch.visible(pile.thick, 0.9F);
        fibre.tip = 0.4F * fibre.thick;
        fibre.fullness = 2.5F;
        add_fibre(shades.mesh(sketch, i), sketch.sections.fine, fibre, 3);
    }
}

} // namespace wrapwright
