#pragma once
// A scene with its overlay as a texture, for a window to show among its widgets.

#include "platform/gl/letters.h"
#include "platform/gl/scene_renderer.h"

#include <memory>

namespace wrapwright {

/// Draws scenes into one texture, kept from picture to picture. The Gl must outlive it.
class SceneTexture {
  public:
    /// Fails   as SceneRenderer::make does
    [[nodiscard]] static Result<SceneTexture> make(const Gl& gl);

    /// The texture of this scene; its first row is the picture's lowest.
    ///
    /// Leaves another framebuffer bound.
    /// Cost    see SceneRenderer::draw
    /// Fails   too_large when the driver cannot hold the picture
    [[nodiscard]] Result<GLuint> draw(const Scene& scene);

  private:
    SceneTexture(const Gl& gl, SceneRenderer renderer)
        : gl_(&gl), renderer_(std::move(renderer)), letters_(std::make_unique<Letters>()) {}

    const Gl* gl_;
    SceneRenderer renderer_;
    std::unique_ptr<Letters> letters_;
    Target target_;
};

} // namespace wrapwright
