#pragma once
// What is drawn into: a colour texture, a depth texture, or multisampled buffers.

#include "gui/camera.h"
#include "platform/gl/object.h"

namespace wrapwright {

/// What a target holds.
enum class TargetKind : unsigned char {
    colour,           ///< an RGBA8 texture
    depth,            ///< a depth texture that shaders read as numbers
    shadow,           ///< a depth texture that shaders compare with
    colour_and_depth, ///< both textures
    multisampled,     ///< RGBA8 and depth, not readable; resolve it into a colour target
};

/// A framebuffer with what is attached to it.
class Target {
  public:
    Target() = default;
    /// Fails   too_large when the driver cannot hold it
    [[nodiscard]] static Result<Target> make(const Gl& gl, TargetKind kind, PixelSize size);

    [[nodiscard]] GLuint framebuffer() const { return framebuffer_.name(); }
    [[nodiscard]] GLuint colour() const { return colour_.name(); }
    [[nodiscard]] GLuint depth() const { return depth_.name(); }
    [[nodiscard]] PixelSize size() const { return size_; }
    /// Draw here from now on, all of it.
    void bind(const Gl& gl) const;

  private:
    PixelSize size_{};
    GlFramebuffer framebuffer_;
    GlTexture colour_, depth_;
    GlRenderbuffer colour_samples_, depth_samples_;
};

/// Averages a multisampled target into a colour one of the same size.
void resolve(const Gl& gl, const Target& from, const Target& to);

/// A texture of 8-bit pixels, smoothly sampled.
[[nodiscard]] GlTexture make_image(const Gl& gl, PixelSize size, const void* rgba);

/// Puts a texture into a unit for the program in use to read.
void bind_texture(const Gl& gl, int unit, GLuint texture);

} // namespace wrapwright
