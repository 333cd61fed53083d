// The fly in its true size, to hold one's own against, and how the screen learns what a millimetre is.

#include "gui/panel_check_parts.h"

#include "core/check/photo_scale.h"
#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

float dots_to_screen(double dots) {
    return static_cast<float>(dots) / std::max(0.25F, ImGui::GetIO().DisplayFramebufferScale.x);
}

/// A bar of that many mm with a tick at each, words below it.
void check_bar(Ui& ui, const Box& box, float dots, int mm) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = im(ui.colours.ink);
    const float y = box.y + 0.5F * ui.sizes.small;
    list.AddLine({box.x, y}, {box.x + dots * static_cast<float>(mm), y}, ink, 2.0F);
    for (int i = 0; i <= mm; ++i) {
        const float tall = i % 10 == 0 ? 10.0F : i % 5 == 0 ? 7.0F : 4.0F;
        const float x = box.x + dots * static_cast<float>(i);
        list.AddLine({x, y - tall}, {x, y}, ink, 1.0F);
    }
    std::string words = std::to_string(mm);
    words.append(" mm: lay a ruler on the glass");
    write(ui, ui.fonts.small, ui.colours.soft,
          {box.x, y + 4.0F, box.width, ui.fonts.small->FontSize}, words);
}

/// A card held to the glass: its left and right edge are dragged onto its own.
void card(Ui& ui, const Box& box) {
    Typing& t = ui.typing;
    const float dots = dots_to_screen(dots_per_mm(ui.model));
    // Where its long side has no room it stands upright.
    const bool upright = dots * 85.6F > box.width - 6.0F * grid;
    const double side = in_millimetres(upright ? card_height : card_width);
    const double other = in_millimetres(upright ? card_width : card_height);
    if (ui.typing.fresh || t.card_right <= t.card_left) {
        const float wide = std::min(dots * static_cast<float>(side), box.width - 6.0F * grid);
        t.card_left = box.x + 0.5F * (box.width - wide);
        t.card_right = t.card_left + wide;
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float now = (t.card_right - t.card_left) / static_cast<float>(side);
    const float high = std::min(now * static_cast<float>(other), box.height - 2.0F * grid);
    const float top = box.y + 0.5F * (box.height - high);
    list.AddRectFilled({t.card_left, top}, {t.card_right, top + high}, im(ui.colours.field));
    list.AddRect({t.card_left, top}, {t.card_right, top + high}, im(ui.colours.ink), 3.18F * now, 0,
                 2.0F);
    const auto drag = [&](const char* name, float& x, float least, float most) {
        const Box at{x - 0.5F * least_control, top + 0.5F * (high - 2.0F * least_control),
                     least_control, 2.0F * least_control};
        ImGui::SetCursorScreenPos(corner(at));
        ImGui::InvisibleButton(name, {at.width, at.height});
        note_control(ui, name, at);
        const bool held = ImGui::IsItemActive();
        if (held) x = std::clamp(x + ImGui::GetIO().MouseDelta.x, least, most);
        if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible) {
            if (ImGui::IsKeyPressed(ImGuiKey_LeftArrow)) x = std::max(least, x - 1.0F);
            if (ImGui::IsKeyPressed(ImGuiKey_RightArrow)) x = std::min(most, x + 1.0F);
        }
        list.AddRectFilled({x - 6.0F, at.y}, {x + 6.0F, at.bottom()}, im(ui.colours.accent), 4.0F);
        return held;
    };
    const float least = static_cast<float>(side) * 1.0F;
    drag("left edge of the card", t.card_left, box.x, t.card_right - least);
    drag("right edge of the card", t.card_right, t.card_left + least, box.right());
    const float line = ui.fonts.small->FontSize;
    std::string words = "Hold a bank or identity card to the glass, ";
    words.append(upright ? "upright" : "lying")
        .append(", its left edge on the left line, and drag "
                "the lines to its edges: ");
    words.append(
        write_rounded(static_cast<double>(now * ImGui::GetIO().DisplayFramebufferScale.x), 2));
    words.append(" dots in a millimetre.");
    const Box inside{t.card_left + 2.0F * grid, top + grid,
                     t.card_right - t.card_left - 4.0F * grid, high - 2.0F * grid};
    if (inside.width > 6.0F * line) write(ui, ui.fonts.small, ui.colours.ink, inside, words);
}

} // namespace

void check_size(Ui& ui, const Box& box) {
    sheet(ui, box);
    const Model& m = ui.model;
    const Box in = box.inside(1.5F * grid);
    const float high = control_height(ui);
    const float dots = dots_to_screen(dots_per_mm(m));
    const float half = 0.5F * (in.width - grid);
    const Box left{in.x, in.y, half, high}, right{in.x + half + grid, in.y, half, high};
    const Box below{in.x, in.y + high + grid, in.width, in.height - high - grid};
    if (m.check.calibrating) {
        if (button(ui, "This is the card", left, true)) {
            const bool upright = dots * 85.6F > below.width - 6.0F * grid;
            Wish w = wish(WishKind::calibrated);
            w.x = (ui.typing.card_right - ui.typing.card_left) *
                  ImGui::GetIO().DisplayFramebufferScale.x /
                  static_cast<float>(in_millimetres(upright ? card_height : card_width));
            ui.want(std::move(w));
            ui.want(wish(WishKind::calibrate));
            ui.typing.card_left = ui.typing.card_right = 0.0F;
        }
        if (button(ui, "Leave it", right)) ui.want(wish(WishKind::calibrate));
        card(ui, below);
        return;
    }
    const int pressed = stepper(ui, m.check.fold == 1 ? "Life size##fold" : "Enlarged##fold",
                                std::to_string(m.check.fold) + " x", left);
    constexpr std::array<int, 6> folds{1, 2, 3, 5, 10, 20};
    const auto at = std::find(folds.begin(), folds.end(), m.check.fold);
    if (pressed > 0 && at + 1 < folds.end()) ui.want(wish(WishKind::fold, *(at + 1)));
    if (pressed < 0 && at > folds.begin()) ui.want(wish(WishKind::fold, *(at - 1)));
    if (button(ui, "Measure this screen with a card", right)) ui.want(wish(WishKind::calibrate));
    const float bar = 2.0F * ui.sizes.small + 2.0F * grid;
    draw_checked(ui, {below.x, below.y, below.width, below.height - bar},
                 dots * static_cast<float>(m.check.fold));
    check_bar(ui, {below.x, below.bottom() - bar + grid, below.width, bar}, dots, 50);
}

} // namespace wrapwright
