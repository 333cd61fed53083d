// The table over all sizes: a cell is picked, typed into, and holds here, from here down, or for all.

#include "gui/panel_check_parts.h"
#include "gui/panel_edit_parts.h"
#include "gui/sizes_work.h"

#include "core/recipe/by_size.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

/// The columns that find room, the size that is shown among them.
struct Columns {
    std::size_t first = 0, last = 0;
    float label = 0.0F, wide = 0.0F;
};

Columns columns_in(const Ui& ui, const SizesWork& sizes, float width) {
    Columns c;
    c.label = std::min(11.0F * ui.sizes.small, 0.36F * width);
    const float least = std::max(least_control, 4.2F * ui.sizes.small);
    const float room = width - c.label;
    const std::size_t all = sizes.columns.size();
    const auto fits = static_cast<std::size_t>(std::max(1.0F, room / least));
    const std::size_t shown = std::min(all, fits);
    std::size_t at = 0;
    for (std::size_t i = 0; i < all; ++i) {
        if (sizes.columns[i].size == ui.model.edit.size) at = i;
    }
    c.first = at < shown / 2 ? 0 : std::min(at - shown / 2, all - shown);
    c.last = c.first + shown;
    c.wide = room / static_cast<float>(std::max<std::size_t>(1, shown));
    return c;
}

void pick_cell(Ui& ui, const Recipe& recipe, const std::string& path, HookSize size) {
    ui.typing.sized_path = path;
    if (const Amount* amount = amount_at(recipe, path)) ui.typing.sized = words_at(*amount, size);
    // The size that the rest of the screen shows follows the cell.
    const int by = size == ui.model.edit.size ? 0 : size < ui.model.edit.size ? -1 : 1;
    std::vector<HookSize> sizes = recipe.size_list;
    std::sort(sizes.begin(), sizes.end());
    const auto index = [&](HookSize s) {
        return static_cast<int>(std::find(sizes.begin(), sizes.end(), s) - sizes.begin());
    };
    if (by != 0) ui.want(wish(WishKind::edit_size, index(size) - index(ui.model.edit.size)));
}

void head(Ui& ui, const SizesWork& sizes, const Columns& c, const Box& box) {
    const float line = ui.fonts.small->FontSize;
    for (std::size_t i = c.first; i < c.last; ++i) {
        const auto& column = sizes.columns[i];
        const float x = box.x + c.label + static_cast<float>(i - c.first) * c.wide;
        std::string words("#");
        words += write_hook_size(column.size);
        write(ui, ui.fonts.small,
              column.size == ui.model.edit.size ? ui.colours.ink : ui.colours.soft,
              {x + 0.5F * grid, box.y, c.wide - grid, line}, words);
        const bool stops = column.stops > 0 || !column.fly;
        const Fit light = stops ? Fit::too : column.likely > 0 ? Fit::a_little : Fit::right;
        const float side = 0.9F * line;
        fit_sign(ui, light, {x + 0.5F * grid, box.y + line + 2.0F, side, side});
        const int found = column.stops + column.likely;
        if (found > 0 || !column.fly) {
            write(ui, ui.fonts.small, ui.colours.soft,
                  {x + side + grid, box.y + line + 2.0F, c.wide - side - grid, line},
                  column.fly ? std::to_string(found) : std::string("?"));
        }
    }
}

} // namespace

void edit_sizes(Ui& ui, const Box& box) {
    sheet(ui, box);
    const EditWork& work = ui.model.edit;
    const Recipe& recipe = work.draft().recipe;
    Box in = box.inside(1.5F * grid);
    if (!work.sizes || work.sizes->columns.empty()) {
        write(ui, ui.fonts.small, ui.colours.soft, in,
              "No hook sizes yet: write them in the first row, as 12-16.");
        return;
    }
    const SizesWork& sizes = *work.sizes;
    const float line = ui.fonts.small->FontSize;
    const float high = control_height(ui);
    const Columns c = columns_in(ui, sizes, in.width - 3.0F * grid);
    head(ui, sizes, c, in);
    in.y += 2.0F * line + grid;
    in.height -= 2.0F * line + grid;

    // What is picked is changed at the foot.
    const float foot_high = 2.0F * high + 2.0F * grid;
    const Box foot{in.x, in.bottom() - foot_high, in.width, foot_high};
    in.height -= foot_high + 0.5F * grid;
    {
        Scroll scroll(ui, "sizes", in);
        for (const SizesWork::Row& row : sizes.rows) {
            const float tall = std::max(high, 2.0F * line + 2.0F);
            const Box at = scroll.row(tall + 0.5F * grid);
            std::string label = row.label;
            const bool drops = std::any_of(row.cells.begin(), row.cells.end(),
                                           [](const std::string& cell) { return cell.empty(); });
            std::string way(words(row.way));
            if (drops) way += ", drops out";
            write(ui, ui.fonts.small, ui.colours.ink, {at.x, at.y, c.label - grid, line}, label);
            write(ui, ui.fonts.small, ui.colours.soft, {at.x, at.y + line, c.label - grid, line},
                  way);
            for (std::size_t i = c.first; i < c.last; ++i) {
                const HookSize size = sizes.columns[i].size;
                const std::string cell = row.cells[i].empty() ? "left out" : row.cells[i];
                const Box place{at.x + c.label + static_cast<float>(i - c.first) * c.wide, at.y,
                                c.wide - 2.0F, tall};
                const bool picked = row.path == ui.typing.sized_path && size == work.size;
                std::string id = cell;
                id.append("##").append(row.path).append(" ").append(write_hook_size(size));
                if (button(ui, id, place, picked)) pick_cell(ui, recipe, row.path, size);
            }
        }
    }
    const Amount* amount = amount_at(recipe, ui.typing.sized_path);
    if (amount == nullptr) {
        write(
            ui, ui.fonts.small, ui.colours.soft, foot,
            "Pick a cell to change it for its size, from it down to the smallest hook, or for all. "
            "Scales: goes with the hook. Steps: has a table. Stays: is the same at every size.");
        return;
    }
    std::string hint("at #");
    hint += write_hook_size(work.size);
    const bool entered =
        line_edit(ui, "##sized", hint.c_str(), ui.typing.sized, {foot.x, foot.y, foot.width, high});
    constexpr std::array<std::string_view, 3> scopes{"This size", "From here down", "All sizes"};
    const float wide = (foot.width - 2.0F * grid) / 3.0F;
    for (std::size_t i = 0; i < scopes.size(); ++i) {
        const Box at{foot.x + static_cast<float>(i) * (wide + grid), foot.y + high + grid, wide,
                     high};
        const bool pressed = button(ui, scopes[i], at, i == 0);
        if (!pressed && !(entered && i == 0)) continue;
        Wish w = wish(WishKind::edit_sized, static_cast<int>(i), ui.typing.sized);
        w.key = ui.typing.sized_path;
        ui.want(std::move(w));
    }
}

} // namespace wrapwright
