#include "core/units/number_text.h"
#include "gui/panels.h"
#include "gui/widgets.h"

#include <algorithm>

namespace wrapwright {

namespace {

void set(Ui& ui, const std::string& key, const std::string& text) {
    ui.want({WishKind::set, 0, 0.0F, 0.0F, key, text});
}

void flag(Ui& ui, Scroll& scroll, std::string_view label, const std::string& key, bool on) {
    const float high = control_height(ui);
    if (toggle(ui, label, on, scroll.row(high))) set(ui, key, on ? "off" : "on");
}

void number(Ui& ui, Scroll& scroll, std::string_view label, const std::string& key,
            const std::string& shown, double value, double step, double least, double most) {
    const float high = control_height(ui);
    Box row = scroll.row(high + grid);
    row.height = high;
    const int pressed = stepper(ui, label, shown, row);
    if (pressed == 0) return;
    const double next = std::clamp(value + pressed * step, least, most);
    set(ui, key, write_rounded(next, 2));
}

void pick_theme(Ui& ui, const Box& row) {
    const float third = (row.width - 2.0F * grid) / 3.0F;
    float x = row.x;
    for (const Theme theme : {Theme::light, Theme::paper, Theme::dark}) {
        std::string label(name(theme));
        label[0] = static_cast<char>(label[0] - 'a' + 'A');
        const bool on = theme == ui.model.settings.theme;
        if (button(ui, label, {x, row.y, third, row.height}, on)) {
            set(ui, "theme", std::string(name(theme)));
        }
        x += third + grid;
    }
}

void backup(Ui& ui, Scroll& scroll) {
    const float high = control_height(ui);
    (void)scroll.row(grid);
    if (ui.model.picks_files) {
        const Box both = scroll.row(high + grid);
        const float wide = 0.5F * (both.width - grid);
        if (button(ui, "Back up to a file", {both.x, both.y, wide, high})) {
            ui.want(wish(WishKind::back_up));
        }
        if (button(ui, "Look into a backup", {both.x + wide + grid, both.y, wide, high})) {
            ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::backup)));
        }
        return;
    }
    const Box path = scroll.row(high + grid);
    line_edit(ui, "##backup", "file for the backup", ui.typing.backup_file,
              {path.x, path.y, path.width, high});
    const Box row = scroll.row(high + grid);
    const float half = 0.5F * (row.width - grid);
    const bool named = !ui.typing.backup_file.empty();
    if (button(ui, "Back up", {row.x, row.y, half, high}) && named) {
        ui.want(wish(WishKind::back_up, 0, ui.typing.backup_file));
    }
    if (button(ui, "Look into a backup", {row.x + half + grid, row.y, half, high}) && named) {
        ui.want(wish(WishKind::look_into, 0, ui.typing.backup_file));
    }
}

} // namespace

void panel_settings(Ui& ui, const Box& box) {
    sheet(ui, box);
    Box in = box.inside(2.0F * grid);
    const float title = write(ui, ui.fonts.main, ui.colours.ink, in, "Settings") + grid;
    in.y += title;
    in.height -= title;
    const Settings& s = ui.model.settings;
    const float high = control_height(ui);
    const float line = ui.fonts.small->FontSize;
    Scroll scroll(ui, "settings", in);
    Box themes = scroll.row(high + grid);
    themes.height = high;
    pick_theme(ui, themes);
    flag(ui, scroll, "Left-handed: the pictures mirror", "left hand", s.left_handed);
    number(ui, scroll, "From your eyes to the screen", "reading distance",
           write_rounded(s.reading_m, 1) + " m", s.reading_m, 0.1, 0.4, 4.0);
    const double told = ui.model.screen_dots_per_mm;
    const double dots = dots_per_mm(ui.model);
    const bool measured = s.dots_per_mm > 0.0 || !s.screens.empty();
    number(ui, scroll, "Dots in a millimetre", dots_key(ui.model.screen_name),
           write_rounded(dots, 2) + (measured     ? ""
                                     : told > 0.0 ? " (told)"
                                                  : " (usual)"),
           dots, 0.05, 1.0, 40.0);
    flag(ui, scroll, "Facing a class: mirrored once more", "facing the class", s.facing);
    number(ui, scroll, "Colours under clear water", "water", write_rounded(s.depth_m, 1) + " m",
           s.depth_m, 0.5, 0.0, 10.0);
    flag(ui, scroll, "Inches beside millimetres", "inches", s.inches);
    flag(ui, scroll, "A press counts a turn while winding", "count turns", s.count_turns);
    number(ui, scroll, "Seconds for a turn, counting by itself", "pace",
           s.pace_s > 0.0 ? write_rounded(s.pace_s, 1) + " s" : "1 s",
           s.pace_s > 0.0 ? s.pace_s : 1.0, 0.1, 0.3, 10.0);
    flag(ui, scroll, "A tick with each turn", "tick", s.tick);
    flag(ui, scroll, "Each step read aloud", "voice", s.voice);
    (void)scroll.row(grid);
    heading(ui, scroll.row(line + grid), "Over the fly");
    for (std::size_t i = 0; i < overlay_count; ++i) {
        const std::string word(name(static_cast<Overlay>(i)));
        flag(ui, scroll, word, "show " + word, s.overlays[i]);
    }
    (void)scroll.row(grid);
    heading(ui, scroll.row(line + grid), "Backup");
    backup(ui, scroll);
    if (ui.model.data_folder.empty()) return;
    std::string where = "Everything is kept in " + ui.model.data_folder;
    if (ui.model.picks_files) {
        where = "Everything is kept by this browser on this device, and nowhere else. ";
        where += ui.model.kept_for_good
                     ? "It has promised not to clear it by itself; whoever "
                     : "It has not promised to keep it when room gets short, and whoever ";
        where += "clears the browser's data clears it, too: keep a backup.";
    }
    const float room = in.width - 4.0F * grid;
    const Box row = scroll.row(height_of(ui.fonts.small, where, room) + grid);
    write(ui, ui.fonts.small, ui.colours.soft, {row.x, row.y, room, row.height}, where);
}

} // namespace wrapwright
