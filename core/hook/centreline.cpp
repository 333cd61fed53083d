#include "core/hook/centreline.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

constexpr double pi = std::numbers::pi;

// Proportions of the wire behind the shank: common practice, no source. Together with a round bend
// they make bend and spear 2.27 gapes long: pi / 2 + 0.7.
constexpr double spear_over_gape = 0.7;
constexpr double barb_from_point_over_gape = 0.4;
/// A curved shank turns by twice this, half of it on either side of its middle.
constexpr double curved_half_turn = pi / 6.0;

glm::dvec2 unit(double heading) { return {std::cos(heading), std::sin(heading)}; }

double heading_after(const WirePiece& p, double s) { return p.heading + p.curvature * s; }

glm::dvec2 point_after(const WirePiece& p, double s) {
    if (p.curvature == 0.0) return p.start + s * unit(p.heading); // exact: a line is made so
    const double end = heading_after(p, s);
    return p.start +
           glm::dvec2{std::sin(end) - std::sin(p.heading), std::cos(p.heading) - std::cos(end)} /
               p.curvature;
}

/// Shank, bend and spear, in m and rad; the spear runs parallel to the shank's chord.
struct Frame {
    double shank, half_turn, bend_radius, spear;

    [[nodiscard]] double bend_turn() const { return pi - half_turn; }
};

/// How far the point is from a curved shank that starts at the origin with its chord along x.
double gape_of(const Frame& f) {
    const double radius = f.shank / (2.0 * f.half_turn);
    const double chord = 2.0 * radius * std::sin(f.half_turn);
    const glm::dvec2 centre{chord / 2.0, -radius * std::cos(f.half_turn)};
    const glm::dvec2 point{chord - f.bend_radius * std::sin(f.half_turn) - f.spear,
                           -f.bend_radius * (1.0 + std::cos(f.half_turn))};
    const glm::dvec2 out = point - centre;
    if (std::abs(std::atan2(out.x, out.y)) <= f.half_turn) return radius - glm::length(out);
    return std::min(glm::length(point), glm::length(point - glm::dvec2{chord, 0.0}));
}

Frame frame_of(const Hook& hook) {
    const double shank = hook.shank.value.si;
    const double gape = hook.gape.value.si;
    if (hook.shape != HookShape::curved) return {shank, 0.0, gape / 2.0, spear_over_gape * gape};

    // A short shank turns less, so that its own radius leaves room for the gape. The bend's radius
    // is the smallest that brings the point a gape away from the shank: a scan, then bisection.
    Frame f{shank, std::min(curved_half_turn, shank / (2.6 * gape)), 0.0,
            std::min(spear_over_gape * gape, 0.45 * shank)};
    double low = 0.0, high = gape;
    for (int i = 1; i <= 32; ++i) {
        f.bend_radius = gape * i / 32.0;
        if (gape_of(f) >= gape) {
            high = f.bend_radius;
            break;
        }
        low = f.bend_radius;
    }
    for (int i = 0; i < 60; ++i) {
        f.bend_radius = 0.5 * (low + high);
        (gape_of(f) < gape ? low : high) = f.bend_radius;
    }
    return f;
}

} // namespace

Centreline::Centreline(const Hook& hook) {
    WW_ASSERT(hook.shank.value.si > 0.0 && hook.gape.value.si > 0.0 && hook.wire.value.si > 0.0 &&
              hook.eye_length.value.si > 0.0);
    const Frame f = frame_of(hook);
    const bool jig = hook.shape == HookShape::jig;
    const double wire = hook.wire.value.si;
    const double jig_turn = jig ? hook.jig_angle.value.si : 0.0;
    const double jig_radius = std::max(hook.jig_radius.value.si, wire / 2.0);
    const double eye = hook.eye_length.value.si;
    const double ring_turn = hook.eye_angle.si;
    const double ring_arc = std::min(wire * std::abs(ring_turn), eye / 2.0);

    // The eye of a jig hook lies on the point's side, so its leg climbs to the shank.
    double heading = f.half_turn + jig_turn - ring_turn;
    glm::dvec2 at{0.0};
    const auto add = [&](double length, double turn) {
        if (length <= 0.0) return;
        WirePiece& piece = pieces_[static_cast<std::size_t>(count_++)];
        piece = {Length{length}, at, heading, turn == 0.0 ? 0.0 : turn / length};
        at = point_after(piece, length);
        heading += turn;
    };
    add(eye - ring_arc, 0.0);
    add(ring_arc, ring_turn);
    if (jig) {
        add(hook.jig_leg.value.si, 0.0);
        add(jig_radius * jig_turn, -jig_turn);
    }
    const glm::dvec2 front = at;
    heading = f.half_turn; // as the sums above give it, without their rounding
    add(f.shank, -2.0 * f.half_turn);
    add(f.bend_radius * f.bend_turn(), -f.bend_turn());
    add(f.spear, 0.0);
    for (int i = 0; i < count_; ++i) pieces_[static_cast<std::size_t>(i)].start -= front;

    first_ = Length{-eye};
    Stations& s = stations_;
    if (jig) {
        s.leg_end = hook.jig_leg.value;
        s.front = s.leg_end + Length{jig_radius * jig_turn};
    }
    s.middle = s.front + 0.5 * hook.shank.value;
    s.bend = s.front + hook.shank.value;
    s.bend_bottom = s.bend + Length{f.bend_radius * f.bend_turn() / 2.0};
    s.tip = s.bend + Length{f.bend_radius * f.bend_turn() + f.spear};

    // Straight above the point: the same x on the shank, which on an arc is not the same length.
    const auto above = [&](double x) {
        if (f.half_turn == 0.0) return s.front + Length{std::clamp(x, 0.0, f.shank)};
        const double radius = f.shank / (2.0 * f.half_turn);
        const double sine = std::sin(f.half_turn) - x / radius;
        const double turned = f.half_turn - std::asin(std::clamp(sine, -1.0, 1.0));
        return s.front + Length{std::clamp(radius * turned, 0.0, f.shank)};
    };
    s.point = above(position(s.tip).x);
    s.barb = above(position(s.tip).x +
                   std::min(barb_from_point_over_gape * hook.gape.value.si, f.spear));
    eye_centre_ = position(first_ + hook.eye_diameter.value / 2.0);
}

const WirePiece& Centreline::piece_at(Length at, Length& into) const {
    into = std::clamp(at, first_, stations_.tip) - first_;
    std::size_t i = 0;
    while (i + 1 < static_cast<std::size_t>(count_) && into > pieces_[i].length) {
        into -= pieces_[i].length;
        ++i;
    }
    return pieces_[i];
}

glm::dvec2 Centreline::position(Length at) const {
    Length into;
    const WirePiece& piece = piece_at(at, into);
    return point_after(piece, into.si);
}

glm::dvec2 Centreline::tangent(Length at) const {
    Length into;
    const WirePiece& piece = piece_at(at, into);
    return unit(heading_after(piece, into.si));
}

} // namespace wrapwright
