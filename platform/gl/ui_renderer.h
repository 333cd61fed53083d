#pragma once
// Draws Dear ImGui's lists.

#include "gui/camera.h"
#include "platform/gl/program.h"
#include "platform/gl/target.h"

struct ImDrawData;
struct ImFontAtlas;

namespace wrapwright {

/// What drawing ImGui's lists keeps between frames. The Gl must outlive it.
class UiRenderer {
  public:
    /// Builds the font atlas's picture, and tells the atlas its number here.
    ///
    /// Whoever makes the ImGui context sets ImGuiBackendFlags_RendererHasVtxOffset: it is kept.
    /// Fails   malformed when the driver refuses a shader
    [[nodiscard]] static Result<UiRenderer> make(const Gl& gl, ImFontAtlas& fonts);

    /// Draws over what the framebuffer bound now holds; the viewport must cover the lists' display.
    void draw(const ImDrawData& lists);

  private:
    UiRenderer(const Gl& gl, Program program) : gl_(&gl), program_(std::move(program)) {}

    const Gl* gl_;
    Program program_;
    GlTexture font_;
    GlVertexArray array_;
    GlBuffer vertices_, indices_;
};

} // namespace wrapwright
