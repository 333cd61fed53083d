#include "core/assert.h"
#include "core/geometry/sweep.h"
#include "core/geometry/sweep_kernels.h"
#include "core/geometry/sweep_rings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

// Filled field by field on purpose: a struct copied whole just after it was written in parts waits
// for those stores (measured, a tenth of the time on a core with many knots).
void fill_stretch(const WindingPath& w, std::size_t i, Stretch& s) {
    const auto per_mm = static_cast<float>(1.0 / w.spacing);
    const auto slope = [&](std::size_t k) {
        const std::size_t a = k > 0 ? k - 1 : 0;
        const std::size_t b = std::min(k + 1, w.knots.size() - 1);
        const float share = b - a == 2 ? 0.5F : 1.0F;
        return (w.knots[b].radius - w.knots[a].radius) * (share * per_mm);
    };
    const CoreKnot& a = w.knots[i];
    const CoreKnot& b = w.knots[i + 1];
    s.axis = a.axis;
    s.axis_gain = b.axis - a.axis;
    s.along = a.along;
    s.up = a.up;
    const glm::vec3 along_gain = b.along - a.along;
    const glm::vec3 up_gain = b.up - a.up;
    s.along_gain = along_gain;
    s.up_gain = up_gain;
    s.straight = along_gain == glm::vec3(0.0F) && up_gain == glm::vec3(0.0F);
    s.bend_up = per_mm * glm::dot(along_gain, a.up);
    s.bend_side = per_mm * glm::dot(along_gain, glm::cross(a.along, a.up));
    s.radius = a.radius;
    s.radius_gain = b.radius - a.radius;
    s.section = a.section;
    s.section_gain = b.section - a.section;
    const float slope_here = slope(i);
    s.slope = slope_here;
    s.slope_gain = slope(i + 1) - slope_here;
}

// What the angle, the place and the pitch gain over each number of rings up to a batch.
//
// With q the growth per turn, z(u) = z0 + p0 (q^u - 1) / ln q; the angle is a complex number, and
// both go on by a product, whose error after 1e5 rings is 1e-11.
struct Gains {
    static constexpr std::size_t count = batch_rings + 8;
    std::array<double, count> cosine, sine, place, pitch;
};

// Where on its winding the next ring is.
class WindingWalk {
  public:
    WindingWalk(const WindingPath& w, int points);

    // How many of the next rings, at most `most`, lie between the same two knots as the next one.
    // The outer stretches go on beyond their ends.
    int rings_on_this_stretch(int most);

    [[nodiscard]] const Stretch& stretch() const { return stretch_; }
    [[nodiscard]] WindingStart start() const {
        return {static_cast<float>(cosine_), static_cast<float>(sine_),
                static_cast<float>(place_ - held_), static_cast<float>(pitch_)};
    }
    [[nodiscard]] const WindingSteps& steps() const { return steps_; }
    void go_on(int rings);

  private:
    const WindingPath& w_;
    Gains gains_;
    WindingSteps steps_;
    Stretch stretch_{};
    int held_ = -1; // the stretch in stretch_
    double place_;  // in stretches from the first knot
    double pitch_;  // mm a turn
    double cosine_, sine_;
};

WindingWalk::WindingWalk(const WindingPath& w, int points) : w_(w) {
    const double around = (w.away ? 2.0 : -2.0) * std::numbers::pi;
    const double step = w.turns / (points - 1);
    const double log_growth = std::log(w.growth);
    const bool even = std::abs(log_growth * w.turns) < 1e-9;
    place_ = (w.from - w.first) / w.spacing;
    pitch_ =
        (w.to - w.from) * (even ? 1.0 / w.turns : log_growth / std::expm1(log_growth * w.turns));
    cosine_ = std::cos(around * w.start_turn);
    sine_ = std::sin(around * w.start_turn);
    steps_.around = static_cast<float>(around);
    const double cosine_step = std::cos(around * step);
    const double sine_step = std::sin(around * step);
    const double pitch_step = even ? 1.0 : std::exp(log_growth * step);
    const double place_step =
        (even ? step : std::expm1(log_growth * step) / log_growth) / w.spacing;
    double cosine = 1.0;
    double sine = 0.0;
    double place = 0.0;
    double pitch = 1.0;
    for (std::size_t j = 0; j < Gains::count; ++j) {
        gains_.cosine[j] = cosine;
        gains_.sine[j] = sine;
        gains_.place[j] = place;
        gains_.pitch[j] = pitch;
        steps_.cosine[j] = static_cast<float>(cosine);
        steps_.sine[j] = static_cast<float>(sine);
        steps_.place[j] = static_cast<float>(place);
        steps_.pitch[j] = static_cast<float>(pitch);
        const double next = cosine * cosine_step - sine * sine_step;
        sine = sine * cosine_step + cosine * sine_step;
        cosine = next;
        place += pitch * place_step;
        pitch *= pitch_step;
    }
}

int WindingWalk::rings_on_this_stretch(int most) {
    const int last = static_cast<int>(w_.knots.size()) - 2;
    const bool back = pitch_ < 0.0;
    int here = static_cast<int>(std::clamp(place_, 0.0, last + 1.0));
    if (back && place_ <= here) --here; // at a knot the way back leads to the stretch before it
    here = std::clamp(here, 0, last);
    if (here != held_) {
        fill_stretch(w_, static_cast<std::size_t>(here), stretch_);
        held_ = here;
    }
    // The outermost stretches do not end.
    if (back ? here == 0 : here == last) return most;
    const double room = std::abs((back ? here : here + 1) - place_);
    const double pitch = std::abs(pitch_);
    if (pitch * gains_.place[static_cast<std::size_t>(most - 1)] <= room) return most;
    int count = 1;
    while (pitch * gains_.place[static_cast<std::size_t>(count)] <= room) ++count;
    return count;
}

void WindingWalk::go_on(int rings) {
    const auto j = static_cast<std::size_t>(rings);
    place_ += pitch_ * gains_.place[j];
    pitch_ *= gains_.pitch[j];
    const double next = cosine_ * gains_.cosine[j] - sine_ * gains_.sine[j];
    sine_ = sine_ * gains_.cosine[j] + cosine_ * gains_.sine[j];
    cosine_ = next;
}

} // namespace

int winding_points(const WindingPath& winding) {
    return std::max(1, static_cast<int>(std::ceil(winding.turns * winding.steps_per_turn))) + 1;
}

void sweep_winding(const WindingPath& w, const Section& section, std::span<Vertex> out) {
    WW_ASSERT(w.knots.size() >= 2 && w.spacing > 0.0);
    WW_ASSERT(w.turns > 0.0 && w.growth > 0.0 && w.steps_per_turn >= 3);
    const int points = winding_points(w);
    RingWriter writer(section, points, out);
    WindingWalk walk(w, points);
    Frames frames;
    for (int done = 0; done < points;) {
        const int batch = std::min(batch_rings, points - done);
        for (int filled = 0; filled < batch;) {
            const int count = walk.rings_on_this_stretch(batch - filled);
            writer.kernels().winding_frames(walk.stretch(), walk.start(), walk.steps(), count,
                                            &frames[static_cast<std::size_t>(filled)]);
            walk.go_on(count);
            filled += count;
        }
        writer.write(frames, batch);
        done += batch;
    }
}

} // namespace wrapwright
