#include "core/material/material.h"

#include "core/assert.h"
#include "core/material/usual.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

using std::numbers::pi;
using K = MaterialKind;

/// Share of the sphere of its diameter that a cone head fills: a frustum 0.85 as long as it is
/// wide, 0.4 as wide in front, a third of it hollow. Common practice, no source.
constexpr double cone_fill = 0.43;
constexpr double cone_spread = 0.25;
/// Two balls and their bar against two full spheres. Common practice, no source.
constexpr double dumbbell_fill = 0.90;
constexpr double dumbbell_spread = 0.20;
constexpr double dumbbell_width = 2.6; ///< over both balls, in balls
/// Real beads of one size fill 0.62 to 0.80 of their sphere, this model 0.72.
constexpr double bead_spread = 0.11;

/// Barbs, herl and quill are hollow: about 0.9 dry in a review that cites Reddy & Yang 2007; the
/// wet end of the interval by inference.
constexpr Estimate<Density> plumage{grams_per_cm3(0.9), grams_per_cm3(0.7), grams_per_cm3(1.2),
                                    Origin::typical};
/// Deer, elk, caribou: full of air, 0.3 to 0.6 in bulk. From memory.
constexpr Estimate<Density> hollow_hair{grams_per_cm3(0.45), grams_per_cm3(0.30),
                                        grams_per_cm3(0.60), Origin::typical};
/// Hair thicker than this is hollow: deer 0.20-0.38 mm; bucktail 0.10-0.20 and calf 0.05-0.12 not.
constexpr Length hollow_from = millimetres(0.18);
/// Fur wound as a body: 0.10 to 0.25 g/cm3 where the fibre is keratin of 1.31. From memory.
constexpr double fur_spread = 0.45;

template <class Q>
Estimate<Q> said_or(const std::optional<Q>& said, Estimate<Q> otherwise, Origin origin) {
    return said ? exactly(*said, origin) : otherwise;
}

bool is_head(K kind) { return kind == K::bead || kind == K::cone || kind == K::dumbbell; }

CoatKind coat_of(const MaterialFacts& facts) {
    if (facts.coat != CoatKind::none || facts.kind != K::coat) return facts.coat;
    switch (facts.substance) {
    case Substance::quick_glue: return CoatKind::quick_glue;
    case Substance::light_cured: return CoatKind::light_cured;
    case Substance::epoxy: return CoatKind::epoxy;
    default: return CoatKind::varnish;
    }
}

Substance substance_of(const MaterialFacts& facts, CoatKind coat) {
    if (facts.substance != Substance::unknown) return facts.substance;
    return facts.kind == K::coat ? usual(coat).substance : usual(facts.kind).substance;
}

bool is_hollow_hair(const MaterialFacts& facts, Length gape) {
    if (facts.kind != K::hair) return false;
    const std::optional<Length> said = facts.fibre_diameter ? facts.fibre_diameter : facts.diameter;
    return said.value_or(usual(K::hair).width.on(gape).value) >= hollow_from;
}

Estimate<Density> density_of(const MaterialFacts& facts, Substance substance, Length gape) {
    if (facts.density) return exactly(*facts.density, facts.origin);
    if (substance == Substance::unknown) return {}; // wax
    if (substance == Substance::keratin) {
        if (usual(facts.kind).plumage) return plumage;
        if (is_hollow_hair(facts, gape)) return hollow_hair;
    }
    Estimate<Density> density = substance_row(substance).density;
    if (facts.substance != Substance::unknown || facts.kind == K::coat) return density;
    // Nobody said of what: weighting wire may be lead, a bead may be tungsten.
    density.low = std::min(density.low, 0.9 * density.value);
    density.high = std::max(density.high, 1.1 * density.value);
    if (facts.kind == K::ballast) density.high = substance_row(Substance::lead).density.high;
    if (is_head(facts.kind)) density.high = substance_row(Substance::tungsten).density.high;
    return density;
}

/// The two balls of a dumbbell or a pair of eyes: height is a ball, width over both.
void fill_balls(const MaterialFacts& facts, Length gape, Stuff& s) {
    s.height = said_or(facts.diameter, usual(facts.kind).height.on(gape), facts.origin);
    s.width = {dumbbell_width * s.height.value, dumbbell_width * s.height.low,
               dumbbell_width * s.height.high, s.height.origin};
    s.width = said_or(facts.width, s.width, facts.origin);
    s.usable_length = said_or(facts.usable_length, s.height, facts.origin); // along the shank
}

Estimate<Mass> mass_by_volume(double volume, const Stuff& s, const Estimate<Length>& size,
                              double shape_spread) {
    const double spread =
        std::hypot(shape_spread, relative_spread(s.density), 3.0 * relative_spread(size));
    return about(Volume{volume} * s.density.value, std::min(0.9, spread),
                 std::max({s.density.origin, size.origin, Origin::derived}));
}

/// The mass of one piece by its volume, where one piece is what is counted.
Estimate<Mass> item_mass_of(const Stuff& s) {
    const auto ball = [](Length d) { return pi / 6.0 * d.si * d.si * d.si; };
    switch (s.kind) {
    case K::bead: return mass_by_volume(bead_volume(s.bead).si, s, s.bead.diameter, bead_spread);
    case K::cone:
        return mass_by_volume(cone_fill * ball(s.bead.diameter.value), s, s.bead.diameter,
                              cone_spread);
    case K::dumbbell:
    case K::eyes:
        return mass_by_volume(2.0 * dumbbell_fill * ball(s.height.value), s, s.height,
                              dumbbell_spread);
    case K::tube: {
        const double spread =
            std::hypot(relative_spread(s.linear), relative_spread(s.usable_length));
        return about(s.linear.value * s.usable_length.value, std::min(0.9, spread),
                     std::max(s.linear.origin, s.usable_length.origin));
    }
    case K::coat: return usual(s.coat).drop;
    default: return {};
    }
}

} // namespace

Result<Stuff> complete_material(const MaterialFacts& facts, Length gape) {
    WW_ASSERT(gape.si > 0.0);
    if (auto error = check_facts(facts, gape)) return *error;
    const UsualKind& row = usual(facts.kind);
    Stuff s;
    s.kind = facts.kind;
    s.coat = coat_of(facts);
    s.substance = substance_of(facts, s.coat);
    s.density = density_of(facts, s.substance, gape);
    s.usable_length = said_or(facts.usable_length, row.usable_length.on(gape), facts.origin);
    s.barb_length = said_or(facts.barb_length, row.barb_length.on(gape), facts.origin);
    s.fibre_diameter = said_or(facts.fibre_diameter, row.fibre_diameter.on(gape), facts.origin);
    s.barbs_per_mm = row.barbs_per_mm;
    s.packing = row.packing;
    s.springy = row.springy;
    s.toxic = substance_row(s.substance).toxic;
    s.cure = facts.cure.value_or(usual(s.coat).cure);
    if (row.section != Section::none) fill_strand(facts, gape, s);
    if (s.kind == K::bead || s.kind == K::cone) s.bead = usual_bead(facts, gape);
    if (s.kind == K::dumbbell || s.kind == K::eyes) fill_balls(facts, gape, s);
    if (s.kind == K::dubbing) s.wound_density = about(row.packing * s.density.value, fur_spread);
    s.item_mass = facts.weighed ? exactly(*facts.weighed, Origin::measured) : item_mass_of(s);
    return s;
}

} // namespace wrapwright
