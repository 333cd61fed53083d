#include "core/geometry/fly/surface.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// The steepest rise that a strand climbs, as a tangent; beyond it, it bridges. By eye.
constexpr float steepest = 0.7F;

} // namespace

Surface::Surface(const BasePlace& base, const Profile& profile) : cell_(mm(profile.cell)) {
    for (std::size_t i = 0; i < radius_.size(); ++i) {
        radius_[i] = static_cast<float>(500.0 * profile.diameter[i]);
    }
    const BaseRun& run = *base.run;
    if (run.bead != none) {
        const auto free =
            static_cast<std::size_t>(std::min(profile.index(run.bead_rear) + 2, profile_cells - 1));
        std::fill_n(radius_.begin(), free, radius_[free]);
    }
    for (int pass = 0; pass < 2; ++pass) {
        float before = radius_.front();
        for (std::size_t i = 1; i + 1 < radius_.size(); ++i) {
            const float here = radius_[i];
            radius_[i] = 0.25F * before + 0.5F * here + 0.25F * radius_[i + 1];
            before = here;
        }
    }
    const float fall = steepest * cell_;
    for (std::size_t i = 1; i < radius_.size(); ++i) {
        radius_[i] = std::max(radius_[i], radius_[i - 1] - fall);
    }
    for (std::size_t i = radius_.size() - 1; i-- > 0;) {
        radius_[i] = std::max(radius_[i], radius_[i + 1] - fall);
    }
}

float Surface::radius(float at_mm) const {
    const float x = std::clamp(at_mm / cell_ - 0.5F, 0.0F, static_cast<float>(profile_cells - 1));
    const auto i = std::min(static_cast<std::size_t>(x), std::size_t{profile_cells - 2});
    const float f = x - static_cast<float>(i);
    return radius_[i] * (1.0F - f) + radius_[i + 1] * f;
}

} // namespace wrapwright
