// What a fly is held against: the rows of the standards and the recipe's own, on one hook.

#include "core/check/proportions.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

void add_share(std::string& words, double share, std::string_view of) {
    if (share == 0.0) return;
    if (!words.empty()) words.append(share < 0.0 ? " less " : " and ");
    const double size = share < 0.0 ? -share : share;
    words.append(write_rounded(size, 2)).append(" ").append(of);
}

std::string words_of(const ProportionRow& row) {
    std::string words;
    add_share(words, row.shanks, "shank");
    add_share(words, row.gapes, "gape");
    add_share(words, row.bodies, "body");
    add_share(words, row.eyes, "eye");
    return words;
}

/// What a relative amount of a target is a share of; nothing for a part that is not on the fly.
std::optional<Length> basis_of(const Reading& reading, const Pattern& pattern, const Tied& tied) {
    const Hook& hook = tied.bases.front().hook;
    switch (reading.basis) {
    case Basis::none: return metres(1.0);
    case Basis::shank: return hook.shank.value;
    case Basis::gape: return hook.gape.value;
    case Basis::eye: return hook.eye_length.value;
    case Basis::wire: return hook.wire.value;
    case Basis::hook: return hook.eye_length.value + hook.shank.value + 0.5 * hook.gape.value;
    case Basis::bead: {
        const int bead = tied.bases.front().bead;
        if (bead == none) return std::nullopt;
        return tied.placed[static_cast<std::size_t>(bead)].reach;
    }
    case Basis::part: break;
    }
    for (const Part& part : pattern.recipe.parts) {
        if (part.id != reading.part) continue;
        const auto measured = measured_part(part.role);
        const auto own = measured ? own_measure(pattern, tied, *measured) : std::nullopt;
        if (own) return own->length;
    }
    return std::nullopt;
}

void add_own(std::vector<PartTarget>& out, const Pattern& pattern, const Tied& tied) {
    for (const OwnTarget& t : pattern.recipe.targets) {
        const auto part = measured_part(t.part);
        const Reading& reading = t.length.at(tied.size);
        const bool is_length = reading.kind == AmountKind::relative ||
                               (reading.unit == Unit::length && reading.kind != AmountKind::none &&
                                reading.kind != AmountKind::word);
        const auto basis = basis_of(reading, pattern, tied);
        if (!part || !is_length || !basis) continue;
        PartTarget target;
        target.part = *part;
        target.standard = own_standard;
        target.words = t.length.text;
        target.source = "the recipe's author";
        // A range says its own tolerance.
        const bool range = reading.kind == AmountKind::range;
        target.length = {reading.value * *basis,
                         (range ? reading.low : (1.0 - t.within) * reading.value) * *basis,
                         (range ? reading.high : (1.0 + t.within) * reading.value) * *basis,
                         tied.bases.front().hook.shank.origin};
        out.push_back(std::move(target));
    }
}

} // namespace

std::vector<PartTarget> targets_of(const Pattern& pattern, const Tied& tied) {
    std::vector<PartTarget> out;
    if (tied.bases.empty()) return out;
    add_own(out, pattern, tied);
    const auto kind = fly_kind(pattern.recipe.fly_class);
    if (!kind) return out;
    for (const ProportionRow& row : proportion_rows()) {
        if (row.kind != *kind) continue;
        out.push_back({row.part, std::string(row.standard), words_of(row), std::string(row.source),
                       target_of(row, pattern, tied)});
    }
    return out;
}

std::vector<std::string> standards_of(const std::vector<PartTarget>& targets) {
    std::vector<std::string> names;
    for (const PartTarget& t : targets) {
        if (std::find(names.begin(), names.end(), t.standard) == names.end()) {
            names.push_back(t.standard);
        }
    }
    return names;
}

int mend_until(const Pattern& pattern, const Tied& tied, Measured part) {
    const auto own = own_measure(pattern, tied, part);
    if (!own) return none;
    // Where it is held: that of the thing that stands, or the front end of what was wound.
    std::optional<Length> held;
    int since = own->step;
    for (const Placed& p : tied.placed) {
        if (p.step == own->step && p.base == 0 && p.reach == own->length) held = p.at;
    }
    if (!held) {
        for (const Winding& w : tied.windings) {
            if (w.step != own->step || w.base != 0 || w.part == none) continue;
            const Length front = std::min(w.from, w.to);
            held = held ? std::min(*held, front) : front;
        }
    }
    if (!held) return own->step;
    // One more step may lock it; what is wound over it by a part of its own ends the matter.
    int last = pattern.recipe.steps.empty() ? 0 : static_cast<int>(pattern.recipe.steps.size()) - 1;
    for (const Winding& w : tied.windings) {
        const bool over = w.base == 0 && w.step > since && w.part != none &&
                          std::min(w.from, w.to) <= *held && std::max(w.from, w.to) >= *held;
        if (over) last = std::min(last, w.step - 1);
    }
    return std::max(last, own->step);
}

} // namespace wrapwright
