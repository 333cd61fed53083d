// Loose text: as it was pasted at the left, what was read in it at the right, taken piece by piece.

#include "gui/loose_work.h"
#include "gui/panel_edit_parts.h"

#include <algorithm>

namespace wrapwright {

namespace {

Wish ask(LooseAsk what, int of = 0, std::string text = {}) {
    Wish w = wish(WishKind::edit_loose, static_cast<int>(what), std::move(text));
    w.x = static_cast<float>(of);
    return w;
}

bool shows(const LooseWork& work, std::size_t i) {
    const Piece& p = work.loose.pieces[i];
    return p.kind != PieceKind::gap && (p.fly == work.fly || p.kind == PieceKind::text);
}

/// The text with what was read marked in it: a bar below what is sure, dots below what is not, ground
/// behind the piece that is picked.
void marked(Ui& ui, const Box& box, const LooseWork& work) {
    Scroll scroll(ui, "marked text", box);
    ImFont* font = ui.fonts.small;
    const float line = font->FontSize;
    const std::string& text = work.text;
    const float room = box.width - 4.0F * grid;
    const char* const begin = text.data();
    // What is read ends there too; the rest is kept and not drawn, or a frame would take seconds.
    const char* const end = begin + std::min(text.size(), most_loose_bytes);
    const auto wide = [&](const char* a, const char* b) {
        return font->CalcTextSizeA(line, FLT_MAX, 0.0F, a, b).x;
    };
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const bool clicked = ImGui::IsMouseClicked(ImGuiMouseButton_Left) && ImGui::IsWindowHovered();
    const char* stop = begin; // where the line ends: looked for once for each
    for (const char* at = begin; at < end;) {
        if (stop <= at) stop = std::find(at, end, '\n');
        // No row has more letters than this, and a line may have a million.
        const char* const most = at + std::min<std::ptrdiff_t>(stop - at, 1000);
        const char* fits = font->CalcWordWrapPositionA(1.0F, at, most, room);
        if (fits <= at) fits = stop;
        const Box row = scroll.row(line + 6.0F);
        if (!ImGui::IsRectVisible(corner(row), far_corner(row))) {
            at = fits < stop ? fits : stop + (stop < end ? 1 : 0);
            if (fits >= stop && stop == end) break;
            continue;
        }
        ImDrawList& list = *ImGui::GetWindowDrawList();
        for (std::size_t i = 0; i < work.loose.pieces.size(); ++i) {
            const Piece& p = work.loose.pieces[i];
            if (!shows(work, i)) continue;
            const char* from = std::max(at, begin + p.span.begin);
            const char* to = std::min(fits, begin + p.span.end);
            if (from >= to) continue;
            const float x = row.x + wide(at, from);
            const float right = x + wide(from, to);
            const bool picked = static_cast<int>(i) == ui.typing.edit_op_at;
            if (picked) {
                list.AddRectFilled({x, row.y}, {right, row.y + line + 4.0F}, im(ui.colours.line));
            }
            if (clicked && mouse.x >= x && mouse.x < right && mouse.y >= row.y &&
                mouse.y < row.bottom()) {
                ui.typing.edit_op_at = static_cast<int>(i);
            }
            if (p.kind == PieceKind::text) continue;
            const float low = row.y + line + (p.in >= 0 ? 1.0F : 4.0F);
            const ImU32 colour = im(p.sure ? ui.colours.good : ui.colours.near);
            if (p.sure) {
                list.AddLine({x, low}, {right - 2.0F, low}, colour, 2.0F);
            } else {
                for (float dot = x; dot < right - 2.0F; dot += 6.0F) {
                    list.AddRectFilled({dot, low - 1.0F}, {dot + 3.0F, low + 1.5F}, colour);
                }
            }
        }
        list.AddText(font, line, {row.x, row.y}, im(ui.colours.ink), at, fits);
        ui.texts.push_back({std::string(at, fits), line, true});
        at = fits;
        if (at == stop) {
            if (stop == end) break;
            ++at;
        } else {
            while (at < stop && *at == ' ') ++at;
        }
    }
}

void proposals(Ui& ui, const Box& box, const LooseWork& work) {
    const float high = control_height(ui);
    const float line = ui.fonts.small->FontSize;
    Scroll scroll(ui, "proposals", box);
    for (const std::string& note : work.loose.notes) {
        const float room = box.width - 4.0F * grid;
        const float tall = height_of(ui.fonts.small, note, room);
        const Box row = scroll.row(tall + 0.5F * grid);
        write(ui, ui.fonts.small, ui.colours.warn, {row.x, row.y, room, tall + 1.0F}, note);
    }
    // Of very many pieces only those in sight are measured and drawn, in a line each.
    const bool many = work.loose.pieces.size() > 500;
    for (std::size_t i = 0; i < work.loose.pieces.size(); ++i) {
        const Piece& p = work.loose.pieces[i];
        if (!shows(work, i)) continue;
        const bool text = p.kind == PieceKind::text;
        const float in_by = p.in >= 0 ? 3.0F * grid : 0.0F;
        const float room = 0.62F * (box.width - in_by) - 6.0F * grid;
        const std::string words = many ? std::string() : piece_words(work, p);
        const float lines = std::clamp(height_of(ui.fonts.small, words, room), line, 3.0F * line);
        Box row = scroll.row(std::max(high, lines + grid));
        if (many && !ImGui::IsRectVisible(corner(row), far_corner(row))) continue;
        row.x += in_by;
        row.width -= in_by;
        const Icon icon = work.accepted[i] ? Icon::ticked : Icon::empty;
        const char* aside = text ? "stays as text" : p.sure ? "" : "perhaps";
        const bool picked = static_cast<int>(i) == ui.typing.edit_op_at;
        std::string label = many ? piece_words(work, p) : words;
        label.append("##piece ").append(std::to_string(i));
        if (row_button(ui, label, aside, picked, row, text ? nullptr : &icon, text)) {
            ui.typing.edit_op_at = static_cast<int>(i);
            if (!text) ui.want(ask(LooseAsk::take, static_cast<int>(i)));
        }
        if (ImGui::IsItemFocused()) ui.typing.edit_op_at = static_cast<int>(i);
    }
}

std::string shared_words(MergeKind kind, TakeAs as) {
    switch (kind) {
    case MergeKind::fresh: return as == TakeAs::left ? "new here: left" : "new here: taken in";
    case MergeKind::same: return "the same as yours";
    case MergeKind::newer: return "of a newer program: to be read here, not taken in";
    case MergeKind::differs: break;
    }
    switch (as) {
    case TakeAs::left: return "differs from yours: left";
    case TakeAs::taken: return "differs: becomes your newest revision";
    case TakeAs::beside: break;
    }
    return "differs: taken beside yours, on its own";
}

/// Recipes that came whole: what each would change here; pressing one chooses what becomes of it.
void whole(Ui& ui, const Box& box, const LooseWork& work) {
    Scroll scroll(ui, "shared", box);
    const float room = box.width - 4.0F * grid;
    const auto say = [&](Colour colour, const std::string& text) {
        const float high = height_of(ui.fonts.small, text, room);
        const Box row = scroll.row(high + 0.5F * grid);
        write(ui, ui.fonts.small, colour, {row.x, row.y, room, high + 1.0F}, text);
    };
    say(ui.colours.soft, "This holds recipes whole: nothing has to be guessed.");
    if (!work.shared->note.empty()) say(ui.colours.ink, work.shared->note);
    const float high = std::max(control_height(ui), 2.0F * ui.fonts.small->FontSize + grid);
    for (std::size_t i = 0; i < work.rows.size(); ++i) {
        const MergeRow& row = work.rows[i];
        const Icon icon = work.takes[i] == TakeAs::left ? Icon::empty : Icon::ticked;
        const bool choice = row.kind == MergeKind::fresh || row.kind == MergeKind::differs;
        std::string label = row.name;
        label.append("##shared ").append(std::to_string(i));
        if (row_button(ui, label, shared_words(row.kind, work.takes[i]), false, scroll.row(high),
                       choice ? &icon : nullptr)) {
            ui.want(ask(LooseAsk::choose, static_cast<int>(i)));
        }
        if (row.kind == MergeKind::newer) say(ui.colours.warn, work.shared->recipes[i].newer);
        for (const Change& change : row.changes) say(ui.colours.soft, "  " + change_words(change));
    }
    const std::size_t photos = work.shared->photos.size();
    if (photos > 0) {
        say(ui.colours.ink, std::to_string(photos) +
                                (photos == 1 ? " photo comes" : " photos come") + " with them.");
    }
    for (const std::string& why : work.shared->refused) say(ui.colours.warn, why);
}

/// A file in place of what is pasted; how high the row is, and whether it is typed into.
float file_row(Ui& ui, const Box& in, bool& typed) {
    const float high = control_height(ui);
    if (ui.model.picks_files) {
        if (button(ui, "Open a file", {in.x, in.y, in.width, high})) {
            ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::recipe)));
        }
        return high + grid;
    }
    const float wide = std::min(6.0F * ui.sizes.small, 0.35F * in.width);
    const bool entered = line_edit(ui, "##file", "a file, or drop it here", ui.typing.loose_file,
                                   {in.x, in.y, in.width - wide - grid, high});
    typed = ImGui::IsItemActive();
    const bool open = button(ui, "Open file", {in.right() - wide, in.y, wide, high});
    if ((open || entered) && !ui.typing.loose_file.empty()) {
        ui.want(wish(WishKind::open_file, 0, ui.typing.loose_file));
    }
    return high + grid;
}

} // namespace

void edit_loose(Ui& ui, const Box& box) {
    const EditWork& work = ui.model.edit;
    const float high = control_height(ui);
    Box left = box, right = box;
    if (box.width >= box.height) {
        left.width = std::floor(0.48F * box.width);
        right = {left.right() + grid, box.y, box.width - left.width - grid, box.height};
    } else {
        left.height = std::floor(0.42F * box.height);
        right = {box.x, left.bottom() + grid, box.width, box.height - left.height - grid};
    }
    sheet(ui, left);
    Box in = left.inside(1.5F * grid);
    const bool typing = !work.loose || work.loose->text.empty() || ui.typing.edit_open == "loose";
    if (!ui.model.trade_words) {
        write(ui, ui.fonts.small, ui.colours.warn, in,
              "The list of trade words is missing: assets/words/trade.txt.");
        return;
    }
    const Box bar{in.x, in.bottom() - high, in.width, high};
    in.height -= high + grid;
    if (typing) {
        bool naming = false;
        const float file = file_row(ui, in, naming);
        in.y += file;
        in.height -= file;
        // Into an empty field the clipboard is taken as it is, byte for byte and whatever its length.
        const bool paste = ImGui::GetIO().KeyCtrl && ImGui::IsKeyPressed(ImGuiKey_V, false) &&
                           ui.typing.loose.empty() && !naming;
        const char* clip = paste ? ImGui::GetClipboardText() : nullptr;
        const bool pasted = clip != nullptr && *clip != '\0';
        if (ui.typing.fresh && !pasted) ImGui::SetKeyboardFocusHere();
        if (!pasted) text_edit(ui, "##loose", ui.typing.loose, in);
        if (pasted || button(ui, "Read it", bar, true)) {
            ui.typing.edit_open.clear();
            ui.typing.edit_op_at = 0;
            ui.want(ask(LooseAsk::text, 0, pasted ? std::string(clip) : ui.typing.loose));
        }
    } else {
        marked(ui, in, *work.loose);
        if (work.loose->shared || work.loose->text.size() > most_loose_bytes) {
            if (button(ui, "Another text", bar)) {
                ui.typing.loose.clear();
                ui.want(ask(LooseAsk::away));
            }
        } else if (button(ui, "Change the text", bar)) {
            ui.typing.loose = work.loose->text;
            ui.typing.edit_open = "loose";
        }
    }
    sheet(ui, right);
    in = right.inside(1.5F * grid);
    if (!work.loose || work.loose->text.empty()) {
        write(
            ui, ui.fonts.small, ui.colours.soft, in,
            "Paste a recipe of any shape: labelled lines, a paragraph, a table. What is read in it "
            "is proposed here; what is not stays as text, word for word.");
        return;
    }
    const Box foot{in.x, in.bottom() - high, in.width, high};
    in.height -= high + grid;
    if (!work.loose->trouble.empty()) {
        const float told = write(ui, ui.fonts.small, ui.colours.warn, in, work.loose->trouble);
        in.y += told + grid;
        in.height -= told + grid;
    }
    if (work.loose->loose.flies > 1) {
        const int by = stepper(ui, "Fly of this text", std::to_string(work.loose->fly + 1),
                               {in.x, in.y, in.width, high});
        if (by != 0) ui.want(ask(LooseAsk::fly, by));
        in.y += high + grid;
        in.height -= high + grid;
    }
    if (work.loose->shared) {
        whole(ui, in, *work.loose);
        const bool any = std::any_of(work.loose->takes.begin(), work.loose->takes.end(),
                                     [](TakeAs as) { return as != TakeAs::left; });
        const bool photos = !work.loose->shared->photos.empty();
        const bool unseen = work.loose->takes.empty(); // what is here was not looked up yet
        if ((any || photos || unseen) && button(ui, "Take them in", foot, true)) {
            ui.want(ask(LooseAsk::merge));
        }
        return;
    }
    proposals(ui, in, *work.loose);
    const float wide = (foot.width - 2.0F * grid) / 3.0F;
    if (button(ui, "What is sure", {foot.x, foot.y, wide, high})) ui.want(ask(LooseAsk::sure));
    if (button(ui, "All of it", {foot.x + wide + grid, foot.y, wide, high})) {
        ui.want(ask(LooseAsk::all));
    }
    if (button(ui, "Make a recipe", {foot.x + 2.0F * (wide + grid), foot.y, wide, high}, true)) {
        ui.want(ask(LooseAsk::recipe));
    }
}

} // namespace wrapwright
