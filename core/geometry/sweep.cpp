#include "core/geometry/sweep.h"

#include "core/assert.h"
#include "core/geometry/frame.h"
#include "core/geometry/ring.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

// A unit vector, or zero for a vector too short to have a direction: never a NaN.
glm::vec3 direction(const glm::vec3& v) {
    const float square = glm::dot(v, v);
    return square > 1e-30F ? v * (1.0F / std::sqrt(square)) : glm::vec3(0.0F);
}

template <bool streamed>
void sweep_path_rings(std::span<const PathPoint> path, const Section& section, float* out,
                      glm::vec3 normal) {
    const std::size_t floats = 6 * static_cast<std::size_t>(section.sides);
    glm::vec3 step = path[1].position - path[0].position;
    float length_before = 0.0F;
    glm::vec3 chord = direction(step);
    glm::vec3 tangent = chord;
    normal = direction(normal - glm::dot(normal, tangent) * tangent);
    if (glm::dot(normal, normal) < 0.5F) normal = any_normal(tangent);
    for (std::size_t i = 0; i < path.size(); ++i, out += floats) {
        const bool last = i + 1 == path.size();
        const float length = last ? 0.0F : glm::dot(chord, step);
        const float run = length_before + length;
        const float rise = path[last ? i : i + 1].radius - path[i == 0 ? 0 : i - 1].radius;
        const float slope = run > 0.0F ? rise / run : 0.0F;
        const float lean = 1.0F / std::sqrt(1.0F + slope * slope);
        const glm::vec3 binormal = glm::cross(tangent, normal);
        const float radius = path[i].radius;
        write_ring<streamed>(out, section,
                             {path[i].position, radius * normal, radius * binormal,
                              (-slope * lean) * tangent, lean * normal, lean * binormal});
        if (last) break;
        const bool next_last = i + 2 == path.size();
        const glm::vec3 next_step = next_last ? step : path[i + 2].position - path[i + 1].position;
        const glm::vec3 next_chord = direction(next_step);
        const glm::vec3 next_tangent = direction(chord + next_chord);
        normal = next_normal(chord, tangent, next_tangent, normal);
        tangent = next_tangent;
        chord = next_chord;
        step = next_step;
        length_before = length;
    }
}

// The core between two knots, as values at the first and what they gain to the second.
struct Stretch {
    glm::vec3 axis, axis_gain;
    glm::vec3 along, along_gain;
    glm::vec3 up, up_gain;
    glm::vec3 bend; // d along / d z
    float radius, radius_gain;
    float section, section_gain;
    float slope, slope_gain; // d radius / d z, linear too, so that normals run smoothly
};

Stretch stretch_at(const WindingPath& w, std::size_t i) {
    const auto slope = [&](std::size_t k) {
        const std::size_t a = k > 0 ? k - 1 : 0;
        const std::size_t b = std::min(k + 1, w.knots.size() - 1);
        return (w.knots[b].radius - w.knots[a].radius) /
               (static_cast<float>(b - a) * static_cast<float>(w.spacing));
    };
    const CoreKnot& a = w.knots[i];
    const CoreKnot& b = w.knots[i + 1];
    const glm::vec3 turned = b.along - a.along;
    return {a.axis,
            b.axis - a.axis,
            a.along,
            turned,
            a.up,
            b.up - a.up,
            turned / static_cast<float>(w.spacing),
            a.radius,
            b.radius - a.radius,
            a.section,
            b.section - a.section,
            slope(i),
            slope(i + 1) - slope(i)};
}

template <bool streamed>
void sweep_winding_rings(const WindingPath& w, const Section& section, float* out) {
    const std::size_t floats = 6 * static_cast<std::size_t>(section.sides);
    const int steps = winding_points(w) - 1;
    const double turns_per_step = w.turns / steps;
    const double sense = w.away ? 1.0 : -1.0;
    // The angle advances by complex multiplication: its error after 1e5 steps is 1e-11.
    const double angle_step = sense * 2.0 * std::numbers::pi * turns_per_step;
    const double cos_step = std::cos(angle_step);
    const double sin_step = std::sin(angle_step);
    double cosine = std::cos(sense * 2.0 * std::numbers::pi * w.start_turn);
    double sine = std::sin(sense * 2.0 * std::numbers::pi * w.start_turn);
    // The place advances by a geometric sum: z += pitch * share, pitch *= ratio.
    const double log_growth = std::log(w.growth);
    const bool even = std::abs(log_growth * w.turns) < 1e-9;
    const double ratio = even ? 1.0 : std::exp(log_growth * turns_per_step);
    const double share =
        even ? turns_per_step : std::expm1(log_growth * turns_per_step) / log_growth;
    double pitch = even ? (w.to - w.from) / w.turns
                        : (w.to - w.from) * log_growth / std::expm1(log_growth * w.turns);
    double z = w.from;
    const double per_spacing = 1.0 / w.spacing;
    const auto around = static_cast<float>(sense * 2.0 * std::numbers::pi);
    const int last_stretch = static_cast<int>(w.knots.size()) - 2;
    int held = -1;
    Stretch s{};
    for (int k = 0; k <= steps; ++k, out += floats) {
        const double place = std::clamp((z - w.first) * per_spacing, 0.0, last_stretch + 1.0);
        const int i = std::min(static_cast<int>(place), last_stretch);
        if (i != held) {
            s = stretch_at(w, static_cast<std::size_t>(i));
            held = i;
        }
        const auto f = static_cast<float>(place - i);
        const auto c = static_cast<float>(cosine);
        const auto d = static_cast<float>(sine);
        const auto p = static_cast<float>(pitch);
        const glm::vec3 along = s.along + f * s.along_gain;
        const glm::vec3 up = s.up + f * s.up_gain;
        const glm::vec3 side = glm::cross(along, up);
        const glm::vec3 outward = c * up + d * side;
        const glm::vec3 forward = c * side - d * up;
        const float radius = s.radius + f * s.radius_gain;
        const float slope = s.slope + f * s.slope_gain;
        // On a bent axis what lies outside the bend is farther from ring to ring.
        const float stretch = 1.0F - radius * glm::dot(s.bend, outward);
        const glm::vec3 tangent =
            direction((p * stretch) * along + (p * slope) * outward + (around * radius) * forward);
        const glm::vec3 normal = direction(stretch * outward - slope * along);
        const glm::vec3 binormal = glm::cross(tangent, normal);
        const float half = s.section + f * s.section_gain;
        write_ring<streamed>(out, section,
                             {s.axis + f * s.axis_gain + radius * outward, half * normal,
                              half * binormal, glm::vec3(0.0F), normal, binormal});
        z += pitch * share;
        pitch *= ratio;
        const double next_cosine = cosine * cos_step - sine * sin_step;
        sine = sine * cos_step + cosine * sin_step;
        cosine = next_cosine;
    }
}

// Past the last-level cache's share of one core, writing around the caches is faster, because a
// normal store first reads the line that it overwrites (measured at 18 MB: 1.7 times).
constexpr std::size_t streaming_bytes = std::size_t{4} << 20;

bool pays_streaming(std::span<const Vertex> out, const Section& section) {
    return out.size_bytes() >= streaming_bytes && section.sides % 2 == 0 &&
           reinterpret_cast<std::uintptr_t>(out.data()) % 16 == 0;
}

void finish_streaming() {
#if defined(__SSE__)
    _mm_sfence(); // the last stores become visible before whoever reads the buffer next
#endif
}

float* floats_of(std::span<Vertex> out) { return out.data()->position; }

} // namespace

void sweep_path(std::span<const PathPoint> path, const Section& section, std::span<Vertex> out,
                glm::vec3 first_normal) {
    WW_ASSERT(path.size() >= 2);
    WW_ASSERT(out.size() == path.size() * static_cast<std::size_t>(section.sides));
    if (pays_streaming(out, section)) {
        sweep_path_rings<true>(path, section, floats_of(out), first_normal);
        finish_streaming();
    } else {
        sweep_path_rings<false>(path, section, floats_of(out), first_normal);
    }
}

int winding_points(const WindingPath& winding) {
    return std::max(1, static_cast<int>(std::ceil(winding.turns * winding.steps_per_turn))) + 1;
}

void sweep_winding(const WindingPath& winding, const Section& section, std::span<Vertex> out) {
    WW_ASSERT(winding.knots.size() >= 2 && winding.spacing > 0.0);
    WW_ASSERT(winding.turns > 0.0 && winding.growth > 0.0 && winding.steps_per_turn >= 3);
    WW_ASSERT(out.size() == static_cast<std::size_t>(winding_points(winding)) *
                                static_cast<std::size_t>(section.sides));
    if (pays_streaming(out, section)) {
        sweep_winding_rings<true>(winding, section, floats_of(out));
        finish_streaming();
    } else {
        sweep_winding_rings<false>(winding, section, floats_of(out));
    }
}

void append_sweep_indices(Buffer<std::uint32_t>& indices, int points, int sides,
                          std::uint32_t first_vertex) {
    WW_ASSERT(points >= 2 && sides >= 3);
    const std::size_t before = indices.size();
    indices.resize(before + 3 * sweep_triangles(points, sides));
    std::uint32_t* out = indices.data() + before;
    const auto n = static_cast<std::uint32_t>(sides);
    std::uint32_t ring = first_vertex;
    for (int i = 0; i + 1 < points; ++i, ring += n) {
        for (std::uint32_t k = 0; k < n; ++k, out += 6) {
            const std::uint32_t a = ring + k;
            const std::uint32_t b = k + 1 == n ? ring : a + 1;
            out[0] = a;
            out[1] = b;
            out[2] = a + n;
            out[3] = b;
            out[4] = b + n;
            out[5] = a + n;
        }
    }
    for (std::uint32_t k = 1; k + 1 < n; ++k, out += 6) {
        out[0] = first_vertex;
        out[1] = first_vertex + k + 1;
        out[2] = first_vertex + k;
        out[3] = ring;
        out[4] = ring + k;
        out[5] = ring + k + 1;
    }
}

void SweepIndices::build(int new_points, int new_sides) {
    if (points == new_points && sides == new_sides) return;
    points = new_points;
    sides = new_sides;
    indices.clear();
    append_sweep_indices(indices, points, sides, 0);
}

namespace {

// Room for one more tube behind what the mesh holds, its triangles written.
std::span<Vertex> add_tube(Mesh& mesh, std::size_t points, int sides) {
    const std::size_t first = mesh.vertices.size();
    const std::size_t count = points * static_cast<std::size_t>(sides);
    append_sweep_indices(mesh.indices, static_cast<int>(points), sides,
                         static_cast<std::uint32_t>(first));
    mesh.vertices.resize(first + count);
    return {mesh.vertices.data() + first, count};
}

} // namespace

void append_path(Mesh& mesh, std::span<const PathPoint> path, const Section& section,
                 glm::vec3 first_normal) {
    sweep_path(path, section, add_tube(mesh, path.size(), section.sides), first_normal);
}

void append_winding(Mesh& mesh, const WindingPath& winding, const Section& section) {
    const auto points = static_cast<std::size_t>(winding_points(winding));
    sweep_winding(winding, section, add_tube(mesh, points, section.sides));
}

} // namespace wrapwright
