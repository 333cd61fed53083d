// The fields of what is picked: every word live, with what was understood beside it.

#include "gui/panel_edit_parts.h"

#include <algorithm>

namespace wrapwright {

namespace {

void set(Ui& ui, const std::string& path, std::string text) {
    Wish w = wish(WishKind::edit_set, 0, std::move(text));
    w.key = path;
    ui.want(std::move(w));
}

class Fields {
  public:
    Fields(Ui& ui, Scroll& scroll, int count)
        : ui_(ui), scroll_(scroll), count_(count), high_(control_height(ui)) {}

    void field(const Field& f, int index) {
        const float wide_label = 7.5F * ui_.sizes.small;
        const float wide = scroll_.row(0.0F).width;
        const float label = wide < 2.6F * wide_label ? 0.34F * wide : wide_label;
        float tall = high_;
        if (f.kind == FieldKind::text) {
            const float room = wide - label - 4.0F * grid;
            tall = std::max(high_, height_of(ui_.fonts.small, f.text, room) + 1.5F * grid);
        }
        // Where there is little room a label has lines of its own, and all of its words.
        tall = std::max(tall, height_of(ui_.fonts.small, f.label, label));
        Box row = scroll_.row(tall + 0.25F * grid);
        row.height = tall;
        const float words = std::min(height_of(ui_.fonts.small, f.label, label), tall);
        write(ui_, ui_.fonts.small, ui_.colours.soft,
              {row.x, row.y + std::max(0.0F, 0.5F * (std::min(tall, high_) - words)), label,
               words + 1.0F},
              f.label);
        const Box at{row.x + label + grid, row.y, row.width - label - grid, tall};
        const bool focus = ui_.typing.edit_focus == index;
        if (focus) {
            ImGui::SetKeyboardFocusHere();
            ui_.typing.edit_focus = -1;
        }
        switch (f.kind) {
        case FieldKind::flag: flag(f, at); break;
        case FieldKind::pick: pick(f, at); break;
        case FieldKind::text: text(f, at); break;
        case FieldKind::words:
        case FieldKind::number:
        case FieldKind::spot: words_field(f, at, index); break;
        }
        if (focus) ImGui::SetScrollHereY(0.5F);
        if (ImGui::IsItemActive() || ImGui::IsItemFocused()) ui_.typing.edit_spot = f.path;
        if (!f.wrong.empty()) below(ui_.colours.warn, f.wrong, label);
        if (!f.said.empty()) below(ui_.colours.soft, "understood: " + f.said, label);
    }

  private:
    void below(Colour colour, const std::string& text, float label) {
        const Box probe = scroll_.row(0.0F);
        const float room = probe.width - label - 2.0F * grid;
        const float high = height_of(ui_.fonts.small, text, room);
        const Box row = scroll_.row(high + 0.5F * grid);
        write(ui_, ui_.fonts.small, colour, {row.x + label + 1.5F * grid, row.y, room, high + 0.5F},
              text);
    }
    void words_field(const Field& f, const Box& at, int index) {
        std::string text = f.text;
        const std::string name = "##" + f.path;
        const bool ended = line_edit(ui_, name.c_str(), "", text, at, f.kind == FieldKind::number);
        // Escape leaves the field, and keeps what was typed.
        if (text != f.text && !ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
            set(ui_, f.path, std::move(text));
        }
        if (ended) {
            if (index + 1 < count_) {
                ui_.typing.edit_focus = index + 1;
            } else {
                ui_.typing.edit_row_focus = true;
            }
        }
        if (ImGui::IsItemDeactivated() && ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
            ui_.typing.edit_row_focus = true;
        }
    }
    void text(const Field& f, const Box& at) {
        std::string text = f.text;
        const std::string name = "##" + f.path;
        if (text_edit(ui_, name.c_str(), text, at) &&
            !ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
            set(ui_, f.path, std::move(text));
        }
    }
    void flag(const Field& f, const Box& at) {
        const bool on = f.text == "yes";
        if (toggle(ui_, "##" + f.path, on, at)) set(ui_, f.path, on ? "" : "yes");
    }
    /// The choice that holds; pressed, all of them below it.
    void pick(const Field& f, const Box& at) {
        const bool open = ui_.typing.edit_open == f.path;
        const std::string shown = f.text.empty() ? "(none)" : f.text;
        if (row_button(ui_, shown + "##" + f.path, open ? "close" : "change", open, at)) {
            ui_.typing.edit_open = open ? std::string() : f.path;
        }
        if (!open) return;
        for (std::size_t i = 0; i < f.options.size(); ++i) {
            Box row = scroll_.row(high_);
            row.width -= at.x - row.x + 2.0F * grid;
            row.x = at.x + 2.0F * grid;
            const std::string& option = f.options[i];
            const std::string label =
                (option.empty() ? "(none)" : option) + "##" + f.path + " " + std::to_string(i);
            if (row_button(ui_, label, {}, option == f.text, row)) {
                set(ui_, f.path, option);
                ui_.typing.edit_open.clear();
            }
        }
    }

    Ui& ui_;
    Scroll& scroll_;
    int count_;
    float high_;
};

/// What the keys of the list do with a row, for a finger.
void row_acts(Ui& ui, Scroll& scroll) {
    const std::string& row = ui.model.edit.row;
    const RowPlace at = place_of(row);
    if (at.list.empty()) return;
    (void)scroll.row(grid);
    const Box all = scroll.row(control_height(ui) + grid);
    const float third = (all.width - 2.0F * grid) / 3.0F;
    Box box{all.x, all.y, third, all.height - grid};
    const auto act = [&](std::string_view label, Wish wanted) {
        if (button(ui, label, box)) {
            ui.want(std::move(wanted));
            ui.typing.edit_row_focus = true;
        }
        box.x += third + grid;
    };
    act("Earlier", wish(WishKind::edit_move, at.index - 1, row));
    act("Later", wish(WishKind::edit_move, at.index + 1, row));
    act("Take away", wish(WishKind::edit_drop, 0, row));
}

} // namespace

void edit_fields(Ui& ui, const Box& box) {
    sheet(ui, box);
    const EditWork& work = ui.model.edit;
    const std::vector<Field> fields = fields_of(work);
    Box in = box.inside(1.5F * grid);
    const float line = ui.fonts.main->FontSize;
    write(ui, ui.fonts.main, ui.colours.ink, {in.x, in.y, in.width, line}, row_title(work));
    in.y += line + 0.5F * grid;
    in.height -= line + 0.5F * grid;
    const float told = edit_findings(
        ui, {in.x, in.y, in.width, std::min(0.3F * in.height, 3.0F * ui.sizes.small)});
    in.y += told;
    in.height -= told;
    // What a field means stands at the foot, where it moves nothing that is being pressed.
    const float line_high = ui.fonts.small->FontSize;
    const float foot =
        std::min(3.0F * line_high, std::floor(0.25F * in.height / line_high) * line_high);
    const Box help{in.x, in.bottom() - foot, in.width - 2.0F * grid, foot + 1.0F};
    in.height -= foot + 0.5F * grid;
    for (const Field& f : fields) {
        if (f.path == ui.typing.edit_spot) write(ui, ui.fonts.small, ui.colours.soft, help, f.help);
    }
    const bool places = std::any_of(fields.begin(), fields.end(),
                                    [](const Field& f) { return f.kind == FieldKind::spot; });
    Scroll scroll(ui, "fields", in);
    Fields form(ui, scroll, static_cast<int>(fields.size()));
    for (std::size_t i = 0; i < fields.size(); ++i) {
        form.field(fields[i], static_cast<int>(i));
        const bool last_place = places && fields[i].kind == FieldKind::spot &&
                                (i + 1 == fields.size() || fields[i + 1].kind != FieldKind::spot);
        if (last_place) {
            Box row = scroll.row(std::max(5.0F * ui.sizes.small, 110.0F) + grid);
            row.height -= grid;
            edit_hook(ui, row, fields);
        }
    }
    if (ui.typing.edit_focus >= static_cast<int>(fields.size())) ui.typing.edit_focus = -1;
    row_acts(ui, scroll);
}

} // namespace wrapwright
