#include "core/stock/kit.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

std::vector<KitRow> class_kit(const std::vector<StockUse>& uses, int students, int flies,
                              const SpareRule& rule) {
    WW_ASSERT(students >= 1 && flies >= 1);
    std::vector<KitRow> out;
    out.reserve(uses.size());
    for (const StockUse& use : uses) {
        KitRow row;
        row.what = use.what;
        row.unit = usual_unit(use);
        const double one = use_in(row.unit, use).value_or(0.0) * flies;
        const bool whole = row.unit == StockUnit::pieces;
        row.each = whole ? std::ceil(one - 1e-9) : one;
        row.bags = row.each * students;
        row.spare = rule.share * row.bags;
        if (whole) {
            row.spare = std::max<double>(rule.least, std::ceil(row.spare - 1e-9));
        }
        row.total = row.bags + row.spare;
        out.push_back(std::move(row));
    }
    return out;
}

SwapCount swap_count(int people, int extra_for_host) {
    WW_ASSERT(people >= 2 && extra_for_host >= 0);
    SwapCount out;
    out.each = people + extra_for_host;
    out.back = people;
    out.all = people * out.each;
    out.tags = out.all;
    return out;
}

std::vector<RoomStep> room_clock(const Recipe& recipe, const std::vector<double>& minutes_each,
                                 double stretch) {
    WW_ASSERT(stretch >= 1.0);
    std::vector<RoomStep> out;
    double at = 0.0;
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        RoomStep row;
        row.step = static_cast<int>(i);
        row.from = at;
        at += stretch * (i < minutes_each.size() ? minutes_each[i] : 0.0);
        row.to = at;
        row.catch_up = recipe.steps[i].restore_point;
        out.push_back(row);
    }
    return out;
}

} // namespace wrapwright
