#include "platform/gl/program.h"

#include "shaders/bodies.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr ProgramRecipe programs[] = {
    {"shadow", "depth.vert", {"depth.frag"}},
    {"geometry", "depth.vert", {"geometry.frag"}},
    {"occlusion", "full_screen.vert", {"occlusion.frag"}},
    {"blur", "full_screen.vert", {"blur.frag"}},
    {"silhouette", "depth.vert", {"silhouette.frag"}},
    {"backdrop", "full_screen.vert", {"studio.glsl", "backdrop.frag"}},
    {"downsample", "full_screen.vert", {"downsample.frag"}},
    {"metal", "piece.vert", {"studio.glsl", "surface.glsl", "looks/metal.glsl", "piece.frag"}},
    {"lead", "piece.vert", {"studio.glsl", "surface.glsl", "looks/lead.glsl", "piece.frag"}},
    {"thread", "piece.vert", {"studio.glsl", "surface.glsl", "looks/thread.glsl", "piece.frag"}},
    {"fibre", "piece.vert", {"studio.glsl", "surface.glsl", "looks/fibre.glsl", "piece.frag"}},
    {"fur", "piece.vert", {"studio.glsl", "surface.glsl", "looks/fur.glsl", "piece.frag"}},
    {"matt", "piece.vert", {"studio.glsl", "surface.glsl", "looks/matt.glsl", "piece.frag"}},
    {"film", "piece.vert", {"studio.glsl", "surface.glsl", "looks/film.glsl", "piece.frag"}},
    {"ui", "ui.vert", {"ui.frag"}},
};

// What the driver has to say about a shader or a program, as one line.
std::string one_line(std::string log) {
    while (!log.empty() && (log.back() == '\n' || log.back() == '\0')) log.pop_back();
    std::replace(log.begin(), log.end(), '\n', ';');
    return log;
}

Error refusal(std::string_view name, std::string log) {
    return {ErrorCode::malformed,
            "the graphics driver refuses the shader '" + std::string(name) +
                "': " + one_line(std::move(log)),
            "update the driver, or report this line"};
}

class Shader {
  public:
    Shader(const Gl& gl, GLenum stage, const std::string& text)
        : gl_(gl), name_(gl.CreateShader(stage)) {
        const char* start = text.c_str();
        gl.ShaderSource(name_, 1, &start, nullptr);
        gl.CompileShader(name_);
    }
    Shader(const Shader&) = delete;
    Shader& operator=(const Shader&) = delete;
    ~Shader() { gl_.DeleteShader(name_); }
    [[nodiscard]] GLuint name() const { return name_; }
    [[nodiscard]] bool ok() const {
        GLint compiled = 0;
        gl_.GetShaderiv(name_, GL_COMPILE_STATUS, &compiled);
        return compiled != 0;
    }
    [[nodiscard]] std::string log() const {
        std::string text(2000, '\0');
        gl_.GetShaderInfoLog(name_, static_cast<GLsizei>(text.size()), nullptr, text.data());
        return text;
    }

  private:
    const Gl& gl_;
    GLuint name_;
};

} // namespace

std::span<const ProgramRecipe> all_programs() { return programs; }

std::string shader_text(GlKind kind, std::span<const std::string_view> bodies) {
    std::string text = kind == GlKind::es_30 ? "#version 300 es\n" : "#version 330 core\n";
    text += shader_body("common.glsl");
    for (const std::string_view body : bodies) {
        if (!body.empty()) text += shader_body(body);
    }
    return text;
}

Result<Program> Program::make(const Gl& gl, std::string_view name) {
    const auto* recipe = std::find_if(std::begin(programs), std::end(programs),
                                      [&](const ProgramRecipe& p) { return p.name == name; });
    WW_ASSERT(recipe != std::end(programs));
    const Shader vertex(gl, GL_VERTEX_SHADER, shader_text(gl.kind, {&recipe->vertex, 1}));
    const Shader fragment(gl, GL_FRAGMENT_SHADER, shader_text(gl.kind, recipe->fragment));
    for (const Shader* shader : {&vertex, &fragment}) {
        if (!shader->ok()) return refusal(name, shader->log());
    }
    GlProgram program(gl, gl.CreateProgram());
    gl.AttachShader(program.name(), vertex.name());
    gl.AttachShader(program.name(), fragment.name());
    gl.LinkProgram(program.name());
    GLint linked = 0;
    gl.GetProgramiv(program.name(), GL_LINK_STATUS, &linked);
    if (linked == 0) {
        std::string log(2000, '\0');
        gl.GetProgramInfoLog(program.name(), static_cast<GLsizei>(log.size()), nullptr, log.data());
        return refusal(name, std::move(log));
    }
    return Program(gl, std::move(program));
}

} // namespace wrapwright
