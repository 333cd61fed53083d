#pragma once
// Owners of GL objects: each deletes what it holds, in the context that made it.

#include "platform/gl/api.h"

#include <utility>

namespace wrapwright {

/// One GL object; 0 is none. The Gl must outlive it.
template <auto Delete>
class GlObject {
  public:
    GlObject() = default;
    GlObject(const Gl& gl, GLuint name) : gl_(&gl), name_(name) {}
    GlObject(GlObject&& other) noexcept
        : gl_(other.gl_), name_(std::exchange(other.name_, GLuint{0})) {}
    GlObject& operator=(GlObject&& other) noexcept {
        std::swap(gl_, other.gl_);
        std::swap(name_, other.name_); // the other one deletes what was held here
        return *this;
    }
    ~GlObject() {
        if (name_ != 0) Delete(*gl_, name_);
    }
    [[nodiscard]] GLuint name() const { return name_; }

  private:
    const Gl* gl_ = nullptr;
    GLuint name_ = 0;
};

inline void delete_buffer(const Gl& gl, GLuint n) { gl.DeleteBuffers(1, &n); }
inline void delete_vertex_array(const Gl& gl, GLuint n) { gl.DeleteVertexArrays(1, &n); }
inline void delete_texture(const Gl& gl, GLuint n) { gl.DeleteTextures(1, &n); }
inline void delete_renderbuffer(const Gl& gl, GLuint n) { gl.DeleteRenderbuffers(1, &n); }
inline void delete_framebuffer(const Gl& gl, GLuint n) { gl.DeleteFramebuffers(1, &n); }
inline void delete_program(const Gl& gl, GLuint n) { gl.DeleteProgram(n); }

using GlBuffer = GlObject<delete_buffer>;
using GlVertexArray = GlObject<delete_vertex_array>;
using GlTexture = GlObject<delete_texture>;
using GlRenderbuffer = GlObject<delete_renderbuffer>;
using GlFramebuffer = GlObject<delete_framebuffer>;
using GlProgram = GlObject<delete_program>;

[[nodiscard]] inline GlBuffer make_buffer(const Gl& gl) {
    GLuint n = 0;
    gl.GenBuffers(1, &n);
    return {gl, n};
}
[[nodiscard]] inline GlVertexArray make_vertex_array(const Gl& gl) {
    GLuint n = 0;
    gl.GenVertexArrays(1, &n);
    return {gl, n};
}

} // namespace wrapwright
