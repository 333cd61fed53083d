// Bundles that stand free: tails, beards, legs, flash, plumes, feather tips.

#include "core/geometry/fly/feather.h"
#include "core/geometry/fly/stance.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

/// Stiff or soft barbs and herls, each a thin taper with its own slight bend.
void draw_fibres(Sketch& sketch, const Placed& placed, MaterialKind kind) {
    const Stance stance(sketch, placed);
    const Colour colour = sketch.colour(placed.material);
    const Shades shades = sketch.open_shades(Look::fibre, colour, placed.part, placed.act, 0.24F);
    const RecipeMaterial* material = sketch.material(placed.material);
    const bool barred = material && is_barred(*material);
    const int bars =
        barred ? sketch.open(Look::fibre, shade(colour, 0.28F), placed.part, placed.act) : 0;
    const int count = std::clamp(static_cast<int>(placed.count), 1, 240);
    const bool herl = kind == MaterialKind::herl;
    Dice dice(placed.act, 131);
    for (int i = 0; i < count; ++i) {
        const Rooted start = stance.fibre(dice, i, count);
        Fibre fibre;
        fibre.root = start.root;
        fibre.direction = start.direction;
        const float soft = kind == MaterialKind::soft_hackle ? 0.16F : 0.05F;
        fibre.bend = soft * (0.5F + dice.even()) * start.away +
                     glm::vec3{0.0F, -0.03F - 0.03F * dice.even(), 0.0F};
        fibre.length = stance.length() * (1.0F - 0.10F * dice.even() * dice.even());
        fibre.thick = sketch.visible(herl ? 0.16F : 0.075F, 1.3F);
        fibre.tip = sketch.visible(0.012F, 0.35F);
        fibre.fullness = 1.4F;
        if (barred) {
            add_barred(sketch, shades.mesh(sketch, i), sketch.mesh(bars), fibre, 9,
                       static_cast<int>(dice.even() * 2.0F));
        } else {
            add_fibre(shades.mesh(sketch, i), sketch.sections.round, fibre, 9);
        }
        if (herl) add_fluff(sketch, shades.mesh(sketch, i), fibre, dice, 0.45F, 26);
    }
}

/// Marabou and the like: soft stems that wave, with flue that gets finer to the tip.
void draw_plume(Sketch& sketch, const Placed& placed, MaterialKind kind) {
    const Stance stance(sketch, placed);
    const Shades shades = sketch.open_shades(Look::fibre, sketch.colour(placed.material),
                                             placed.part, placed.act, 0.32F);
    // A plume counted as one piece is some thirty barbs.
    const float pieces = static_cast<float>(placed.count);
    const int count =
        std::clamp(static_cast<int>(pieces < 8.0F ? 30.0F * pieces : pieces), 12, 130);
    const float wave = kind == MaterialKind::marabou ? 0.045F : 0.03F;
    Dice dice(placed.act, 173);
    for (int i = 0; i < count; ++i) {
        const Rooted start = stance.fibre(dice, i, count);
        Fibre fibre;
        fibre.root = start.root;
        fibre.direction = start.direction;
        const float inner = dice.even();
        // Full in the middle, drawn together again at the tips.
        fibre.direction = glm::normalize(fibre.direction + 0.16F * start.away);
        fibre.bend =
            glm::vec3{0.0F, -0.07F, 0.0F} + 0.16F * dice.bell() * start.away - 0.16F * start.away;
        fibre.length = stance.length() * (1.0F - 0.45F * inner * inner);
        fibre.wave = wave *
                     (start.away * dice.bell() +
                      glm::normalize(glm::cross(start.direction, start.away)) * dice.bell()) *
                     2.0F;
        fibre.waves = dice.between(1.0F, 1.9F);
        fibre.phase = dice.between(0.0F, 6.28F);
        fibre.thick = sketch.visible(0.085F, 1.6F);
        fibre.tip = sketch.visible(0.012F, 0.35F);
        fibre.fullness = 1.2F;
        Mesh& mesh = shades.mesh(sketch, i);
        add_fibre(mesh, sketch.sections.fine, fibre, 14);
        add_fluff(sketch, mesh, fibre, dice, std::min(0.10F * stance.length(), 1.6F), 34);
    }
}

/// Flash and tinsel: flat bright ribbons, a little twisted.
void draw_flash(Sketch& sketch, const Placed& placed) {
    const Stance stance(sketch, placed);
    const RecipeMaterial* material = sketch.material(placed.material);
    const float wide = material ? sketch.given_mm(material->width, 0.35F) : 0.35F;
    const int piece =
        sketch.open(Look::metal, sketch.colour(placed.material), placed.part, placed.act);
    const int count = std::clamp(static_cast<int>(placed.count), 1, 40);
    Dice dice(placed.act, 211);
    for (int i = 0; i < count; ++i) {
        const Rooted start = stance.fibre(dice, i, count);
        Fibre fibre;
        fibre.root = start.root;
        fibre.direction = start.direction;
        fibre.bend = glm::vec3{0.0F, -0.04F, 0.0F} + 0.08F * dice.bell() * start.away;
        fibre.length = stance.length() * (1.0F - 0.12F * dice.even());
        fibre.wave = 0.02F * start.away;
        fibre.waves = dice.between(1.0F, 2.5F);
        fibre.phase = dice.between(0.0F, 6.28F);
        fibre.thick = fibre.tip = sketch.visible(wide, 1.5F);
        fibre.face = glm::normalize(start.away + 0.6F * glm::vec3{dice.bell(), 0.2F, 1.0F});
        add_fibre(sketch.mesh(piece), sketch.sections.ribbon, fibre, 16);
    }
}

/// Rubber and knotted legs: even strands that spring outwards, then hang.
void draw_legs(Sketch& sketch, const Placed& placed) {
    const Stance stance(sketch, placed);
    const RecipeMaterial* material = sketch.material(placed.material);
    const float thick = material ? sketch.given_mm(material->size, 0.5F) : 0.5F;
    const int piece =
        sketch.open(Look::thread, sketch.colour(placed.material), placed.part, placed.act);
    const Section section = ellipse_section(sketch.sides(0.5F * thick, 6));
    const int count = std::clamp(static_cast<int>(placed.count), 1, 24);
    Dice dice(placed.act, 223);
    for (int i = 0; i < count; ++i) {
        const float side = i % 2 == 0 ? -1.0F : 1.0F;
        const Rooted start = stance.one_of_pair(side);
        const float along = count > 2 ? dice.between(-0.9F, 0.9F) : 0.3F;
        Fibre fibre;
        fibre.root = start.root;
        fibre.direction = glm::normalize(glm::vec3{along, 0.25F, side});
        fibre.bend = {0.15F * along, -0.75F, 0.0F};
        fibre.length = stance.length();
        fibre.thick = fibre.tip = thick;
        add_fibre(sketch.mesh(piece), section, fibre, 14);
    }
}

/// Whole feathers as wings or long tails: pairs that lie back to back.
void draw_feathers(Sketch& sketch, const Placed& placed) {
    const Stance stance(sketch, placed);
    const int count = std::clamp(static_cast<int>(placed.count), 1, 6);
    for (int i = 0; i < count; ++i) {
        const float side = count == 1 ? 0.0F : (i % 2 == 0 ? -1.0F : 1.0F);
        const int pair = i / 2;
        const float wider = 1.0F + 0.6F * static_cast<float>(pair); // each pair outside the last
        const Rooted start = side == 0.0F ? stance.middle() : stance.one_of_pair(side * wider);
        FeatherShape shape;
        shape.root = start.root;
        shape.direction = start.direction;
        shape.face = stance.wire().out * (side == 0.0F ? 1.0F : side);
        shape.length = stance.length();
        shape.width = 0.30F * stance.length();
        shape.curve = 0.06F;
        add_feather(sketch, placed.material, placed.part, placed.act, shape, placed.act + 7 * i);
    }
}

/// A tuft of yarn, floss or chenille.
void draw_tuft(Sketch& sketch, const Placed& placed) {
    const Stance stance(sketch, placed);
    const Shades shades = sketch.open_shades(Look::fur, sketch.colour(placed.material), placed.part,
                                             placed.act, 0.2F);
    Dice dice(placed.act, 239);
    constexpr int strands = 60;
    for (int i = 0; i < strands; ++i) {
        const Rooted start = stance.fibre(dice, i, strands);
        Fibre fibre;
        fibre.root = start.root;
        fibre.direction = start.direction;
        fibre.bend = 0.12F * start.away + glm::vec3{0.0F, -0.05F, 0.0F};
        fibre.length = stance.length() * dice.between(0.85F, 1.0F);
        fibre.thick = sketch.visible(0.05F);
        fibre.tip = 0.6F * fibre.thick;
        fibre.fullness = 3.0F;
        add_fibre(shades.mesh(sketch, i), sketch.sections.fine, fibre, 7);
    }
}

} // namespace

void draw_bundle(Sketch& sketch, const Placed& placed) {
    if (placed.reach.si <= 0.0) return;
    const MaterialKind kind = sketch.kind(placed.material);
    switch (kind) {
    case MaterialKind::hair: return draw_hair(sketch, placed);
    case MaterialKind::slip:
    case MaterialKind::foam:
    case MaterialKind::film:
    case MaterialKind::biot: return draw_slips(sketch, placed);
    case MaterialKind::marabou:
    case MaterialKind::cdc: return draw_plume(sketch, placed, kind);
    case MaterialKind::flash:
    case MaterialKind::tinsel:
    case MaterialKind::wire:
    case MaterialKind::oval: return draw_flash(sketch, placed);
    case MaterialKind::legs: return draw_legs(sketch, placed);
    case MaterialKind::floss:
    case MaterialKind::yarn:
    case MaterialKind::chenille:
    case MaterialKind::dubbing: return draw_tuft(sketch, placed);
    case MaterialKind::hackle:
        if (placed.count <= 4.0) return draw_feathers(sketch, placed);
        return draw_fibres(sketch, placed, kind);
    default: return draw_fibres(sketch, placed, kind);
    }
}

} // namespace wrapwright
