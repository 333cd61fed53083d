#include "core/check/photo_scale.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

constexpr double sure = 1.959964; // standard errors in a 95 % interval

bool finite(const glm::dvec2& p) {
    return std::isfinite(p.x) && std::isfinite(p.y) && std::abs(p.x) < 1e7 && std::abs(p.y) < 1e7;
}

glm::dvec2 mapped(const std::array<double, 9>& h, const glm::dvec2& p) {
    const double w = h[6] * p.x + h[7] * p.y + h[8];
    return {(h[0] * p.x + h[1] * p.y + h[2]) / w, (h[3] * p.x + h[4] * p.y + h[5]) / w};
}

double cross(const glm::dvec2& a, const glm::dvec2& b) { return a.x * b.y - a.y * b.x; }

Error bad(std::string message, std::string remedy) {
    return {ErrorCode::out_of_range, std::move(message), std::move(remedy), {0, "scale"}};
}

std::array<glm::dvec2, 4> card_plane() {
    const double w = card_width.si, h = card_height.si;
    return {{{0.0, 0.0}, {w, 0.0}, {w, h}, {0.0, h}}};
}

} // namespace

/// The eight unknowns of the map that takes four points to four points, by elimination with the
/// largest pivot.
bool PhotoScale::solve(const std::array<glm::dvec2, 4>& from, const std::array<glm::dvec2, 4>& to,
                       std::array<double, 9>& out) {
    // Pixels are shifted and scaled first, so that no column outweighs the others.
    glm::dvec2 middle{};
    for (const glm::dvec2& p : from) middle += 0.25 * p;
    double size = 0.0;
    for (const glm::dvec2& p : from) size += 0.25 * glm::length(p - middle);
    if (!(size > 0.0)) return false;
    std::array<std::array<double, 9>, 8> m{};
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 p = (from[i] - middle) / size;
        const glm::dvec2 q = to[i];
        m[2 * i] = {p.x, p.y, 1, 0, 0, 0, -q.x * p.x, -q.x * p.y, q.x};
        m[2 * i + 1] = {0, 0, 0, p.x, p.y, 1, -q.y * p.x, -q.y * p.y, q.y};
    }
    for (std::size_t c = 0; c < 8; ++c) {
        std::size_t pivot = c;
        for (std::size_t r = c + 1; r < 8; ++r) {
            if (std::abs(m[r][c]) > std::abs(m[pivot][c])) pivot = r;
        }
        if (!(std::abs(m[pivot][c]) > 1e-12)) return false;
        std::swap(m[c], m[pivot]);
        for (std::size_t r = 0; r < 8; ++r) {
            if (r == c) continue;
            const double k = m[r][c] / m[c][c];
            for (std::size_t j = c; j < 9; ++j) m[r][j] -= k * m[c][j];
        }
    }
    std::array<double, 9> h{};
    for (std::size_t i = 0; i < 8; ++i) h[i] = m[i][8] / m[i][i];
    h[8] = 1.0;
    // Back to plain pixels: x' = (x - middle) / size.
    for (std::size_t r = 0; r < 9; r += 3) {
        const double a = h[r] / size, b = h[r + 1] / size;
        out[r] = a;
        out[r + 1] = b;
        out[r + 2] = h[r + 2] - a * middle.x - b * middle.y;
    }
    return std::all_of(out.begin(), out.end(), [](double v) { return std::isfinite(v); });
}

Result<PhotoScale> PhotoScale::from_points(const std::array<glm::dvec2, 4>& points, bool is_card,
                                           Length apart) {
    PhotoScale scale;
    scale.points_ = points;
    scale.is_card_ = is_card;
    scale.apart_ = apart;
    if (is_card) {
        if (!solve(points, card_plane(), scale.h_) || !solve(card_plane(), points, scale.back_)) {
            return bad("these corners are no card", "set each corner of the card by itself");
        }
        return scale;
    }
    const double k = apart.si / glm::length(points[1] - points[0]);
    scale.h_ = {k, 0, 0, 0, k, 0, 0, 0, 1};
    scale.back_ = {1.0 / k, 0, 0, 0, 1.0 / k, 0, 0, 0, 1};
    return scale;
}

Result<PhotoScale> PhotoScale::two_points(const glm::dvec2& a, const glm::dvec2& b, Length apart) {
    if (!finite(a) || !finite(b) || !(glm::length(b - a) >= 2.0)) {
        return bad("the two points of the scale are the same",
                   "set them as far apart as the photo allows");
    }
    if (!(apart.si >= 1e-4 && apart.si <= 10.0)) {
        return bad("no distance like that is on a photo of a fly", "give 0.1 mm to 10 m");
    }
    return from_points({a, b, {}, {}}, false, apart);
}

Result<PhotoScale> PhotoScale::card(const std::array<glm::dvec2, 4>& corners) {
    std::array<glm::dvec2, 4> c = corners;
    for (const glm::dvec2& p : c) {
        if (!finite(p)) return bad("a corner is no place on a photo", "set it anew");
    }
    int turns = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 to = c[(i + 1) % 4] - c[i], on = c[(i + 2) % 4] - c[(i + 1) % 4];
        if (glm::length(to) < 4.0) {
            return bad("two corners of the card are in the same place", "set each by itself");
        }
        const double turn = cross(to, on);
        if (std::abs(turn) < 0.02 * glm::length(to) * glm::length(on)) {
            return bad("three corners of the card lie in a line", "set each at its corner");
        }
        turns += turn > 0.0 ? 1 : -1;
    }
    if (std::abs(turns) != 4) {
        return bad("the corners of the card are crossed", "go round the card, corner by corner");
    }
    const double first = glm::length(c[1] - c[0]) + glm::length(c[3] - c[2]);
    const double second = glm::length(c[2] - c[1]) + glm::length(c[0] - c[3]);
    if (second > first) std::rotate(c.begin(), c.begin() + 1, c.end());
    return from_points(c, true, {});
}

bool PhotoScale::reaches(const glm::dvec2& p) const {
    if (!finite(p)) return false;
    const auto depth = [&](const glm::dvec2& q) { return h_[6] * q.x + h_[7] * q.y + h_[8]; };
    const double here = depth(p), there = depth(points_[0]);
    if (!(here * there > 0.0) || !(std::abs(here) > 1e-3 * std::abs(there))) return false;
    return glm::length(to_plane(p)) < 10.0; // false for a NaN
}

glm::dvec2 PhotoScale::to_plane(const glm::dvec2& pixel) const { return mapped(h_, pixel); }

glm::dvec2 PhotoScale::to_pixel(const glm::dvec2& plane) const { return mapped(back_, plane); }

Estimate<Length> PhotoScale::distance(const glm::dvec2& a, const glm::dvec2& b,
                                      const PhotoDoubt& doubt) const {
    const auto with = [](const PhotoScale& s, const glm::dvec2& p, const glm::dvec2& q) {
        return glm::length(s.to_plane(q) - s.to_plane(p));
    };
    const double value = with(*this, a, b);
    double squares = 0.0;
    constexpr double step = 0.05; // px, for the derivatives
    const auto add = [&](double moved, double error) {
        const double d = (moved - value) / step * error;
        if (std::isfinite(d)) squares += d * d;
    };
    for (int axis = 0; axis < 2; ++axis) {
        const glm::dvec2 e = axis == 0 ? glm::dvec2{step, 0.0} : glm::dvec2{0.0, step};
        add(with(*this, a + e, b), doubt.point_px);
        add(with(*this, a, b + e), doubt.point_px);
        for (std::size_t i = 0; i < (is_card_ ? 4U : 2U); ++i) {
            std::array<glm::dvec2, 4> moved = points_;
            moved[i] += e;
            const Result<PhotoScale> other = from_points(moved, is_card_, apart_);
            if (other.ok()) add(with(other.value(), a, b), doubt.scale_px);
        }
    }
    const double known = is_card_ ? std::hypot(doubt.scale_share, 0.0007) : doubt.scale_share;
    const double tilt = 1.0 - std::cos(doubt.tilt);
    const double share = value * std::sqrt(known * known + doubt.off_plane * doubt.off_plane);
    const double half = sure * std::sqrt(squares + share * share);
    // Tilt only ever shortens what is seen.
    return {Length{value}, Length{std::max(0.0, value - half)}, Length{value * (1.0 + tilt) + half},
            Origin::measured};
}

} // namespace wrapwright
