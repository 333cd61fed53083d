#include "core/geometry/fly/base_shifts.h"

#include <algorithm>

namespace wrapwright {

namespace {

/// How far a base reaches along x in its own frame, mm.
struct Reach {
    double front = 0.0, rear = 0.0;
};

Reach reach_of(const BaseRun& run) {
    Reach reach{1e3 * run.line.eye_centre().x - 0.5 * in_millimetres(run.hook.eye_diameter.value),
                0.0};
    constexpr int samples = 64;
    const Length tip = run.line.stations().tip;
    for (int i = 0; i <= samples; ++i) {
        const double x = run.line.position(tip * (i / double{samples})).x * 1e3;
        reach.rear = std::max(reach.rear, x + 0.5 * in_millimetres(run.hook.wire.value));
    }
    return reach;
}

int base_index(const Recipe& recipe, const std::string& id) {
    for (std::size_t i = 0; i < recipe.bases.size(); ++i) {
        if (recipe.bases[i].id == id) return static_cast<int>(i);
    }
    return none;
}

/// The free length of a joint in millimetres; 4 where nothing in numbers is said.
double free_mm(const Amount& amount, HookSize size) {
    const Reading& r = amount.at(size);
    const bool number =
        r.kind == AmountKind::exact || r.kind == AmountKind::range || r.kind == AmountKind::about;
    return amount.given() && number && r.unit == Unit::length ? r.value * 1e3 : 4.0;
}

} // namespace

BaseShifts base_shifts(const Pattern& pattern, const Tied& tied) {
    const int count = std::min(static_cast<int>(tied.bases.size()), most_bases);
    BaseShifts shifts{};
    std::array<bool, most_bases> laid{};
    std::array<Reach, most_bases> reach{};
    double rear = 0.0;
    const auto slot = [](int i) { return static_cast<std::size_t>(i); };
    for (int i = 0; i < count; ++i) {
        reach[slot(i)] = reach_of(tied.bases[slot(i)]);
    }
    const auto gap_of = [&](const Joint& joint, int front) {
        const double free = free_mm(joint.length, tied.size);
        const Reach& r = reach[slot(front)];
        const BaseRun& run = tied.bases[slot(front)];
        const double end = run.line.position(run.line.stations().bend).x * 1e3;
        return std::max(end + free, r.rear + 0.6);
    };
    for (int pass = 0; pass < count; ++pass) {
        for (const Joint& joint : pattern.recipe.joints) {
            const int from = base_index(pattern.recipe, joint.from);
            const int to = base_index(pattern.recipe, joint.to);
            if (from == none || to == none || from == to) continue;
            if (std::max(from, to) >= count) continue;
            laid[0] = true;
            if (laid[slot(from)] == laid[slot(to)]) continue;
            const double apart = gap_of(joint, from) - reach[slot(to)].front;
            if (laid[slot(from)]) {
                shifts[slot(to)] = shifts[slot(from)] + millimetres(apart);
            } else {
                shifts[slot(from)] = shifts[slot(to)] - millimetres(apart);
            }
            laid[slot(from)] = laid[slot(to)] = true;
        }
    }
    laid[0] = true;
    for (int i = 0; i < count; ++i) {
        Length& shift = shifts[slot(i)];
        if (!laid[slot(i)]) shift = millimetres(rear + 2.0 - reach[slot(i)].front);
        rear = std::max(rear, in_millimetres(shift) + reach[slot(i)].rear);
    }
    return shifts;
}

} // namespace wrapwright
