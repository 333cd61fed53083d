#include "platform/gl/photographer.h"

#include "platform/gl/offscreen.h"
#include "platform/gl/overlay.h"
#include "platform/gl/scene_renderer.h"
#include "platform/gl/ui_renderer.h"

#include <algorithm>
#include <imgui.h>
#include <optional>
#include <span>

namespace wrapwright {

std::span<const unsigned char> inter_font(); // embedded by the build

namespace {

// An ImGui context that is current only while it is used.
class Letters {
  public:
    Letters() : before_(ImGui::GetCurrentContext()), own_(ImGui::CreateContext()) {
        ImGui::SetCurrentContext(own_);
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.LogFilename = nullptr;
        io.DeltaTime = 1.0F / 60.0F;
        io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
        ImGui::SetCurrentContext(before_);
    }
    Letters(const Letters&) = delete;
    Letters& operator=(const Letters&) = delete;
    ~Letters() { ImGui::DestroyContext(own_); }

    Result<bool> draw(const Gl& gl, const Scene& scene) {
        before_ = ImGui::GetCurrentContext();
        ImGui::SetCurrentContext(own_);
        Result<bool> done = draw_current(gl, scene);
        ImGui::SetCurrentContext(before_);
        return done;
    }

  private:
    Result<bool> draw_current(const Gl& gl, const Scene& scene) {
        ImGuiIO& io = ImGui::GetIO();
        if (!renderer_ || text_px_ != scene.text_px) { // exact: the same number again
            io.Fonts->Clear();
            ImFontConfig config;
            config.FontDataOwnedByAtlas = false;
            const std::span<const unsigned char> font = inter_font();
            // ImGui takes a plain pointer and, not owning the data, only reads it.
            io.Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(font.data()),
                                           static_cast<int>(font.size()), scene.text_px, &config,
                                           io.Fonts->GetGlyphRangesDefault());
            Result<UiRenderer> made = UiRenderer::make(gl, *io.Fonts);
            if (!made.ok()) return made.error();
            renderer_.emplace(std::move(made).value());
            text_px_ = scene.text_px;
        }
        io.DisplaySize = {static_cast<float>(scene.size.width),
                          static_cast<float>(scene.size.height)};
        ImGui::NewFrame();
        add_overlay(scene, *io.Fonts->Fonts[0], *ImGui::GetBackgroundDrawList());
        ImGui::Render();
        renderer_->draw(*ImGui::GetDrawData());
        return true;
    }

    ImGuiContext* before_;
    ImGuiContext* own_;
    std::optional<UiRenderer> renderer_;
    float text_px_ = 0.0F;
};

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
    if (!scene.lines.empty() || !scene.labels.empty() || !scene.hatches.empty()) {
        const Result<bool> lettered = gear_->letters.draw(gl, scene);
        if (!lettered.ok()) return lettered.error();
    }
    Image image = read_pixels(gl, scene.size);
    if (const GLenum error = gl.GetError(); error != GL_NO_ERROR) {
        return Error{ErrorCode::malformed,
                     "the graphics driver reports error " + std::to_string(error),
                     "update the driver, or report this line"};
    }
    return image;
}

} // namespace wrapwright
