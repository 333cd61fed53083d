#include "core/tying/wrap.h"

#include "core/assert.h"
#include "core/geometry/helix_kernel.h"
#include "core/tying/rows.h"

#include <cmath>

// Notation: D diameter below, h strand height, w strand width, nu turns per metre, c = nu w coverage,
// l = 1 + tan^2 of the core's slope. The formulas of one turn are those of
// core/geometry/helix_kernel.h; what is derived here is the build-up.
//
// Build-up by volume: pi/4 (D1^2 - D^2) = nu (A / phi) pi (D + D1)/2, so D1 = D + 2 nu A / phi.
// Build-up by section: one layer adds 2h where it covers; below full coverage the mean of covered
// and bare, 2 h c; beyond it a further layer wound back adds 0.93 of that, because it lies in the
// grooves most of each turn and crosses the ridges twice.
//
// Each quantity is a row of numbers, one for each cell of the stretch: core/tying/rows.h.

namespace wrapwright {

namespace {

/// Share of its height by which a layer wound straight back raises the one below.
/// Between sqrt(3)/2 (in the grooves) and 1 (on the ridges); common practice, no source.
constexpr double back_wound_layer = 0.93;

using Row = std::array<double, profile_cells>;

/// The cells of a stretch; the first and the last may be covered in part.
struct Cells {
    int first = 0, last = 0;
    double first_share = 1.0, last_share = 1.0;

    [[nodiscard]] int count() const { return last - first + 1; }
};

Cells cells_between(const Profile& profile, double low, double high) {
    const double cell = profile.cell.si;
    Cells c;
    c.first = std::clamp(static_cast<int>(low / cell), 0, profile_cells - 1);
    c.last = std::clamp(static_cast<int>(high / cell), c.first, profile_cells - 1);
    if (c.first == c.last) {
        c.first_share = std::max(0.0, (high - low) / cell);
    } else {
        c.first_share = std::clamp((c.first + 1) - low / cell, 0.0, 1.0);
        c.last_share = std::clamp(high / cell - c.last, 0.0, 1.0);
    }
    return c;
}

/// Sum of a row over the stretch, its ends by their shares; four sums side by side.
double sum_over(const double* row, const Cells& c) {
    const int n = c.count();
    double part[4] = {0.0, 0.0, 0.0, 0.0};
    int i = 1;
    for (; i + 4 <= n - 1; i += 4) {
        for (int k = 0; k < 4; ++k) part[k] += row[i + k];
    }
    for (; i < n - 1; ++i) part[0] += row[i];
    double sum = (part[0] + part[1]) + (part[2] + part[3]) + row[0] * c.first_share;
    if (n > 1) sum += row[n - 1] * c.last_share;
    return sum;
}

/// Where touching turns that start at `from` have run to `turns`, going one way, when the stretch to
/// the end of the wire has these densities.
double march(const Row& nu, const Cells& c, double from, double turns, bool tailward, double cell,
             bool& clipped) {
    double at = from;
    int i = tailward ? 0 : c.count() - 1;
    const int step = tailward ? 1 : -1;
    while (i >= 0 && i < c.count()) {
        const double edge = (c.first + i + (tailward ? 1 : 0)) * cell;
        const double density = nu[static_cast<std::size_t>(i)];
        const double in_cell = std::abs(edge - at) * density;
        if (in_cell >= turns) return at + step * turns / density;
        turns -= in_cell;
        at = edge;
        i += step;
    }
    clipped = true;
    return at;
}

/// How the turns of a stretch follow each other.
enum class Pace : unsigned char { even, touching, graded };

/// What a stretch is wound with.
struct Plan {
    Cells cells;
    Pace pace = Pace::even;
    double even = 0.0; ///< turns per metre, where they are even
    double fit = 0.0;  ///< touching turns that the stretch holds
    Row lengthening;   ///< 1 + tan^2 of the core
    Row nu;            ///< turns per metre of each cell, where they are not even
};

/// Rows for the stretch between two places.
void lay_out(const Profile& below, double a, double b, double w, double h, Plan& plan) {
    plan.cells = cells_between(below, std::min(a, b), std::max(a, b));
    const int n = plan.cells.count();
    const double* d = below.diameter.data() + plan.cells.first;
    rows::lengthening(d, n, below.cell.si, plan.lengthening.data());
    if (plan.pace == Pace::touching) {
        rows::touching_density(d, plan.lengthening.data(), n, w, h, plan.nu.data());
    }
}

/// Where touching turns end that start at `from` and are not told where to stop.
double end_of_touching(const Profile& below, const WrapAsk& ask, double from, bool& clipped,
                       Plan& plan) {
    const double w = ask.width.si, cell = below.cell.si, end = below.end().si;
    const double way = ask.tailward ? 1.0 : -1.0;
    // Turns that lie flat take little more than their widths; only on a thin core and a wide strand
    // is the whole wire looked at.
    for (const double reach : {1.1 * ask.turns * w + 2.0 * cell, end}) {
        const double limit = std::clamp(from + way * reach, 0.0, end);
        lay_out(below, from, limit, w, ask.height.si, plan);
        bool short_of = false;
        const double to = march(plan.nu, plan.cells, from, ask.turns, ask.tailward, cell, short_of);
        if (!short_of) return to;
    }
    clipped = true;
    return ask.tailward ? end : 0.0;
}

/// Settles where the strand ends and how many turns it makes, and the density of each cell.
void settle(const Profile& below, const WrapAsk& ask, Wrap& out, Plan& plan) {
    const double w = ask.width.si, h = ask.height.si, cell = below.cell.si;
    const double end = below.end().si;
    const double from = std::clamp(ask.from.si, 0.0, end);
    const double way = ask.tailward ? 1.0 : -1.0;
    const bool has_pitch = ask.has_pitch && ask.pitch.si > 0.0;
    // A strand that keeps its section covers its own width beyond the turns: N p + w.
    const double extra = ask.build == Build::section && ask.spacing == Spacing::touching ? w : 0.0;
    const bool loose = has_pitch || (ask.has_to && ask.has_turns);
    plan.pace = !loose                           ? Pace::touching
                : ask.spacing == Spacing::graded ? Pace::graded
                                                 : Pace::even;
    out.turns = ask.turns;
    double to = ask.has_to  ? ask.to.si
                : has_pitch ? from + way * ask.turns * ask.pitch.si
                            : end_of_touching(below, ask, from, out.clipped, plan) + way * extra;
    out.clipped = out.clipped || to < -1e-9 || to > end + 1e-9;
    to = std::clamp(to, 0.0, end);
    out.from = Length{from};
    out.to = Length{to};
    double span = std::abs(to - from);
    lay_out(below, from, to, w, h, plan);
    if (plan.pace == Pace::touching) {
        plan.fit = sum_over(plan.nu.data(), plan.cells) * cell;
        if (plan.fit <= 0.0 && !ask.has_to && span > 0.0) {
            // Wider than all of it is round, it touches itself nowhere: a turn for each width.
            to = std::clamp(from + way * out.turns * w, 0.0, end);
            out.to = Length{to};
            span = std::abs(to - from);
            lay_out(below, from, to, w, h, plan);
            plan.pace = Pace::even;
            plan.even = span > 0.0 ? out.turns / span : 0.0;
        }
        if (ask.has_to) {
            out.turns = span > extra ? plan.fit * (span - extra) / span : 0.0;
        }
        return;
    }
    if (!ask.has_turns) out.turns = span / ask.pitch.si;
    plan.even = span > 0.0 ? out.turns / span : 0.0;
    if (plan.pace == Pace::graded) { // nu = a / D, with the turns in all fixing a
        const double* d = below.diameter.data() + plan.cells.first;
        const int n = plan.cells.count();
        for (int i = 0; i < n; ++i) plan.nu[static_cast<std::size_t>(i)] = 1.0 / d[i];
        const double a = out.turns / (sum_over(plan.nu.data(), plan.cells) * cell);
        for (int i = 0; i < n; ++i) plan.nu[static_cast<std::size_t>(i)] *= a;
    }
}

/// What a cell grows by where nu turns per metre lie on it.
double growth(const WrapAsk& ask, Pace pace, double nu) {
    if (ask.build == Build::volume) return 2.0 * nu * ask.solid.si / ask.packing;
    const double h = ask.height.si, c = nu * ask.width.si;
    if (pace == Pace::touching) return 2.0 * h;
    return c <= 1.0 ? 2.0 * h * c : kernel::layer_diameter(0.0, h, c, back_wound_layer);
}

/// Diameter at which the strand's middle runs above a core: half its height above it, or half the
/// build-up where that is more; fibres that spread run in the middle of what they fill.
double rise_of_middle(const WrapAsk& ask, double grown) {
    return std::max(ask.build == Build::volume ? 0.0 : ask.height.si, 0.5 * grown);
}

/// Length of strand over the stretch.
double length_of(const double* d, const WrapAsk& ask, const Plan& plan, const Row& grown,
                 double cell) {
    const int n = plan.cells.count();
    Row length;
    if (plan.pace == Pace::even) {
        rows::even_lengths(d, plan.lengthening.data(), n, rise_of_middle(ask, grown[0]), plan.even,
                           length.data());
    } else {
        rows::paced_lengths(d, plan.lengthening.data(), plan.nu.data(), grown.data(), n,
                            rise_of_middle(ask, 0.0), length.data());
    }
    return sum_over(length.data(), plan.cells) * cell;
}

void note_slope(const Profile& below, const WrapAsk& ask, Length window, Length held_end,
                Wrap& out) {
    const Length low = std::min(out.from, out.to) + held_end;
    const Length high = std::max(out.from, out.to) - held_end;
    if (window.si <= 0.0 || high <= low) return;
    const Steepest steep = steepest(below, low, high, window);
    out.slope = steep.slope;
    out.slope_at = steep.at;
    out.step = steep.step;
    out.grip = kernel::friction_needed(
        out.slope,
        kernel::cos_helix_angle(kernel::centre_radius(out.core.si, ask.height.si), out.pitch.si));
}

} // namespace

Wrap wrap(const Profile& below, Profile* above, const WrapAsk& ask, Length window,
          Length held_end) {
    WW_ASSERT(ask.width.si > 0.0 && ask.height.si > 0.0);
    Wrap out;
    Plan plan;
    settle(below, ask, out, plan);
    const Cells& c = plan.cells;
    const double cell = below.cell.si, span = std::abs((out.to - out.from).si);
    if (above != nullptr && above != &below) *above = below;
    if (span <= 0.0 || out.turns <= 0.0) {
        out.core = below.diameter_at(out.from);
        out.pitch = ask.width;
        return out;
    }
    const int n = c.count();
    const double* d = below.diameter.data() + c.first;
    Row grown;
    double densest = plan.even;
    if (plan.pace == Pace::even || (plan.pace == Pace::touching && ask.build == Build::section)) {
        std::fill_n(grown.begin(), n, growth(ask, plan.pace, plan.even));
    } else {
        for (int i = 0; i < n; ++i) {
            const auto k = static_cast<std::size_t>(i);
            grown[k] = growth(ask, plan.pace, plan.nu[k]);
            densest = std::max(densest, plan.nu[k]);
        }
    }
    out.length = Length{length_of(d, ask, plan, grown, cell)};
    out.core = Length{sum_over(d, c) * cell / span};
    out.pitch = Length{span / out.turns};
    out.layers = densest * ask.width.si;
    if (plan.pace == Pace::touching) {
        // The stretch holds the strand's own width beyond its turns: scale to the turns.
        out.length = out.length * (out.turns / plan.fit);
        out.pitch = Length{span / plan.fit};
        out.layers = 1.0;
    }
    if (plan.pace == Pace::graded) {
        const double first = below.diameter_at(out.from).si, end = below.diameter_at(out.to).si;
        out.growth = std::pow(end / first, 1.0 / std::max(1.0, out.turns));
    }
    note_slope(below, ask, window, held_end, out);
    if (above != nullptr) {
        grown[0] *= c.first_share;
        if (n > 1) grown[static_cast<std::size_t>(n - 1)] *= c.last_share;
        double* a = above->diameter.data() + c.first;
        for (int i = 0; i < n; ++i) a[i] += grown[static_cast<std::size_t>(i)];
    }
    return out;
}

Steepest steepest(const Profile& profile, Length from, Length to, Length window) {
    const double cell = profile.cell.si;
    const int reach = std::max(1, static_cast<int>(window.si / cell));
    // Cells whose middle lies in the stretch.
    const int first = profile.index(std::min(from, to) + 0.5 * profile.cell);
    const int last = profile.index(std::max(from, to) - 0.5 * profile.cell);
    const double* d = profile.diameter.data();
    double worst = 0.0;
    for (int i = first; i + reach <= last; ++i)
        worst = std::max(worst, std::abs(d[i + reach] - d[i]));
    int at = first;
    while (at + reach < last && std::abs(d[at + reach] - d[at]) < worst) ++at;
    Steepest s;
    s.step = Length{worst};
    s.slope = worst / (2.0 * reach * cell);
    s.at = (at + 0.5 * (reach + 1)) * profile.cell;
    return s;
}

} // namespace wrapwright
