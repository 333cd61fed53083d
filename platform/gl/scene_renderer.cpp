#include "platform/gl/scene_renderer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>
#include <glm/gtc/matrix_transform.hpp>
#include <glm/matrix.hpp>

namespace wrapwright {

namespace {

constexpr int shadow_pixels = 2048;
constexpr int mask_pixels = 512;
constexpr double most_pixels = 36e6; // drawn: 40 bytes each with all their samples, 1.4 GB
const glm::vec3 key_to(-0.4851F, 0.6864F, 0.5417F); // as in shaders/studio.glsl

// Which program draws a look, and the one number that it takes.
struct LookProgram {
    const char* program;
    const char* uniform;
    float value;
};

LookProgram program_of(Look look) {
    switch (look) {
    case Look::steel: return {"metal", "roughness", 0.24F};
    case Look::metal: return {"metal", "roughness", 0.13F};
    case Look::lead: return {"lead", "", 0.0F};
    case Look::thread: return {"thread", "", 0.0F};
    case Look::fibre: return {"fibre", "gloss", 0.75F};
    case Look::hair: return {"fibre", "gloss", 0.45F};
    case Look::fur: return {"fur", "", 0.0F};
    case Look::film: return {"film", "", 0.0F};
    case Look::foam: return {"matt", "pores", 1.0F};
    case Look::ground: return {"matt", "pores", 0.0F};
    }
    assertion_failed();
}

// The backdrop's card, and what the fly sees of it.
struct CardLight {
    float card, seen, fall;
};
CardLight card_light(Backdrop backdrop) {
    return backdrop == Backdrop::light ? CardLight{0.62F, 0.62F, 0.42F}
                                       : CardLight{0.075F, 0.16F, 0.62F};
}

// Clip space to 0..1.
const glm::mat4 to_unit =
    glm::scale(glm::translate(glm::mat4(1.0F), glm::vec3(0.5F)), glm::vec3(0.5F));

bool is_clear(const FlyPiece& piece) { return piece.look == Look::film || piece.opacity < 1.0F; }

bool is_strand(Look look) { return look == Look::fibre || look == Look::hair; }

} // namespace

// What all passes of one picture share.
struct SceneRenderer::Frame {
    glm::mat4 to_view{}, to_clip{}, to_light{}, to_mask{};
    glm::vec3 middle{};      // the target in view space
    glm::vec2 span{};        // visible at the target, mm
    float light_wide = 0.0F; // half of what the shadow map covers, mm
    float reach = 0.0F;      // farthest corner from the target, mm
};

Result<SceneRenderer> SceneRenderer::make(const Gl& gl) {
    SceneRenderer renderer(gl);
    for (const ProgramRecipe& recipe : all_programs()) {
        Result<Program> program = Program::make(gl, recipe.name);
        if (!program.ok()) return program.error();
        renderer.programs_.emplace(recipe.name, std::move(program).value());
    }
    renderer.empty_ = make_vertex_array(gl);
    return renderer;
}

Result<bool> SceneRenderer::fit_targets(const Scene& scene) {
    const auto [width, height] = scene.size;
    const double pixels = static_cast<double>(width) * height;
    int n = std::clamp(scene.supersample, 1, 4);
    while (n > 1 && pixels * n * n > most_pixels) --n;
    if (pixels > most_pixels) {
        return Error{ErrorCode::too_large,
                     "a picture of " + std::to_string(width) + " x " + std::to_string(height) +
                         " pixels is more than memory is set aside for",
                     "ask for 36 million pixels at most, such as 7500 x 4800"};
    }
    if (fitted_ == scene.size && supersample_ == n) return true;
    const PixelSize large{width * n, height * n};
    const PixelSize mask{mask_pixels, mask_pixels};
    struct Wanted {
        Target* target;
        TargetKind kind;
        PixelSize size;
    };
    const std::array wanted{
        Wanted{&targets_.shadow, TargetKind::shadow, {shadow_pixels, shadow_pixels}},
        Wanted{&targets_.mask, TargetKind::colour, mask},
        Wanted{&targets_.blur, TargetKind::colour, mask},
        Wanted{&targets_.near_shadow, TargetKind::colour, mask},
        Wanted{&targets_.far_shadow, TargetKind::colour, mask},
        Wanted{&targets_.geometry, TargetKind::colour_and_depth, scene.size},
        Wanted{&targets_.occlusion, TargetKind::colour, scene.size},
        Wanted{&targets_.occlusion_blur, TargetKind::colour, scene.size},
        Wanted{&targets_.samples, TargetKind::multisampled, large},
        Wanted{&targets_.picture, TargetKind::colour, large},
    };
    fitted_ = {};
    for (const Wanted& w : wanted) {
        Result<Target> made = Target::make(*gl_, w.kind, w.size);
        if (!made.ok()) return made.error();
        *w.target = std::move(made).value();
    }
    fitted_ = scene.size;
    supersample_ = n;
    return true;
}

Result<bool> SceneRenderer::draw(const Scene& scene, GLuint framebuffer) {
    WW_ASSERT(scene.model != nullptr);
    const Result<bool> fits = fit_targets(scene);
    if (!fits.ok()) return fits;
    pieces_.send(*gl_, scene);

    Frame frame;
    frame.to_view = model_to_view(scene.camera);
    frame.middle = {0.0F, 0.0F, scene.camera.perspective ? -viewing_distance(scene.camera) : 0.0F};
    frame.span = {scene.camera.height * static_cast<float>(scene.size.width) /
                      static_cast<float>(scene.size.height),
                  scene.camera.height};
    frame.reach = 1.0F;
    for (const PieceBuffers::Range& range : pieces_.ranges()) {
        for (int corner = 0; range.count > 0 && corner < 8; ++corner) {
            const glm::vec4 p(corner & 1 ? range.low.x : range.high.x,
                              corner & 2 ? range.low.y : range.high.y,
                              corner & 4 ? range.low.z : range.high.z, 1.0F);
            frame.reach = std::max(
                frame.reach, 1.01F * glm::distance(glm::vec3(frame.to_view * p), frame.middle));
        }
    }
    frame.to_clip = view_to_clip(scene.camera, scene.size, frame.reach);
    const auto light = [&frame](float wide) {
        return glm::ortho(-wide, wide, -wide, wide, -2.0F * frame.reach, 2.0F * frame.reach) *
               glm::lookAt(frame.middle, frame.middle - key_to, glm::vec3(0, 1, 0));
    };
    frame.light_wide = 0.60F * glm::length(frame.span);
    frame.to_light = light(frame.light_wide);
    frame.to_mask = light(0.95F * glm::length(frame.span));

    const Gl& gl = *gl_;
    gl.Disable(GL_SCISSOR_TEST);
    gl.Disable(GL_BLEND);
    gl.Disable(GL_CULL_FACE);
    gl.DepthFunc(GL_LEQUAL);
    gl.DepthMask(GL_TRUE);
    gl.FrontFace(scene.camera.mirrored ? GL_CW : GL_CCW);
    draw_shadow(scene, frame);
    draw_occlusion(scene, frame);
    targets_.samples.bind(gl);
    gl.Clear(GL_DEPTH_BUFFER_BIT);
    draw_backdrop(scene, frame);
    draw_pieces(scene, frame);
    resolve(gl, targets_.samples, targets_.picture);

    gl.BindFramebuffer(GL_FRAMEBUFFER, framebuffer);
    gl.Viewport(0, 0, scene.size.width, scene.size.height);
    const Program& down = program("downsample");
    down.use();
    down.set("factor", supersample_);
    down.set("light", scene.light);
    bind_texture(gl, 0, targets_.picture.colour());
    fill_screen();
    return true;
}

void SceneRenderer::fill_screen() {
    gl_->BindVertexArray(empty_.name());
    gl_->DrawArrays(GL_TRIANGLES, 0, 3);
}

void SceneRenderer::draw_solid(const Scene& scene) {
    for (std::size_t i = 0; i < scene.model->pieces.size(); ++i) {
        if (!is_clear(scene.model->pieces[i])) pieces_.draw(*gl_, i);
    }
}

void SceneRenderer::blur(const Target& from, const Target& between, const Target& to, float share) {
    const Program& blur = program("blur");
    blur.use();
    const auto size = static_cast<float>(from.size().width);
    const float sigma = share * size;
    const float step = std::max(1.0F, sigma / 6.0F);
    blur.set("depth_scale", 0.0F);
    blur.set("taps", static_cast<int>(std::ceil(2.5F * sigma / step)));
    blur.set("sigma", sigma / step);
    blur.set("depth_map", 0);
    between.bind(*gl_);
    bind_texture(*gl_, 0, from.colour());
    blur.set("along", glm::vec2(step / size, 0.0F));
    fill_screen();
    to.bind(*gl_);
    bind_texture(*gl_, 0, between.colour());
    blur.set("along", glm::vec2(0.0F, step / size));
    fill_screen();
}

void SceneRenderer::draw_shadow(const Scene& scene, const Frame& frame) {
    const Gl& gl = *gl_;
    targets_.shadow.bind(gl);
    gl.Enable(GL_DEPTH_TEST);
    gl.Clear(GL_DEPTH_BUFFER_BIT);
    const Program& shadow = program("shadow");
    shadow.use();
    shadow.set("to_view", frame.to_view);
    shadow.set("to_clip", frame.to_light);
    draw_solid(scene);
    gl.Disable(GL_DEPTH_TEST);

    // The shape alone, wider: what stands outside the picture may throw its shadow into it.
    targets_.mask.bind(gl);
    gl.ClearColor(0.0F, 0.0F, 0.0F, 0.0F);
    gl.Clear(GL_COLOR_BUFFER_BIT);
    const Program& silhouette = program("silhouette");
    silhouette.use();
    silhouette.set("to_view", frame.to_view);
    silhouette.set("to_clip", frame.to_mask);
    draw_solid(scene);
    blur(targets_.mask, targets_.blur, targets_.near_shadow, 0.007F);
    blur(targets_.near_shadow, targets_.blur, targets_.far_shadow, 0.020F);
}

void SceneRenderer::draw_occlusion(const Scene& scene, const Frame& frame) {
    const Gl& gl = *gl_;
    targets_.geometry.bind(gl);
    gl.Enable(GL_DEPTH_TEST);
    gl.Clear(GL_DEPTH_BUFFER_BIT);
    const Program& geometry = program("geometry");
    geometry.use();
    geometry.set("to_view", frame.to_view);
    geometry.set("to_clip", frame.to_clip);
    draw_solid(scene);
    gl.Disable(GL_DEPTH_TEST);

    const float radius = 0.055F * frame.span.y;
    targets_.occlusion.bind(gl);
    const Program& occlusion = program("occlusion");
    occlusion.use();
    occlusion.set("depth_map", 0);
    occlusion.set("normal_map", 1);
    occlusion.set("from_clip", glm::inverse(frame.to_clip));
    occlusion.set("radius", radius);
    occlusion.set("radius_share", radius / frame.span);
    bind_texture(gl, 0, targets_.geometry.depth());
    bind_texture(gl, 1, targets_.geometry.colour());
    fill_screen();

    const Program& blur = program("blur");
    blur.use();
    blur.set("depth_map", 1);
    blur.set("depth_scale", 2.0F * frame.reach / (0.25F * radius));
    blur.set("taps", 2);
    blur.set("sigma", 1.6F);
    bind_texture(gl, 1, targets_.geometry.depth());
    const glm::vec2 pixel(1.0F / static_cast<float>(scene.size.width),
                          1.0F / static_cast<float>(scene.size.height));
    targets_.occlusion_blur.bind(gl);
    bind_texture(gl, 0, targets_.occlusion.colour());
    blur.set("along", glm::vec2(pixel.x, 0.0F));
    fill_screen();
    targets_.occlusion.bind(gl);
    bind_texture(gl, 0, targets_.occlusion_blur.colour());
    blur.set("along", glm::vec2(0.0F, pixel.y));
    fill_screen();
}

void SceneRenderer::draw_backdrop(const Scene& scene, const Frame& frame) {
    const Gl& gl = *gl_;
    const StudioAxes axes = studio_axes(scene.camera);
    const CardLight light = card_light(scene.backdrop);
    const Program& backdrop = program("backdrop");
    backdrop.use();
    const std::array corner{glm::vec3(-0.5F * frame.span, frame.middle.z),
                            glm::vec3(frame.span.x, 0.0F, 0.0F),
                            glm::vec3(0.0F, frame.span.y, 0.0F)};
    backdrop.set("corner", std::span<const glm::vec3>(corner));
    backdrop.set("middle", frame.middle);
    backdrop.set("perspective", scene.camera.perspective ? 1.0F : 0.0F);
    backdrop.set("up", axes.up);
    backdrop.set("towards", axes.towards);
    backdrop.set("floor_below", 0.55F * frame.span.y);
    backdrop.set("wall_behind", 0.30F * frame.span.y);
    backdrop.set("fillet", 0.40F * frame.span.y);
    backdrop.set("to_mask", to_unit * frame.to_mask);
    backdrop.set("near_shadow", 0);
    backdrop.set("far_shadow", 1);
    backdrop.set("card", light.card * glm::vec3(0.985F, 1.0F, 1.01F));
    backdrop.set("fall", light.fall);
    backdrop.set("aspect", frame.span.x / frame.span.y);
    bind_texture(gl, 0, targets_.near_shadow.colour());
    bind_texture(gl, 1, targets_.far_shadow.colour());
    fill_screen();
}

void SceneRenderer::draw_pieces(const Scene& scene, const Frame& frame) {
    const Gl& gl = *gl_;
    const std::vector<FlyPiece>& pieces = scene.model->pieces;
    bind_texture(gl, 0, targets_.shadow.depth());
    bind_texture(gl, 1, targets_.occlusion.colour());
    gl.Enable(GL_DEPTH_TEST);
    std::vector<std::size_t> clear;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (is_clear(pieces[i])) {
            clear.push_back(i);
            continue;
        }
        if (is_strand(pieces[i].look))
            gl.Disable(GL_CULL_FACE);
        else
            gl.Enable(GL_CULL_FACE);
        draw_piece(scene, frame, i);
    }
    // Clear ones from the back to the front, of each the far side first.
    const auto depth = [&](std::size_t i) {
        const PieceBuffers::Range& r = pieces_.ranges()[i];
        return (frame.to_view * glm::vec4(0.5F * (r.low + r.high), 1.0F)).z;
    };
    std::sort(clear.begin(), clear.end(), [&](std::size_t a, std::size_t b) {
        return std::pair(depth(a), a) < std::pair(depth(b), b);
    });
    gl.Enable(GL_CULL_FACE);
    gl.Enable(GL_BLEND);
    gl.BlendFuncSeparate(GL_ONE, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    gl.DepthMask(GL_FALSE);
    for (const std::size_t i : clear) {
        for (const GLenum hidden : {GLenum{GL_FRONT}, GLenum{GL_BACK}}) {
            gl.CullFace(hidden);
            draw_piece(scene, frame, i);
        }
    }
    gl.CullFace(GL_BACK);
    gl.DepthMask(GL_TRUE);
    gl.Disable(GL_BLEND);
    gl.Disable(GL_CULL_FACE);
    gl.Disable(GL_DEPTH_TEST);
}

void SceneRenderer::draw_piece(const Scene& scene, const Frame& frame, std::size_t index) {
    const FlyPiece& piece = scene.model->pieces[index];
    const LookProgram look = program_of(is_clear(piece) ? Look::film : piece.look);
    const Program& p = program(look.program);
    p.use();
    p.set("to_view", frame.to_view);
    p.set("to_clip", frame.to_clip);
    p.set("to_shadow", to_unit * frame.to_light);
    p.set("shadow_map", 0);
    p.set("occlusion", 1);
    const int n = supersample_;
    p.set("pixel_size", glm::vec2(1.0F / static_cast<float>(scene.size.width * n),
                                  1.0F / static_cast<float>(scene.size.height * n)));
    p.set("shadow_texel", 1.0F / static_cast<float>(shadow_pixels));
    p.set("shadow_bias",
          2.0F * frame.light_wide / static_cast<float>(shadow_pixels) / (4.0F * frame.reach));
    p.set("perspective", scene.camera.perspective ? 1.0F : 0.0F);
    p.set("middle", frame.middle);
    p.set("lamp_distance", 1.6F * frame.span.y);
    p.set("backdrop_light", card_light(scene.backdrop).seen);
    p.set("colour", glm::vec3(piece.colour[0], piece.colour[1], piece.colour[2]));
    p.set("opacity", piece.opacity);
    const Highlight& h = scene.highlight;
    const bool shown = (h.part < 0 && h.act < 0) || (h.part >= 0 && piece.part == h.part) ||
                       (h.act >= 0 && piece.act == h.act);
    p.set("calm", shown ? 0.0F : 0.62F);
    p.set(look.uniform, look.value);
    pieces_.draw(*gl_, index);
}

} // namespace wrapwright
