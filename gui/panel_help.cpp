// Help in place: the keys, the trade's words with drawings, a first tour.

#include "gui/glossary.h"
#include "gui/panels.h"
#include "gui/tour.h"
#include "gui/widgets.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

/// A small hook on which one thing is drawn in the accent's colour.
class HookSketch {
  public:
    HookSketch(Ui& ui, const Box& box)
        : list_(*ImGui::GetWindowDrawList()), soft_(im(ui.colours.soft)), ink_(im(ui.colours.ink)),
          mark_(im(ui.colours.accent)), scale_(std::min(box.width / 120.0F, box.height / 60.0F)),
          x_(box.x + 0.5F * (box.width - 120.0F * scale_)),
          y_(box.y + 0.5F * (box.height - 60.0F * scale_)) {}

    void draw(Sketched what) {
        hook();
        switch (what) {
        case Sketched::nothing: break;
        case Sketched::eye: list_.AddCircle(at(8, 20), 7.0F * scale_, mark_, 0, thick(2.5F)); break;
        case Sketched::shank: line(14, 20, 86, 20, 4.0F); break;
        case Sketched::bend: arc(86, 34, 14.0F, -0.25F, 0.25F, 4.0F); break;
        case Sketched::point:
            list_.AddTriangleFilled(at(52, 48), at(64, 44), at(62, 51), mark_);
            dashes(56, 46, 56, 20);
            break;
        case Sketched::barb:
            line(66, 47, 62, 41, 3.0F);
            dashes(66, 44, 66, 20);
            break;
        case Sketched::gape:
            dashes(62, 22, 62, 46);
            line(58, 22, 66, 22, 2.0F);
            line(58, 46, 66, 46, 2.0F);
            break;
        case Sketched::head: blob(14, 24, 4.0F, 3.0F); break;
        case Sketched::bead: list_.AddCircleFilled(at(19, 20), 8.0F * scale_, mark_); break;
        case Sketched::ballast: coil(26, 56, 4.5F, 3.2F, 0.0F); break;
        case Sketched::tail: fan(84, 18, 114, 10, 6); break;
        case Sketched::body: blob(40, 84, 6.0F, 2.5F); break;
        case Sketched::rib:
            outline(40, 84);
            coil(42, 84, 6.0F, 8.0F, -3.0F);
            break;
        case Sketched::counter_rib:
            outline(40, 84);
            coil(42, 84, 6.0F, 8.0F, -3.0F, soft_);
            coil(44, 84, 6.0F, 8.0F, 3.0F);
            break;
        case Sketched::thorax: blob(20, 42, 9.0F, 6.0F); break;
        case Sketched::hackle: hackle(20, 15.0F, 3); break;
        case Sketched::palmer:
            outline(40, 84);
            for (int i = 0; i < 6; ++i) hackle(42.0F + 8.0F * static_cast<float>(i), 12.0F, 1);
            break;
        case Sketched::wing: fan(24, 17, 84, -2, 7); break;
        case Sketched::wing_case:
            blob(20, 42, 8.0F, 6.0F, soft_);
            arc(31, 22, 13.0F, -0.45F, -0.05F, 3.5F);
            break;
        case Sketched::thread: coil(16, 84, 2.8F, 2.2F, 0.0F); break;
        case Sketched::butt:
            line(46, 17, 84, 17, 3.0F);
            line(84, 17, 108, 12, 3.0F);
            break;
        case Sketched::post:
            line(30, 18, 30, -4, 4.0F);
            for (int i = -4; i <= 4; ++i)
                line(30, 14, 30.0F + 6.0F * static_cast<float>(i), 12, 1.5F);
            break;
        }
    }

  private:
    [[nodiscard]] ImVec2 at(float x, float y) const {
        return {x_ + scale_ * x, y_ + scale_ * (y + 6.0F)};
    }
    [[nodiscard]] float thick(float w) const { return std::max(1.0F, w * scale_); }
    void line(float x, float y, float to_x, float to_y, float w) {
        list_.AddLine(at(x, y), at(to_x, to_y), mark_, thick(w));
    }
    /// Angles in turns, clockwise from the right.
    void arc(float x, float y, float radius, float from, float to, float w) {
        constexpr float turn = 6.2831853F;
        list_.PathArcTo(at(x, y), radius * scale_, from * turn, to * turn);
        list_.PathStroke(mark_, 0, thick(w));
    }
    void dashes(float x, float y, float to_x, float to_y) {
        for (int i = 0; i < 5; ++i) {
            const float a = static_cast<float>(i) / 5.0F, b = a + 0.12F;
            line(x + a * (to_x - x), y + a * (to_y - y), x + b * (to_x - x), y + b * (to_y - y),
                 1.5F);
        }
    }
    void hook() {
        constexpr float turn = 6.2831853F;
        list_.AddCircle(at(8, 20), 5.0F * scale_, ink_, 0, thick(1.8F));
        list_.PathLineTo(at(13, 20));
        list_.PathLineTo(at(86, 20));
        list_.PathArcTo(at(86, 34), 14.0F * scale_, -0.25F * turn, 0.25F * turn);
        list_.PathLineTo(at(52, 48));
        list_.PathStroke(ink_, 0, thick(1.8F));
        list_.AddLine(at(66, 47), at(62, 41), ink_, thick(1.5F));
    }
    void blob(float from, float to, float front, float rear, ImU32 colour) {
        const std::array<ImVec2, 4> corners{at(from, 20 - front), at(to, 20 - rear),
                                            at(to, 20 + rear), at(from, 20 + front)};
        list_.AddConvexPolyFilled(corners.data(), 4, colour);
    }
    void blob(float from, float to, float front, float rear) { blob(from, to, front, rear, mark_); }
    void outline(float from, float to) { blob(from, to, 6.0F, 3.5F, soft_); }
    void coil(float from, float to, float half, float pitch, float slant, ImU32 colour) {
        for (float x = from; x <= to; x += pitch) {
            list_.AddLine(at(x, 20 - half), at(x + slant, 20 + half), colour, thick(1.8F));
        }
    }
    void coil(float from, float to, float half, float pitch, float slant) {
        coil(from, to, half, pitch, slant, mark_);
    }
    void fan(float x, float y, float to_x, float to_y, int fibres) {
        for (int i = 0; i < fibres; ++i) {
            line(x, y, to_x, to_y + 3.0F * static_cast<float>(i), 1.5F);
        }
    }
    void hackle(float x, float reach, int turns) {
        for (int i = 0; i < turns; ++i) {
            const float at_x = x + 3.0F * static_cast<float>(i);
            line(at_x, 20, at_x + 4.0F, 20 - reach, 1.5F);
            line(at_x, 20, at_x + 4.0F, 20 + reach, 1.5F);
            line(at_x, 20, at_x + 9.0F, 20 - 0.7F * reach, 1.2F);
            line(at_x, 20, at_x + 9.0F, 20 + 0.7F * reach, 1.2F);
        }
    }

    ImDrawList& list_;
    ImU32 soft_, ink_, mark_;
    float scale_, x_, y_;
};

void words_panel(Ui& ui, const Box& in) {
    const auto words = glossary();
    const float high = std::max(control_height(ui), 3.0F * ui.sizes.small);
    const float picture = std::min(2.0F * high, 0.3F * in.width);
    Scroll scroll(ui, "glossary", in);
    for (const GlossaryWord& one : words) {
        Box row = scroll.row(0.0F);
        const float room = row.width - picture - 2.0F * grid;
        const float line = ui.fonts.small->FontSize;
        const float text = line + height_of(ui.fonts.small, one.meaning, room);
        row = scroll.row(std::max(high, text + grid) + 0.5F * grid);
        if (one.sketch != Sketched::nothing) {
            HookSketch(ui, {row.x, row.y, picture, high}).draw(one.sketch);
        }
        const float x = row.x + picture + 2.0F * grid;
        write(ui, ui.fonts.small, ui.colours.ink, {x, row.y, room, line}, one.word);
        write(ui, ui.fonts.small, ui.colours.soft, {x, row.y + line, room, row.height - line},
              one.meaning);
    }
}

void tour_panel(Ui& ui, const Box& box) {
    Box in = box;
    const float told = write(
        ui, ui.fonts.small, ui.colours.ink, in,
        "Five minutes with the fly that is open: from what to lay out to its place in the water. "
        "Each stop says one thing and leaves the screen to you; it can be left at any moment.");
    in.y += told + grid;
    const float high = control_height(ui);
    if (button(ui, "Begin the tour", {in.x, in.y, std::min(in.width, 14.0F * ui.sizes.small), high},
               true)) {
        ui.want(wish(WishKind::tour, 0));
    }
    in.y += high + 2.0F * grid;
    in.height = box.bottom() - in.y;
    Scroll scroll(ui, "stops", in);
    int number = 1;
    for (const TourStop& stop : tour_stops()) {
        std::string words = std::to_string(number++) + ". ";
        words += stop.title;
        const Box row = scroll.row(ui.fonts.small->FontSize + grid);
        write(ui, ui.fonts.small, ui.colours.soft, row, words);
    }
}

} // namespace

void panel_help(Ui& ui, const Box& box) {
    constexpr std::array<std::string_view, 3> views{"Keys", "Words", "Tour"};
    const float high = control_height(ui);
    const float wide = (box.width - 2.0F * grid) / 3.0F;
    for (std::size_t i = 0; i < views.size(); ++i) {
        const bool on = static_cast<std::size_t>(ui.model.help_view) == i;
        const Box at{box.x + static_cast<float>(i) * (wide + grid), box.y, wide, high};
        std::string label(views[i]);
        label += "##help";
        if (button(ui, label, at, on)) ui.want(wish(WishKind::help_view, static_cast<int>(i)));
    }
    const Box in{box.x, box.y + high + grid, box.width, box.height - high - grid};
    if (ui.model.help_view == HelpView::keys) return panel_keys(ui, in);
    sheet(ui, in);
    if (ui.model.help_view == HelpView::words) return words_panel(ui, in.inside(2.0F * grid));
    tour_panel(ui, in.inside(2.0F * grid));
}

float panel_tour(Ui& ui, const Box& all) {
    const auto stops = tour_stops();
    const int at = ui.model.tour;
    if (at < 0 || static_cast<std::size_t>(at) >= stops.size()) return 0.0F;
    const TourStop& stop = stops[static_cast<std::size_t>(at)];
    const float high = control_height(ui);
    const float wide = std::min(7.0F * ui.sizes.small, 0.16F * all.width);
    const float room = all.width - 2.0F * wide - 6.0F * grid;
    std::string words = std::to_string(at + 1) + "/" + std::to_string(stops.size()) + "  ";
    words += stop.words;
    const float text = std::min(height_of(ui.fonts.small, words, room), 0.45F * all.height);
    const float tall = std::max(high, text) + 2.0F * grid;
    const Box box{all.x, all.bottom() - tall, all.width, tall};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.field), 6.0F);
    list.AddRect(corner(box), far_corner(box), im(ui.colours.accent), 6.0F, 0, 2.0F);
    write(ui, ui.fonts.small, ui.colours.ink,
          {box.x + 1.5F * grid, box.y + grid, room, tall - 2.0F * grid + 1.0F}, words);
    const bool last = static_cast<std::size_t>(at) + 1 == stops.size();
    const float x = box.right() - 2.0F * (wide + grid);
    const Box next{x, box.y + grid, wide, high};
    if (button(ui, last ? "That is all" : "Go on", next, true)) {
        ui.want(wish(WishKind::tour, last ? -1 : at + 1));
    }
    if (button(ui, "Leave", {x + wide + grid, box.y + grid, wide, high})) {
        ui.want(wish(WishKind::tour, -1));
    }
    return tall + grid;
}

} // namespace wrapwright
