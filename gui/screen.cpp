#include "gui/screen.h"

#include "gui/input.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr float letter = 0.46F; ///< width of a letter on average, of the size

constexpr ImGuiWindowFlags plain =
    ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
    ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollWithMouse;

/// Where the parts of the bench stand; no width where one has no room.
struct Places {
    Box step, acts, wraps, tally;
};

/// A tally is of use where some of its rows and columns can be read.
bool holds_tally(const Box& box, float small) {
    return box.width >= 40.0F * letter * small && box.height >= 4.5F * small;
}

Places places(const Model& model, const TypeSizes& sizes, const Box& all, float control) {
    const float small = sizes.small;
    const float act = std::min(control, std::max(least_control, 0.1F * all.height)) + grid;
    Places p;
    if (all.width >= all.height) {
        // The step's column grows as letters do, up to the whole width.
        float wide = 0.5F * all.width;
        if (wide < 22.0F * letter * small) wide = 0.64F * all.width;
        if (wide < 16.0F * letter * small) wide = all.width;
        p.step = {all.x, all.y, wide, all.height - act - grid};
        p.acts = {all.x, p.step.bottom() + grid, wide, act};
        const Box right{all.x + wide + grid, all.y, all.width - wide - grid, all.height};
        if (model.more_words && holds_tally(right, small)) {
            p.tally = right;
            return p;
        }
        if (right.width < 160.0F || model.more_words) {
            p.step.width = p.acts.width = all.width;
            return p;
        }
        p.wraps = right;
        const float tall = 0.36F * right.height;
        p.tally = {right.x, right.bottom() - tall, right.width, tall};
        if (holds_tally(p.tally, small)) {
            p.wraps.height -= tall + grid;
        } else {
            p.tally = {};
        }
        return p;
    }
    float tall = 0.2F * all.height;
    p.tally = {all.x, all.bottom() - tall, all.width, tall};
    if (!holds_tally(p.tally, small)) {
        p.tally = {};
        tall = -grid;
    }
    // Beside a header of two rows the words need what the picture can spare.
    const float share = header_rows(all.width) == 2 ? 0.24F : 0.33F;
    const float wraps = std::min(share * all.height, 0.75F * all.width);
    p.wraps = {all.x, all.y, all.width, wraps};
    if (model.more_words) p.wraps = {all.x, all.y - grid, 0.0F, 0.0F};
    const float top = p.wraps.bottom() + grid;
    p.acts = {all.x, all.bottom() - tall - grid - act, all.width, act};
    p.step = {all.x, top, all.width, p.acts.y - grid - top};
    return p;
}

void bench(Ui& ui, const Box& all) {
    if (!pictured(ui.model).fly) return panel_step(ui, all); // words alone
    Places p = places(ui.model, ui.sizes, all, control_height(ui));
    const float least = p.acts.height + 3.0F * ui.sizes.small + 6.0F * grid; // words before acts
    if (ui.model.more_words && p.step.height > least) {
        p.step.height -= p.acts.height + grid;
        panel_more_acts(ui, {p.acts.x, p.step.bottom() + grid, p.acts.width, p.acts.height});
    }
    if (p.wraps.width > 0.0F && !step_holds_cautions(ui, p.step)) { // they come before a picture
        if (p.wraps.y < p.step.y) {
            p.step.height += p.step.y - p.wraps.y;
            p.step.y = p.wraps.y;
        } else {
            p.step.width = p.acts.width = all.width;
            p.tally = {};
        }
        p.wraps.width = 0.0F;
    }
    panel_step(ui, p.step);
    panel_acts(ui, p.acts);
    if (p.wraps.width > 0.0F) panel_wraps(ui, p.wraps);
    if (p.tally.width > 0.0F) panel_tally(ui, p.tally);
}

/// A line over everything, gone by itself. What lies below can be pressed through it.
void notice(Ui& ui, const Box& window) {
    if (ui.model.notice.empty()) return;
    ImFont* font = ui.fonts.small;
    const std::string& text = ui.model.notice;
    const float wide =
        std::min(window.width - 8.0F * grid,
                 font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, text.c_str()).x + 1.0F);
    const float high = height_of(font, text, wide);
    // At the head, where nothing is pressed while tying.
    const Box box{window.x + 0.5F * (window.width - wide) - 2.0F * grid, window.y + grid,
                  wide + 4.0F * grid, high + 2.0F * grid};
    ImGui::SetNextWindowPos(corner(box));
    ImGui::SetNextWindowSize({box.width, box.height});
    ImGui::Begin("notice", nullptr,
                 plain | ImGuiWindowFlags_NoInputs | ImGuiWindowFlags_NoFocusOnAppearing);
    ImGui::GetWindowDrawList()->AddRectFilled(corner(box), far_corner(box), im(ui.colours.accent),
                                              6.0F);
    write(ui, font, ui.colours.accent_ink, {box.x + 2.0F * grid, box.y + grid, wide, high}, text);
    ImGui::End();
}

/// What the store could not do stays until it is put away.
float trouble(Ui& ui, const Box& all) {
    if (ui.model.trouble.empty()) return 0.0F;
    const float high = control_height(ui);
    const float wide = 7.0F * ui.sizes.small;
    const float room = all.width - wide - 4.0F * grid;
    const float text = std::max(high, height_of(ui.fonts.small, ui.model.trouble, room));
    const Box box{all.x, all.y, all.width, text + 2.0F * grid};
    sheet(ui, box);
    write(ui, ui.fonts.small, ui.colours.warn, {box.x + grid, box.y + grid, room, text},
          ui.model.trouble);
    if (button(ui, "Put away", {box.right() - wide - grid, box.y + grid, wide, high})) {
        ui.want(wish(WishKind::put_away));
    }
    return box.height + grid;
}

/// Where a picture of the wraps was drawn, if anywhere.
Box wraps_of(const Ui& ui, Picture which) {
    for (const DrawnControl& control : ui.controls) {
        if (control.label == wraps_name(which)) return control.box;
    }
    return {};
}

void screen(Ui& ui, const Box& window) {
    Box all = window.inside(grid);
    float head = std::min(control_height(ui), std::max(least_control, 0.1F * window.height));
    if (header_rows(all.width) == 2) head = 2.0F * least_control + grid;
    panel_header(ui, {all.x, all.y, all.width, head});
    all.y += head + grid;
    all.height -= head + grid;
    const float told = trouble(ui, all);
    all.y += told;
    all.height -= told;
    all.height -= panel_tour(ui, all);
    switch (ui.model.screen) {
    case Screen::bench: bench(ui, all); break;
    case Screen::lay_out: panel_lay_out(ui, all); break;
    case Screen::library: panel_library(ui, all); break;
    case Screen::settings: panel_settings(ui, all); break;
    case Screen::keys: panel_help(ui, all); break;
    case Screen::film: panel_film(ui, all); break;
    case Screen::what_if: panel_what_if(ui, all); break;
    case Screen::water: panel_water(ui, all); break;
    case Screen::check: panel_check(ui, all); break;
    case Screen::edit: panel_edit(ui, all); break;
    case Screen::orders: panel_orders(ui, all); break;
    }
}

} // namespace

TypeSizes sizes_for(const Model& model, PixelSize window) {
    return type_sizes(metres(model.settings.reading_m), dots_per_mm(model), window);
}

Shown draw_screen(const Model& model, Typing& typing, const Fonts& fonts, const TypeSizes& sizes) {
    ImGuiIO& io = ImGui::GetIO();
    Shown shown;
    typing.fresh = typing.screen != model.screen || typing.sheet != model.sheet;
    if (typing.screen != model.screen) {
        typing.key_for = -1;
        typing.grid.editing = false; // of another screen's table
    }
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Left)) typing.slide = Slide::nowhere;
    typing.screen = model.screen;
    typing.sheet = model.sheet;
    Ui ui{model, typing, fonts, sizes, palette(model.settings.theme)};
    take_keys(model, typing, ui.wishes);
    if (keys_move_about(model)) {
        io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    } else {
        io.ConfigFlags &= ~ImGuiConfigFlags_NavEnableKeyboard;
    }
    // Or ImGui takes a pad's keys away before anybody sees them.
    io.BackendFlags |= ImGuiBackendFlags_HasGamepad;
    const Box window{0.0F, 0.0F, io.DisplaySize.x, io.DisplaySize.y};
    ImGui::PushFont(fonts.small);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0F, 0.0F});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0F);
    ImGui::SetNextWindowPos({0.0F, 0.0F});
    ImGui::SetNextWindowSize(io.DisplaySize);
    ImGui::Begin("bench", nullptr, plain | ImGuiWindowFlags_NoBringToFrontOnFocus);
    ImGui::GetWindowDrawList()->AddRectFilled({0.0F, 0.0F}, io.DisplaySize, im(ui.colours.ground));
    ImGui::BeginDisabled(model.sheet != Sheet::closed);
    ImGui::GetStyle().DisabledAlpha = 1.0F;
    screen(ui, window);
    for (std::size_t i = 0; i < picture_count; ++i) {
        shown.wraps[i] = wraps_of(ui, static_cast<Picture>(i));
    }
    ImGui::EndDisabled();
    ImGui::End();
    if (model.sheet != Sheet::closed) {
        ui.controls.clear(); // what lies below cannot be pressed
        ui.fields.clear();
        ui.texts.clear();
        ImGui::SetNextWindowPos({0.0F, 0.0F});
        ImGui::SetNextWindowSize(io.DisplaySize);
        if (typing.fresh) ImGui::SetNextWindowFocus();
        ImGui::Begin("sheet", nullptr, plain);
        panel_sheet(ui, window);
        ImGui::End();
    }
    notice(ui, window);
    ImGui::PopStyleVar(2);
    ImGui::PopFont();
    shown.wishes = std::move(ui.wishes);
    shown.controls = std::move(ui.controls);
    shown.texts = std::move(ui.texts);
    shown.fields = std::move(ui.fields);
    return shown;
}

} // namespace wrapwright
