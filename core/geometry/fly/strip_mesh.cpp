// Sheets: feather slips, biots, foam and film as wings and tails; cases folded over the body.

#include "core/geometry/fly/sheet.h"
#include "core/geometry/fly/stance.h"
#include "core/geometry/fly/surface.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

/// The thickness of a sheet as it lies, mm; typical where the recipe does not say.
float thickness_of(const Sketch& sketch, const RecipeMaterial* material) {
    const float typical = material && material->kind == MaterialKind::foam   ? 1.5F
                          : material && material->kind == MaterialKind::film ? 0.08F
                                                                             : 0.06F;
    return material ? sketch.given_mm(material->thickness, typical) : typical;
}

/// Opens the piece of a sheet in its material's look.
int open_sheet(Sketch& sketch, const Placed& placed, const RecipeMaterial* material) {
    const Look look = material ? look_of(*material) : Look::fibre;
    const float opacity = look == Look::film ? 0.55F : 1.0F;
    return sketch.open(look, sketch.colour(placed.material), placed.part, placed.act, opacity);
}

} // namespace

void draw_slips(Sketch& sketch, const Placed& placed) {
    const Stance stance(sketch, placed);
    const RecipeMaterial* material = sketch.material(placed.material);
    const MaterialKind kind = sketch.kind(placed.material);
    const int piece = open_sheet(sketch, placed, material);
    const float gape = mm(sketch.base(placed.base).run->hook.gape.value);
    const bool biot = kind == MaterialKind::biot;
    const float typical = biot ? 0.16F * gape : (kind == MaterialKind::slip ? 0.5F : 0.8F) * gape;
    const float wide = material ? sketch.given_mm(material->width, typical) : typical;
    const int count = std::clamp(static_cast<int>(placed.count), 1, 6);
    for (int i = 0; i < count; ++i) {
        const float side = count == 1 ? 0.0F : (i % 2 == 0 ? -1.0F : 1.0F);
        const int pair = i / 2;
        const float wider = 1.0F + 0.6F * static_cast<float>(pair); // each pair outside the last
        const Rooted start = side == 0.0F ? stance.middle() : stance.one_of_pair(side * wider);
        // Wings stand on edge beside each other; a single strip lies flat.
        const bool on_edge = kind == MaterialKind::slip && side != 0.0F;
        const glm::vec3 flat = glm::normalize(glm::cross(start.direction, start.away));
        const glm::vec3 across = on_edge ? start.away : flat;
        const glm::vec3 face = on_edge ? flat * side : start.away;
        SheetGrid grid;
        grid.rows = 32;
        grid.columns = biot ? 4 : 23;
        for (int r = 0; r < grid.rows; ++r) {
            // Rows gather towards the tip, where the outline turns.
            const float part = static_cast<float>(r) / static_cast<float>(grid.rows - 1);
            const float u = std::sin(1.5708F * part);
            // Slips are pinched at the root and narrow to a rounded, swept tip; biots taper all the
            // way.
            const float round = std::sqrt(std::max(1.0F - std::pow(u, 7.0F), 0.0F));
            const float root = 0.22F + 0.78F * std::sin(1.5708F * std::min(u * 2.2F, 1.0F));
            const float width = wide * (biot ? 1.0F - 0.93F * u : root * std::max(round, 0.02F));
            for (int c = 0; c < grid.columns; ++c) {
                const float v = static_cast<float>(c) / static_cast<float>(grid.columns - 1) - 0.5F;
                const float ridge = (c % 2 == 0 ? 1.0F : -1.0F) * 0.016F;
                const float cup = 0.35F * wide * v * v + ridge;
                const float along = stance.length() * (u - 0.10F * u * u * (v + 0.5F));
                grid.at(r, c) = start.root + start.direction * along + across * (width * v) +
                                start.away * (-0.06F * stance.length() * u * u) +
                                face * (biot ? 0.10F * side * stance.length() * u * u : -cup);
            }
        }
        add_sheet(sketch.mesh(piece), grid, thickness_of(sketch, material));
    }
}

void draw_case(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    const RecipeMaterial* material = sketch.material(placed.material);
    const int piece = open_sheet(sketch, placed, material);
    const Profile* made = sketch.profile_after(placed.act, placed.base);
    const Surface surface(base, made ? *made : sketch.profile_now(placed.base));
    const float thickness = thickness_of(sketch, material);
    SheetGrid grid;
    grid.rows = 30;
    grid.columns = 15;
    for (int r = 0; r < grid.rows; ++r) {
        const float u = static_cast<float>(r) / static_cast<float>(grid.rows - 1);
        const Length at = placed.at + static_cast<double>(u) * (placed.to - placed.at);
        const WireFrame wire = base.frame(at);
        // Above the fuzz of what it is drawn over.
        const float radius = surface.radius(mm(at)) + 0.6F * thickness + 0.06F;
        // Drawn together where it is held at both ends.
        const float open = 0.55F + 0.45F * std::sin(3.14159F * std::clamp(u, 0.0F, 1.0F));
        const float half = std::min(0.5F * mm(placed.thick) * open / std::max(radius, 0.1F), 1.45F);
        for (int c = 0; c < grid.columns; ++c) {
            const float v =
                2.0F * static_cast<float>(c) / static_cast<float>(grid.columns - 1) - 1.0F;
            const float ridge = (c % 2 == 0 ? 1.0F : -1.0F) * 0.010F;
            const float angle = rad(placed.around) + v * half;
            grid.at(r, c) = wire.origin + wire.radial(angle) * (radius + ridge);
        }
    }
    // The upper side looks away from the hook whichever way the case is drawn over.
    if (placed.to < placed.at) {
        for (int r = 0; r < grid.rows / 2; ++r) {
            for (int c = 0; c < grid.columns; ++c) {
                std::swap(grid.at(r, c), grid.at(grid.rows - 1 - r, c));
            }
        }
    }
    add_sheet(sketch.mesh(piece), grid, thickness);
}

} // namespace wrapwright
