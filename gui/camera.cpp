#include "gui/camera.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>
#include <glm/gtc/matrix_transform.hpp>

namespace wrapwright {

namespace {

constexpr float field_of_view =
    0.36F; // rad, upright: a long lens, which bends a small thing little

// Turns and mirrors, and leaves out where the target is.
glm::mat4 model_to_turned(const Camera& camera) {
    return glm::rotate(glm::mat4(1.0F), camera.turn, glm::vec3(1, 0, 0));
}

glm::mat4 turned_to_view_axes(const Camera& camera) {
    glm::mat4 m(1.0F);
    // A right-hander looks along model +z with the tail to the left: half a turn about y.
    m[0][0] = -1.0F;
    m[2][2] = -1.0F;
    const glm::mat4 yaw = glm::rotate(glm::mat4(1.0F), -camera.yaw, glm::vec3(0, 1, 0));
    const glm::mat4 tilt = glm::rotate(glm::mat4(1.0F), camera.elevation, glm::vec3(1, 0, 0));
    const glm::mat4 mirror =
        glm::scale(glm::mat4(1.0F), glm::vec3(camera.mirrored ? -1.0F : 1.0F, 1.0F, 1.0F));
    return mirror * tilt * yaw * m;
}

} // namespace

float viewing_distance(const Camera& camera) {
    return 0.5F * camera.height / std::tan(0.5F * field_of_view);
}

glm::mat4 model_to_view(const Camera& camera) {
    const float back = camera.perspective ? -viewing_distance(camera) : 0.0F;
    return glm::translate(glm::mat4(1.0F), glm::vec3(0, 0, back)) * turned_to_view_axes(camera) *
           glm::translate(glm::mat4(1.0F), -camera.target) * model_to_turned(camera);
}

StudioAxes studio_axes(const Camera& camera) {
    const float c = std::cos(camera.elevation);
    const float s = std::sin(camera.elevation);
    return {{0.0F, c, s}, {0.0F, -s, c}};
}

glm::mat4 view_to_clip(const Camera& camera, PixelSize size, float reach) {
    const float aspect = static_cast<float>(size.width) / static_cast<float>(size.height);
    if (camera.perspective) {
        const float away = viewing_distance(camera);
        return glm::perspective(field_of_view, aspect, std::max(0.02F * away, away - reach),
                                away + reach);
    }
    const float up = 0.5F * camera.height;
    return glm::ortho(-up * aspect, up * aspect, -up, up, -reach, reach);
}

glm::vec2 in_picture(const Camera& camera, PixelSize size, glm::vec3 place) {
    const glm::vec4 clip =
        view_to_clip(camera, size, camera.height) * model_to_view(camera) * glm::vec4(place, 1.0F);
    return {(0.5F + 0.5F * clip.x / clip.w) * static_cast<float>(size.width),
            (0.5F - 0.5F * clip.y / clip.w) * static_cast<float>(size.height)};
}

void frame_points(Camera& camera, PixelSize size, std::span<const glm::vec3> points,
                  const Margins& margins) {
    WW_ASSERT(!points.empty());
    const glm::vec2 room(static_cast<float>(size.width) - margins.left - margins.right,
                         static_cast<float>(size.height) - margins.top - margins.bottom);
    WW_ASSERT(room.x > 0.0F && room.y > 0.0F);
    const glm::mat4 axes = turned_to_view_axes(camera);
    const glm::vec2 middle(margins.left + 0.5F * room.x, margins.top + 0.5F * room.y);
    // Without perspective the first round is right. With it each round is nearer: what moves
    // towards the middle changes its size a little.
    camera.target = glm::vec3(model_to_turned(camera) * glm::vec4(points[0], 1.0F));
    for (int round = 0; round < (camera.perspective ? 8 : 1); ++round) {
        glm::vec2 least(1e9F);
        glm::vec2 most(-1e9F);
        for (const glm::vec3& p : points) {
            const glm::vec2 at = in_picture(camera, size, p);
            least = glm::min(least, at);
            most = glm::max(most, at);
        }
        const float mm_per_pixel = camera.height / static_cast<float>(size.height);
        const glm::vec2 span = glm::max(most - least, glm::vec2(1e-3F / mm_per_pixel));
        const float larger = std::max(span.x / room.x, span.y / room.y);
        // Where the middle of the points must come to lie, and how far the target is from there.
        const glm::vec2 off = 0.5F * (least + most) - 0.5F * glm::vec2(size.width, size.height) -
                              larger * (middle - 0.5F * glm::vec2(size.width, size.height));
        camera.target += glm::vec3(glm::inverse(axes) *
                                   glm::vec4(off.x * mm_per_pixel, -off.y * mm_per_pixel, 0, 0));
        camera.height *= larger;
    }
}

} // namespace wrapwright
