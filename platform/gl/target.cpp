#include "platform/gl/target.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr GLsizei wanted_samples = 4;

GlTexture make_texture(const Gl& gl, GLint format, PixelSize size, GLenum layout, GLenum type,
                       GLint filter, const void* pixels) {
    GLuint name = 0;
    gl.GenTextures(1, &name);
    gl.BindTexture(GL_TEXTURE_2D, name);
    gl.TexImage2D(GL_TEXTURE_2D, 0, format, size.width, size.height, 0, layout, type, pixels);
    gl.TexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, filter);
    gl.TexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, filter);
    gl.TexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    gl.TexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    return {gl, name};
}

GlTexture make_depth_texture(const Gl& gl, PixelSize size, bool compared) {
    GlTexture texture = make_texture(gl, GL_DEPTH_COMPONENT24, size, GL_DEPTH_COMPONENT,
                                     GL_UNSIGNED_INT, GL_NEAREST, nullptr);
    if (compared) {
        gl.TexParameteri(GL_TEXTURE_2D, GL_TEXTURE_COMPARE_MODE, GL_COMPARE_REF_TO_TEXTURE);
        gl.TexParameteri(GL_TEXTURE_2D, GL_TEXTURE_COMPARE_FUNC, GL_LEQUAL);
    }
    return texture;
}

GlRenderbuffer make_samples(const Gl& gl, GLenum format, PixelSize size, GLenum attachment) {
    GLint most = 1;
    gl.GetIntegerv(GL_MAX_SAMPLES, &most);
    GLuint name = 0;
    gl.GenRenderbuffers(1, &name);
    gl.BindRenderbuffer(GL_RENDERBUFFER, name);
    gl.RenderbufferStorageMultisample(GL_RENDERBUFFER, std::min(wanted_samples, most), format,
                                      size.width, size.height);
    gl.FramebufferRenderbuffer(GL_FRAMEBUFFER, attachment, GL_RENDERBUFFER, name);
    return {gl, name};
}

} // namespace

GlTexture make_image(const Gl& gl, PixelSize size, const void* rgba) {
    return make_texture(gl, GL_RGBA8, size, GL_RGBA, GL_UNSIGNED_BYTE, GL_LINEAR, rgba);
}

Result<Target> Target::make(const Gl& gl, TargetKind kind, PixelSize size) {
    const Error too_large{ErrorCode::too_large,
                          "the graphics driver cannot hold a picture of " +
                              std::to_string(size.width) + " x " + std::to_string(size.height) +
                              " pixels",
                          "ask for a smaller one"};
    GLint most = 0;
    gl.GetIntegerv(GL_MAX_TEXTURE_SIZE, &most);
    if (size.width < 1 || size.height < 1 || std::max(size.width, size.height) > most) {
        return too_large;
    }
    Target t;
    t.size_ = size;
    GLuint name = 0;
    gl.GenFramebuffers(1, &name);
    t.framebuffer_ = GlFramebuffer(gl, name);
    gl.BindFramebuffer(GL_FRAMEBUFFER, name);
    if (kind == TargetKind::multisampled) {
        t.colour_samples_ = make_samples(gl, GL_RGBA8, size, GL_COLOR_ATTACHMENT0);
        t.depth_samples_ = make_samples(gl, GL_DEPTH_COMPONENT24, size, GL_DEPTH_ATTACHMENT);
    }
    if (kind == TargetKind::colour || kind == TargetKind::colour_and_depth) {
        t.colour_ = make_image(gl, size, nullptr);
        gl.FramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D,
                                t.colour_.name(), 0);
    }
    if (kind == TargetKind::depth || kind == TargetKind::shadow ||
        kind == TargetKind::colour_and_depth) {
        t.depth_ = make_depth_texture(gl, size, kind == TargetKind::shadow);
        gl.FramebufferTexture2D(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_TEXTURE_2D, t.depth_.name(),
                                0);
    }
    const GLenum drawn = kind == TargetKind::depth || kind == TargetKind::shadow
                             ? GLenum{GL_NONE}
                             : GLenum{GL_COLOR_ATTACHMENT0};
    gl.DrawBuffers(1, &drawn);
    if (gl.CheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE) return too_large;
    return t;
}

void Target::bind(const Gl& gl) const {
    gl.BindFramebuffer(GL_FRAMEBUFFER, framebuffer());
    gl.Viewport(0, 0, size_.width, size_.height);
}

void resolve(const Gl& gl, const Target& from, const Target& to) {
    gl.BindFramebuffer(GL_READ_FRAMEBUFFER, from.framebuffer());
    gl.BindFramebuffer(GL_DRAW_FRAMEBUFFER, to.framebuffer());
    const auto [width, height] = from.size();
    gl.BlitFramebuffer(0, 0, width, height, 0, 0, width, height, GL_COLOR_BUFFER_BIT, GL_NEAREST);
}

void bind_texture(const Gl& gl, int unit, GLuint texture) {
    gl.ActiveTexture(GL_TEXTURE0 + static_cast<GLenum>(unit));
    gl.BindTexture(GL_TEXTURE_2D, texture);
}

} // namespace wrapwright
