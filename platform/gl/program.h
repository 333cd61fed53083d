#pragma once
// Shader programs put together from the bodies in shaders/.

#include "platform/gl/object.h"

#include <array>
#include <glm/mat4x4.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>
#include <span>
#include <string>
#include <string_view>

namespace wrapwright {

/// What a program is made of: a vertex body, and fragment bodies one behind the other.
struct ProgramRecipe {
    std::string_view name;
    std::string_view vertex;
    std::array<std::string_view, 4> fragment; ///< an empty name adds nothing
};

/// Every program of the renderer.
[[nodiscard]] std::span<const ProgramRecipe> all_programs();

/// A whole shader: the version line of that kind of context, common.glsl, the named bodies.
[[nodiscard]] std::string shader_text(GlKind kind, std::span<const std::string_view> bodies);

/// A linked program and its uniforms.
///
/// A name that the program does not use is passed over, as GL does.
class Program {
  public:
    /// The one of all_programs() with that name.
    /// Fails   malformed, with the driver's own words
    [[nodiscard]] static Result<Program> make(const Gl& gl, std::string_view name);

    void use() const { gl_->UseProgram(program_.name()); }
    // The program must be in use.
    void set(const char* name, float v) const { gl_->Uniform1f(at(name), v); }
    void set(const char* name, int v) const { gl_->Uniform1i(at(name), v); }
    void set(const char* name, glm::vec2 v) const { gl_->Uniform2f(at(name), v.x, v.y); }
    void set(const char* name, glm::vec3 v) const { gl_->Uniform3f(at(name), v.x, v.y, v.z); }
    void set(const char* name, glm::vec4 v) const { gl_->Uniform4f(at(name), v.x, v.y, v.z, v.w); }
    void set(const char* name, std::span<const glm::vec3> v) const {
        gl_->Uniform3fv(at(name), static_cast<GLsizei>(v.size()), &v[0].x);
    }
    void set(const char* name, const glm::mat4& v) const {
        gl_->UniformMatrix4fv(at(name), 1, GL_FALSE, &v[0].x);
    }

  private:
    Program(const Gl& gl, GlProgram program) : gl_(&gl), program_(std::move(program)) {}
    [[nodiscard]] GLint at(const char* name) const {
        return gl_->GetUniformLocation(program_.name(), name);
    }

    const Gl* gl_;
    GlProgram program_;
};

} // namespace wrapwright
