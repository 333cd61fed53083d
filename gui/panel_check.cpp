#include "gui/panel_check_parts.h"
#include "gui/panels.h"

#include "core/check/faults.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

Colour colour_of(const Palette& c, Fit fit) {
    return fit == Fit::right ? c.good : fit == Fit::a_little ? c.near : c.warn;
}

void fit_sign(Ui& ui, Fit fit, const Box& box) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 colour = im(colour_of(ui.colours, fit));
    const float s = std::min(box.width, box.height);
    const ImVec2 m{box.x + 0.5F * box.width, box.y + 0.5F * box.height};
    const float r = 0.36F * s, thick = std::max(2.0F, 0.1F * s);
    if (fit == Fit::right) {
        const std::array<ImVec2, 3> tick{
            ImVec2{m.x - r, m.y}, {m.x - 0.25F * r, m.y + 0.8F * r}, {m.x + r, m.y - 0.8F * r}};
        list.AddPolyline(tick.data(), 3, colour, 0, thick);
    } else if (fit == Fit::a_little) {
        list.AddTriangle({m.x, m.y - r}, {m.x + r, m.y + 0.8F * r}, {m.x - r, m.y + 0.8F * r},
                         colour, thick);
    } else {
        list.AddLine({m.x - r, m.y - r}, {m.x + r, m.y + r}, colour, thick);
        list.AddLine({m.x - r, m.y + r}, {m.x + r, m.y - r}, colour, thick);
    }
}

const PartTarget* target_for(const Model& model, Measured part) {
    const std::string standard = standard_of(model);
    for (const PartTarget& t : model.check.targets) {
        if (t.part == part && t.standard == standard) return &t;
    }
    return nullptr;
}

const FlyReading* reading_for(const Model& model, int fly, std::string_view part) {
    const auto& all = model.check.readings;
    for (auto it = all.rbegin(); it != all.rend(); ++it) {
        if (it->fly == fly && it->part == part) return &*it;
    }
    return nullptr;
}

std::string advice(const Model& model, const PartTarget& target, const FitCheck& fit) {
    std::string words = fit_words(fit);
    if (fit.fit == Fit::right || !model.fly) return words;
    const OpenFly& fly = *model.fly;
    const auto own = own_measure(fly.pattern, fly.tied, target.part);
    words.append("; ").append(mend_words(
        own ? own->step : none, own ? mend_until(fly.pattern, fly.tied, target.part) : none));
    const FaultWords& fault = words_of(length_fault(target.part, fit.off.si > 0.0));
    words.append(". Usually ").append(fault.cause).append(": ").append(fault.cure).append(".");
    return words;
}

void check_say(Ui& ui, Scroll& scroll, float room, Colour colour, std::string_view text) {
    if (text.empty()) return;
    const float high = height_of(ui.fonts.small, text, room);
    const Box row = scroll.row(high + 0.5F * grid);
    write(ui, ui.fonts.small, colour, {row.x, row.y, room, high + 0.5F}, text);
}

void draw_checked(Ui& ui, const Box& box, float dots_per_mm) {
    if (!ui.model.fly) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const FlyOutline fly =
        outline_of(ui.model.fly->pattern, ui.model.fly->resolved, ui.model.fly->tied);
    FlyPose pose;
    pose.mirrored = ui.model.settings.left_handed;
    const std::vector<TargetMark> marks =
        target_marks(ui.model.fly->pattern, ui.model.fly->tied,
                     only(ui.model.check.targets, standard_of(ui.model)));
    fit(pose, fly, box.inside(std::min(0.12F * box.width, 2.0F * ui.sizes.small)));
    if (dots_per_mm > 0.0F) {
        const auto [low, high] = bounds_of(pose, fly);
        pose.scale = dots_per_mm;
        pose.at = {box.x + 0.5F * box.width - pose.scale * 0.5F * (low.x + high.x),
                   box.y + 0.5F * box.height + pose.scale * 0.5F * (low.y + high.y)};
    }
    list.PushClipRect(corner(box), far_corner(box), true);
    draw_fly(list, fly, pose, ui.colours);
    ImFont* font = ui.fonts.small;
    const float size = reach_size(ui);
    for (const TargetMark& m : marks) {
        const auto tick = [&](const glm::vec2& at, float half, float thick) {
            const ImVec2 p = pose.on(at);
            const ImVec2 q = pose.on(at + m.across);
            const float long_ = std::max(0.01F, std::hypot(q.x - p.x, q.y - p.y));
            const float dx = half * (q.x - p.x) / long_, dy = half * (q.y - p.y) / long_;
            list.AddLine({p.x - dx, p.y - dy}, {p.x + dx, p.y + dy}, im(ui.colours.warn), thick);
            return ImVec2{p.x + dx, p.y + dy};
        };
        const float half = std::min(0.8F * ui.sizes.small, 1.5F * pose.scale);
        list.AddLine(pose.on(m.root), pose.on(m.aim), im(ui.colours.warn, 0.6F), 1.0F);
        tick(m.low, 0.6F * half, 1.5F);
        tick(m.high, 0.6F * half, 1.5F);
        const ImVec2 end = tick(m.aim, half, 3.0F);
        if (pose.scale < 8.0F) continue; // words would lie on one another
        const std::string_view word = name(m.part);
        const float wide =
            font->CalcTextSizeA(size, FLT_MAX, 0.0F, word.data(), word.data() + word.size()).x;
        const float x = std::clamp(end.x - 0.5F * wide, box.x, box.right() - wide);
        const float y = std::clamp(end.y - (end.y < pose.on(m.aim).y ? size : 0.0F), box.y,
                                   box.bottom() - size);
        list.AddText(font, size, {x, y}, im(ui.colours.warn), word.data(),
                     word.data() + word.size());
    }
    list.PopClipRect();
}

void panel_check(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    if (!m.fly || m.fly->tied.moments.empty()) {
        sheet(ui, box);
        write(ui, ui.fonts.small, ui.colours.soft, box.inside(2.0F * grid),
              m.fly ? "This recipe is words alone: there is no fly to measure."
                    : "No fly is open.");
        return;
    }
    constexpr std::array<std::string_view, 4> views{"Targets", "Photo", "True size", "Batch"};
    const float high = control_height(ui);
    const float wide = (box.width - 3.0F * grid) / 4.0F;
    for (std::size_t i = 0; i < views.size(); ++i) {
        const bool on = static_cast<std::size_t>(m.check.view) == i;
        const Box at{box.x + static_cast<float>(i) * (wide + grid), box.y, wide, high};
        if (button(ui, views[i], at, on)) ui.want(wish(WishKind::check_view, static_cast<int>(i)));
    }
    const Box in{box.x, box.y + high + grid, box.width, box.height - high - grid};
    switch (m.check.view) {
    case CheckView::targets: check_targets(ui, in); break;
    case CheckView::photo: check_photo(ui, in); break;
    case CheckView::true_size: check_size(ui, in); break;
    case CheckView::batch: check_batch(ui, in); break;
    }
}

} // namespace wrapwright
