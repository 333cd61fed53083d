#include "platform/gl/letters.h"

#include "platform/gl/overlay.h"

#include <imgui.h>

namespace wrapwright {

Letters::Letters() : before_(ImGui::GetCurrentContext()), own_(ImGui::CreateContext()) {
    ImGui::SetCurrentContext(own_);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.DeltaTime = 1.0F / 60.0F;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
    ImGui::SetCurrentContext(before_);
}

Letters::~Letters() { ImGui::DestroyContext(own_); }

Result<bool> Letters::draw(const Gl& gl, const Scene& scene) {
    if (scene.lines.empty() && scene.labels.empty() && scene.hatches.empty()) return true;
    before_ = ImGui::GetCurrentContext();
    ImGui::SetCurrentContext(own_);
    Result<bool> done = draw_current(gl, scene);
    ImGui::SetCurrentContext(before_);
    return done;
}

Result<bool> Letters::draw_current(const Gl& gl, const Scene& scene) {
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
    io.DisplaySize = {static_cast<float>(scene.size.width), static_cast<float>(scene.size.height)};
    ImGui::NewFrame();
    add_overlay(scene, *io.Fonts->Fonts[0], *ImGui::GetBackgroundDrawList());
    ImGui::Render();
    renderer_->draw(*ImGui::GetDrawData());
    return true;
}

} // namespace wrapwright
