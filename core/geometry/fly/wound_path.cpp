#include "core/geometry/fly/wound_path.h"

#include "core/geometry/fly/lathe.h"
#include "core/geometry/helix_kernel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

WoundPath::WoundPath(const Sketch& sketch, const Winding& winding)
    : winding_(winding), base_(sketch.base(winding.base)),
      below_(base_, sketch.tied.profiles[static_cast<std::size_t>(winding.profile_below)]) {
    // Turns closer than the strand is wide lie on each other: the outermost are those that show.
    if (winding.pitch.si < 0.8 * winding.width.si) {
        const Profile* after = sketch.profile_after(winding.act, winding.base);
        if (after) after_.emplace(base_, *after);
    }
    const float outer = 0.5F * mm(winding.core + 2.0 * winding.height);
    steps_per_turn_ = std::max(12, sketch.sides(outer));
    // Touching turns end half a strand inside the stretch that they cover.
    const Length span = winding.to - winding.from;
    const double covers = winding.turns * winding.pitch.si;
    const double inset = std::max(0.0, 0.5 * (std::abs(span.si) - covers));
    const Length in{span.si < 0.0 ? -inset : inset};
    from_ = winding.from + in;
    to_ = winding.to - in;
}

float WoundPath::radius_mm(Length at) const {
    const float half = 0.5F * mm(winding_.height);
    const float on_core = below_.radius(mm(at)) + half;
    return after_ ? std::max(on_core, after_->radius(mm(at)) - half) : on_core;
}

StrandFrame WoundPath::frame(double t) const {
    const auto point = [&](double turn, StrandFrame* frame) {
        const Length at =
            from_ + kernel::place_of_turn(turn, winding_.turns, winding_.growth) * (to_ - from_);
        const double sense = winding_.sense == Sense::with_thread ? 1.0 : -1.0;
        const auto angle =
            static_cast<float>(sense * kernel::two_pi * (winding_.start_turn + turn));
        const WireFrame wire = base_.frame(at);
        if (frame) {
            frame->wire = wire;
            frame->angle = angle;
        }
        return wire.origin + radius_mm(at) * wire.radial(angle);
    };
    StrandFrame f;
    f.origin = point(t, &f);
    f.along = glm::normalize(point(t + 0.01, nullptr) - point(t - 0.01, nullptr));
    return f;
}

void WoundPath::add(Mesh& mesh, const Section& section, float tailward_mm, float lift_mm) const {
    constexpr std::size_t knot_count = 128;
    const Length shift = millimetres(static_cast<double>(tailward_mm));
    const Length low = std::min(from_, to_) + shift;
    const Length high = std::max(from_, to_) + shift;
    const Length step = (std::max(high - low, millimetres(0.01))) / (knot_count - 1.0);
    std::array<CoreKnot, knot_count> knots{};
    for (std::size_t i = 0; i < knot_count; ++i) {
        const Length at = low + static_cast<double>(i) * step;
        const WireFrame wire = base_.frame(at);
        knots[i] = {wire.origin, radius_mm(at) + lift_mm, wire.along, 1.0F, wire.up};
    }
    WindingPath path;
    path.knots = knots;
    path.first = in_millimetres(low);
    path.spacing = in_millimetres(step);
    path.from = in_millimetres(from_ + shift);
    path.to = in_millimetres(to_ + shift);
    path.turns = winding_.turns;
    path.growth = winding_.growth;
    path.start_turn = winding_.start_turn;
    path.away = winding_.sense == Sense::with_thread;
    path.steps_per_turn = steps_per_turn_;
    append_winding(mesh, path, section);
}

void WoundPath::add_filling(Mesh& mesh, const Sketch& sketch) const {
    const Length low = std::min(from_, to_);
    const Length high = std::max(from_, to_);
    if (high - low < millimetres(0.02)) return;
    const float bare = 0.5F * mm(base_.run->hook.wire.value);
    const float sunk = 0.6F * mm(winding_.height);
    const float middle = radius_mm(0.5 * (low + high)) - sunk;
    if (middle < bare + 0.05F) return; // the hook itself fills it
    add_lathe(mesh, base_, low, high, 12, std::max(12, sketch.sides(middle)), [&](float at, float) {
        return std::max(radius_mm(millimetres(static_cast<double>(at))) - sunk, 0.5F * bare);
    });
}

} // namespace wrapwright
