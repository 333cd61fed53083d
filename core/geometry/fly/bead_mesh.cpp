// Beads, cones, dumbbells and tubes, each a closed body with its hole.

#include "core/geometry/fly/sketch.h"
#include "core/geometry/fly/turned.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

/// The axis of something threaded on the wire, whose middle is at a place.
Axis axis_on_wire(const BasePlace& base, Length at) {
    const WireFrame f = base.frame(at);
    return {f.origin, f.along, f.up, f.out};
}

/// The bead with what its recipe says of its hole, and the usual hole where it says nothing.
Bead bead_of(const Sketch& sketch, const Placed& placed, const RecipeMaterial* material) {
    MaterialFacts facts;
    facts.kind = MaterialKind::bead;
    facts.diameter = placed.reach;
    if (material) {
        facts.substance = material->substance;
        if (material->hole == "drilled") facts.hole = BeadHole::drilled;
        if (material->hole == "countersunk") facts.hole = BeadHole::countersunk;
        if (material->hole == "slotted") facts.hole = BeadHole::slotted;
        const float bore = sketch.given_mm(material->bore, 0.0F);
        const float slot = sketch.given_mm(material->slot, 0.0F);
        if (bore > 0.0F) facts.bore = millimetres(static_cast<double>(bore));
        if (slot > 0.0F) facts.slot = millimetres(static_cast<double>(slot));
    }
    const Result<Stuff> stuff =
        complete_material(facts, sketch.base(placed.base).run->hook.gape.value);
    return stuff.ok() ? stuff.value().bead : Bead{};
}

void draw_sphere(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    const RecipeMaterial* material = sketch.material(placed.material);
    const Bead bead = bead_of(sketch, placed, material);
    const float radius = 0.5F * mm(placed.reach);
    const float bore = std::clamp(mm(bead.bore.value), 0.1F * radius, 1.6F * radius);
    const bool glass = material && look_of(*material) == Look::film;
    const int piece = sketch.open(glass ? Look::film : Look::metal, sketch.colour(placed.material),
                                  placed.part, placed.act, glass ? 0.75F : 1.0F);
    const int sides = sketch.sides(radius, 16);
    Axis axis = axis_on_wire(base, placed.at);
    if (bead.hole == BeadHole::slotted) {
        // The small hole sits on the eye leg; the slot lets the shank out at an angle.
        const WireFrame leg = base.frame(Length{});
        const WireFrame shank = base.frame(base.run->line.stations().front);
        const bool above = glm::dot(shank.along, leg.up) > 0.0F;
        axis.along = leg.along;
        axis.up = above ? leg.up : -leg.up;
        axis.out = above ? leg.out : -leg.out;
        const float slot = std::clamp(mm(bead.slot_width.value), 0.1F * radius, 1.6F * radius);
        add_slotted_bead(sketch.mesh(piece), axis, radius, bore, slot, mm(bead.slot_from), sides);
        return;
    }
    const bool sunk = bead.hole == BeadHole::countersunk;
    const float mouth = sunk ? std::clamp(mm(bead.mouth.value), bore, 1.9F * radius) : bore;
    const auto slope = static_cast<float>(std::tan(bead.countersink_half.si));
    const float depth = sunk && slope > 0.0F ? 0.5F * (mouth - bore) / slope : 0.0F;
    add_round_bead(sketch.mesh(piece), axis, radius, bore, {mouth, depth}, sides);
}

void draw_cone(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    const float d = mm(placed.reach);
    const float length = std::max(2.0F * mm(placed.to - placed.at), 0.6F * d);
    const float bore = std::max(1.3F * mm(base.run->hook.wire.value), 0.25F * d);
    const int piece =
        sketch.open(Look::metal, sketch.colour(placed.material), placed.part, placed.act);
    const float front = -0.5F * length;
    const std::array<Corner, 9> outline{{{front, 0.5F * bore, true},
                                         {front, 0.29F * d, true},
                                         {front + 0.06F * length, 0.33F * d, false},
                                         {front + 0.45F * length, 0.44F * d, false},
                                         {front + 0.85F * length, 0.5F * d, false},
                                         {front + length, 0.49F * d, true},
                                         {front + 0.97F * length, 0.43F * d, true},
                                         {front + 0.62F * length, 0.40F * d, true},
                                         {front + 0.55F * length, 0.5F * bore, true}}};
    add_turned(sketch.mesh(piece), axis_on_wire(base, placed.at), outline,
               sketch.sides(0.5F * d, 16));
}

void draw_dumbbell(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    const float ball = mm(placed.reach);
    const WireFrame frame = base.frame(placed.at);
    const float angle = rad(placed.around);
    const int piece =
        sketch.open(Look::metal, sketch.colour(placed.material), placed.part, placed.act);
    const int pupil = sketch.open(Look::film, linear_colour(0x101012), placed.part, placed.act);
    const int sides = sketch.sides(0.5F * ball, 16);
    const glm::vec3 centre =
        frame.origin + frame.radial(angle) * (0.5F * mm(placed.root) + 0.22F * ball);
    for (const float side : {-1.0F, 1.0F}) {
        Axis axis;
        axis.along = side * frame.round(angle);
        axis.up = frame.radial(angle);
        axis.out = glm::cross(axis.along, axis.up);
        axis.centre = centre;
        // Half a waist, a ball with a flat cheek.
        const std::array<Corner, 9> outline{{{-0.02F * ball, 0.0F, true},
                                             {-0.02F * ball, 0.20F * ball, true},
                                             {0.30F * ball, 0.20F * ball, true},
                                             {0.42F * ball, 0.38F * ball, false},
                                             {0.62F * ball, 0.49F * ball, false},
                                             {0.80F * ball, 0.50F * ball, false},
                                             {1.00F * ball, 0.42F * ball, false},
                                             {1.10F * ball, 0.30F * ball, true},
                                             {1.10F * ball, 0.0F, true}}};
        add_turned(sketch.mesh(piece), axis, outline, sides);
        const std::array<Corner, 4> dot{{{1.06F * ball, 0.0F, true},
                                         {1.06F * ball, 0.17F * ball, true},
                                         {1.125F * ball, 0.15F * ball, true},
                                         {1.135F * ball, 0.0F, true}}};
        add_turned(sketch.mesh(pupil), axis, dot, sides);
    }
}

void draw_tube(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    const float outside = 0.5F * mm(placed.reach);
    const float inside = std::min(0.6F * outside, outside - 0.05F);
    const float half = mm(placed.to - placed.at);
    const int piece =
        sketch.open(Look::film, sketch.colour(placed.material), placed.part, placed.act, 0.7F);
    const std::array<Corner, 4> outline{{{-half, inside, true},
                                         {-half, outside, true},
                                         {half, outside, true},
                                         {half, inside, true}}};
    add_turned(sketch.mesh(piece), axis_on_wire(base, placed.at), outline,
               sketch.sides(outside, 12));
}

} // namespace

void draw_bead(Sketch& sketch, const Placed& placed) {
    if (placed.reach.si <= 0.0) return;
    switch (placed.kind) {
    case PlacedKind::cone: draw_cone(sketch, placed); break;
    case PlacedKind::dumbbell: draw_dumbbell(sketch, placed); break;
    case PlacedKind::tube: draw_tube(sketch, placed); break;
    default: draw_sphere(sketch, placed); break;
    }
}

} // namespace wrapwright
