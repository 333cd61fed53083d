// The recipe as a list that is walked with arrows, added to by typing, sorted by keys or by dragging.

#include "gui/panel_edit_parts.h"
#include "gui/touch.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr float drag_start = 10.0F; ///< dots: less is a press

/// A row and where it was drawn, to find what a dragged one is let go over.
struct Drawn {
    const EditRow* row;
    Box box;
};

/// Keys on the row that has them.
void row_keys(Ui& ui, const EditRow& row) {
    const ImGuiIO& io = ImGui::GetIO();
    const RowPlace at = place_of(row.row);
    if (at.list.empty()) return;
    if (ImGui::IsKeyPressed(ImGuiKey_Delete, false)) {
        ui.want(wish(WishKind::edit_drop, 0, row.row));
        ui.typing.edit_row_focus = true;
    }
    if (io.KeyCtrl && ImGui::IsKeyPressed(ImGuiKey_UpArrow)) {
        ui.want(wish(WishKind::edit_move, at.index - 1, row.row));
        ui.typing.edit_row_focus = true;
    }
    if (io.KeyCtrl && ImGui::IsKeyPressed(ImGuiKey_DownArrow)) {
        ui.want(wish(WishKind::edit_move, at.index + 1, row.row));
        ui.typing.edit_row_focus = true;
    }
    if (ImGui::IsKeyPressed(ImGuiKey_Insert, false)) {
        ui.typing.edit_list = at.list;
        ui.typing.edit_line_focus = true;
        if (step_of(at.list).step) {
            Wish w = wish(WishKind::edit_pick);
            w.key = at.list;
            ui.want(std::move(w));
        }
    }
}

/// The line at the end of a list; enter adds what it says and stays for the next.
void add_line(Ui& ui, const EditRow& row, const Box& box) {
    const bool mine = ui.typing.edit_list == row.adds;
    std::string text = mine ? ui.typing.edit_line : std::string();
    if (mine && ui.typing.edit_line_focus) {
        ImGui::SetKeyboardFocusHere();
        ui.typing.edit_line_focus = false;
    }
    const std::string name = "##add to " + row.adds;
    const bool entered = line_edit(ui, name.c_str(), row.label.c_str(), text, box);
    if (ImGui::IsItemActive() || entered || (mine && !text.empty())) {
        if (!mine && ImGui::IsItemActive()) ui.typing.edit_list = row.adds;
        if (ui.typing.edit_list == row.adds) ui.typing.edit_line = text;
    }
    if (!entered || text.empty()) return;
    Wish w = wish(WishKind::edit_add, 0, text);
    w.key = row.adds;
    ui.want(std::move(w));
    ui.typing.edit_line.clear();
    ui.typing.edit_list = row.adds;
    ui.typing.edit_line_focus = true;
}

/// Follows a row that is dragged, and moves it where it is let go.
void drag(Ui& ui, const std::vector<Drawn>& drawn, const Box& list) {
    std::string& dragged = ui.typing.edit_drag;
    if (dragged.empty()) return;
    if (!ImGui::IsMousePosValid()) return dragged.clear(); // a second finger, or a palm
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const float high = control_height(ui); // near the ends the list comes along
    if (mouse.y < list.y + 0.5F * high) ImGui::SetScrollY(ImGui::GetScrollY() - 0.2F * high);
    if (mouse.y > list.bottom() - 0.5F * high) {
        ImGui::SetScrollY(ImGui::GetScrollY() + 0.2F * high);
    }
    const RowPlace from = place_of(dragged);
    const Drawn* over = nullptr;
    for (const Drawn& d : drawn) {
        if (d.row->row == dragged) {
            ImGui::GetWindowDrawList()->AddRect(corner(d.box), far_corner(d.box),
                                                im(ui.colours.accent), 6.0F, 0, 3.0F);
        }
        if (place_of(d.row->row).list != from.list) continue;
        if (over == nullptr || std::abs(mouse.y - (d.box.y + 0.5F * d.box.height)) <
                                   std::abs(mouse.y - (over->box.y + 0.5F * over->box.height))) {
            over = &d;
        }
    }
    if (over == nullptr) return dragged.clear();
    const int to = place_of(over->row->row).index;
    if (to != from.index) {
        const float y = to > from.index ? over->box.bottom() : over->box.y;
        ImGui::GetWindowDrawList()->AddLine({over->box.x, y}, {over->box.right(), y},
                                            im(ui.colours.accent), 4.0F);
    }
    if (ImGui::IsMouseDown(ImGuiMouseButton_Left)) return;
    if (to != from.index) {
        ui.want(wish(WishKind::edit_move, to, dragged));
        ui.typing.edit_row_focus = true;
    }
    dragged.clear();
}

/// One row that can be picked, and where it was drawn.
///
/// While the keys are on their way to another row, the one that has them still is not picked by it.
void entry(Ui& ui, const EditRow& row, const Box& box, bool settling) {
    const EditWork& work = ui.model.edit;
    const bool picked = row.row == work.row && !work.picking;
    const Icon flag = Icon::finding;
    if (picked && ui.typing.edit_row_focus) {
        ImGui::SetKeyboardFocusHere();
        ui.typing.edit_row_focus = false;
        ImGui::SetScrollHereY(0.5F);
    }
    const std::string label = row.label + "###row " + row.row;
    // The name of the fly has the whole line where the line is short.
    const bool alone = row.row.empty() && box.width < 15.0F * ui.sizes.small;
    const bool pressed = row_button(ui, label, alone ? std::string() : row.aside, picked, box,
                                    row.trouble ? &flag : nullptr);
    const bool by_key = pressed && ImGui::IsKeyPressed(ImGuiKey_Enter, false);
    const bool focused = ImGui::IsItemFocused();
    // A finger that slides pushes the list: it has to stay first.
    const bool taken = by_finger() ? stayed()
                                   : ImGui::IsItemActive() &&
                                         ImGui::IsMouseDragging(ImGuiMouseButton_Left, drag_start);
    if (taken && !place_of(row.row).list.empty() && ui.typing.edit_drag.empty()) {
        ui.typing.edit_drag = row.row;
    }
    if ((pressed || (focused && !settling)) && !picked && !work.picking) {
        ui.want(wish(WishKind::edit_row, 0, row.row));
        ui.typing.edit_open.clear();
        ui.typing.edit_spot.clear();
    } else if (pressed && work.picking) {
        ui.want(wish(WishKind::edit_row, 0, row.row));
    }
    if (by_key) ui.typing.edit_focus = 0;
    if (focused && picked) row_keys(ui, row);
}

} // namespace

void edit_outline(Ui& ui, const Box& box) {
    sheet(ui, box);
    const Box in = box.inside(grid);
    const float high = control_height(ui);
    const std::vector<EditRow> rows = rows_of(ui.model.edit);
    std::vector<Drawn> drawn;
    drawn.reserve(rows.size());
    const bool settling = ui.typing.edit_row_focus;
    Scroll scroll(ui, "outline", in);
    for (const EditRow& row : rows) {
        if (row.heading) {
            const Box head = scroll.row(1.8F * ui.sizes.small);
            const float line = ui.fonts.small->FontSize;
            write(ui, ui.fonts.small, ui.colours.soft,
                  {head.x + grid, head.bottom() - line - 2.0F, head.width, line}, row.label);
            continue;
        }
        Box at = scroll.row(high);
        const float in_by = static_cast<float>(row.depth) * 3.0F * grid;
        at.x += in_by;
        at.width -= in_by;
        if (row.pick) {
            const bool open = ui.model.edit.picking;
            if (row_button(ui, "+ " + row.label + "##pick " + row.adds, {}, open, at)) {
                Wish w = wish(WishKind::edit_pick);
                w.key = row.adds;
                ui.want(std::move(w));
                ui.typing.edit_filter.clear();
                ui.typing.edit_list.clear(); // the line of operations gets the keys, and no other
                ui.typing.edit_op_at = 0;
                ui.typing.edit_line_focus = true;
            }
        } else if (!row.adds.empty()) {
            add_line(ui, row, {at.x, at.y + 2.0F, at.width, at.height - 4.0F});
        } else {
            drawn.push_back({&row, at});
            entry(ui, row, at, settling);
        }
    }
    drag(ui, drawn, in);
}

} // namespace wrapwright
