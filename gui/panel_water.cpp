#include "gui/panel_water_parts.h"
#include "gui/panels.h"

#include <algorithm>

namespace wrapwright {

void panel_water(Ui& ui, const Box& box) {
    if (!ui.model.dipped) {
        sheet(ui, box);
        const std::string& why = ui.model.not_dipped;
        write(ui, ui.fonts.small, ui.colours.soft, box.inside(2.0F * grid),
              why.empty() ? std::string_view("No fly is open.") : std::string_view(why));
        return;
    }
    // Large letters need the room for the numbers; the drawings go by what is left.
    const float rows = 15.0F * ui.sizes.small;
    if (box.width >= box.height && box.width >= 2.0F * rows) {
        const float wide = std::min(std::max(0.5F * box.width, rows), 0.62F * box.width);
        const Box right{box.x + wide + grid, box.y, box.width - wide - grid, box.height};
        const float chart = 0.5F * (right.height - grid);
        water_drift(ui, {right.x, right.y, right.width, chart});
        water_poses(ui,
                    {right.x, right.y + chart + grid, right.width, right.height - chart - grid});
        water_rows(ui, {box.x, box.y, wide, box.height}, false);
        return;
    }
    if (box.height > box.width && box.height >= 40.0F * ui.sizes.small) {
        const float chart = 0.22F * box.height;
        water_drift(ui, {box.x, box.y, box.width, chart});
        water_poses(ui, {box.x, box.y + chart + grid, box.width, 0.18F * box.height});
        const float top = 0.4F * box.height + 2.0F * grid;
        water_rows(ui, {box.x, box.y + top, box.width, box.height - top}, false);
        return;
    }
    water_rows(ui, box, true);
}

} // namespace wrapwright
