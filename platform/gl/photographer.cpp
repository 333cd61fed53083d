#include "platform/gl/photographer.h"

#include "platform/gl/letters.h"
#include "platform/gl/offscreen.h"
#include "platform/gl/scene_renderer.h"

#include <algorithm>
#include <optional>

namespace wrapwright {

// In the order of need: the context goes last.
struct Photographer::Gear {
    Offscreen offscreen;
    std::optional<SceneRenderer> renderer{};
    Letters letters{};
};

Photographer::Photographer(std::unique_ptr<Gear> gear) : gear_(std::move(gear)) {}
Photographer::Photographer(Photographer&&) noexcept = default;
Photographer::~Photographer() = default;

Result<Photographer> Photographer::open(GlKind kind) {
    Result<Offscreen> offscreen = Offscreen::open(kind);
    if (!offscreen.ok()) return offscreen.error();
    std::unique_ptr<Gear> gear(new Gear{std::move(offscreen).value()});
    Result<SceneRenderer> renderer = SceneRenderer::make(gear->offscreen.gl());
    if (!renderer.ok()) return renderer.error();
    gear->renderer.emplace(std::move(renderer).value());
    return Photographer(std::move(gear));
}

Result<Image> Photographer::take(const Scene& scene) {
    const Gl& gl = gear_->offscreen.gl();
    const Result<Target> target = Target::make(gl, TargetKind::colour, scene.size);
    if (!target.ok()) return target.error();
    const Result<bool> drawn = gear_->renderer->draw(scene, target.value().framebuffer());
    if (!drawn.ok()) return drawn.error();
    const Result<bool> lettered = gear_->letters.draw(gl, scene);
    if (!lettered.ok()) return lettered.error();
    Image image = read_pixels(gl, scene.size);
    if (const GLenum error = gl.GetError(); error != GL_NO_ERROR) {
        return Error{ErrorCode::malformed,
                     "the graphics driver reports error " + std::to_string(error),
                     "update the driver, or report this line"};
    }
    return image;
}

} // namespace wrapwright
