#include "tests/support/fly_photo.h"

#include "core/check/target_marks.h"
#include "core/geometry/fly/outline.h"
#include "tests/support/dice.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/common.hpp>
#include <glm/geometric.hpp>

namespace wrapwright::test {

namespace {

/// Grey of the fly's outline at a place, mm; below 0 where there is nothing of it.
double grey_of_fly(const FlyOutline& fly, const glm::vec2& p) {
    const auto near = [&](const FlyOutline::Stroke& s, float least) {
        const float half = 0.5F * std::max(s.thick, least);
        for (std::size_t i = 1; i < s.points.size(); ++i) {
            const glm::vec2 a = s.points[i - 1], d = s.points[i] - a;
            const float t = std::clamp(glm::dot(p - a, d) / glm::dot(d, d), 0.0F, 1.0F);
            if (glm::length(p - a - t * d) <= half) return true;
        }
        return false;
    };
    for (const auto& d : fly.discs) {
        const float far = glm::length(p - d.centre);
        if (d.ring ? std::abs(far - d.radius) < 0.2F : far < d.radius) return d.ring ? 0.2 : 0.55;
    }
    for (const auto& r : fly.ribs) {
        if (near(r, 0.1F)) return 0.9;
    }
    for (const auto& q : fly.body) {
        if (p.x < std::min(q[0].x, q[3].x) || p.x > std::max(q[1].x, q[2].x)) continue;
        const bool inside = p.y <= std::max(q[0].y, q[1].y) && p.y >= std::min(q[2].y, q[3].y);
        if (inside) return 0.3;
    }
    for (const auto& w : fly.wires) {
        if (near(w, 0.2F)) return 0.15;
    }
    for (const auto& f : fly.fibres) {
        if (near(f, 0.12F)) return 0.4;
    }
    return -1.0;
}

/// The rectangle that all of the fly lies in, its lines' thickness too.
struct Bounds {
    glm::vec2 least{1e9F}, most{-1e9F};
    void take(const glm::vec2& p) {
        least = glm::min(least, p - 1.0F);
        most = glm::max(most, p + 1.0F);
    }
    [[nodiscard]] bool has(const glm::vec2& p) const {
        return p.x >= least.x && p.x <= most.x && p.y >= least.y && p.y <= most.y;
    }
};

Bounds bounds_of(const FlyOutline& fly) {
    Bounds bounds;
    for (const auto& d : fly.discs) {
        bounds.take(d.centre - d.radius);
        bounds.take(d.centre + d.radius);
    }
    for (const auto& q : fly.body) {
        for (const auto& p : q) bounds.take(p);
    }
    for (const auto* strokes : {&fly.ribs, &fly.wires, &fly.fibres}) {
        for (const auto& s : *strokes) {
            for (const auto& p : s.points) bounds.take(p);
        }
    }
    return bounds;
}

} // namespace

FlyPhoto photo_of(const OpenFly& fly, double noise, unsigned long long seed) {
    FlyPhoto out;
    out.picture.width = 1400;
    out.picture.height = 1250;
    const std::array<glm::dvec2, 4> corners{
        {{75.0, 400.0}, {1320.0, 435.0}, {1280.0, 1205.0}, {105.0, 1180.0}}};
    out.scale = PhotoScale::card(corners).value();
    const glm::dvec2 eye{0.022, -0.014};
    const FlyOutline outline = outline_of(fly.pattern, fly.resolved, fly.tied);
    const Bounds bounds = bounds_of(outline);
    const Centreline& line = fly.tied.bases.front().line;
    const glm::dvec2 own = line.position(Length{});
    // Pixels from mm in the hook's plane.
    const auto pixel = [&](const glm::vec2& mm) {
        return out.scale.to_pixel(eye + glm::dvec2(static_cast<double>(mm.x) * 1e-3 - own.x,
                                                   own.y - static_cast<double>(mm.y) * 1e-3));
    };
    const auto shade = [&](const glm::dvec2& px) {
        const glm::dvec2 q = out.scale.to_plane(px);
        const glm::dvec2 at = (q - eye + glm::dvec2(own.x, -own.y)) * 1e3;
        const glm::vec2 on_fly{static_cast<float>(at.x), static_cast<float>(-at.y)};
        if (bounds.has(on_fly)) {
            const double grey = grey_of_fly(outline, on_fly);
            if (grey >= 0.0) return grey;
        }
        const double w = card_width.si, h = card_height.si, r = 3.18e-3;
        const double dx = std::max({r - q.x, q.x - (w - r), 0.0});
        const double dy = std::max({r - q.y, q.y - (h - r), 0.0});
        if (std::hypot(dx, dy) <= r) return q.y > 0.012 && q.y < 0.022 ? 0.25 : 0.95;
        return 0.62 + 0.08 * px.x / 1400.0;
    };
    Dice dice{seed};
    auto& grey = out.picture.grey;
    grey.resize(static_cast<std::size_t>(out.picture.width) *
                static_cast<std::size_t>(out.picture.height));
    std::size_t i = 0;
    for (int y = 0; y < out.picture.height; ++y) {
        for (int x = 0; x < out.picture.width; ++x) {
            double sum = 0.0;
            for (const glm::dvec2 d :
                 {glm::dvec2{-0.25, -0.25}, {0.25, -0.25}, {-0.25, 0.25}, {0.25, 0.25}}) {
                sum += 0.25 * shade(glm::dvec2(x, y) + 1.6 * d);
            }
            // Twelve even throws make a bell: sd 1.
            double bell = -6.0;
            for (int k = 0; k < 12; ++k) bell += dice.between(0.0, 1.0);
            grey[i++] = static_cast<float>(std::clamp(sum + noise * bell, 0.0, 1.0));
        }
    }
    PhotoMarks& m = out.truth;
    m.scale_by = ScaleBy::card;
    for (std::size_t k = 0; k < 4; ++k) m.at[k] = corners[k];
    const auto mm = [](const glm::dvec2& p) { return glm::vec2(p * 1e3); };
    m[PhotoSpot::eye] = pixel(mm(own));
    m[PhotoSpot::bend] = pixel(mm(line.position(line.stations().bend)));
    for (const Measured part : {Measured::tail, Measured::body, Measured::hackle}) {
        const auto length = own_measure(fly.pattern, fly.tied, part);
        if (!length) continue;
        PartTarget t;
        t.part = part;
        t.length = {length->length, length->length, length->length, Origin::measured};
        for (const TargetMark& mark : target_marks(fly.pattern, fly.tied, {t})) {
            if (part == Measured::tail) m[PhotoSpot::tail_end] = pixel(mark.aim);
            if (part == Measured::hackle) m[PhotoSpot::hackle_tip] = pixel(mark.aim);
            if (part != Measured::body) continue;
            m[PhotoSpot::body_start] = pixel(mark.root);
            m[PhotoSpot::body_end] = pixel(mark.aim);
        }
    }
    return out;
}

} // namespace wrapwright::test
