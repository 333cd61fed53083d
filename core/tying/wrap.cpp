#include "core/tying/wrap.h"

#include "core/assert.h"
#include "core/geometry/helix_kernel.h"

#include <cmath>

// Notation: D diameter below, h strand height, w strand width, p axial pitch, nu = 1/p turns per
// metre, c = nu w coverage. The formulas of one turn and one cell are those of
// core/geometry/helix_kernel.h; what is derived here is the build-up.
//
// Build-up by volume: pi/4 (D1^2 - D^2) = nu (A / phi) pi (D + D1)/2, so D1 = D + 2 nu A / phi.
// Build-up by section: one layer adds 2h where it covers; below full coverage the mean of covered
// and bare, 2 h c; beyond it a further layer wound back adds 0.93 of that, because it lies in the
// grooves most of each turn and crosses the ridges twice.

namespace wrapwright {

namespace {

/// Share of its height by which a layer wound straight back raises the one below.
/// Between sqrt(3)/2 (in the grooves) and 1 (on the ridges); common practice, no source.
constexpr double back_wound_layer = 0.93;

struct Cells {
    int first = 0, last = 0;
    double first_share = 1.0, last_share = 1.0;
};

Cells cells_between(const Profile& profile, double low, double high) {
    const double cell = profile.cell.si;
    Cells c;
    c.first = std::clamp(static_cast<int>(low / cell), 0, profile_cells - 1);
    c.last = std::clamp(static_cast<int>(high / cell), c.first, profile_cells - 1);
    if (c.first == c.last) {
        c.first_share = c.last_share = std::max(0.0, (high - low) / cell);
    } else {
        c.first_share = std::clamp((c.first + 1) - low / cell, 0.0, 1.0);
        c.last_share = std::clamp(high / cell - c.last, 0.0, 1.0);
    }
    return c;
}

double share_of(const Cells& c, int i) {
    if (i == c.first) return c.first_share;
    return i == c.last ? c.last_share : 1.0;
}

/// tan of the core at cell i, from its neighbours within [first, last]: what lies beyond the
/// stretch (a bead, a step) is not under the strand.
double slope_at(const Profile& profile, int i, int first, int last) {
    const int a = std::max(first, i - 1), b = std::min(last, i + 1);
    if (a == b) return 0.0;
    return (profile.diameter[static_cast<std::size_t>(b)] -
            profile.diameter[static_cast<std::size_t>(a)]) /
           (2.0 * (b - a) * profile.cell.si);
}

/// Turns per metre of touching turns at cell i, whose core has that slope.
double touching_density(const Profile& below, int i, double slope, double w, double h) {
    const double d = below.diameter[static_cast<std::size_t>(i)];
    return 1.0 / kernel::touching_pitch(w, kernel::centre_radius(d, h), slope);
}

/// The turns of touching strand in the cells, unscaled.
double touching_turns(const Profile& below, const Cells& c, double w, double h) {
    double turns = 0.0;
    for (int i = c.first; i <= c.last; ++i) {
        turns += touching_density(below, i, slope_at(below, i, c.first, c.last), w, h) *
                 share_of(c, i) * below.cell.si;
    }
    return turns;
}

/// Where touching turns that start at `from` have run to `turns`, going one way.
double march(const Profile& below, double from, double turns, bool tailward, double w, double h,
             bool& clipped) {
    const double cell = below.cell.si;
    double at = from;
    int i = below.index(Length{from});
    const int first = tailward ? i : 0, last = tailward ? profile_cells - 1 : i;
    while (turns > 0.0) {
        const double edge = tailward ? (i + 1) * cell : i * cell;
        const double density = touching_density(below, i, slope_at(below, i, first, last), w, h);
        const double in_cell = std::abs(edge - at) * density;
        if (in_cell >= turns) return at + (tailward ? 1.0 : -1.0) * turns / density;
        turns -= in_cell;
        at = edge;
        i += tailward ? 1 : -1;
        if (i < 0 || i >= profile_cells) {
            clipped = true;
            return at;
        }
    }
    return at;
}

/// The stretch that the strand will cover, its turns, and whether the wire ended first.
void settle(const Profile& below, const WrapAsk& ask, Wrap& out, double& density_share) {
    const double w = ask.width.si, h = ask.height.si;
    const double last = below.end().si;
    const double from = std::clamp(ask.from.si, 0.0, last);
    double to = from;
    out.turns = ask.turns;
    // A strand that keeps its section covers its own width beyond the turns: N p + w.
    const double extra = ask.build == Build::section && ask.spacing == Spacing::touching ? w : 0.0;
    const double way = ask.tailward ? 1.0 : -1.0;
    density_share = 0.0;
    if (ask.has_to) {
        to = std::clamp(ask.to.si, 0.0, last);
        out.clipped = std::abs(to - ask.to.si) > 1e-9;
        const double span = std::abs(to - from);
        if (!ask.has_turns) {
            if (ask.has_pitch && ask.pitch.si > 0.0) {
                out.turns = span / ask.pitch.si;
            } else {
                const Cells c = cells_between(below, std::min(from, to), std::max(from, to));
                const double all = touching_turns(below, c, w, h);
                out.turns = span > extra ? all * (span - extra) / span : 0.0;
                density_share = all > 0.0 ? out.turns / all : 0.0;
            }
        }
    } else if (ask.has_pitch && ask.pitch.si > 0.0) {
        to = from + way * ask.turns * ask.pitch.si;
        out.clipped = to < 0.0 || to > last;
        to = std::clamp(to, 0.0, last);
    } else {
        to = march(below, from, ask.turns, ask.tailward, w, h, out.clipped) + way * extra;
        out.clipped = out.clipped || to < 0.0 || to > last;
        to = std::clamp(to, 0.0, last);
        density_share = 1.0;
    }
    out.from = Length{from};
    out.to = Length{to};
}

} // namespace

Wrap wrap(const Profile& below, Profile& above, const WrapAsk& ask, Length window,
          Length held_end) {
    WW_ASSERT(ask.width.si > 0.0 && ask.height.si > 0.0);
    Wrap out;
    double touching_share = 0.0;
    settle(below, ask, out, touching_share);
    const double w = ask.width.si, h = ask.height.si;
    const double low = std::min(out.from.si, out.to.si), high = std::max(out.from.si, out.to.si);
    const double span = high - low;
    if (span <= 0.0 || out.turns <= 0.0) {
        out.core = below.diameter_at(out.from);
        out.pitch = ask.width;
        if (&above != &below) above = below;
        return out;
    }
    if (span > 2.0 * held_end.si) {
        const Steepest steep =
            steepest(below, Length{low} + held_end, Length{high} - held_end, window);
        out.slope = steep.slope;
        out.slope_at = steep.at;
        out.step = steep.step;
    }

    const Cells c = cells_between(below, low, high);
    const bool graded = ask.spacing == Spacing::graded;
    double weight = 0.0; // of 1/D over the stretch, for graded turns
    if (graded) {
        for (int i = c.first; i <= c.last; ++i) {
            weight += share_of(c, i) * below.cell.si / below.diameter[static_cast<std::size_t>(i)];
        }
    }
    const double even = out.turns / span;
    const bool touching = touching_share > 0.0;
    if (&above != &below) above = below;
    double turns = 0.0, core = 0.0, widest = 0.0, cover = 0.0;
    // Slopes are read from the profile before it is changed: cell i + 1 is still untouched when
    // cell i is written, and the old value of i - 1 travels along.
    double before = below.diameter[static_cast<std::size_t>(c.first)];
    int left = c.first;
    for (int i = c.first; i <= c.last; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const double d = below.diameter[k];
        const int right = std::min(c.last, i + 1);
        const double tan_a = (below.diameter[static_cast<std::size_t>(right)] - before) /
                             (2.0 * std::max(1, right - left) * below.cell.si);
        const double share = share_of(c, i), dx = share * below.cell.si;
        double nu = even;
        if (touching) {
            nu = touching_density(below, i, tan_a, w, h);
        } else if (graded) {
            nu = out.turns / (weight * d);
        }
        const double coverage = nu * w;
        double grown = 0.0, middle = 0.0; // middle: diameter at which the strand's centre runs
        if (ask.build == Build::volume) {
            grown = 2.0 * nu * ask.solid.si / ask.packing;
            middle = d + 0.5 * grown;
        } else if (touching || coverage <= 1.0) {
            grown = 2.0 * h * (touching ? 1.0 : coverage);
            middle = d + h;
        } else {
            grown = kernel::layer_diameter(d, h, coverage, back_wound_layer) - d;
            middle = d + 0.5 * grown;
        }
        out.length.si += kernel::cell_length(0.5 * middle, nu * dx, dx, tan_a * dx);
        turns += nu * dx;
        core += d * dx;
        cover += dx;
        widest = std::max(widest, touching ? 1.0 : coverage);
        before = d;
        left = i;
        above.diameter[k] = d + grown * share;
    }
    // The stretch of touching turns holds the strand's own width beyond them: scale to the turns.
    if (touching && turns > 0.0) out.length.si *= out.turns / turns;
    out.core = Length{core / cover};
    out.pitch = Length{span / out.turns};
    if (touching && turns > 0.0) out.pitch = Length{span / turns};
    if (graded) {
        const double first = below.diameter_at(out.from).si, end = below.diameter_at(out.to).si;
        out.growth = std::pow(end / first, 1.0 / std::max(1.0, out.turns));
    }
    out.layers = widest;
    out.grip = kernel::friction_needed(
        out.slope, kernel::cos_helix_angle(kernel::centre_radius(out.core.si, h), out.pitch.si));
    return out;
}

Steepest steepest(const Profile& profile, Length from, Length to, Length window) {
    const double cell = profile.cell.si;
    const int reach = std::max(1, static_cast<int>(window.si / cell));
    // Cells whose middle lies in the stretch.
    const int first = profile.index(std::min(from, to) + 0.5 * profile.cell);
    const int last = profile.index(std::max(from, to) - 0.5 * profile.cell);
    double worst = 0.0;
    int at = first;
    for (int i = first; i + reach <= last; ++i) {
        const double step = std::abs(profile.diameter[static_cast<std::size_t>(i + reach)] -
                                     profile.diameter[static_cast<std::size_t>(i)]);
        if (step > worst) {
            worst = step;
            at = i;
        }
    }
    Steepest s;
    s.step = Length{worst};
    s.slope = worst / (2.0 * reach * cell);
    s.at = (at + 0.5 * (reach + 1)) * profile.cell;
    return s;
}

} // namespace wrapwright
