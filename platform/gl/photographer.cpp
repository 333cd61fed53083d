#include "platform/gl/photographer.h"

#include "platform/gl/letters.h"
#include "platform/gl/offscreen.h"
#include "platform/gl/scene_renderer.h"

#include <algorithm>
#include <optional>

namespace wrapwright {

namespace {

Image read_pixels(const Gl& gl, PixelSize size) {
    Image image{size, {}};
    const std::size_t row = 4 * static_cast<std::size_t>(size.width);
    image.rgba.resize(row * static_cast<std::size_t>(size.height));
    gl.PixelStorei(GL_PACK_ALIGNMENT, 4);
    gl.ReadPixels(0, 0, size.width, size.height, GL_RGBA, GL_UNSIGNED_BYTE, image.rgba.data());
    // GL's rows start at the bottom.
    const auto rows = static_cast<std::size_t>(size.height);
    for (std::size_t y = 0; y < rows / 2; ++y) {
        const auto upper = image.rgba.begin() + static_cast<std::ptrdiff_t>(y * row);
        std::swap_ranges(upper, upper + static_cast<std::ptrdiff_t>(row),
                         image.rgba.begin() + static_cast<std::ptrdiff_t>((rows - 1 - y) * row));
    }
    return image;
}

} // namespace

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
