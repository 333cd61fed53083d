#include "platform/gl/overlay.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <imgui.h>

namespace wrapwright {

namespace {

ImU32 colour_of(Backdrop backdrop, Ink ink) {
    const bool light = backdrop == Backdrop::light;
    switch (ink) {
    case Ink::measure: return light ? IM_COL32(26, 36, 48, 255) : IM_COL32(226, 232, 238, 255);
    case Ink::faint: return light ? IM_COL32(26, 36, 48, 96) : IM_COL32(226, 232, 238, 96);
    case Ink::warning: return light ? IM_COL32(178, 52, 24, 255) : IM_COL32(246, 140, 92, 255);
    }
    assertion_failed();
}

ImU32 plate_of(Backdrop backdrop) {
    return backdrop == Backdrop::light ? IM_COL32(206, 208, 210, 215) : IM_COL32(62, 63, 65, 215);
}

ImVec2 im(glm::vec2 p) { return {p.x, p.y}; }

// ImGui draws lines half a pixel further on, for those who count pixels and not places.
ImVec2 im_line(glm::vec2 p) { return {p.x - 0.5F, p.y - 0.5F}; }

class Overlay {
  public:
    Overlay(const Scene& scene, ImFont& font, ImDrawList& list)
        : scene_(scene), font_(font), list_(list) {}

    void add(const OverlayLine& line) {
        const ImU32 ink = colour_of(scene_.backdrop, line.ink);
        const glm::vec2 from = place(line.from);
        const glm::vec2 to = place(line.to);
        list_.AddLine(im_line(from), im_line(to), ink, line.width_px);
        const float length = glm::distance(from, to);
        if (line.end != LineEnd::arrows || length < 1.0F) return;
        const glm::vec2 way = (to - from) / length;
        // Between ends too close for two arrows they point in from outside.
        const float arrow = 0.55F * scene_.text_px;
        const bool outside = length < 2.6F * arrow;
        add_arrow(from, outside ? way : -way, arrow, ink);
        add_arrow(to, outside ? -way : way, arrow, ink);
        if (outside) {
            list_.AddLine(im_line(from), im_line(from - 2.2F * arrow * way), ink, line.width_px);
            list_.AddLine(im_line(to), im_line(to + 2.2F * arrow * way), ink, line.width_px);
        }
    }

    void add(const OverlayHatch& hatch) {
        const ImU32 ink = colour_of(scene_.backdrop, hatch.ink);
        std::array<glm::vec2, 4> c{};
        std::transform(hatch.corners.begin(), hatch.corners.end(), c.begin(),
                       [&](glm::vec3 p) { return place(p); });
        const ImU32 bare = ink & ~IM_COL32_A_MASK;
        const ImU32 veil = bare | (24U << IM_COL32_A_SHIFT);
        const ImU32 thin = bare | (120U << IM_COL32_A_SHIFT);
        list_.AddQuadFilled(im(c[0]), im(c[1]), im(c[2]), im(c[3]), veil);
        // From one way round to the other, both ways evenly: lines along one diagonal.
        const float around = glm::distance(c[0], c[1]) + glm::distance(c[1], c[2]);
        const int lines = std::max(2, static_cast<int>(around / (0.55F * scene_.text_px)));
        for (int i = 1; i < lines; ++i) {
            const float t = 2.0F * static_cast<float>(i) / static_cast<float>(lines);
            const auto on = [t](glm::vec2 a, glm::vec2 b, glm::vec2 d) {
                return t < 1.0F ? glm::mix(a, b, t) : glm::mix(b, d, t - 1.0F);
            };
            list_.AddLine(im_line(on(c[0], c[1], c[2])), im_line(on(c[0], c[3], c[2])), thin, 1.0F);
        }
        list_.AddQuad(im(c[0]), im(c[1]), im(c[2]), im(c[3]), ink, 1.2F);
    }

    void add(const OverlayLabel& label) {
        const char* first = label.text.data();
        const char* last = first + label.text.size();
        const ImVec2 size = font_.CalcTextSizeA(scene_.text_px, 1e6F, 0.0F, first, last);
        const glm::vec2 half(0.5F * size.x, 0.5F * size.y);
        const float gap = 0.4F * scene_.text_px;
        glm::vec2 middle = place(label.at) + label.shift_px;
        switch (label.side) {
        case LabelSide::middle: break;
        case LabelSide::left: middle.x -= half.x + gap; break;
        case LabelSide::right: middle.x += half.x + gap; break;
        case LabelSide::above: middle.y -= half.y + gap; break;
        case LabelSide::below: middle.y += half.y + gap; break;
        }
        // On whole pixels, where the letters are sharpest.
        const glm::vec2 corner = glm::floor(middle - half);
        if (label.plate) {
            const glm::vec2 rim(0.3F * scene_.text_px, 0.08F * scene_.text_px);
            list_.AddRectFilled(im(corner - rim), im(corner + 2.0F * half + rim),
                                plate_of(scene_.backdrop), 0.25F * scene_.text_px);
        }
        list_.AddText(&font_, scene_.text_px, im(corner), colour_of(scene_.backdrop, label.ink),
                      first, last);
    }

  private:
    [[nodiscard]] glm::vec2 place(glm::vec3 p) const {
        return in_picture(scene_.camera, scene_.size, p);
    }
    void add_arrow(glm::vec2 tip, glm::vec2 way, float length, ImU32 ink) {
        const glm::vec2 side(-way.y, way.x);
        const glm::vec2 back = tip - length * way;
        list_.AddTriangleFilled(im(tip), im(back + 0.3F * length * side),
                                im(back - 0.3F * length * side), ink);
    }

    const Scene& scene_;
    ImFont& font_;
    ImDrawList& list_;
};

} // namespace

void add_overlay(const Scene& scene, ImFont& font, ImDrawList& list) {
    Overlay overlay(scene, font, list);
    for (const OverlayHatch& hatch : scene.hatches) overlay.add(hatch);
    for (const OverlayLine& line : scene.lines) overlay.add(line);
    for (const OverlayLabel& label : scene.labels) overlay.add(label);
}

} // namespace wrapwright
