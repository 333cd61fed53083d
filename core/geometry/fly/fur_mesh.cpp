// Dubbing: a lumpy rope wound to a body, with stray fibres that catch the light.

#include "core/geometry/fly/dice.h"
#include "core/geometry/fly/lathe.h"
#include "core/geometry/fly/surface.h"

namespace wrapwright {

namespace {

constexpr float turn = 2.0F * std::numbers::pi_v<float>;

/// The surface of a dubbed stretch: smooth profile, drawn in at the ends, lumpy turn by turn.
struct FurBody {
    const Winding& winding;
    Surface below, after;
    float low = 0.0F, high = 0.0F; ///< of the stretch, mm
    float over_low = 0.0F;         ///< how far the fur spills over its ends
    float over_high = 0.0F;
    float twist = 0.0F; ///< radians of the rope's turns per mm
    int seed = 0;

    [[nodiscard]] float radius(float at, float angle) const {
        // The cells at the very ends are dubbed in part.
        const float margin = std::min(0.15F, 0.3F * (high - low));
        const float inside = std::clamp(at, low + margin, high - margin);
        const float core = below.radius(at);
        const float full = std::max(core + 0.05F, after.radius(inside));
        const float thick = full - core;
        const float out = std::max((low - at) / over_low, (at - high) / over_high);
        const float shoulder = out <= 0.0F ? 1.0F : std::sqrt(std::max(1.0F - out * out, 0.0F));
        const float rope = 0.5F + 0.5F * std::cos(twist * at - angle);
        const float lump = 0.5F + 0.5F * wander(5.0F * at / std::max(full, 0.2F),
                                                7.0F * (angle / turn + 1.0F), 7, seed);
        const float dip = 0.16F * rope + 0.16F * lump;
        return std::max(0.3F * core, core + thick * shoulder - dip * std::min(thick, 0.4F));
    }
};

/// Fibres that stand out of the body, most of them swept with the rope and tailward.
void add_strays(Sketch& sketch, const FurBody& body, const BasePlace& base, const Shades& shades,
                float length, int count) {
    Dice dice(body.winding.act, 77);
    const float sense = body.winding.sense == Sense::with_thread ? 1.0F : -1.0F;
    for (int i = 0; i < count; ++i) {
        const float at = dice.between(body.low, body.high);
        const float angle = turn * dice.even();
        const WireFrame wire = base.frame(millimetres(static_cast<double>(at)));
        const glm::vec3 e = wire.radial(angle);
        Fibre fibre;
        fibre.root = wire.origin + e * (0.86F * body.radius(at, angle));
        const float lift = dice.between(0.15F, 0.9F);
        fibre.direction = glm::normalize(e * lift + wire.along * (0.45F + 0.55F * dice.bell()) +
                                         wire.round(angle) * (sense * 0.5F + dice.bell()));
        fibre.bend =
            0.8F * (dice.bell() * e + dice.bell() * wire.along + dice.bell() * wire.round(angle));
        fibre.length = length * dice.between(0.35F, 1.0F) * dice.between(0.5F, 1.0F);
        fibre.thick = sketch.visible(dice.between(0.018F, 0.034F), 0.8F);
        fibre.tip = 0.35F * fibre.thick;
        fibre.fullness = 2.0F;
        add_fibre(shades.mesh(sketch, i), sketch.sections.fine, fibre, 5);
    }
}

/// How far a rope spills back over the thread that held what was there before it started.
float spill_at_start(const Sketch& sketch, const Winding& fur, float least, float most) {
    float spill = least;
    for (int i = 0; i < sketch.windings(); ++i) {
        const Winding& w = sketch.tied.windings[static_cast<std::size_t>(i)];
        const bool holds = sketch.kind(w.material) == MaterialKind::thread && w.turns < 8.0;
        if (w.act >= fur.act || w.base != fur.base || !holds) continue;
        const float low = mm(std::min(w.from, w.to) - fur.from);
        const float high = mm(std::max(w.from, w.to) - fur.from);
        if (low > 0.0F || high < 0.0F || high - low > 3.0F * most) continue;
        spill = std::max(spill, 0.05F + (fur.to < fur.from ? high : -low));
    }
    return std::min(spill, most);
}

} // namespace

void draw_fur(Sketch& sketch, const Winding& winding) {
    const BasePlace& base = sketch.base(winding.base);
    const Profile& below = sketch.tied.profiles[static_cast<std::size_t>(winding.profile_below)];
    const Profile* made = sketch.profile_after(winding.act, winding.base);
    FurBody body{winding, Surface(base, below), Surface(base, made ? *made : below)};
    body.low = mm(std::min(winding.from, winding.to));
    body.high = mm(std::max(winding.from, winding.to));
    const float gape = mm(base.run->hook.gape.value);
    const float over = std::max(0.5F * mm(winding.height), 0.06F * gape);
    const float back = spill_at_start(sketch, winding, over, 0.22F * gape);
    const bool forward = winding.to < winding.from;
    body.over_low = forward ? over : back;
    body.over_high = forward ? back : over;
    body.seed = 31 * winding.act + 5;
    const float span = body.high - body.low;
    if (span <= 0.0F) return;
    const float way = (winding.to > winding.from ? 1.0F : -1.0F) *
                      (winding.sense == Sense::with_thread ? 1.0F : -1.0F);
    body.twist = way * turn * static_cast<float>(std::max(winding.turns, 1.0)) / span;

    const Colour colour = sketch.colour(winding.material);
    const int core = sketch.open(Look::fur, shade(colour, 0.8F), winding.part, winding.act);
    const Shades shades = sketch.open_shades(Look::fur, colour, winding.part, winding.act, 0.3F);
    const float middle = 0.5F * (body.low + body.high);
    const float radius = body.radius(middle, 0.0F);
    const int steps = std::clamp(static_cast<int>(sketch.pixels(span) / 4.0F), 24, 160);
    const int sides = std::clamp(static_cast<int>(sketch.pixels(radius * turn) / 5.0F), 16, 72);
    add_lathe(sketch.mesh(core), base, millimetres(static_cast<double>(body.low - body.over_low)),
              millimetres(static_cast<double>(body.high + body.over_high)), steps, sides,
              [&](float at, float angle) { return body.radius(at, angle); });

    const float area = turn * radius * span;
    const int count = std::clamp(static_cast<int>(70.0F * area / (0.25F * gape)), 120, 1600);
    add_strays(sketch, body, base, shades, 0.17F * gape + 0.55F * radius, count);
}

} // namespace wrapwright
