#pragma once
// Where the fly is seen from.
//
// Model space is that of core/geometry/fly/model.h. View space: x right, y up, z to the camera,
// the origin at the camera's target (or at the camera, in perspective), all in mm.

#include <glm/mat4x4.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>
#include <span>

namespace wrapwright {

/// A camera on a tripod before the vise, and the vise's own turn.
///
/// At yaw and elevation 0 it stands where a right-handed tyer sits: eye of the hook to the right,
/// tail to the left.
struct Camera {
    glm::vec3 target{0.0F};   ///< what is in the middle, after the turn, mm
    float turn = 0.0F;        ///< of the fly about its shank, rad, the top away from the tyer first
    float yaw = 0.0F;         ///< rad, positive towards the eye of the hook
    float elevation = 0.0F;   ///< rad, positive looks down
    float height = 20.0F;     ///< visible at the target, mm
    bool perspective = false; ///< else true to scale everywhere
    bool mirrored = false;    ///< for a left-handed tyer
};

/// The picture's size.
struct PixelSize {
    int width = 0;
    int height = 0;
    friend bool operator==(PixelSize, PixelSize) = default;
};

/// From model space to view space.
[[nodiscard]] glm::mat4 model_to_view(const Camera& camera);

/// The studio's upward and level-to-camera directions in view space.
struct StudioAxes {
    glm::vec3 up, towards;
};
[[nodiscard]] StudioAxes studio_axes(const Camera& camera);

/// From view space to clip space; all within `reach` mm of the target is kept.
[[nodiscard]] glm::mat4 view_to_clip(const Camera& camera, PixelSize size, float reach);

/// Distance of the camera from its target in perspective, mm.
[[nodiscard]] float viewing_distance(const Camera& camera);

/// Where a point of the model falls in the picture, in pixels from the upper left.
[[nodiscard]] glm::vec2 in_picture(const Camera& camera, PixelSize size, glm::vec3 place);

/// Empty room round the framed box, in pixels.
struct Margins {
    float left = 0.0F, right = 0.0F, top = 0.0F, bottom = 0.0F;
};

/// Sets target and height so that points of the model just fill the picture within its margins.
///
/// Valid   at least one point; margins leave room
/// Error   in perspective, a hundredth of the picture
void frame_points(Camera& camera, PixelSize size, std::span<const glm::vec3> points,
                  const Margins& margins);

} // namespace wrapwright
