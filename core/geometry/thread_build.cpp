#include "core/geometry/thread_build.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

constexpr double pi = std::numbers::pi;

} // namespace

Length round_strand_diameter(Area solid, double packing) {
    return {std::sqrt(4.0 * solid.si / (pi * packing))};
}

Length filament_diameter(Area solid, int filaments) {
    return {std::sqrt(4.0 * solid.si / (pi * filaments))};
}

FlatStrand flat_strand(Area solid, int filaments, int layers) {
    WW_ASSERT(layers >= 1 && layers <= filaments);
    const Length d = filament_diameter(solid, filaments);
    const double rise = std::sqrt(3.0) / 2.0; // three touching circles
    return {d * (static_cast<double>(filaments) / layers), d * (1.0 + (layers - 1) * rise)};
}

Length built_diameter(Length base, double turns, Length over, Area solid, double packing) {
    return base + 2.0 * turns * (solid / over) / packing;
}

double turns_to_build(Length base, Length target, Length over, Area solid, double packing) {
    return std::max(0.0, packing * (target - base).si * over.si / (2.0 * solid.si));
}

double packing_from_build(Length base, Length built, double turns, Length over, Area solid) {
    return 2.0 * turns * solid.si / (over.si * (built - base).si);
}

BuildPlan plan_build(std::span<const double> base, std::span<const double> target, Length cell,
                     Area solid, double packing) {
    WW_ASSERT(base.size() == target.size());
    BuildPlan plan;
    for (std::size_t i = 0; i < base.size(); ++i) {
        const double turns =
            turns_to_build(Length{base[i]}, Length{target[i]}, cell, solid, packing);
        plan.turns += turns;
        plan.length += Length{turns * pi * 0.5 * (base[i] + target[i])};
        plan.densest_per_mm = std::max(plan.densest_per_mm, turns / in_millimetres(cell));
    }
    return plan;
}

} // namespace wrapwright
