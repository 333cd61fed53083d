#include "gui/panel_edit_parts.h"
#include "gui/panels.h"

#include "core/tying/finding_text.h"
#include "core/units/hook_size.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

/// Where the parts stand; no height for a picture that has no room.
struct Places {
    Box outline, picture, fields;
};

Places places(const Ui& ui, const Box& box) {
    const float least_picture = 6.0F * ui.sizes.small;
    Places p;
    if (box.width >= box.height) {
        const float left = std::floor(0.46F * box.width);
        p.outline = {box.x, box.y, left, box.height};
        const Box right{box.x + left + grid, box.y, box.width - left - grid, box.height};
        p.picture = {right.x, right.y, right.width, std::floor(0.36F * right.height)};
        p.fields = {right.x, p.picture.bottom() + grid, right.width,
                    right.bottom() - p.picture.bottom() - grid};
        if (p.picture.height < least_picture) {
            // A low window: the fly stands below the list, and the fields have their whole height.
            p.fields = right;
            p.outline.height = std::floor(0.6F * box.height);
            p.picture = {box.x, p.outline.bottom() + grid, left,
                         box.bottom() - p.outline.bottom() - grid};
        }
        return p;
    }
    p.picture = {box.x, box.y, box.width, std::floor(0.24F * box.height)};
    if (p.picture.height < least_picture) p.picture.height = -grid;
    const float rest = box.bottom() - p.picture.bottom() - 2.0F * grid;
    p.outline = {box.x, p.picture.bottom() + grid, box.width, std::floor(0.46F * rest)};
    p.fields = {box.x, p.outline.bottom() + grid, box.width,
                box.bottom() - p.outline.bottom() - grid};
    return p;
}

/// The views; then undo, redo, size, save, new; in two rows where one has no room. How high they are.
float acts(Ui& ui, const Box& box) {
    const EditWork& work = ui.model.edit;
    constexpr std::array<std::string_view, 4> views{"Recipe", "Sizes", "Text", "Revisions"};
    constexpr float view_share = 1.4F, small_share = 0.95F, size_share = 3.5F, save_share = 1.3F,
                    new_share = 1.2F;
    const auto count = static_cast<float>(views.size());
    constexpr float act_shares = 2.0F * small_share + size_share + save_share + new_share;
    float share = (box.width - (count + 4.0F) * grid) / (count * view_share + act_shares);
    const bool two_rows = view_share * share < 4.8F * ui.sizes.small; // the longest word
    if (two_rows) share = (box.width - (count - 1.0F) * grid) / (count * view_share);
    float x = box.x, y = box.y;
    const auto next = [&](float shares) {
        const Box at{x, y, shares * share, box.height};
        x += at.width + grid;
        return at;
    };
    for (std::size_t i = 0; i < views.size(); ++i) {
        const bool on = static_cast<std::size_t>(work.view) == i;
        if (button(ui, views[i], next(view_share), on)) {
            ui.want(wish(WishKind::edit_view, static_cast<int>(i)));
        }
    }
    if (two_rows) {
        x = box.x;
        y += box.height + grid;
        share = (box.width - 4.0F * grid) / act_shares;
    }
    if (button(ui, "Undo", next(small_share))) ui.want(wish(WishKind::edit_undo));
    if (button(ui, "Redo", next(small_share))) ui.want(wish(WishKind::edit_redo));
    std::string size("#");
    size += write_hook_size(work.size);
    const int by = stepper(ui, "##size", size, next(size_share));
    if (by != 0) ui.want(wish(WishKind::edit_size, by));
    if (button(ui, "Save", next(save_share), work.changed())) ui.want(wish(WishKind::edit_save));
    const bool asked = ui.typing.edit_open == "new fly";
    if (button(ui, "New fly", next(new_share), asked)) {
        ui.typing.edit_open = asked ? std::string() : std::string("new fly");
    }
    return y + box.height - box.y;
}

/// The classes of fly to begin with.
void new_fly(Ui& ui, const Box& box) {
    constexpr std::array<std::string_view, 8> classes{"jig nymph", "dry",   "wet",  "streamer",
                                                      "sedge",     "midge", "scud", "empty"};
    sheet(ui, box);
    Box in = box.inside(2.0F * grid);
    const float told =
        write(ui, ui.fonts.small, ui.colours.soft, in,
              "What is it to be? Each begins with a plain skeleton of its class, which "
              "can be tied as it is and changed from there.");
    const float high = control_height(ui);
    const float wide = std::floor((in.width - 3.0F * grid) / 4.0F);
    for (std::size_t i = 0; i < classes.size(); ++i) {
        const auto column = static_cast<float>(i % 4), row = static_cast<float>(i / 4);
        const Box at{in.x + column * (wide + grid), in.y + told + grid + row * (high + grid), wide,
                     high};
        if (button(ui, classes[i], at)) {
            ui.want(wish(WishKind::edit_new, 0, std::string(classes[i])));
            ui.typing.edit_open.clear();
            ui.typing.edit_row_focus = true;
        }
    }
}

/// What the keys do here where no field has them.
void keys(Ui& ui) {
    const ImGuiIO& io = ImGui::GetIO();
    if (!io.KeyCtrl) return;
    if (ImGui::IsKeyPressed(ImGuiKey_S, false)) ui.want(wish(WishKind::edit_save));
    if (io.WantTextInput) return;
    if (ImGui::IsKeyPressed(ImGuiKey_Z)) {
        ui.want(wish(io.KeyShift ? WishKind::edit_redo : WishKind::edit_undo));
    }
    if (ImGui::IsKeyPressed(ImGuiKey_Y)) ui.want(wish(WishKind::edit_redo));
}

} // namespace

float edit_findings(Ui& ui, const Box& box) {
    const EditWork& work = ui.model.edit;
    const auto say = [&](Colour colour, const std::string& text) {
        return write(ui, ui.fonts.small, colour, box, text) + 0.5F * grid;
    };
    if (!work.halted.empty()) return say(ui.colours.warn, "Not run yet: " + work.halted);
    if (!work.fly) return 0.0F;
    const StepPlace at = step_of(work.row);
    std::string here;
    int elsewhere = 0;
    for (const Finding& f : work.fly->tied.findings) {
        if (f.level == Level::note) continue;
        if (!at.step || f.step != static_cast<int>(*at.step)) {
            ++elsewhere;
            continue;
        }
        const FindingText text = describe(work.fly->pattern, f);
        here.append(here.empty() ? "" : " \xC2\xB7 ").append(text.message).append("; ");
        here.append(text.remedy);
    }
    if (!here.empty()) return say(ui.colours.warn, here);
    if (elsewhere == 0) return say(ui.colours.good, "Nothing is in the way of tying it.");
    std::string count = std::to_string(elsewhere);
    count += elsewhere == 1 ? " finding, at the step with the flag"
                            : " findings, at the steps with flags";
    return say(ui.colours.soft, count);
}

void panel_edit(Ui& ui, const Box& box) {
    if (!ui.model.edit.history) {
        sheet(ui, box);
        write(ui, ui.fonts.small, ui.colours.soft, box.inside(2.0F * grid), "No recipe is open.");
        return;
    }
    keys(ui);
    if (ui.typing.fresh) ui.typing.edit_row_focus = true;
    const float high = acts(ui, {box.x, box.y, box.width, control_height(ui)});
    const Box in{box.x, box.y + high + grid, box.width, box.height - high - grid};
    if (ui.typing.edit_open == "new fly") return new_fly(ui, in);
    switch (ui.model.edit.view) {
    case EditView::write: break;
    case EditView::sizes: return edit_sizes(ui, in);
    case EditView::loose: return edit_loose(ui, in);
    case EditView::versions: return edit_versions(ui, in);
    }
    const Places p = places(ui, in);
    edit_outline(ui, p.outline);
    if (p.picture.height > 0.0F) {
        if (pictured(ui.model).fly) {
            panel_wraps(ui, p.picture);
        } else {
            sheet(ui, p.picture);
            write(ui, ui.fonts.small, ui.colours.soft, p.picture.inside(2.0F * grid),
                  "The fly appears with the first action of the first step.");
        }
    }
    if (ui.model.edit.picking) {
        edit_choices(ui, p.fields);
    } else {
        edit_fields(ui, p.fields);
    }
}

} // namespace wrapwright
