#include "gui/panels.h"
#include "gui/touch.h"
#include "gui/widgets.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

/// What narrows the list: stars alone, order, size, tag, material; how high it is.
float narrow_row(Ui& ui, const Box& in) {
    const LibraryAsk& ask = ui.model.library_ask;
    const float high = control_height(ui);
    constexpr std::array<std::string_view, 3> orders{"By name", "By class", "Newest first"};
    const bool one_row = in.width >= 34.0F * ui.sizes.small;
    const float wide = (in.width - (one_row ? 4.0F : 1.0F) * grid) / (one_row ? 5.0F : 2.0F);
    float x = in.x, y = in.y;
    const auto next = [&](float width) {
        const Box at{x, y, width, high};
        x += width + grid;
        return at;
    };
    const auto say = [&](std::string key, std::string text) {
        Wish w = wish(WishKind::library_ask, 0, std::move(text));
        w.key = std::move(key);
        ui.want(std::move(w));
    };
    if (button(ui, "Stars alone", next(wide), ask.favourites)) say("favourites", {});
    std::string order(orders[static_cast<std::size_t>(ask.order)]);
    order += "##order";
    if (button(ui, order, next(wide))) say("order", {});
    float field = wide;
    if (!one_row) {
        x = in.x;
        y += high + grid;
        field = (in.width - 2.0F * grid) / 3.0F;
    }
    struct Narrow {
        const char* name;
        const char* hint;
        const char* key;
        std::string* text;
    };
    for (const Narrow& n :
         {Narrow{"##size", "size 14", "size", &ui.typing.filter_size},
          Narrow{"##tag", "tag", "tag", &ui.typing.filter_tag},
          Narrow{"##material", "material", "material", &ui.typing.filter_material}}) {
        const std::string was = *n.text;
        (void)line_edit(ui, n.name, n.hint, *n.text, next(field));
        if (*n.text != was) say(n.key, *n.text);
    }
    return y + high - in.y;
}

} // namespace

void panel_library(Ui& ui, const Box& box) {
    sheet(ui, box);
    Box in = box.inside(2.0F * grid);
    const auto take = [&](float high) {
        in.y += high;
        in.height -= high;
    };
    const float high = control_height(ui);
    take(write(ui, ui.fonts.main, ui.colours.ink, in, "Recipes") + grid);
    if (ui.typing.fresh) {
        ui.typing.search = ui.model.search;
        if (!by_finger()) ImGui::SetKeyboardFocusHere(); // a finger does not ask for a keyboard
    }
    const std::string before = ui.typing.search;
    const bool entered = line_edit(ui, "##search", "a word of its name or its text",
                                   ui.typing.search, {in.x, in.y, in.width, high});
    if (ui.typing.search != before) ui.want(wish(WishKind::search, 0, ui.typing.search));
    take(high + grid);

    const float narrowed = narrow_row(ui, in);
    take(narrowed + grid);

    const auto& rows = ui.model.library;
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
    const Box files{in.x, foot.y - high - grid, in.width, high};
    in.height -= 2.0F * (high + grid);
    if (rows.empty()) {
        write(ui, ui.fonts.small, ui.colours.soft, in, "No recipe has these words.");
    } else {
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
            std::string aside = row.fly_class;
            if (!row.sizes.empty()) aside += "  " + row.sizes;
            if (row_button(ui, row.name + "##" + row.id, aside, i == at, scroll.row(high),
                           row.favourite ? &star : nullptr)) {
                at = i;
                ui.want(wish(WishKind::open_recipe, 0, row.id));
            }
        }
        (void)scroll.row(high * static_cast<float>(static_cast<int>(rows.size()) - last));
    }
    const float half = 0.5F * (files.width - grid);
    if (ui.model.picks_files && button(ui, "Open a file", {files.x, files.y, half, high})) {
        ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::recipe)));
    }
    if (rows.empty()) return;
    const LibraryRow& picked = rows[static_cast<std::size_t>(at)];
    const float third = (foot.width - 2.0F * grid) / 3.0F;
    // The field has the letters, so that these two take ctrl.
    const bool ctrl = ImGui::GetIO().KeyCtrl;
    if (ctrl && ImGui::IsKeyPressed(ImGuiKey_D, false)) {
        ui.want(wish(WishKind::duplicate, 0, picked.id));
    }
    if (ctrl && ImGui::IsKeyPressed(ImGuiKey_S, false)) {
        ui.want(wish(WishKind::favourite, picked.favourite ? 0 : 1, picked.id));
    }
    if (button(ui, "Save to a file", {files.x + half + grid, files.y, half, high})) {
        ui.want(wish(WishKind::give_recipe, 0, picked.id));
    }
    if (button(ui, "Open", {foot.x, foot.y, third, high}, true)) {
        ui.want(wish(WishKind::open_recipe, 0, picked.id));
    }
    if (button(ui, "Duplicate (ctrl d)", {foot.x + third + grid, foot.y, third, high})) {
        ui.want(wish(WishKind::duplicate, 0, picked.id));
    }
    if (button(ui, picked.favourite ? "No star (ctrl s)" : "Star (ctrl s)",
               {foot.x + 2.0F * (third + grid), foot.y, third, high})) {
        ui.want(wish(WishKind::favourite, picked.favourite ? 0 : 1, picked.id));
    }
}

} // namespace wrapwright
