#include "gui/panel_library_parts.h"
#include "gui/touch.h"

#include <algorithm>
#include <array>
#include <imgui_internal.h>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 3> orders{"By name", "By class", "Newest first"};

Wish ask(std::string key, std::string text = {}) {
    Wish w = wish(WishKind::library_ask, 0, std::move(text));
    w.key = std::move(key);
    return w;
}

bool narrowed(const LibraryAsk& of) {
    return of.favourites || of.stock || !of.size.empty() || !of.tag.empty() ||
           !of.material.empty() || !of.from.empty() || !of.to.empty();
}

/// What narrows the list, in two rows; how high they are.
float narrow_rows(Ui& ui, const Box& in) {
    const LibraryAsk& now = ui.model.library.ask;
    const float high = control_height(ui);
    const float wide = (in.width - 3.0F * grid) / 4.0F;
    const auto place = [&](int i) {
        return Box{in.x + static_cast<float>(i % 4) * (wide + grid),
                   in.y + static_cast<float>(i / 4) * (high + grid), wide, high};
    };
    if (button(ui, "Stars alone", place(0), now.favourites)) ui.want(ask("favourites"));
    if (button(ui, "From stock", place(1), now.stock)) ui.want(ask("stock"));
    std::string order(orders[static_cast<std::size_t>(now.order)]);
    order += "##order";
    if (button(ui, order, place(2), false)) ui.want(ask("order"));
    struct Narrow {
        const char* name;
        const char* hint;
        const char* key;
        std::string* text;
    };
    const bool grains = ui.model.settings.inches;
    Typing& t = ui.typing;
    int at = 3;
    for (const Narrow& n :
         {Narrow{"##size", "size 14", "size", &t.filter_size},
          Narrow{"##material", "material", "material", &t.filter_material},
          Narrow{"##tag", "tag", "tag", &t.filter_tag},
          Narrow{"##from", grains ? "from 3 gr" : "from 200 mg", "from", &t.filter_from},
          Narrow{"##to", grains ? "to 6 gr" : "to 400 mg", "to", &t.filter_to}}) {
        const std::string was = *n.text;
        (void)line_edit(ui, n.name, n.hint, *n.text, place(at++));
        if (*n.text != was) ui.want(ask(n.key, *n.text));
    }
    return 2.0F * high + grid;
}

/// What a weight that was typed cannot mean, or what is still being found out; nothing else.
std::string told(const Model& model) {
    const LibraryAsk& of = model.library.ask;
    for (const std::string& text : {of.from, of.to}) {
        if (!text.empty() && !asked_weight(text, model.settings.inches)) {
            return "'" + text + "' is no weight: write 250 mg, 0.25 g or 3.9 gr (grains).";
        }
    }
    if (!of.size.empty() && !parse_hook_size(of.size).ok()) {
        return "'" + of.size + "' is no hook size: write 14, or 2/0.";
    }
    return model.library.waiting;
}

} // namespace

void library_acts(Ui& ui, const Box& foot, const LibraryRow& picked) {
    const bool files = ui.model.picks_files;
    const int count = files ? 5 : 4;
    const float wide =
        (foot.width - static_cast<float>(count - 1) * grid) / static_cast<float>(count);
    const bool keys = wide >= 9.0F * ui.sizes.small && !by_finger(); // room and a use for them
    int at = 0;
    const auto next = [&] {
        return Box{foot.x + static_cast<float>(at++) * (wide + grid), foot.y, wide, foot.height};
    };
    // A field has the letters, so that these two take ctrl.
    const bool ctrl = ImGui::GetIO().KeyCtrl;
    const auto pressed = [&](ImGuiKey key) { return ctrl && ImGui::IsKeyPressed(key, false); };
    if (button(ui, "Open", next(), true)) ui.want(wish(WishKind::open_recipe, 0, picked.id));
    if (button(ui, keys ? "Duplicate (ctrl d)" : "Duplicate", next()) || pressed(ImGuiKey_D)) {
        ui.want(wish(WishKind::duplicate, 0, picked.id));
    }
    std::string star(picked.favourite ? "No star" : "Star");
    if (keys) star += " (ctrl s)";
    if (button(ui, star, next()) || pressed(ImGuiKey_S)) {
        ui.want(wish(WishKind::favourite, picked.favourite ? 0 : 1, picked.id));
    }
    if (button(ui, "Save to a file", next())) ui.want(wish(WishKind::give_recipe, 0, picked.id));
    if (files && button(ui, "Open a file", next())) {
        ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::recipe)));
    }
}

void library_list(Ui& ui, const Box& box, bool entered) {
    const auto& rows = ui.model.library.rows;
    const float high = control_height(ui);
    Box in = box;
    int& at = ui.typing.library_at;
    // Typing and picking go together: a line of text has no use for up and down.
    const int before_keys = at;
    if (ImGui::IsKeyPressed(ImGuiKey_DownArrow)) ++at;
    if (ImGui::IsKeyPressed(ImGuiKey_UpArrow)) --at;
    at = std::clamp(at, 0, std::max(0, static_cast<int>(rows.size()) - 1));
    const bool moved = at != before_keys;
    if (entered && !rows.empty()) {
        ui.want(wish(WishKind::open_recipe, 0, rows[static_cast<std::size_t>(at)].id));
    }
    const Box foot{in.x, in.bottom() - high, in.width, high};
    in.height -= high + grid;
    if (rows.empty()) {
        write(ui, ui.fonts.small, ui.colours.soft, in, "No recipe is all of this.");
        if (ui.model.picks_files && button(ui, "Open a file", foot)) {
            ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::recipe)));
        }
        return;
    }
    {
        Scroll scroll(ui, "recipes", in);
        // Only the rows in sight are drawn, so that ten thousand cost no more than ten.
        if (moved) {
            const float row = high * static_cast<float>(at);
            if (row < ImGui::GetScrollY()) ImGui::SetScrollY(row);
            if (row + high > ImGui::GetScrollY() + in.height) {
                ImGui::SetScrollY(row + high - in.height);
            }
        }
        const float top = ImGui::GetScrollY();
        const int first = std::max(0, static_cast<int>(top / high) - 1);
        const int last =
            std::min(static_cast<int>(rows.size()), first + static_cast<int>(in.height / high) + 3);
        (void)scroll.row(high * static_cast<float>(first));
        for (int i = first; i < last; ++i) {
            const LibraryRow& row = rows[static_cast<std::size_t>(i)];
            const Icon star = Icon::star;
            std::string aside = row.from_stock.empty() ? row.fly_class : row.from_stock;
            if (row.from_stock.empty() && !row.sizes.empty()) aside += "  " + row.sizes;
            if (row_button(ui, row.name + "##" + row.id, aside, i == at, scroll.row(high),
                           row.favourite ? &star : nullptr)) {
                at = i;
                ui.want(wish(WishKind::open_recipe, 0, row.id));
            }
        }
        (void)scroll.row(high * static_cast<float>(static_cast<int>(rows.size()) - last));
    }
    library_acts(ui, foot, rows[static_cast<std::size_t>(at)]);
}

void panel_library(Ui& ui, const Box& box) {
    const LibraryWork& work = ui.model.library;
    sheet(ui, box);
    Box in = box.inside(2.0F * grid);
    const auto take = [&](float by) {
        in.y += by;
        in.height -= by;
    };
    const float high = control_height(ui);
    const float wide = 5.0F * ui.sizes.small;
    // In a low window what narrows the list is opened, and closed again.
    const bool low = box.height < 11.0F * high;
    Box search{in.x, in.y, in.width - wide - grid, high};
    if (low) search.width -= wide + grid;
    const ImGuiIO& io = ImGui::GetIO();
    if (ui.typing.fresh) ui.typing.search = ui.model.search;
    const bool find = io.KeyCtrl && ImGui::IsKeyPressed(ImGuiKey_F, false);
    // A finger does not ask for a keyboard, and the box has the letters itself.
    if (find || (ui.typing.fresh && !work.ask.box && !by_finger())) ImGui::SetKeyboardFocusHere();
    const std::string before = ui.typing.search;
    ImGui::PushTabStop(!work.ask.box); // tab walks in the box
    const bool entered =
        line_edit(ui, "##search", "a word of its name or its text", ui.typing.search, search);
    if (ui.typing.search != before) ui.want(wish(WishKind::search, 0, ui.typing.search));
    float x = search.right() + grid;
    if (low) {
        const bool on = ui.typing.narrowing || narrowed(work.ask);
        if (button(ui, "Narrow", {x, in.y, wide, high}, on)) {
            ui.typing.narrowing = !ui.typing.narrowing;
        }
        x += wide + grid;
    }
    const bool box_key = io.KeyCtrl && ImGui::IsKeyPressed(ImGuiKey_B, false);
    if (button(ui, "Box", {x, in.y, wide, high}, work.ask.box) || box_key) {
        ui.typing.grid = {};
        ui.typing.grid.column = first_box_column;
        if (!work.ask.box) ImGui::ClearActiveID(); // the letters go into its cells
        ui.want(ask("box"));
    }
    take(high + grid);
    if (!low || ui.typing.narrowing) take(narrow_rows(ui, in) + grid);
    ImGui::PopTabStop();
    if (const std::string words = told(ui.model); !words.empty()) {
        take(write(ui, ui.fonts.small, ui.colours.warn, in, words) + grid);
    }
    if (work.ask.box) return library_box(ui, in);
    library_list(ui, in, entered);
}

} // namespace wrapwright
