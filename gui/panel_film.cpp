#include "core/tying/step_text.h"
#include "gui/panels.h"
#include "gui/widgets.h"

#include <algorithm>

namespace wrapwright {

void panel_film(Ui& ui, const Box& box) {
    if (!ui.model.fly || ui.model.fly->tied.moments.empty()) {
        sheet(ui, box);
        write(ui, ui.fonts.small, ui.colours.soft, box.inside(2.0F * grid),
              "This recipe has no steps to show.");
        return;
    }
    const OpenFly& fly = *ui.model.fly;
    const float high = control_height(ui);
    const float line = ui.fonts.small->FontSize;
    const int last = static_cast<int>(fly.tied.moments.size()) - 1;
    const int at = std::clamp(ui.model.film_at, 0, last);
    const Moment& moment = fly.tied.moments[static_cast<std::size_t>(at)];

    const float foot = 2.0F * high + 2.0F * line + 4.0F * grid;
    panel_wraps(ui, {box.x, box.y, box.width, box.height - foot - grid});
    const Box below{box.x, box.bottom() - foot, box.width, foot};
    sheet(ui, below);
    Box in = below.inside(grid);
    const std::string text = "Step " + std::to_string(moment.step + 1) + ": " +
                             action_text(fly.pattern, fly.resolved, fly.tied, at);
    write(ui, ui.fonts.small, ui.colours.ink, {in.x, in.y, in.width, 2.0F * line}, text);
    in.y += 2.0F * line + grid;
    const auto moved = slider(ui, "moment", static_cast<float>(at), 0.0F, static_cast<float>(last),
                              {in.x, in.y, in.width, high});
    if (moved) ui.want(wish(WishKind::film_go, static_cast<int>(*moved + 0.5F)));
    in.y += high + grid;
    const float part = (in.width - 4.0F * grid) / 5.0F;
    const auto place = [&](int i) {
        return Box{in.x + static_cast<float>(i) * (part + grid), in.y, part, high};
    };
    if (button(ui, "<##film", place(0))) ui.want(wish(WishKind::film_go, at - 1));
    if (button(ui, ui.model.film_playing ? "Stop" : "Play", place(1), true)) {
        ui.want(wish(WishKind::film_play));
    }
    if (button(ui, ">##film", place(2))) ui.want(wish(WishKind::film_go, at + 1));
    if (button(ui, "Save picture", place(3))) ui.want(wish(WishKind::save_frame));
    if (button(ui, "Save all steps", place(4))) ui.want(wish(WishKind::save_steps));
}

} // namespace wrapwright
