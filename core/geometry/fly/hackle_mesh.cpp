// Hackle barbs that stand round the hook: collar, palmer, soft hackle, parachute.

#include "core/geometry/fly/feather.h"
#include "core/geometry/fly/wound_path.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float turn = 2.0F * std::numbers::pi_v<float>;

/// The winding of the stem that carries those barbs, if there is one.
const Winding* stem_of(const Sketch& sketch, const Placed& placed) {
    for (int i = sketch.windings() - 1; i >= 0; --i) {
        const Winding& w = sketch.tied.windings[static_cast<std::size_t>(i)];
        const bool feather = sketch.kind(w.material) != MaterialKind::thread;
        if (w.act == placed.act && w.base == placed.base && feather) return &w;
    }
    return nullptr;
}

/// How barbs of a kind of feather stand.
struct Barb {
    float thick = 0.05F;
    float tip = 0.012F;
    float curve = 0.08F;  ///< tailward, share of the length
    float limp = 0.0F;    ///< swing of a soft barb
    float uneven = 0.06F; ///< spread of lengths
    int segments = 5;
};

Barb barb_of(MaterialKind kind) {
    switch (kind) {
    case MaterialKind::soft_hackle: return {0.075F, 0.014F, 0.34F, 0.03F, 0.12F, 8};
    case MaterialKind::marabou: return {0.07F, 0.01F, 0.42F, 0.09F, 0.35F, 10};
    case MaterialKind::cdc: return {0.05F, 0.008F, 0.3F, 0.07F, 0.35F, 9};
    default: return {0.075F, 0.012F, 0.08F, 0.0F, 0.08F, 6};
    }
}

/// Whether a step has cut the barbs level along the top.
bool trimmed_on_top(const Sketch& sketch, const Placed& placed) {
    if (sketch.moment < 0) return false;
    const int now = sketch.tied.moments[static_cast<std::size_t>(sketch.moment)].step;
    for (int step = placed.step; step <= now; ++step) {
        if (sketch.does(step, placed.part, Op::shape)) return true;
    }
    return false;
}

} // namespace

void draw_barbs(Sketch& sketch, const Placed& placed) {
    const float length = mm(placed.reach);
    if (length <= 0.0F) return;
    const MaterialKind kind = sketch.kind(placed.material);
    const Barb barb = barb_of(kind);
    const BasePlace& base = sketch.base(placed.base);
    const Winding* stem = stem_of(sketch, placed);
    const Colour colour = sketch.colour(placed.material);
    const Shades shades = sketch.open_shades(Look::fibre, colour, placed.part, placed.act, 0.22F);
    const RecipeMaterial* words = sketch.material(placed.material);
    const bool barred = words && is_barred(*words);
    const int bars =
        barred ? sketch.open(Look::fibre, shade(colour, 0.45F), placed.part, placed.act) : 0;
    const bool soft = barb.limp > 0.05F;
    const bool level_top = trimmed_on_top(sketch, placed);

    // Barbs of down are finer than a picture shows one by one; what is beyond the most is widened.
    const double wanted = placed.count * (soft ? 2.5 : 1.0);
    const int count = std::clamp(static_cast<int>(wanted), 6, soft ? 220 : 420);
    const auto widen =
        static_cast<float>(std::clamp(std::sqrt(wanted / static_cast<double>(count)), 1.0, 1.8));
    const float lean = rad(placed.lean);
    const float spread = std::max(rad(placed.spread), 0.03F);
    Dice dice(placed.act, 911);
    for (int i = 0; i < count; ++i) {
        const float u = (static_cast<float>(i) + 0.8F * dice.even()) / static_cast<float>(count);
        glm::vec3 root{};
        WireFrame wire;
        float angle = 0.0F;
        if (stem) {
            const WoundPath path(sketch, *stem);
            const StrandFrame f = path.frame(static_cast<double>(u) * path.turns());
            root = f.origin;
            wire = f.wire;
            angle = f.angle;
        } else {
            const Length at = placed.at + static_cast<double>(u) * (placed.to - placed.at);
            wire = base.frame(at);
            // Where the barbs are not all round they fan about one side.
            angle = placed.all_round ? turn * 7.31F * u
                                     : rad(placed.around) + 1.3F * spread * dice.bell();
            root = wire.origin + wire.radial(angle) * (0.5F * mm(placed.root));
        }
        // The two sides of a feather lean apart.
        const float own = lean + (i % 2 == 0 ? 0.6F : -0.6F) * spread + 0.6F * spread * dice.bell();
        const float around = angle + 0.10F * dice.bell();
        const glm::vec3 e = wire.radial(around);
        Fibre fibre;
        fibre.root = root;
        fibre.direction = glm::normalize(e * std::sin(own) + wire.along * std::cos(own));
        fibre.bend = wire.along * (barb.curve * dice.between(0.6F, 1.3F)) -
                     e * (0.5F * barb.curve * barb.curve) +
                     0.04F * dice.bell() * wire.round(around);
        fibre.length = length * (1.0F - barb.uneven * dice.even());
        fibre.wave = barb.limp * wire.round(around) * dice.bell() * 2.0F;
        fibre.waves = 1.6F;
        fibre.phase = turn * dice.even();
        fibre.thick = sketch.visible(barb.thick * widen, 1.3F);
        fibre.tip = sketch.visible(barb.tip, 0.3F);
        fibre.fullness = 1.8F;
        if (level_top && e.y > 0.25F) {
            const float most = 0.18F * mm(base.run->hook.gape.value) / std::max(e.y, 0.3F);
            fibre.length = std::min(fibre.length, most);
        }
        Mesh& mesh = shades.mesh(sketch, i);
        if (barred) {
            add_barred(sketch, mesh, sketch.mesh(bars), fibre, 9, i % 2);
        } else {
            add_fibre(mesh, sketch.sections.blade, fibre, barb.segments);
        }
        if (soft) add_fluff(sketch, mesh, fibre, dice, std::min(0.10F * length, 1.6F), 14);
    }
}

} // namespace wrapwright
