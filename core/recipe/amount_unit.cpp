#include "core/recipe/amount_unit.h"

#include "core/recipe/amount_scan.h"
#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

struct UnitWords {
    std::string_view words; ///< each between blanks
    Unit unit;
    double factor;
};

// What tiers count, time and turn; lengths, masses and thread weights are core/units' own.
constexpr UnitWords unit_rows[] = {
    {" turn turns wrap wraps wind winds ", Unit::turns, 1},
    {" pinch pinches ", Unit::pinch, 1},
    {" fibre fibres fiber fibers strand strands feather feathers barb barbs hair hairs herl herls "
     "piece pieces plume plumes quill quills leg legs stem stems tip tips slip slips biot biots "
     "layer layers coat coats drop drops segment segments strip strips beads blob blobs ply ",
     Unit::count, 1},
    {" pair pairs ", Unit::count, 2},
    {" dozen dozens ", Unit::count, 12},
    {" deg degree degrees \u00b0 ", Unit::angle, degrees(1).si},
    {" s sec secs second seconds ", Unit::duration, 1},
    {" min mins minute minutes ", Unit::duration, 60},
    {" h hr hrs hour hours ", Unit::duration, 3600},
    {" day days ", Unit::duration, 86400},
};

struct BasisWords {
    std::string_view singular, plural;
    Basis basis;
};

constexpr BasisWords basis_rows[] = {
    {"shank", "shanks", Basis::shank}, {"gape", "gapes", Basis::gape}, {"gap", "gaps", Basis::gape},
    {"eye", "eyes", Basis::eye},       {"wire", "wires", Basis::wire}, {"bead", "", Basis::bead},
    {"hook", "hooks", Basis::hook},
};

/// Takes the run of bytes up to a blank, a digit or a mark that ends a word.
std::string_view take_token(std::string_view& rest) {
    std::size_t n = 0;
    while (n < rest.size() && blanks_at(rest, n) == 0 && !is_digit(rest[n]) &&
           std::string_view(",;()-").find(rest[n]) == std::string_view::npos &&
           !rest.substr(n).starts_with("\u2013")) {
        ++n;
    }
    const std::string_view token = rest.substr(0, n);
    rest.remove_prefix(n);
    rest.remove_prefix(blanks_at(rest, 0));
    return token;
}

AmountUnit share_of(Basis basis, std::string part = {}) {
    AmountUnit unit;
    unit.unit = Unit::length;
    unit.basis = basis;
    unit.part = std::move(part);
    return unit;
}

std::optional<AmountUnit> take_basis(std::string_view& rest) {
    std::string_view after = rest;
    std::optional<Basis> basis;
    if (take_any(after, {"hook's"})) basis = Basis::hook;
    for (const BasisWords& row : basis_rows) {
        if (basis) break;
        if (!row.plural.empty() && take_any(after, {row.plural})) basis = row.basis;
        if (!basis && take_any(after, {row.singular})) basis = row.basis;
    }
    if (!basis) return std::nullopt;
    if (basis == Basis::hook) { // "hook gape" is a gape
        if (auto inner = take_basis(after)) {
            rest = after;
            return inner;
        }
    }
    std::string_view noun = after;
    if (noun.starts_with('-')) noun.remove_prefix(1);
    if (take_any(noun, {"lengths", "length", "widths", "width", "diameters", "diameter"})) {
        after = noun;
    }
    rest = after;
    return share_of(*basis);
}

std::optional<AmountUnit> measure(std::string_view word) {
    if (word.empty()) return std::nullopt;
    AmountUnit unit;
    unit.length = length_unit(word);
    unit.mass = mass_unit(word);
    unit.linear = linear_density_unit(word);
    if (unit.length) unit.unit = Unit::length;
    if (unit.mass) unit.unit = Unit::mass;
    if (unit.linear) unit.unit = Unit::linear_density;
    if (unit.length || unit.mass || unit.linear) return unit;
    std::string low = lowered(word);
    if (low.size() > 1 && low.ends_with('.')) low.pop_back();
    for (const UnitWords& row : unit_rows) {
        if (row.words.find(' ' + low + ' ') == std::string_view::npos) continue;
        unit.unit = row.unit;
        unit.factor = row.factor;
        return unit;
    }
    return std::nullopt;
}

} // namespace

double si(double number, const AmountUnit& unit) {
    if (unit.length) return quantity(number, *unit.length).si;
    if (unit.mass) return quantity(number, *unit.mass).si;
    if (unit.linear) return quantity(number, *unit.linear).si;
    return number * unit.factor;
}

AmountUnit wire_gauge_unit() {
    AmountUnit unit;
    unit.unit = Unit::length;
    unit.length = LengthUnit::awg;
    return unit;
}

std::optional<AmountUnit> take_share(std::string_view& rest, const std::vector<std::string>& parts,
                                     bool part_first) {
    if (part_first) {
        if (auto part = take_part(rest, parts)) return share_of(Basis::part, std::move(*part));
    }
    if (auto basis = take_basis(rest)) return basis;
    if (auto part = take_part(rest, parts)) return share_of(Basis::part, std::move(*part));
    return std::nullopt;
}

std::optional<AmountUnit> take_unit(std::string_view& rest, const std::vector<std::string>& parts) {
    std::string_view after = rest;
    if (auto unit = measure(take_token(after))) {
        if (unit->unit == Unit::count && unit->factor != 1.0) { // "2 pairs legs", "a dozen fibres"
            std::string_view noun = after;
            const auto counted = measure(take_token(noun));
            if (counted && counted->unit == Unit::count && counted->factor == 1.0) after = noun;
        }
        rest = after;
        return unit;
    }
    // Words about turns change what they look like, not how many there are.
    after = rest;
    while (take_any(after, {"open", "touching", "close", "tight", "firm", "loose", "soft", "even",
                            "full", "more", "small", "wide", "plain"})) {
    }
    if (after != rest) {
        auto unit = measure(take_token(after));
        if (unit && unit->unit == Unit::turns) {
            rest = after;
            return unit;
        }
    }
    return take_share(rest, parts, false);
}

} // namespace wrapwright::detail
