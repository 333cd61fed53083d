// Clear coats: a film over a stretch of the fly as it was when the coat went on.

#include "core/geometry/fly/lathe.h"

namespace wrapwright {

void draw_coat(Sketch& sketch, const Placed& placed) {
    const Profile* made = sketch.profile_after(placed.act, placed.base);
    const Profile& profile = made ? *made : sketch.profile_now(placed.base);
    const float low = mm(placed.at);
    const float high = mm(placed.to);
    const float span = high - low;
    if (span <= 0.0F) return;
    const float radius = 0.5F * mm(profile.diameter_at(0.5 * (placed.at + placed.to)));
    // Spread evenly, the drop's volume over the surface; cured coats weigh about 1.15 mg/mm3.
    const float area = 2.0F * std::numbers::pi_v<float> * std::max(radius, 0.1F) * span;
    const auto volume = static_cast<float>(in_milligrams(placed.mass)) / 1.15F;
    const float thick = std::clamp(volume / area, 0.015F, 0.20F * radius + 0.04F);
    const int piece =
        sketch.open(Look::film, sketch.colour(placed.material), placed.part, placed.act, 0.25F);
    const int steps = std::clamp(static_cast<int>(sketch.pixels(span) / 3.0F), 12, 120);
    add_lathe(sketch.mesh(piece), sketch.base(placed.base), placed.at, placed.to, steps,
              std::max(sketch.sides(radius + thick), 16), [&](float at, float) {
                  const float u = std::clamp((at - low) / span, 0.0F, 1.0F);
                  const float dome =
                      std::sqrt(std::max(1.0F - std::pow(2.0F * u - 1.0F, 4.0F), 0.0F));
                  const Length place = millimetres(static_cast<double>(at));
                  return 0.5F * mm(profile.diameter_at(place)) + thick * (0.25F + 0.75F * dome);
              });
}

} // namespace wrapwright
