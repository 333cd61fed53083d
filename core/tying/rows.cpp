#include "core/tying/rows.h"

#include "core/geometry/helix_kernel.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#if defined(__x86_64__) && defined(__GNUC__)
#define WW_WIDE_ROWS 1
#else
#define WW_WIDE_ROWS 0
#endif

namespace wrapwright::rows {

namespace {

using std::numbers::pi;

[[gnu::always_inline]] inline void lengthening_body(const double* __restrict d, int n, double cell,
                                                    double* __restrict out) {
    const double two = 1.0 / (4.0 * cell), one = 1.0 / (2.0 * cell);
    const double t0 = n > 1 ? (d[1] - d[0]) * one : 0.0;
    out[0] = 1.0 + t0 * t0;
    for (int i = 1; i < n - 1; ++i) {
        const double t = (d[i + 1] - d[i - 1]) * two;
        out[i] = 1.0 + t * t;
    }
    if (n > 1) {
        const double t = (d[n - 1] - d[n - 2]) * one;
        out[n - 1] = 1.0 + t * t;
    }
}

[[gnu::always_inline]] inline void density_body(const double* __restrict d,
                                                const double* __restrict l, int n, double width,
                                                double height, double* __restrict out) {
    for (int i = 0; i < n; ++i) {
        out[i] =
            kernel::touching_turns_per_length(width, kernel::centre_radius(d[i], height), l[i]);
    }
}

[[gnu::always_inline]] inline void even_body(const double* __restrict d, const double* __restrict l,
                                             int n, double rise, double density,
                                             double* __restrict out) {
    const double turn = pi * density;
    for (int i = 0; i < n; ++i) {
        const double around = (d[i] + rise) * turn;
        out[i] = std::sqrt(around * around + l[i]);
    }
}

[[gnu::always_inline]] inline void
paced_body(const double* __restrict d, const double* __restrict l, const double* __restrict nu,
           const double* __restrict grown, int n, double least, double* __restrict out) {
    for (int i = 0; i < n; ++i) {
        const double around = pi * (d[i] + std::max(least, 0.5 * grown[i])) * nu[i];
        out[i] = std::sqrt(around * around + l[i]);
    }
}

#if WW_WIDE_ROWS
// Without fused multiply-add: that would change last digits.
bool is_wide() { return __builtin_cpu_supports("avx2") != 0; }

[[gnu::target("avx2")]] void lengthening_wide(const double* d, int n, double cell, double* out) {
    lengthening_body(d, n, cell, out);
}
[[gnu::target("avx2")]] void density_wide(const double* d, const double* l, int n, double width,
                                          double height, double* out) {
    density_body(d, l, n, width, height, out);
}
[[gnu::target("avx2")]] void even_wide(const double* d, const double* l, int n, double rise,
                                       double density, double* out) {
    even_body(d, l, n, rise, density, out);
}
[[gnu::target("avx2")]] void paced_wide(const double* d, const double* l, const double* nu,
                                        const double* grown, int n, double least, double* out) {
    paced_body(d, l, nu, grown, n, least, out);
}
#else
constexpr bool is_wide() { return false; }
constexpr auto lengthening_wide = lengthening_body;
constexpr auto density_wide = density_body;
constexpr auto even_wide = even_body;
constexpr auto paced_wide = paced_body;
#endif

} // namespace

void lengthening(const double* diameter, int n, double cell, double* out) {
    is_wide() ? lengthening_wide(diameter, n, cell, out) : lengthening_body(diameter, n, cell, out);
}

void touching_density(const double* diameter, const double* lengthening, int n, double width,
                      double height, double* out) {
    is_wide() ? density_wide(diameter, lengthening, n, width, height, out)
              : density_body(diameter, lengthening, n, width, height, out);
}

void even_lengths(const double* diameter, const double* lengthening, int n, double rise,
                  double density, double* out) {
    is_wide() ? even_wide(diameter, lengthening, n, rise, density, out)
              : even_body(diameter, lengthening, n, rise, density, out);
}

void paced_lengths(const double* diameter, const double* lengthening, const double* density,
                   const double* grown, int n, double least, double* out) {
    is_wide() ? paced_wide(diameter, lengthening, density, grown, n, least, out)
              : paced_body(diameter, lengthening, density, grown, n, least, out);
}

} // namespace wrapwright::rows
