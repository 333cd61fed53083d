#include "core/assert.h"
#include "core/geometry/frame.h"
#include "core/geometry/sweep.h"
#include "core/geometry/sweep_rings.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

// A unit vector, or zero for a vector too short to have a direction: never a NaN.
glm::vec3 direction(const glm::vec3& v) {
    const float square = glm::dot(v, v);
    return square > 1e-30F ? v * (1.0F / std::sqrt(square)) : glm::vec3(0.0F);
}

void put(float (&row)[8], const glm::vec3& position, const glm::vec3& normal) {
    row[0] = position.x;
    row[1] = position.y;
    row[2] = position.z;
    row[3] = normal.x;
    row[4] = normal.y;
    row[5] = normal.z;
}

} // namespace

void sweep_path(std::span<const PathPoint> path, const Section& section, std::span<Vertex> out,
                glm::vec3 first_normal) {
    WW_ASSERT(path.size() >= 2);
    RingWriter writer(section, static_cast<int>(path.size()), out);
    glm::vec3 step = path[1].position - path[0].position;
    glm::vec3 chord = direction(step);
    glm::vec3 tangent = chord;
    glm::vec3 normal = direction(first_normal - glm::dot(first_normal, tangent) * tangent);
    if (glm::dot(normal, normal) < 0.5F) normal = any_normal(tangent);
    float length_before = 0.0F;
    float radius_before = path[0].radius;
    const std::size_t last = path.size() - 1;
    Frames frames;
    for (std::size_t i = 0; i <= last;) {
        const int count = static_cast<int>(std::min<std::size_t>(batch_rings, last + 1 - i));
        // Rounding turns a long chain of reflections out of square; once a batch is enough.
        normal = direction(normal - glm::dot(normal, tangent) * tangent);
        for (int j = 0; j < count; ++j, ++i) {
            const bool ends = i == last;
            const float length = ends ? 0.0F : glm::dot(chord, step);
            const float run = length_before + length;
            const float rise = path[ends ? i : i + 1].radius - radius_before;
            const float slope = run > 0.0F ? rise / run : 0.0F;
            const float upright = 1.0F / std::sqrt(1.0F + slope * slope);
            const glm::vec3 binormal = glm::cross(tangent, normal);
            const float radius = path[i].radius;
            Frame& frame = frames[static_cast<std::size_t>(j)];
            put(frame.centre, path[i].position, (-slope * upright) * tangent);
            put(frame.height, radius * normal, upright * normal);
            put(frame.width, radius * binormal, upright * binormal);
            if (ends) continue;
            const glm::vec3 next_step =
                i + 1 == last ? step : path[i + 2].position - path[i + 1].position;
            const glm::vec3 next_chord = direction(next_step);
            const glm::vec3 next_tangent = direction(chord + next_chord);
            normal = next_normal(chord, tangent, next_tangent, normal);
            tangent = next_tangent;
            chord = next_chord;
            step = next_step;
            length_before = length;
            radius_before = path[i].radius;
        }
        writer.write(frames, count);
    }
}

} // namespace wrapwright
