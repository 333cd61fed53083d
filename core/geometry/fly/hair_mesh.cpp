// Hair: stacked wings with flared butts, plain tails, hair spun round the shank.

#include "core/geometry/fly/stance.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

/// Pieces for hair that is dark at the tip, light below it, and the material's colour further down.
struct HairColours {
    Shades shaft{};
    int light = 0, dark = 0;
};

/// Hair of deer and the like is dark at the tip, with a light band below it.
bool is_banded(const RecipeMaterial* material) {
    if (!material) return false;
    for (const std::string_view word : {"deer", "elk", "caribou", "antelope", "squirrel"}) {
        if (material->text.find(word) != std::string::npos) return true;
        if (material->colour.find(word) != std::string::npos) return true;
    }
    return false;
}

HairColours hair_colours(Sketch& sketch, const Placed& placed) {
    const Colour colour = sketch.colour(placed.material);
    const bool banded = is_banded(sketch.material(placed.material));
    const Colour light = mix(shade(colour, 1.35F), linear_colour(0xD9C39A), 0.4F);
    HairColours c;
    c.shaft = sketch.open_shades(Look::hair, colour, placed.part, placed.act, 0.26F);
    c.light =
        sketch.open(Look::hair, banded ? light : shade(colour, 1.1F), placed.part, placed.act);
    c.dark =
        sketch.open(Look::hair, banded ? shade(colour, 0.30F) : colour, placed.part, placed.act);
    return c;
}

void add_hair(Sketch& sketch, const HairColours& colours, const Fibre& hair, int i) {
    const Section& section = sketch.sections.round;
    add_fibre(colours.shaft.mesh(sketch, i), section, hair, 9, 0.0F, 0.80F);
    add_fibre(sketch.mesh(colours.light), section, hair, 2, 0.80F, 0.90F);
    add_fibre(sketch.mesh(colours.dark), section, hair, 3, 0.90F, 1.0F);
}

/// Whether a bundle's waste has been cut by now; what is never said to be cut counts as gone.
bool butts_trimmed(const Sketch& sketch, const Placed& placed) {
    for (int i = 0; i < sketch.strands(); ++i) {
        const Strand& s = sketch.tied.strands[static_cast<std::size_t>(i)];
        if (s.part != placed.part || s.base != placed.base) continue;
        return s.trimmed == none || s.trimmed <= sketch.act();
    }
    return true;
}

/// The butts of gathered hair: they stand up in front of the turns, long until they are cut.
void add_butts(Sketch& sketch, const HairColours& colours, const Placed& placed,
               const Stance& stance, int count, float thick) {
    const Hook& hook = sketch.base(placed.base).run->hook;
    const float cut = 1.5F * mm(hook.eye_length.value);
    const float length =
        butts_trimmed(sketch, placed) ? std::max(cut, 0.8F) : 0.55F * mm(hook.shank.value);
    Dice dice(placed.act, 613);
    for (int i = 0; i < count; ++i) {
        const Rooted start = stance.fibre(dice, i, count);
        const float fan = dice.between(-0.9F, 0.9F);
        Fibre butt;
        butt.root = start.root;
        butt.direction =
            glm::normalize(-stance.wire().along + stance.wire().up * dice.between(0.35F, 1.25F) +
                           stance.wire().out * fan);
        butt.bend = 0.12F * stance.wire().up;
        butt.length = length * dice.between(0.92F, 1.05F);
        butt.thick = thick;
        butt.tip = 1.15F * thick; // cut square: hollow hair is widest where it was squeezed least
        add_fibre(colours.shaft.mesh(sketch, i), sketch.sections.round, butt, 4);
    }
}

} // namespace

void draw_hair(Sketch& sketch, const Placed& placed) {
    const Stance stance(sketch, placed);
    const HairColours colours = hair_colours(sketch, placed);
    const bool gathered = sketch.does(placed.step, placed.part, Op::gather);
    const int count = std::clamp(static_cast<int>(placed.count), 4, 140);
    const float widen = std::clamp(
        std::sqrt(static_cast<float>(placed.count) / static_cast<float>(count)), 1.0F, 1.6F);
    // Hollow hair that flares is thick; hair for tails and streamers is half of that.
    const float thick = sketch.visible((gathered ? 0.16F : 0.10F) * widen, 1.4F);
    Dice dice(placed.act, 601);
    for (int i = 0; i < count; ++i) {
        const Rooted start = stance.fibre(dice, i, count);
        Fibre hair;
        hair.root = start.root;
        // Flared hair leaves the turns steeply and comes down again to its tips.
        const float flare = gathered ? dice.between(-0.10F, 0.20F) : 0.05F * dice.even();
        hair.direction = glm::normalize(start.direction + flare * start.away);
        hair.bend = -0.55F * flare * start.away + 0.03F * dice.bell() * stance.wire().out;
        hair.length = stance.length() * (1.0F - 0.09F * dice.even() * dice.even());
        hair.thick = thick * dice.between(0.85F, 1.1F);
        hair.tip = sketch.visible(0.015F, 0.35F);
        hair.fullness = 2.2F;
        add_hair(sketch, colours, hair, i);
    }
    if (gathered) add_butts(sketch, colours, placed, stance, count, thick);
}

void draw_clump(Sketch& sketch, const Placed& placed) {
    const HairColours colours = hair_colours(sketch, placed);
    const BasePlace& base = sketch.base(placed.base);
    const float reach = mm(placed.reach);
    // Both ends of each hair flare; packed hair fills the stretch that it was pressed to.
    const int count = std::clamp(static_cast<int>(4.0 * placed.count), 80, 900);
    const float deep = 0.16F * reach + 0.35F;
    const float lean = rad(placed.lean);
    const float spread = std::max(rad(placed.spread), 0.2F);
    Dice dice(placed.act, 641);
    for (int i = 0; i < count; ++i) {
        const float off = dice.bell();
        const Length at = placed.at + millimetres(static_cast<double>(deep * off));
        const WireFrame wire = base.frame(at);
        const float angle = placed.all_round ? 2.0F * std::numbers::pi_v<float> * dice.even()
                                             : rad(placed.around) + spread * dice.bell();
        const float own = lean - spread * (0.8F * off + 0.4F * dice.bell());
        Fibre hair;
        hair.root = wire.origin + wire.radial(angle) * (0.4F * mm(placed.root));
        hair.direction =
            glm::normalize(wire.radial(angle) * std::sin(own) + wire.along * std::cos(own));
        hair.bend = 0.05F * dice.bell() * wire.along;
        hair.length = reach * dice.between(0.93F, 1.0F);
        hair.thick = sketch.visible(0.17F, 1.3F);
        hair.tip = 0.95F * hair.thick;
        add_fibre(colours.shaft.mesh(sketch, i), sketch.sections.round, hair, 4);
    }
}

} // namespace wrapwright
