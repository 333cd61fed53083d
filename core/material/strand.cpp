#include "core/assert.h"
#include "core/material/usual.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

using std::numbers::pi;
using K = MaterialKind;

/// Solid share of one strand of thread: 0.65 to 0.80 twisted, ceiling 0.9069 (hexagonal).
constexpr double strand_packing = 0.75;
constexpr double round_thread_spread = 0.08; ///< of its diameter, by that packing
/// A thread spun open lies about six times as wide as it is thick, which for the usual 70 den is
/// also two layers of its 24 filaments: 0.23 mm by 0.04 mm.
constexpr double flat_width_over_height = 6.0;
constexpr double flat_thread_spread = 0.25;
constexpr double spool_spread = 0.10; ///< deniers on spools are nominal

constexpr LinearDensity usual_thread = denier(70.0);
constexpr LinearDensity usual_floss = denier(300.0); ///< one strand of 200 to 450
constexpr double usual_spun_spread = 0.5;

constexpr double widest_spread = 0.9; ///< an interval that reached 0 would say nothing

double spread(double a, double b, double c = 0.0) {
    return std::min(widest_spread, std::hypot(a, b, c));
}

/// What was said of the width: of a strand tied in by the piece, its fibre is the strand.
std::optional<Length> said_width(const MaterialFacts& facts, const UsualKind& row) {
    if (facts.width) return facts.width;
    if (facts.diameter) return facts.diameter;
    return row.pieces ? facts.fibre_diameter : std::nullopt;
}

void fill_section(const MaterialFacts& facts, const UsualKind& row, Length gape, Stuff& s) {
    const Estimate<Length> usual_width = row.width.on(gape), usual_height = row.height.on(gape);
    const std::optional<Length> width = said_width(facts, row);
    s.width = width ? exactly(*width, facts.origin) : usual_width;
    if (!width && facts.kind == K::wire) {
        s.width = wire_diameter_word(facts.size_word).value_or(usual_width);
    }
    s.height = usual_height;
    if (row.section == Section::round && (width || usual_height.value.si <= 0.0)) {
        // As thick as wide, or an oval and a chenille as flat as they usually are.
        const double share =
            usual_height.value.si > 0.0 ? usual_height.value / usual_width.value : 1.0;
        s.height = {share * s.width.value, share * s.width.low, share * s.width.high,
                    s.width.origin};
    }
    if (facts.thickness) s.height = exactly(*facts.thickness, facts.origin);
}

/// Solid area and mass per length from the section.
void fill_by_section(const UsualKind& row, double solid, Stuff& s) {
    const double shape = row.section == Section::flat ? 1.0 : pi / 4.0;
    // Where height follows width their errors are one error, twice.
    const double size = row.section == Section::round
                            ? relative_spread(s.width) + relative_spread(s.height)
                            : std::hypot(relative_spread(s.width), relative_spread(s.height));
    const Origin origin = std::max({s.width.origin, s.height.origin, Origin::derived});
    s.solid_area = about(solid * shape * (s.width.value * s.height.value),
                         spread(size, row.solid_spread), origin);
    s.linear = about(LinearDensity{s.solid_area.value.si * s.density.value.si},
                     spread(size, row.solid_spread, relative_spread(s.density)), origin);
}

/// The other way round: from a mass per length, and a round strand's diameter where none is said.
void fill_by_linear(const MaterialFacts& facts, const UsualKind& row, double solid, Stuff& s) {
    s.linear = exactly(*facts.linear, facts.origin);
    s.solid_area = about(s.linear.value / s.density.value, spread(relative_spread(s.density), 0.0),
                         Origin::derived);
    if (row.section != Section::round || said_width(facts, row) || facts.thickness) return;
    const Length diameter{std::sqrt(4.0 / pi * s.solid_area.value.si / solid)};
    s.width = s.height = about(diameter, 0.5 * spread(relative_spread(s.density), row.solid_spread),
                               Origin::derived);
}

/// Thread and floss: all follows from mass per length, density and how they lie.
void fill_spun(const MaterialFacts& facts, Stuff& s) {
    const bool floss = facts.kind == K::floss;
    s.linear = facts.linear ? about(*facts.linear, spool_spread, facts.origin)
                            : about(floss ? usual_floss : usual_thread, usual_spun_spread);
    const Origin origin = std::max(s.linear.origin, Origin::derived);
    const double doubt = spread(relative_spread(s.linear), relative_spread(s.density));
    s.solid_area = about(s.linear.value / s.density.value, doubt, origin);
    const double section = s.solid_area.value.si / strand_packing;
    if (facts.flat || floss) {
        const Length height{std::sqrt(section / flat_width_over_height)};
        s.height = about(height, spread(flat_thread_spread, 0.5 * doubt), origin);
        s.width = about(flat_width_over_height * height, relative_spread(s.height), origin);
    } else {
        const Length diameter{std::sqrt(section * 4.0 / pi)};
        s.width = s.height = about(diameter, spread(round_thread_spread, 0.5 * doubt), origin);
    }
    if (facts.diameter) s.width = s.height = exactly(*facts.diameter, facts.origin);
    if (facts.width) s.width = exactly(*facts.width, facts.origin);
    if (facts.thickness) s.height = exactly(*facts.thickness, facts.origin);
}

} // namespace

void fill_strand(const MaterialFacts& facts, Length gape, Stuff& s) {
    const UsualKind& row = usual(facts.kind);
    if (row.section == Section::spun) {
        fill_spun(facts, s);
    } else {
        fill_section(facts, row, gape, s);
        double solid = row.solid;
        if (facts.kind == K::tube && facts.bore) {
            const double hollow = *facts.bore / s.width.value;
            solid = std::max(0.05, 1.0 - hollow * hollow);
        }
        if (facts.linear) {
            fill_by_linear(facts, row, solid, s);
        } else {
            fill_by_section(row, solid, s);
        }
    }
    if (row.pieces && !facts.fibre_diameter) {
        const Length diameter{std::sqrt(4.0 / pi * s.solid_area.value.si)};
        s.fibre_diameter =
            about(diameter, 0.5 * relative_spread(s.solid_area), s.solid_area.origin);
    }
    if (row.section == Section::spun || facts.kind == K::yarn) {
        const Estimate<Tenacity>& yarn = substance_row(s.substance).tenacity;
        s.strength = {yarn.value * s.linear.value, yarn.low * s.linear.low,
                      yarn.high * s.linear.high, std::max(yarn.origin, s.linear.origin)};
    }
}

} // namespace wrapwright
