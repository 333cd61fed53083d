#include "gui/icons.h"
#include "gui/panels.h"
#include "gui/touch.h"

#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr float whole_drag = 3.0F; ///< rad, over the height of the picture
constexpr float wheel_step = 1.15F;

} // namespace

const char* wraps_name(Picture which) {
    switch (which) {
    case Picture::own: return "wraps";
    case Picture::fewer: return "wraps, fewer";
    case Picture::more: return "wraps, more";
    }
    return "wraps";
}

void panel_wraps(Ui& ui, const Box& box, Picture which) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    // The picture's first row is its lowest.
    list.AddImage(reinterpret_cast<ImTextureID>(wraps_image(which)), corner(box), far_corner(box),
                  {0.0F, 1.0F}, {1.0F, 0.0F});
    list.AddRect(corner(box), far_corner(box), im(ui.colours.line), 6.0F);

    const float side = control_height(ui);
    const Box turn{box.right() - side - grid, box.y + grid, side, side};
    ImGui::SetNextItemAllowOverlap();
    ImGui::SetCursorScreenPos(corner(box));
    const char* name = wraps_name(which);
    ImGui::InvisibleButton(name, {box.width, box.height},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight);
    note_control(ui, name, box);
    const ImGuiIO& io = ImGui::GetIO();
    if (ImGui::IsItemActive() && (io.MouseDelta.x != 0.0F || io.MouseDelta.y != 0.0F)) {
        const float x = io.MouseDelta.x / box.height;
        const float y = io.MouseDelta.y / box.height;
        const bool shift = ImGui::IsMouseDown(ImGuiMouseButton_Right);
        Wish w = wish(shift ? WishKind::shift : WishKind::orbit);
        w.x = shift ? x : -whole_drag * x;
        w.y = shift ? y : whole_drag * y;
        ui.want(std::move(w));
    }
    if (ImGui::IsItemHovered() && io.MouseWheel != 0.0F) {
        Wish w = wish(WishKind::zoom);
        w.x = std::pow(wheel_step, io.MouseWheel);
        ui.want(std::move(w));
    }
    if (ImGui::IsItemHovered() && io.MouseWheelH != 0.0F && by_finger()) { // two fingers that turn
        Wish w = wish(WishKind::roll);
        w.x = io.MouseWheelH;
        ui.want(std::move(w));
    }
    if (which != Picture::own) return;
    if (icon_button(ui, Icon::turn, "Turn the fly", turn)) ui.want(Command::turn_fly);
}

} // namespace wrapwright
