#include "core/tally/tally.h"

#include <algorithm>
#include <climits>
#include <tuple>

namespace wrapwright {

namespace {

Estimate<Mass> times(const Estimate<Mass>& mass, int flies) {
    return {flies * mass.value, flies * mass.low, flies * mass.high, mass.origin};
}

Estimate<Mass> add_whole(const Estimate<Mass>& a, const Estimate<Mass>& b) {
    return {a.value + b.value, a.low + b.low, a.high + b.high, std::max(a.origin, b.origin)};
}

/// What tells two sizes of one material apart on the bench.
Length measure_of(const Stuff& stuff) {
    switch (stuff.kind) {
    case MaterialKind::bead:
    case MaterialKind::cone: return stuff.bead.diameter.value;
    case MaterialKind::hackle:
    case MaterialKind::soft_hackle: return stuff.barb_length.value;
    case MaterialKind::ballast:
    case MaterialKind::wire:
    case MaterialKind::tinsel:
    case MaterialKind::oval:
    case MaterialKind::chenille:
    case MaterialKind::quill:
    case MaterialKind::foam:
    case MaterialKind::tube:
    case MaterialKind::dumbbell: return stuff.width.value;
    default: return {};
    }
}

auto key_of(const TallyLine& line) {
    const bool is_hook = line.material == none;
    return std::tuple(!is_hook, line.part == none ? INT_MAX : line.part, line.material, line.base);
}

auto key_of(const Draw& draw) {
    return std::tuple(draw.material, draw.base, draw.hook.number, draw.measure.si);
}

/// The entry of a sorted list with the key of `like`, put there where it is new.
template <class T>
T& entry(std::vector<T>& list, const T& like) {
    const auto at = std::lower_bound(list.begin(), list.end(), like,
                                     [](const T& a, const T& b) { return key_of(a) < key_of(b); });
    const bool is_new = at == list.end() || key_of(*at) != key_of(like);
    return is_new ? *list.insert(at, like) : *at;
}

} // namespace

bool comes_by_length(MaterialKind kind) {
    switch (kind) {
    case MaterialKind::thread:
    case MaterialKind::ballast:
    case MaterialKind::wire:
    case MaterialKind::tinsel:
    case MaterialKind::oval:
    case MaterialKind::floss:
    case MaterialKind::yarn:
    case MaterialKind::chenille:
    case MaterialKind::film:
    case MaterialKind::tube: return true;
    default: return false;
    }
}

std::vector<TallyLine> tally_by_part(const Resolved& resolved, const Tied& tied) {
    std::vector<TallyLine> lines;
    int base = 0;
    for (const PartTake& take : tied.takes) {
        TallyLine line;
        line.part = take.part;
        line.material = take.material;
        line.mass.origin = Origin::measured; // the surest: add_whole keeps the less sure one
        // The bases are drawn first, each once and in their order.
        if (take.material == none) line.base = base++;
        TallyLine& sum = entry(lines, line);
        const bool pieces =
            take.material == none ||
            !comes_by_length(resolved.materials[static_cast<std::size_t>(take.material)].kind);
        if (pieces) sum.count += take.count;
        sum.turns += take.turns;
        sum.length += take.length;
        sum.mass = add_whole(sum.mass, take.mass);
    }
    return lines;
}

std::vector<Draw> tally_batch(const std::vector<BatchSize>& batch) {
    std::vector<Draw> draws;
    for (const BatchSize& of : batch) {
        for (const TallyLine& line : tally_by_part(*of.resolved, *of.tied)) {
            Draw draw;
            draw.material = line.material;
            draw.base = line.base;
            draw.mass.origin = Origin::measured;
            bool strand = false;
            if (line.material == none) {
                draw.hook = of.tied->size;
            } else {
                const Stuff& stuff =
                    of.resolved->materials[static_cast<std::size_t>(line.material)];
                draw.measure = measure_of(stuff);
                strand = line.turns > 0.0 || comes_by_length(stuff.kind);
            }
            Draw& sum = entry(draws, draw);
            sum.count += of.flies * line.count;
            sum.wound = sum.wound || strand;
            sum.length =
                strand ? sum.length + of.flies * line.length : std::max(sum.length, line.length);
            sum.mass = add_whole(sum.mass, times(line.mass, of.flies));
        }
    }
    return draws;
}

Estimate<Mass> batch_mass(const std::vector<BatchSize>& batch) {
    Estimate<Mass> sum;
    sum.origin = Origin::measured;
    for (const BatchSize& of : batch) sum = add_whole(sum, times(of.tied->mass, of.flies));
    return sum;
}

} // namespace wrapwright
