// Clear coats: a film over a stretch of the fly as it was when the coat went on.

#include "core/geometry/fly/lathe.h"
#include "core/geometry/fly/surface.h"

namespace wrapwright {

namespace {

/// Whether turns that came later hide a coat: a wet bed under a body, glue under a joint's wraps.
bool is_wound_over(const Sketch& sketch, const Placed& coat) {
    double covered = 0.0;
    for (int i = 0; i < sketch.windings(); ++i) {
        const Winding& w = sketch.tied.windings[static_cast<std::size_t>(i)];
        if (w.act <= coat.act || w.base != coat.base) continue;
        const Length low = std::max(std::min(w.from, w.to), coat.at);
        const Length high = std::min(std::max(w.from, w.to), coat.to);
        // Open turns leave the coat in sight.
        const bool closed = w.pitch.si < 1.5 * w.width.si;
        if (closed && high > low) covered += (high - low) / (coat.to - coat.at);
    }
    return covered > 0.6;
}

} // namespace

void draw_coat(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    // A drop spreads a little beyond the place that was meant.
    const float low = mm(placed.at) - 0.10F;
    const float high = mm(placed.to) + 0.10F;
    const float span = high - low;
    if (placed.to <= placed.at || is_wound_over(sketch, placed)) return;
    const Profile* made = sketch.profile_after(placed.act, placed.base);
    const Surface surface(base, made ? *made : sketch.profile_now(placed.base));
    const float radius = surface.radius(0.5F * (low + high));
    const RecipeMaterial* material = sketch.material(placed.material);
    const CoatKind coat = material ? material->coat : CoatKind::none;
    // Spread evenly, the drop's volume over the surface; cured coats weigh about 1.15 mg/mm3. What
    // is too much for the place sinks in or is wiped off.
    const float area = 2.0F * std::numbers::pi_v<float> * std::max(radius, 0.1F) * span;
    const auto volume = static_cast<float>(in_milligrams(placed.mass)) / 1.15F;
    const bool thin =
        coat == CoatKind::varnish || coat == CoatKind::quick_glue || coat == CoatKind::wax;
    const float most = thin ? 0.04F * radius + 0.01F : 0.16F * radius + 0.03F;
    const float thick = std::clamp(volume / area, 0.010F, most);
    const int piece = sketch.open(Look::film, sketch.colour(placed.material), placed.part,
                                  placed.act, thin ? 0.08F : 0.2F);
    const int steps = std::clamp(static_cast<int>(sketch.pixels(span) / 3.0F), 12, 120);
    add_lathe(sketch.mesh(piece), base, millimetres(static_cast<double>(low)),
              millimetres(static_cast<double>(high)), steps,
              std::max(sketch.sides(radius + thick), 16), [&](float at, float) {
                  const float u = std::clamp((at - low) / span, 0.0F, 1.0F);
                  const float dome =
                      std::sqrt(std::max(1.0F - std::pow(2.0F * u - 1.0F, 4.0F), 0.0F));
                  // Its edges sink under what it wets.
                  return surface.radius(at) + thick * dome - 0.3F * thick - 0.004F;
              });
}

} // namespace wrapwright
