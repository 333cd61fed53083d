#pragma once
// Draws a scene: the fly in its studio.

#include "platform/gl/piece_buffers.h"
#include "platform/gl/program.h"
#include "platform/gl/target.h"

#include <map>

namespace wrapwright {

/// Everything that drawing a scene keeps between pictures: programs, buffers, targets.
///
/// The Gl must outlive it. Text and dimension lines are not drawn here: see overlay.h.
class SceneRenderer {
  public:
    /// Fails   malformed when the driver refuses a shader
    [[nodiscard]] static Result<SceneRenderer> make(const Gl& gl);

    /// Draws the scene into a framebuffer of the scene's size (0: the window's own).
    ///
    /// Leaves that framebuffer bound, with depth test and blending off.
    /// Cost    passes: shadow, depth and normal, occlusion, backdrop, pieces; each piece thrice
    /// Fails   too_large above 36 million pixels, or when the driver cannot hold the picture
    [[nodiscard]] Result<bool> draw(const Scene& scene, GLuint framebuffer);

  private:
    struct Frame;
    struct Targets {
        Target shadow, mask, near_shadow, far_shadow, blur; // do not depend on the picture's size
        Target geometry, occlusion, occlusion_blur;
        Target samples, picture;
    };
    explicit SceneRenderer(const Gl& gl) : gl_(&gl) {}
    [[nodiscard]] Result<bool> fit_targets(const Scene& scene);
    void draw_solid(const Scene& scene);
    void draw_shadow(const Scene& scene, const Frame& frame);
    void draw_occlusion(const Scene& scene, const Frame& frame);
    void draw_backdrop(const Scene& scene, const Frame& frame);
    void draw_pieces(const Scene& scene, const Frame& frame);
    void draw_piece(const Scene& scene, const Frame& frame, std::size_t piece);
    void blur(const Target& from, const Target& between, const Target& to, float share);
    void fill_screen();
    [[nodiscard]] const Program& program(const char* name) const { return programs_.at(name); }

    const Gl* gl_;
    std::map<std::string_view, Program> programs_;
    PieceBuffers pieces_;
    GlVertexArray empty_;
    Targets targets_;
    PixelSize fitted_{};
    int supersample_ = 0;
};

} // namespace wrapwright
