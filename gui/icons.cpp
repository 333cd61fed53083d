#include "gui/icons.h"

#include "gui/touch.h"

#include <cmath>
#include <initializer_list>
#include <numbers>

namespace wrapwright {

namespace {

/// A pen in a box whose sides are 24 long.
class Pen {
  public:
    Pen(ImDrawList& list, const Box& box, ImU32 colour)
        : list_(list), box_(box), colour_(colour), scale_(box.width / 24.0F),
          width_(std::max(1.5F, 2.0F * scale_)) {}

    [[nodiscard]] ImVec2 at(float x, float y) const {
        return {box_.x + x * scale_, box_.y + y * scale_};
    }
    void line(std::initializer_list<ImVec2> points, bool closed = false) {
        for (const ImVec2& p : points) list_.PathLineTo(at(p.x, p.y));
        list_.PathStroke(colour_, closed ? ImDrawFlags_Closed : 0, width_);
    }
    /// Angles in turns, clockwise from the right.
    void arc(float x, float y, float radius, float from, float to) {
        constexpr float turn = 2.0F * std::numbers::pi_v<float>;
        list_.PathArcTo(at(x, y), radius * scale_, from * turn, to * turn);
        list_.PathStroke(colour_, 0, width_);
    }
    void dot(float x, float y, float radius) {
        list_.AddCircleFilled(at(x, y), radius * scale_, colour_);
    }

  private:
    ImDrawList& list_;
    Box box_;
    ImU32 colour_;
    float scale_, width_;
};

void draw_lists(Pen& pen, Icon icon) {
    switch (icon) {
    case Icon::lay_out:
        for (const float y : {6.0F, 12.0F, 18.0F}) {
            pen.line({{3, y}, {5, y + 2}, {8, y - 2}});
            pen.line({{11, y}, {21, y}});
        }
        break;
    case Icon::library:
        pen.line({{3, 4}, {21, 4}, {21, 20}, {3, 20}}, true);
        pen.line({{3, 12}, {21, 12}});
        pen.line({{9, 4}, {9, 20}});
        pen.line({{15, 4}, {15, 20}});
        break;
    case Icon::settings:
        pen.line({{3, 6}, {21, 6}});
        pen.line({{3, 12}, {21, 12}});
        pen.line({{3, 18}, {21, 18}});
        pen.dot(8, 6, 2.6F);
        pen.dot(16, 12, 2.6F);
        pen.dot(10, 18, 2.6F);
        break;
    case Icon::keys:
        pen.line({{4, 4}, {20, 4}, {20, 17}, {4, 17}}, true);
        pen.line({{4, 17}, {2, 21}, {22, 21}, {20, 17}});
        pen.line({{9, 13}, {9, 8}});
        pen.line({{14, 8}, {9, 11}, {14, 13}});
        break;
    case Icon::write:
        pen.line({{13, 4}, {4, 4}, {4, 21}, {18, 21}, {18, 13}});
        pen.line({{7, 9}, {12, 9}});
        pen.line({{7, 17}, {15, 17}});
        pen.line({{10, 14}, {11, 10.5F}, {19, 2.5F}, {21.5F, 5}, {13.5F, 13}}, true);
        break;
    case Icon::drop:
        pen.line({{12, 3}, {6.5F, 11.5F}});
        pen.line({{12, 3}, {17.5F, 11.5F}});
        pen.arc(12, 14.5F, 6.3F, -0.08F, 0.58F);
        pen.line({{9, 15}, {12, 18}, {15, 15}});
        break;
    default: break;
    }
}

void draw_acts(Pen& pen, Icon icon) {
    switch (icon) {
    case Icon::back: pen.line({{15, 4}, {7, 12}, {15, 20}}); break;
    case Icon::undo:
        pen.arc(13, 13, 7, 0.55F, 1.2F);
        pen.line({{2, 7}, {6, 12}, {11, 8}});
        break;
    case Icon::broken:
        pen.line({{2, 17}, {7, 13}, {10, 13}});
        pen.line({{14, 10}, {17, 10}, {22, 6}});
        pen.line({{10, 9}, {9, 5}});
        pen.line({{14, 14}, {15, 18}});
        break;
    case Icon::changed:
        pen.line({{4, 20}, {5, 15}, {16, 4}, {20, 8}, {9, 19}}, true);
        pen.line({{13, 7}, {17, 11}});
        break;
    case Icon::spoilt:
        pen.line({{20, 6}, {8, 6}});
        pen.arc(8, 11.5F, 5.5F, 0.25F, 0.75F);
        pen.line({{8, 17}, {13, 17}});
        pen.line({{4, 21}, {20, 3}});
        break;
    case Icon::bare:
        pen.line({{21, 6}, {8, 6}});
        pen.arc(8, 11.5F, 5.5F, 0.25F, 0.75F);
        pen.line({{8, 17}, {15, 17}});
        pen.line({{15, 17}, {12, 14}});
        break;
    case Icon::on:
        pen.line({{4, 6}, {10, 12}, {4, 18}});
        pen.line({{12, 6}, {18, 12}, {12, 18}});
        break;
    case Icon::turn:
        pen.line({{2, 12}, {22, 12}});
        pen.arc(12, 12, 8, 0.55F, 0.95F);
        pen.line({{16, 5}, {19.5F, 10}, {14, 10}});
        break;
    default: break;
    }
}

void draw_marks(Pen& pen, Icon icon) {
    switch (icon) {
    case Icon::warning:
        pen.line({{12, 3}, {22, 20}, {2, 20}}, true);
        pen.line({{12, 9}, {12, 14}});
        pen.dot(12, 17, 1.3F);
        break;
    case Icon::finding: pen.line({{6, 22}, {6, 3}, {19, 7}, {6, 12}}); break;
    case Icon::anchor:
        pen.arc(9, 12, 5, 0.1F, 0.9F);
        pen.arc(15, 12, 5, 0.6F, 1.4F);
        pen.line({{2, 12}, {4, 12}});
        pen.line({{20, 12}, {22, 12}});
        break;
    case Icon::ticked:
        pen.line({{3, 3}, {21, 3}, {21, 21}, {3, 21}}, true);
        pen.line({{7, 12}, {11, 16}, {18, 7}});
        break;
    case Icon::empty: pen.line({{3, 3}, {21, 3}, {21, 21}, {3, 21}}, true); break;
    case Icon::film:
        pen.line({{3, 5}, {21, 5}, {21, 19}, {3, 19}}, true);
        pen.line({{10, 9}, {15, 12}, {10, 15}}, true);
        break;
    case Icon::what_if:
        pen.line({{3, 18}, {6, 6}, {9, 18}, {12, 6}});
        pen.line({{15, 18}, {18, 6}, {21, 18}});
        break;
    case Icon::caliper:
        pen.line({{3, 6}, {21, 6}});
        pen.line({{5, 3}, {5, 20}, {9, 13}, {9, 6}});
        pen.line({{19, 3}, {19, 20}, {15, 13}, {15, 6}});
        break;
    case Icon::orders:
        pen.line({{5, 3},
                  {19, 3},
                  {19, 21},
                  {16.6F, 19},
                  {14.3F, 21},
                  {12, 19},
                  {9.7F, 21},
                  {7.4F, 19},
                  {5, 21},
                  {5, 3}});
        pen.line({{8, 8}, {16, 8}});
        pen.line({{8, 12}, {13, 12}});
        break;
    case Icon::star:
        pen.line({{12, 3},
                  {14.5F, 9.2F},
                  {21, 9.6F},
                  {16, 14},
                  {17.6F, 20.5F},
                  {12, 17},
                  {6.4F, 20.5F},
                  {8, 14},
                  {3, 9.6F},
                  {9.5F, 9.2F}},
                 true);
        break;
    default: break;
    }
}

} // namespace

void draw_icon(ImDrawList& list, Icon icon, const Box& box, ImU32 colour) {
    Pen pen(list, box, colour);
    draw_lists(pen, icon);
    draw_acts(pen, icon);
    draw_marks(pen, icon);
}

bool icon_button(Ui& ui, Icon icon, std::string_view label, const Box& box) {
    const std::string name(label);
    ImGui::SetCursorScreenPos(corner(box));
    const bool pressed =
        meant(ui, name, ImGui::InvisibleButton(name.c_str(), {box.width, box.height}));
    note_control(ui, name, box);
    const bool under = ImGui::IsItemHovered() || ImGui::IsItemActive();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (under) list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.field), 6.0F);
    if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible) {
        list.AddRect(corner(box), far_corner(box), im(ui.colours.ink), 6.0F, 0, 3.0F);
    }
    const std::string words = name.substr(0, name.find("##"));
    ImFont* font = ui.fonts.small;
    const auto width_at = [&](float dots) {
        return font->CalcTextSizeA(dots, FLT_MAX, 0.0F, words.c_str()).x;
    };
    float size = std::min(reach_size(ui), 0.38F * box.height);
    size = std::max(10.0F, std::min(size, size * (box.width - 6.0F) / width_at(size)));
    const float wide = width_at(size);
    const bool captioned = wide + 4.0F <= box.width && 2.1F * size + 6.0F <= box.height;
    const float room = captioned ? box.height - size - 4.0F : box.height;
    const float side = std::min(0.6F * box.width, captioned ? 0.8F * room : 0.55F * room);
    draw_icon(list, icon,
              {box.x + 0.5F * (box.width - side), box.y + 0.5F * (room - side), side, side},
              im(ui.colours.ink));
    if (captioned) {
        list.AddText(font, size, {box.x + 0.5F * (box.width - wide), box.bottom() - size - 3.0F},
                     im(ui.colours.ink), words.c_str());
        return pressed;
    }
    if (under) ImGui::SetTooltip("%s", words.c_str());
    return pressed;
}

} // namespace wrapwright
