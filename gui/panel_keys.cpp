#include "gui/panels.h"
#include "gui/widgets.h"

namespace wrapwright {

void panel_keys(Ui& ui, const Box& box) {
    sheet(ui, box);
    Box in = box.inside(2.0F * grid);
    const auto take = [&](float high) {
        in.y += high;
        in.height -= high;
    };
    take(write(ui, ui.fonts.main, ui.colours.ink, in, "Keys") + 0.5F * grid);
    const bool waits = ui.typing.key_for >= 0;
    take(write(ui, ui.fonts.small, waits ? ui.colours.warn : ui.colours.soft, in,
               waits ? "Press the key that is to do this; escape leaves it as it is."
                     : "Pick a line to give it one more key. Pedals count as keys.") +
         grid);
    const float high = control_height(ui);
    Scroll scroll(ui, "keys", in);
    for (int i = 0; i < command_count; ++i) {
        const auto command = static_cast<Command>(i);
        std::string keys;
        for (const KeyUse& use : ui.model.settings.keys) {
            if (use.command != command) continue;
            if (!keys.empty()) keys += ", ";
            keys += use.key;
        }
        if (ui.typing.key_for == i) keys = "...";
        if (row_button(ui, words(command), keys, ui.typing.key_for == i, scroll.row(high))) {
            ui.typing.key_for = i;
        }
    }
}

} // namespace wrapwright
