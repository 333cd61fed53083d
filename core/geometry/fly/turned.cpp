#include "core/geometry/fly/turned.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

void push(Mesh& mesh, const glm::vec3& p, const glm::vec3& n) {
    mesh.vertices.push_back({{p.x, p.y, p.z}, {n.x, n.y, n.z}});
}

void quad(Mesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
    for (const std::uint32_t k : {a, b, c, a, c, d}) mesh.indices.push_back(k);
}

} // namespace

glm::vec3 Axis::direction(float angle) const {
    return up * std::cos(angle) + out * std::sin(angle);
}

void add_turned(Mesh& mesh, const Axis& axis, std::span<const Corner> outline, int sides) {
    const std::size_t n = outline.size();
    const auto normal_of = [&](std::size_t i) {
        const Corner& a = outline[i];
        const Corner& b = outline[(i + 1) % n];
        const glm::vec2 along{b.x - a.x, b.r - a.r};
        const float length = glm::length(along);
        return length > 1e-9F ? glm::vec2{-along.y, along.x} / length : glm::vec2{0, 1};
    };
    for (std::size_t i = 0; i < n; ++i) {
        const Corner& a = outline[i];
        const Corner& b = outline[(i + 1) % n];
        const glm::vec2 own = normal_of(i);
        const auto blend = [&](bool crease, const glm::vec2& other) {
            return crease ? own : glm::normalize(own + other + glm::vec2{1e-6F, 0});
        };
        const glm::vec2 na = blend(a.crease, normal_of((i + n - 1) % n));
        const glm::vec2 nb = blend(b.crease, normal_of((i + 1) % n));
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        for (int k = 0; k < sides; ++k) {
            const float angle = 2.0F * pi * static_cast<float>(k) / static_cast<float>(sides);
            const glm::vec3 e = axis.direction(angle);
            push(mesh, axis.at(a.x, a.r, angle), axis.along * na.x + e * na.y);
            push(mesh, axis.at(b.x, b.r, angle), axis.along * nb.x + e * nb.y);
        }
        for (int k = 0; k < sides; ++k) {
            const std::uint32_t here = first + 2U * static_cast<std::uint32_t>(k);
            const std::uint32_t next = first + 2U * static_cast<std::uint32_t>((k + 1) % sides);
            quad(mesh, here, next, next + 1, here + 1);
        }
    }
}

void add_round_bead(Mesh& mesh, const Axis& axis, float radius, float bore, Sink sink, int sides) {
    std::array<Corner, 64> outline{};
    std::size_t count = 0;
    const int arc = std::clamp(sides / 2, 8, 40);
    const float front = std::asin(std::min(0.5F * bore / radius, 0.95F));
    const float rear = pi - std::asin(std::min(0.5F * std::max(sink.mouth, bore) / radius, 0.95F));
    for (int i = 0; i <= arc; ++i) {
        const float a = front + (rear - front) * static_cast<float>(i) / static_cast<float>(arc);
        outline[count++] = {-radius * std::cos(a), radius * std::sin(a), i == 0 || i == arc};
    }
    if (sink.mouth > bore * 1.02F) {
        const float end = -radius * std::cos(rear);
        const float deepest = 2.0F * std::sqrt(radius * radius - 0.25F * bore * bore) * 0.8F;
        outline[count++] = {end - std::min(sink.depth, deepest), 0.5F * bore, true};
    }
    add_turned(mesh, axis, {outline.data(), count}, sides);
}

// Sections across the axis are a ring in front and the letter C behind, with the same corners, so
// that one grid of quads closes both.
void add_slotted_bead(Mesh& mesh, const Axis& axis, float radius, float bore, float width,
                      float from, int sides) {
    const float half = 0.5F * width;
    const float hole = 0.5F * bore;
    const float front = -std::sqrt(radius * radius - hole * hole);
    const float narrow = std::max(hole, half * 1.02F); // where the C still has two ends
    const float rear = std::sqrt(radius * radius - narrow * narrow);
    const float inner_open = std::asin(std::min(half / hole, 0.999F));
    const int columns = std::max(sides, 12);
    const int rows = std::clamp(sides / 2, 8, 24);

    struct Section {
        float x, outer, open;
    };
    const auto section = [&](float x) {
        const float outer = std::sqrt(std::max(radius * radius - x * x, narrow * narrow));
        return Section{x, x <= front ? hole : outer, std::asin(std::min(half / outer, 0.999F))};
    };
    const auto angle = [&](float open, int c) {
        return open +
               (2.0F * pi - 2.0F * open) * static_cast<float>(c) / static_cast<float>(columns);
    };
    const auto emit = [&](const glm::vec3& p, const glm::vec3& n) {
        push(mesh, p, n);
        return static_cast<std::uint32_t>(mesh.vertices.size() - 1);
    };
    // One strip between two sections, over the corners of the outer or the inner arc.
    const auto strip = [&](const Section& a, const Section& b, bool outside, bool closed) {
        const auto corner = [&](const Section& s, int c) {
            const float t = angle(outside ? s.open : inner_open, c);
            const glm::vec3 p = axis.at(s.x, outside ? s.outer : hole, t);
            const glm::vec3 n = outside ? (p - axis.centre) / radius : -axis.direction(t);
            return emit(p, glm::normalize(n));
        };
        for (int c = 0; c < columns + (closed ? 1 : 0); ++c) {
            const int next = c == columns ? 0 : c + 1;
            const std::uint32_t p = corner(a, c);
            const std::uint32_t q = corner(a, next);
            const std::uint32_t r = corner(b, next);
            const std::uint32_t s = corner(b, c);
            outside ? quad(mesh, p, q, r, s) : quad(mesh, p, s, r, q);
        }
    };
    // A flat wall with corners in order.
    const auto wall = [&](const glm::vec3& p, const glm::vec3& q, const glm::vec3& r,
                          const glm::vec3& s) {
        const glm::vec3 face = glm::cross(r - p, s - q);
        const float length = glm::length(face);
        const glm::vec3 n = length > 1e-9F ? face / length : axis.along;
        const std::uint32_t first = emit(p, n);
        emit(q, n);
        emit(r, n);
        emit(s, n);
        quad(mesh, first, first + 1, first + 2, first + 3);
    };
    const auto outer = [&](const Section& s, int c) {
        return axis.at(s.x, s.outer, angle(s.open, c));
    };
    const auto inner = [&](const Section& s, int c) {
        return axis.at(s.x, hole, angle(inner_open, c));
    };
    const auto end_face = [&](const Section& s, bool at_front) {
        for (int c = 0; c < columns; ++c) {
            at_front ? wall(outer(s, c), inner(s, c), inner(s, c + 1), outer(s, c + 1))
                     : wall(outer(s, c), outer(s, c + 1), inner(s, c + 1), inner(s, c));
        }
    };

    // Rows gather towards both poles, where the sphere is steep.
    const auto place = [&](float low, float high, int i) {
        const float a = std::acos(std::clamp(-low / radius, -1.0F, 1.0F));
        const float b = std::acos(std::clamp(-high / radius, -1.0F, 1.0F));
        const float u = static_cast<float>(i) / static_cast<float>(rows);
        return i == 0 ? low : (i == rows ? high : -radius * std::cos(a + (b - a) * u));
    };
    const Section first = section(front);
    const Section middle = section(from);
    const Section last = section(rear);
    for (int i = 0; i < rows; ++i) {
        const Section a = section(place(front, from, i));
        const Section b = section(place(front, from, i + 1));
        strip(a, b, true, true);
        strip(a, b, false, true);
        const Section c = section(place(from, rear, i));
        const Section d = section(place(from, rear, i + 1));
        strip(c, d, true, false);
        strip(c, d, false, false);
        wall(outer(c, 0), outer(d, 0), inner(d, 0), inner(c, 0));
        wall(outer(c, columns), inner(c, columns), inner(d, columns), outer(d, columns));
    }
    end_face(first, true);
    wall(outer(first, columns), inner(first, columns), inner(first, 0), outer(first, 0));
    wall(outer(middle, 0), inner(middle, 0), inner(middle, columns), outer(middle, columns));
    end_face(last, false);
}

} // namespace wrapwright
