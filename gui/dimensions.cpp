#include "gui/dimensions.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

constexpr float row_texts = 1.9F;     // height of a row, in heights of a letter
constexpr float letter_texts = 0.62F; // width of a letter, a little more than the font's mean

int rows_of(const std::vector<Measure>& measures) {
    return static_cast<int>(std::count_if(measures.begin(), measures.end(), [](const Measure& m) {
        return m.where == Measure::Where::row;
    }));
}

bool overlap(const LabelBox& a, const LabelBox& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

// Moves each label off those before it, up or down by whole steps, and into the picture.
void settle_labels(Scene& scene) {
    const glm::vec2 size(scene.size.width, scene.size.height);
    std::vector<LabelBox> taken;
    for (OverlayLabel& label : scene.labels) {
        const glm::vec2 start = label.shift_px;
        for (int n = 0; n < 40; ++n) {
            const int steps = n % 2 == 0 ? -(n / 2) : (n + 1) / 2;
            label.shift_px =
                start + glm::vec2(0.0F, 0.5F * scene.text_px * static_cast<float>(steps));
            const LabelBox box = label_box(scene, label);
            label.shift_px +=
                glm::max(glm::vec2(0.0F), -box.low) - glm::max(glm::vec2(0.0F), box.high - size);
            const LabelBox moved = label_box(scene, label);
            if (std::none_of(taken.begin(), taken.end(),
                             [&](const LabelBox& b) { return overlap(b, moved); })) {
                break;
            }
        }
        taken.push_back(label_box(scene, label));
    }
}

class Layout {
  public:
    Layout(Scene& scene, const std::array<float, 3>& low, const std::array<float, 3>& high)
        : scene_(scene), low_(low[1]), high_(high[1]),
          text_(scene.text_px * scene.camera.height / static_cast<float>(scene.size.height)) {}

    void add(const Measure& m) {
        if (m.where == Measure::Where::beside) {
            const glm::vec2 way = glm::normalize(m.away);
            extend(m.from, m.from + m.away + 0.35F * text_ * way);
            extend(m.to, m.to + m.away + 0.35F * text_ * way);
            line(m.from + m.away, m.to + m.away, LineEnd::arrows);
            // Model +x is to the left for a right-hander, to the right for a left-hander.
            const bool to_right = (way.x < 0.0F) != scene_.camera.mirrored;
            label(0.5F * (m.from + m.to) + m.away, m.label,
                  to_right ? LabelSide::right : LabelSide::left);
            return;
        }
        const float y = high_ + text_ * (1.2F + row_texts * static_cast<float>(row_++));
        extend(m.from, {m.from.x, y + 0.35F * text_});
        extend(m.to, {m.to.x, y + 0.35F * text_});
        line({m.from.x, y}, {m.to.x, y}, LineEnd::arrows);
        const float room = std::abs(m.to.x - m.from.x) / text_ - 1.6F;
        const bool fits = static_cast<float>(m.label.size()) * letter_texts < room;
        const float left =
            scene_.camera.mirrored ? std::min(m.from.x, m.to.x) : std::max(m.from.x, m.to.x);
        if (fits) {
            label({0.5F * (m.from.x + m.to.x), y}, m.label, LabelSide::middle);
        } else {
            const float out = scene_.camera.mirrored ? -1.2F : 1.2F; // past the outer arrow
            label({left + out * text_, y}, m.label, LabelSide::left);
        }
    }

    // Millimetres along the shank, from its front.
    void add_ruler(const BaseRun& base) {
        const auto place = [&](Length at) { return glm::vec2(base.line.position(at) * 1e3).x; };
        const float front = place(base.line.stations().front);
        const float rear = place(base.line.stations().bend);
        const float y = low_ - 1.3F * text_;
        line({front, y}, {rear, y}, LineEnd::plain);
        const bool fine = text_ < 2.2F; // ticks a third of a letter apart at least
        for (int i = 0; front + static_cast<float>(i) <= rear; ++i) {
            const bool long_one = i % 5 == 0;
            if (!long_one && !fine) continue;
            const float x = front + static_cast<float>(i);
            line({x, y}, {x, y + text_ * (long_one ? 0.65F : 0.35F)}, LineEnd::plain);
            if (long_one) label({x, y}, write_rounded(i, 0), LabelSide::below);
        }
        label({rear, y}, "mm", scene_.camera.mirrored ? LabelSide::right : LabelSide::left);
    }

    void add_no_go(const BaseRun& base) {
        if (base.no_go.si <= 0.0 || base.bead != none) return;
        const float half =
            std::max(0.35F * static_cast<float>(in_millimetres(base.hook.eye_diameter.value)),
                     0.3F) +
            0.5F * static_cast<float>(in_millimetres(base.hook.wire.value));
        const auto corner = [&](Length at, float side) {
            const glm::vec2 along(base.line.tangent(at));
            const glm::vec2 p = glm::vec2(base.line.position(at) * 1e3) +
                                side * half * glm::vec2(-along.y, along.x);
            return glm::vec3(p, 0.0F);
        };
        scene_.hatches.push_back({{corner({}, 1.0F), corner(base.no_go, 1.0F),
                                   corner(base.no_go, -1.0F), corner({}, -1.0F)},
                                  Ink::warning});
        const glm::vec3 below = 0.5F * (corner({}, -1.0F) + corner(base.no_go, -1.0F));
        scene_.labels.push_back(
            {below, "for the head " + write_rounded(in_millimetres(base.no_go), 2) + " mm",
             Ink::warning, LabelSide::below, true});
    }

  private:
    void line(glm::vec2 from, glm::vec2 to, LineEnd end) {
        scene_.lines.push_back(
            {glm::vec3(from, 0.0F), glm::vec3(to, 0.0F), Ink::measure, end, 1.4F});
    }
    void extend(glm::vec2 from, glm::vec2 to) {
        scene_.lines.push_back(
            {glm::vec3(from, 0.0F), glm::vec3(to, 0.0F), Ink::faint, LineEnd::plain, 1.0F});
    }
    void label(glm::vec2 at, std::string text, LabelSide side) {
        scene_.labels.push_back({glm::vec3(at, 0.0F), std::move(text), Ink::measure, side, true});
    }

    Scene& scene_;
    float low_, high_;
    float text_; // height of a letter, mm
    int row_ = 0;
};

} // namespace

Margins margins_for(const std::vector<Measure>& measures, PixelSize size, float text_px) {
    const float rows = row_texts * static_cast<float>(rows_of(measures));
    const auto width = static_cast<float>(size.width);
    const auto height = static_cast<float>(size.height);
    // In a small picture the fly keeps its part, and lines and labels lie over it.
    return {0.07F * width, std::min(12.0F * text_px, 0.4F * width),
            std::min(0.03F * height + (0.8F + rows) * text_px, 0.4F * height),
            std::min(0.03F * height + 3.2F * text_px, 0.3F * height)};
}

LabelBox label_box(const Scene& scene, const OverlayLabel& label) {
    const float text = scene.text_px;
    const glm::vec2 half(0.5F * letter_texts * text * static_cast<float>(label.text.size()) +
                             0.3F * text,
                         0.58F * text);
    glm::vec2 middle = in_picture(scene.camera, scene.size, label.at) + label.shift_px;
    const float gap = 0.1F * text; // the plate's rim counts towards it
    switch (label.side) {
    case LabelSide::middle: break;
    case LabelSide::left: middle.x -= half.x + gap; break;
    case LabelSide::right: middle.x += half.x + gap; break;
    case LabelSide::above: middle.y -= half.y + gap; break;
    case LabelSide::below: middle.y += half.y + gap; break;
    }
    return {middle - half, middle + half};
}

void add_dimensions(const std::vector<Measure>& measures, const BaseRun& base,
                    const std::array<float, 3>& low, const std::array<float, 3>& high,
                    Scene& scene) {
    Layout layout(scene, low, high);
    layout.add_no_go(base);
    for (const Measure& m : measures) layout.add(m);
    layout.add_ruler(base);
    settle_labels(scene);
}

} // namespace wrapwright
