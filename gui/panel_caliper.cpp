// At the vise: what was measured of this fly, and what it means.

#include "gui/panel_check_parts.h"
#include "gui/panels.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

void panel_caliper(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const float high = control_height(ui);
    const float line = ui.fonts.small->FontSize;
    if (ui.typing.fresh) {
        ui.typing.caliper.clear();
        ImGui::SetKeyboardFocusHere();
    }
    caliper_line(ui, {box.x, box.y, box.width, high});
    float y = box.y + high + grid;
    const std::string standard = standard_of(m);
    for (const PartTarget& t : m.check.targets) {
        if (t.standard != standard) continue;
        const FlyReading* reading = reading_for(m, m.check.fly, name(t.part));
        std::string words(name(t.part));
        words.append(" should be ").append(write_rounded(in_millimetres(t.length.low), 1));
        words.append(" to ").append(write_rounded(in_millimetres(t.length.high), 1));
        words.append(" mm");
        Colour colour = ui.colours.soft;
        if (reading != nullptr) {
            const FitCheck fit = fit_of(t.length, Length{reading->value});
            words.append("; ").append(write_rounded(reading->value * 1e3, 1)).append(" is ");
            words.append(advice(m, t, fit));
            colour = colour_of(ui.colours, fit.fit);
            fit_sign(ui, fit.fit, {box.x, y, 1.4F * line, 1.4F * line});
        }
        const float wide = box.width - 1.8F * line;
        const float tall = std::max(1.4F * line, height_of(ui.fonts.small, words, wide));
        if (y + line > box.bottom()) return;
        write(ui, ui.fonts.small, colour, {box.x + 1.8F * line, y, wide, box.bottom() - y}, words);
        y += tall + 0.5F * grid;
    }
}

} // namespace wrapwright
