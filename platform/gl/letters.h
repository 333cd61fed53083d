#pragma once
// A scene's overlay, drawn over what a framebuffer holds.

#include "gui/scene.h"
#include "platform/gl/ui_renderer.h"

#include <optional>
#include <span>

struct ImGuiContext;

namespace wrapwright {

/// The font of all letters: Inter Medium, as it was when the program was built.
[[nodiscard]] std::span<const unsigned char> inter_font();

/// Draws overlays through an ImGui context of its own, current only while it is used.
class Letters {
  public:
    Letters();
    Letters(const Letters&) = delete;
    Letters& operator=(const Letters&) = delete;
    ~Letters();

    /// Over the framebuffer that is bound, which must have the scene's size.
    /// Cost    letters of a new size are prepared once
    /// Fails   as UiRenderer::make does
    [[nodiscard]] Result<bool> draw(const Gl& gl, const Scene& scene);

  private:
    [[nodiscard]] Result<bool> draw_current(const Gl& gl, const Scene& scene);

    ImGuiContext* before_;
    ImGuiContext* own_;
    std::optional<UiRenderer> renderer_{};
    float text_px_ = 0.0F;
};

} // namespace wrapwright
