// Revisions: what was saved when, one held against what is written now, in words and as flies.

#include "gui/panel_edit_parts.h"
#include "gui/panels.h"
#include "gui/versions_work.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

Wish ask(VersionAsk what, int of = 0, std::string text = {}) {
    Wish w = wish(WishKind::edit_version, static_cast<int>(what), std::move(text));
    w.x = static_cast<float>(of);
    return w;
}

/// Both flies, each with its words below.
void flies(Ui& ui, const Box& box, bool stacked) {
    const VersionsWork& work = *ui.model.edit.versions;
    const float line = ui.fonts.small->FontSize;
    std::string then("Revision ");
    then += std::to_string(work.picked);
    const std::array<std::string, 2> names{std::move(then), "As it is written now"};
    constexpr std::array<Picture, 2> which{Picture::fewer, Picture::own};
    for (std::size_t i = 0; i < 2; ++i) {
        const auto k = static_cast<float>(i);
        Box one = box;
        if (stacked) {
            one.height = 0.5F * (box.height - grid);
            one.y += k * (one.height + grid);
        } else {
            one.width = 0.5F * (box.width - grid);
            one.x += k * (one.width + grid);
        }
        if (pictured(ui.model, which[i]).fly) {
            panel_wraps(ui, one, which[i]);
        } else {
            sheet(ui, one);
        }
        const float wide = ui.fonts.small->CalcTextSizeA(line, FLT_MAX, 0.0F, names[i].c_str()).x;
        const Box plate{one.x + grid, one.bottom() - line - grid,
                        std::min(wide + grid, one.width - 2.0F * grid), line};
        ImGui::GetWindowDrawList()->AddRectFilled(corner(plate), far_corner(plate),
                                                  im(ui.colours.sheet), 4.0F);
        write(ui, ui.fonts.small, ui.colours.ink,
              {plate.x + 0.5F * grid, plate.y, plate.width, line + 1.0F}, names[i]);
    }
}

void changes(Ui& ui, const Box& box) {
    const VersionsWork& work = *ui.model.edit.versions;
    Scroll scroll(ui, "changes", box);
    const float room = box.width - 4.0F * grid;
    const auto say = [&](Colour colour, const std::string& text) {
        const float high = height_of(ui.fonts.small, text, room);
        const Box row = scroll.row(high + 0.5F * grid);
        write(ui, ui.fonts.small, colour, {row.x, row.y, room, high + 1.0F}, text);
    };
    if (work.picked == 0) {
        return say(ui.colours.soft, "Pick a revision: what was changed since stands here.");
    }
    if (work.changes.empty()) return say(ui.colours.good, "Nothing was changed since.");
    for (const Change& change : work.changes) say(ui.colours.ink, change_words(change));
}

} // namespace

void edit_versions(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    if (!m.edit.versions) return;
    const VersionsWork& work = *m.edit.versions;
    const float high = control_height(ui);
    const bool wide = box.width >= box.height;
    Box left = box, right = box;
    if (wide) {
        left.width = std::floor(0.38F * box.width);
        right = {left.right() + grid, box.y, box.width - left.width - grid, box.height};
    } else {
        left.height = std::floor(0.4F * box.height);
        right = {box.x, left.bottom() + grid, box.width, box.height - left.height - grid};
    }
    sheet(ui, left);
    Box in = left.inside(grid);
    const auto take = [&](float by) {
        in.y += by;
        in.height -= by;
    };
    const bool same = m.fly && m.fly->id == m.edit.id && !m.state.otherwise.empty();
    if (same) {
        std::string words("Revision from this sitting: ");
        words += std::to_string(m.state.otherwise.size());
        words += m.state.otherwise.size() == 1 ? " change" : " changes";
        if (button(ui, words + "##from the sitting", {in.x, in.y, in.width, high}, true)) {
            ui.want(ask(VersionAsk::sitting));
        }
        take(high + grid);
    }
    // Three rows of what can be done with the whole recipe.
    const float half = 0.5F * (in.width - grid);
    const float rows = 3.0F * high + 2.0F * grid;
    const Box foot{in.x, in.bottom() - rows, in.width, rows};
    in.height -= foot.height + grid;
    {
        Scroll scroll(ui, "revisions", in);
        const bool narrow = in.width < 15.0F * ui.sizes.small;
        for (const VersionsWork::Row& row : work.rows) {
            std::string label = std::to_string(row.number) + "  " +
                                (row.note.empty() ? std::string("without a name") : row.note);
            // Where there is little room the day stands in a second line.
            if (narrow) label.append(", ").append(row.made);
            label.append("##revision ").append(std::to_string(row.number));
            const bool picked = row.number == work.picked;
            const float tall = narrow ? high + ui.fonts.small->FontSize : high;
            if (row_button(ui, label, narrow ? std::string() : row.made, picked,
                           scroll.row(tall))) {
                ui.typing.version_name = row.note;
                ui.want(ask(VersionAsk::pick, row.number));
            }
        }
    }
    if (button(ui, "My version", {foot.x, foot.y, half, high})) ui.want(ask(VersionAsk::fork));
    if (button(ui, "Copy as text", {foot.x + half + grid, foot.y, half, high})) {
        ui.want(ask(VersionAsk::copy));
    }
    const float second = foot.y + high + grid;
    if (button(ui, "Save as file", {foot.x, second, half, high})) ui.want(ask(VersionAsk::file));
    if (button(ui, "With photos", {foot.x + half + grid, second, half, high})) {
        ui.want(ask(VersionAsk::bundle));
    }
    if (button(ui, "Back to it", {foot.x, second + high + grid, foot.width, high})) {
        ui.want(ask(VersionAsk::back, work.picked));
    }

    Box low = right;
    if (work.picked != 0) {
        Box pictures = right;
        pictures.height = std::floor((wide ? 0.42F : 0.46F) * right.height);
        flies(ui, pictures, !wide);
        low.y = pictures.bottom() + grid;
        low.height = right.bottom() - low.y;
    }
    sheet(ui, low);
    Box told = low.inside(1.5F * grid);
    if (work.picked != 0) {
        const float save = std::min(6.0F * ui.sizes.small, 0.3F * told.width);
        const bool entered =
            line_edit(ui, "##version name", "a name for this revision", ui.typing.version_name,
                      {told.x, told.y, told.width - save - grid, high});
        if (button(ui, "Name it", {told.right() - save, told.y, save, high}) || entered) {
            ui.want(ask(VersionAsk::name, work.picked, ui.typing.version_name));
        }
        told.y += high + grid;
        told.height -= high + grid;
    }
    changes(ui, told);
}

} // namespace wrapwright
