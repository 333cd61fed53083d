#include "gui/grid.h"

#include "gui/field.h"
#include "gui/touch.h"
#include "gui/widgets.h"

#include <algorithm>
#include <imgui_internal.h>
#include <imgui_stdlib.h>

namespace wrapwright {

namespace {

/// One grid being drawn.
class Draw {
  public:
    Draw(Ui& ui, const Box& box, const std::vector<GridColumn>& columns, const GridRows& rows,
         GridPlace& at)
        : ui_(ui), box_(box), columns_(columns), rows_(rows), at_(at), size_(reach_size(ui)),
          high_(std::max(least_control, 1.6F * size_)) {
        at_.row = std::clamp(at_.row, 0, std::max(0, rows_.count - 1));
        at_.column = std::clamp(at_.column, 0, count() - 1);
    }

    GridAnswer run(const char* name, int sorted_by, bool sorted_down) {
        const int row_before = at_.row;
        if (!at_.editing) walk();
        measure();
        heading(sorted_by, sorted_down);
        cells(name);
        sums();
        answer_.moved = answer_.moved || at_.row != row_before;
        return std::move(answer_);
    }

  private:
    [[nodiscard]] int count() const { return static_cast<int>(columns_.size()); }
    [[nodiscard]] const GridColumn& column(int c) const {
        return columns_[static_cast<std::size_t>(c)];
    }
    [[nodiscard]] std::string title(int c) const { return std::string(column(c).title); }
    [[nodiscard]] float wide(int c) const { return widths_[static_cast<std::size_t>(c)]; }
    [[nodiscard]] float x_of(int c) const { return xs_[static_cast<std::size_t>(c)]; }

    /// What stands in the cell, to be gone on with.
    [[nodiscard]] std::string text_at(int r, int c) const {
        return r == rows_.fresh ? std::string() : rows_.text(r, c);
    }

    void begin_edit(std::string text) {
        if (column(at_.column).fixed) return;
        at_.editing = at_.fresh_edit = true;
        at_.began = ImGui::GetFrameCount();
        at_.text = std::move(text);
    }

    /// Takes the letters that were typed since the last frame.
    static std::string letters() {
        std::string typed;
        auto& queue = ImGui::GetIO().InputQueueCharacters;
        for (const ImWchar c : queue) {
            if (c < 32) continue;
            char utf8[5] = {};
            typed += ImTextCharToUtf8(utf8, c);
        }
        queue.resize(0);
        return typed;
    }

    /// Whether letters came before any key, where a slow frame brought both at once.
    static bool letters_first() {
        for (const ImGuiInputEvent& event : ImGui::GetCurrentContext()->InputEventsTrail) {
            if (event.Type == ImGuiInputEventType_Text) return true;
            if (event.Type == ImGuiInputEventType_Key && event.Key.Down) return false;
        }
        return false;
    }

    /// Arrows, and what begins an edit; nothing while another field has the letters.
    void walk() {
        ImGuiIO& io = ImGui::GetIO();
        // The toolkit still says so in the frame after an edit.
        const bool others = io.WantTextInput && ImGui::GetFrameCount() > at_.ended + 1;
        if (others || ui_.model.sheet != Sheet::closed || ui_.typing.fresh) return;
        const auto pressed = [](ImGuiKey key) { return ImGui::IsKeyPressed(key); };
        const int page = std::max(1, static_cast<int>(box_.height / high_) - 2);
        const bool tab = pressed(ImGuiKey_Tab);
        const bool enter = pressed(ImGuiKey_Enter) || pressed(ImGuiKey_KeypadEnter);
        const bool open = rows_.count > 0 && !column(at_.column).fixed;
        if ((tab || enter) && open && letters_first()) { // the whole edit in one frame
            begin_edit(letters());
            end_edit(at_.text, enter ? 1 : 0, enter ? 0 : io.KeyShift ? -1 : 1);
            return;
        }
        if (pressed(ImGuiKey_DownArrow)) ++at_.row;
        if (pressed(ImGuiKey_UpArrow)) --at_.row;
        if (pressed(ImGuiKey_PageDown)) at_.row += page;
        if (pressed(ImGuiKey_PageUp)) at_.row -= page;
        if (pressed(ImGuiKey_LeftArrow)) --at_.column;
        if (pressed(ImGuiKey_RightArrow)) ++at_.column;
        if (tab) at_.column += io.KeyShift ? -1 : 1;
        if (pressed(ImGuiKey_Home)) io.KeyCtrl ? at_.row = 0 : at_.column = 0;
        if (pressed(ImGuiKey_End)) {
            io.KeyCtrl ? at_.row = rows_.count - 1 : at_.column = count() - 1;
        }
        at_.row = std::clamp(at_.row, 0, std::max(0, rows_.count - 1));
        at_.column = std::clamp(at_.column, 0, count() - 1);
        if (rows_.count == 0) return;
        if (enter || pressed(ImGuiKey_F2)) {
            begin_edit(text_at(at_.row, at_.column));
            return;
        }
        if (pressed(ImGuiKey_Delete) && io.KeyCtrl) answer_.remove = true;
        if (pressed(ImGuiKey_Delete) && !io.KeyCtrl && !column(at_.column).fixed) {
            end_edit({}, 0, 0);
            return;
        }
        if (io.KeyCtrl || io.KeyAlt) return;
        // Letters begin anew what stands in the cell.
        std::string typed = letters();
        if (!typed.empty()) begin_edit(std::move(typed));
    }

    void end_edit(std::string text, int down, int on) {
        answer_.edited = true;
        answer_.row = at_.row;
        answer_.column = at_.column;
        answer_.text = std::move(text);
        at_.editing = false;
        at_.ended = ImGui::GetFrameCount();
        at_.row = std::max(0, at_.row + down); // past the last: the new row to come
        at_.column = std::clamp(at_.column + on, 0, count() - 1);
        if (down != 0) answer_.moved = true;
    }

    /// Columns that fit, from the first in sight on, so that the one that is stood at is among them;
    /// pinned ones that would be gone stand before them.
    void measure() {
        const float letter = 0.56F * size_;
        widths_.clear();
        for (const GridColumn& c : columns_) {
            const auto title = static_cast<float>(c.title.size()) + 1.5F;
            widths_.push_back(std::max(c.letters, title) * letter + 1.5F * grid);
        }
        const float room = box_.width - 3.0F * grid;
        const auto pinned = [&](int before) {
            float sum = 0.0F;
            for (int c = 0; c < before; ++c) sum += column(c).pinned ? wide(c) : 0.0F;
            return sum;
        };
        const auto reach = [&](int from, int to) {
            float sum = pinned(from);
            for (int c = from; c <= to; ++c) sum += wide(c);
            return sum;
        };
        at_.left = std::clamp(at_.left, 0, count() - 1);
        if (push_columns(reach(at_.left, count() - 1) > room)) {
            while (at_.column > at_.left && reach(at_.left, at_.column) > room) --at_.column;
        }
        // A finger on a name that stays in sight is no wish to go back.
        if (!(by_finger() && column(at_.column).pinned)) at_.left = std::min(at_.left, at_.column);
        while (at_.left < at_.column && reach(at_.left, at_.column) > room) ++at_.left;
        while (at_.left > 0 && reach(at_.left - 1, count() - 1) <= room) --at_.left;
        // Room that is left over goes to the widest.
        const float all = reach(at_.left, count() - 1);
        if (all < room) {
            auto most = std::max_element(widths_.begin() + at_.left, widths_.end());
            *most += room - all;
        }
        xs_.assign(columns_.size(), -1.0F);
        shown_.clear();
        float x = box_.x;
        for (int c = 0; c < count(); ++c) {
            if (c < at_.left && !column(c).pinned) continue;
            if (c > at_.left && x + 4.0F * size_ > box_.x + room) break;
            xs_[static_cast<std::size_t>(c)] = x;
            x += wide(c);
            shown_.push_back(c);
        }
    }

    /// Goes on by a column for each that a finger has pushed out of sight; whether it did.
    bool push_columns(bool more) {
        if (!ImGui::GetIO().MouseDown[ImGuiMouseButton_Left]) at_.pushed = 0.0F;
        at_.pushed += at_.editing ? 0.0F : pushed_sideways(box_);
        // One that stays in sight costs no way.
        const auto cost = [&](int c) { return column(c).pinned ? 0.0F : wide(c); };
        if (more && at_.pushed < -cost(at_.left)) {
            at_.pushed += cost(at_.left++);
            at_.column = std::max(at_.column, at_.left);
            return true;
        }
        if (at_.left == 0 || at_.pushed <= cost(at_.left - 1)) return false;
        at_.pushed -= cost(--at_.left);
        return true;
    }

    [[nodiscard]] Box cell(int c, float y) const {
        const float right = std::min(x_of(c) + wide(c), box_.right() - 3.0F * grid);
        return {x_of(c), y, right - x_of(c), high_};
    }

    void words(const Box& in, std::string_view text, Colour colour, bool right) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        ImFont* font = ui_.fonts.small;
        const float width =
            font->CalcTextSizeA(size_, FLT_MAX, 0.0F, text.data(), text.data() + text.size()).x;
        const float y = in.y + 0.5F * (in.height - size_);
        const float x = right ? std::max(in.x, in.right() - width) : in.x;
        const ImVec4 clip(in.x, in.y, in.right(), in.bottom());
        list.AddText(font, size_, {x, y}, im(colour), text.data(), text.data() + text.size(), 0.0F,
                     &clip);
    }

    void heading(int sorted_by, bool sorted_down) {
        for (const int c : shown_) {
            const Box in = cell(c, box_.y);
            std::string title(column(c).title);
            const std::string label = title + "##heading";
            ImGui::SetCursorScreenPos(corner(in));
            ImGui::PushItemFlag(ImGuiItemFlags_NoNav, true);
            if (meant(ui_, label, ImGui::InvisibleButton(label.c_str(), {in.width, in.height}))) {
                answer_.heading = c;
            }
            ImGui::PopItemFlag();
            note_control(ui_, label, in);
            if (c == sorted_by) title.append(sorted_down ? " \xC2\xB7v" : " \xC2\xB7^");
            words(in.inside(0.75F * grid), title, ui_.colours.soft, column(c).number);
        }
        ImGui::GetWindowDrawList()->AddLine(
            {box_.x, box_.y + high_}, {box_.right(), box_.y + high_}, im(ui_.colours.soft), 2.0F);
    }

    void cells(const char* name) {
        const float foot = rows_.sums.empty() ? 0.0F : high_;
        const Box in{box_.x, box_.y + high_, box_.width, box_.height - high_ - foot};
        Scroll scroll(ui_, name, in);
        const float top_of_row = high_ * static_cast<float>(at_.row);
        if (at_.row != seen_row() || ui_.typing.fresh || at_.editing) { // a keyboard may come up
            if (top_of_row < ImGui::GetScrollY()) ImGui::SetScrollY(top_of_row);
            if (top_of_row + high_ > ImGui::GetScrollY() + in.height) {
                ImGui::SetScrollY(top_of_row + high_ - in.height);
            }
            seen_row() = at_.row;
        }
        int first = std::max(0, static_cast<int>(ImGui::GetScrollY() / high_) - 1);
        int last = std::min(rows_.count, first + static_cast<int>(in.height / high_) + 3);
        if (at_.editing &&
            at_.row < rows_.count) { // one that is not drawn would lose what is typed
            first = std::min(first, at_.row);
            last = std::max(last, at_.row + 1);
        }
        (void)scroll.row(high_ * static_cast<float>(first));
        for (int r = first; r < last; ++r) row(r, scroll.row(high_));
        (void)scroll.row(high_ * static_cast<float>(std::max(0, rows_.count - last)));
    }

    /// The row that was brought into sight last; kept by the toolkit with the window.
    int& seen_row() {
        return *ImGui::GetStateStorage()->GetIntRef(ImGui::GetID("row in sight"), -1);
    }

    void row(int r, const Box& line) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        if (r == at_.row) {
            list.AddRectFilled(corner(line), far_corner(line), im(ui_.colours.field));
        }
        for (const int c : shown_) {
            const Box in = cell(c, line.y);
            const bool here = r == at_.row && c == at_.column;
            if (here && at_.editing) {
                edit(in);
                continue;
            }
            ImGui::SetCursorScreenPos(corner(in));
            ImGui::PushID(r * 64 + c);
            ImGui::PushItemFlag(ImGuiItemFlags_NoNav, true);
            const bool pressed =
                meant(ui_, {}, ImGui::InvisibleButton("cell", {in.width, in.height}));
            ImGui::PopItemFlag();
            ImGui::PopID();
            if (pressed && !at_.editing) {
                // The first press of a mouse goes there, the second one edits; a finger's first does.
                if (r != at_.row) answer_.moved = true;
                at_.row = r;
                at_.column = c;
                if (here || by_finger()) begin_edit(text_at(r, c));
            }
            // A tablet opens its keyboard within the tap, and so has to know beforehand.
            if (by_finger() && !column(c).fixed)
                note_field_to_be(ui_, title(c), in, column(c).keypad());
            if (here) {
                list.AddRect(corner(in), far_corner(in), im(ui_.colours.accent), 3.0F, 0, 3.0F);
                note_control(ui_, "cell", in);
            }
            const Colour colour = rows_.colour
                                      ? rows_.colour(r, c)
                                      : (column(c).fixed ? ui_.colours.soft : ui_.colours.ink);
            words(in.inside(0.75F * grid), rows_.text(r, c), colour, column(c).number);
        }
        list.AddLine({line.x, line.bottom()}, {box_.right() - 3.0F * grid, line.bottom()},
                     im(ui_.colours.line));
    }

    void edit(Box in) {
        in.width = std::max(in.width, std::min(14.0F * size_, box_.right() - in.x - 3.0F * grid));
        const bool fresh = at_.fresh_edit;
        if (fresh) { // the field is not awake yet, and would let these go
            ImGui::SetKeyboardFocusHere();
            at_.text += letters();
        }
        ImGui::PushTabStop(false);
        const bool entered = line_edit(ui_, "##edit", "", at_.text, in);
        ui_.fields.back().label = title(at_.column);
        ui_.fields.back().number = column(at_.column).keypad();
        ImGui::PopTabStop();
        const bool active = ImGui::IsItemActive();
        ImGuiInputTextState* state = ImGui::GetInputTextState(ImGui::GetItemID());
        if (fresh && active && state != nullptr) {
            state->ClearSelection();
            state->Stb.cursor = state->CurLenW;
            at_.fresh_edit = false;
        }
        // A key that ends the edit may come before the field is awake.
        const bool early = fresh && ImGui::GetFrameCount() > at_.began;
        const bool tab = ImGui::IsKeyPressed(ImGuiKey_Tab) && (early || !at_.fresh_edit);
        if (entered || (early && ImGui::IsKeyPressed(ImGuiKey_Enter, false))) {
            end_edit(at_.text, 1, 0);
        } else if (tab) {
            end_edit(at_.text, 0, ImGui::GetIO().KeyShift ? -1 : 1);
        } else if (ImGui::IsKeyPressed(ImGuiKey_Escape)) {
            at_.editing = false;
        } else if (!at_.fresh_edit && !active) {
            // Pressed somewhere else: what was typed counts.
            at_.editing = false;
            if (at_.text != text_at(at_.row, at_.column)) end_edit(at_.text, 0, 0);
        }
    }

    void sums() {
        if (rows_.sums.empty()) return;
        const float y = box_.bottom() - high_;
        ImGui::GetWindowDrawList()->AddLine({box_.x, y}, {box_.right(), y}, im(ui_.colours.soft),
                                            2.0F);
        for (const int c : shown_) {
            if (static_cast<std::size_t>(c) >= rows_.sums.size()) break;
            words(cell(c, y).inside(0.75F * grid), rows_.sums[static_cast<std::size_t>(c)],
                  ui_.colours.ink, column(c).number);
        }
    }

    Ui& ui_;
    Box box_;
    const std::vector<GridColumn>& columns_;
    const GridRows& rows_;
    GridPlace& at_;
    float size_, high_;
    std::vector<float> widths_{}, xs_{};
    std::vector<int> shown_{}; ///< columns in sight
    GridAnswer answer_{};
};

} // namespace

GridAnswer draw_grid(Ui& ui, const char* name, const Box& box,
                     const std::vector<GridColumn>& columns, const GridRows& rows, GridPlace& at,
                     int sorted_by, bool sorted_down) {
    return Draw(ui, box, columns, rows, at).run(name, sorted_by, sorted_down);
}

} // namespace wrapwright
