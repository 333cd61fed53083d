// What can be done next: letters narrow the list, enter takes the row, and it stays for the next.

#include "core/recipe/card_line.h"
#include "gui/panel_edit_parts.h"

#include <algorithm>

namespace wrapwright {

namespace {

std::string words_of(const EditWork& work, const NextOp& op) {
    std::string words(name(op.op));
    const auto& parts = work.draft().recipe.parts;
    if (op.part >= 0 && static_cast<std::size_t>(op.part) < parts.size()) {
        words += ": " + parts[static_cast<std::size_t>(op.part)].id;
    }
    return words;
}

bool begins_a_word(const std::string& text, const std::string& word) {
    std::size_t found = text.find(word);
    while (found != std::string::npos && found > 0 && text[found - 1] != ' ' &&
           text[found - 1] != '-') {
        found = text.find(word, found + 1);
    }
    return found != std::string::npos;
}

/// Whether every word of the filter begins a word of the row; what is not possible has no part, so
/// that it is found by any.
bool fits(const EditWork& work, const NextOp& op, const std::string& filter) {
    const std::string row = words_of(work, op);
    const auto& parts = work.draft().recipe.parts;
    std::size_t at = 0;
    while (at < filter.size()) {
        const std::size_t end = std::min(filter.find(' ', at), filter.size());
        const std::string word = filter.substr(at, end - at);
        at = end + 1;
        if (word.empty() || begins_a_word(row, word)) continue;
        const bool names_part = std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
            return begins_a_word(part.id, word);
        });
        if (op.possible || !names_part) return false;
    }
    return true;
}

} // namespace

void edit_choices(Ui& ui, const Box& box) {
    sheet(ui, box);
    const EditWork& work = ui.model.edit;
    Box in = box.inside(1.5F * grid);
    const float high = control_height(ui);
    const float line = ui.fonts.small->FontSize;
    const auto take = [&](float by) {
        in.y += by;
        in.height -= by;
    };
    std::string title = "What is done next in step " + std::to_string(work.pick_step + 1) + "?";
    take(write(ui, ui.fonts.small, ui.colours.soft, {in.x, in.y, in.width, line}, title) +
         0.5F * grid);
    const float done = std::min(6.0F * ui.sizes.small, 0.3F * in.width);
    if (ui.typing.edit_line_focus) {
        ImGui::SetKeyboardFocusHere();
        ui.typing.edit_line_focus = false;
    }
    const std::string before = ui.typing.edit_filter;
    const bool entered =
        line_edit(ui, "##operation", "as tie tail at bend, 3 turns", ui.typing.edit_filter,
                  {in.x, in.y, in.width - done - grid, high});
    const bool typing = ImGui::IsItemActive();
    const bool left =
        (typing || ImGui::IsItemDeactivated()) && ImGui::IsKeyPressed(ImGuiKey_Escape, false);
    if (before != ui.typing.edit_filter) ui.typing.edit_op_at = 0;
    const bool ended = button(ui, "Done", {in.right() - done, in.y, done, high});
    if (ended || left) {
        ui.want(wish(WishKind::edit_pick));
        ui.typing.edit_row_focus = true;
    }
    take(high + grid);
    // "tie tail at bend, 3 turns": the words before say what, those after say where and how much.
    const std::size_t end = operation_end(ui.typing.edit_filter);
    const std::string what = ui.typing.edit_filter.substr(0, end);
    const std::string said = ui.typing.edit_filter.substr(end);
    std::vector<int> rows;
    rows.reserve(work.next.size());
    // Those that begin with what was typed stand first: "rib" is to rib, before binding a rib down.
    const std::string first = what.substr(0, what.find(' '));
    for (const bool leads : {true, false}) {
        for (std::size_t i = 0; i < work.next.size(); ++i) {
            const NextOp& op = work.next[i];
            if (words_of(work, op).starts_with(first) != leads) continue;
            if (fits(work, op, what)) rows.push_back(static_cast<int>(i));
        }
    }
    int& at = ui.typing.edit_op_at;
    const int was = at;
    if (typing && ImGui::IsKeyPressed(ImGuiKey_DownArrow)) ++at;
    if (typing && ImGui::IsKeyPressed(ImGuiKey_UpArrow)) --at;
    at = std::clamp(at, 0, std::max(0, static_cast<int>(rows.size()) - 1));
    const auto pick = [&](int index) {
        ui.want(wish(WishKind::edit_op, index, said));
        ui.typing.edit_line_focus = true;
        if (!work.next[static_cast<std::size_t>(index)].possible) return;
        ui.typing.edit_filter.clear();
        ui.typing.edit_op_at = 0;
    };
    if (entered && !rows.empty()) pick(rows[static_cast<std::size_t>(at)]);
    if (!work.halted.empty() && work.next.empty()) {
        write(ui, ui.fonts.small, ui.colours.warn, in, "Not run yet: " + work.halted);
        return;
    }
    Scroll scroll(ui, "operations", in);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const NextOp& op = work.next[static_cast<std::size_t>(rows[i])];
        const std::string label = words_of(work, op) + "##op " + std::to_string(rows[i]);
        const float room = 0.55F * in.width - 2.0F * grid;
        const float lines =
            op.possible ? 1.0F : std::min(3.0F, height_of(ui.fonts.small, op.why, room) / line);
        const bool picked = static_cast<int>(i) == at;
        const Box row = scroll.row(std::max(high, lines * line + grid));
        if (picked && was != at) {
            ImGui::SetScrollFromPosY(row.y - in.y, 0.5F);
        }
        if (row_button(ui, label, op.why, picked, row, nullptr, !op.possible)) pick(rows[i]);
    }
}

} // namespace wrapwright
