#pragma once
// A number with its doubt and where it came from: measured first, label second.

#include "core/units/quantity.h"

#include <cmath>
#include <string_view>

namespace wrapwright {

/// Where a number came from, from the surest to the least sure.
enum class Origin : unsigned char {
    measured, ///< by the person: a caliper, a scale
    stated,   ///< written in the recipe or on the packet
    derived,  ///< computed from other numbers
    typical,  ///< a usual value with its spread
};

constexpr std::string_view name(Origin o) {
    constexpr std::string_view names[] = {"measured", "stated", "derived", "typical"};
    return names[static_cast<int>(o)];
}

/// A quantity, the interval it lies in, and its origin; low <= value <= high.
///
/// The interval is what a careful person would bet on (about 95 in 100), not a hard bound.
template <class Q>
struct Estimate {
    Q value{};
    Q low{};
    Q high{};
    Origin origin = Origin::derived;
    friend constexpr bool operator==(const Estimate&, const Estimate&) = default;
};

template <class Q>
constexpr Estimate<Q> exactly(Q v, Origin o = Origin::stated) {
    return {v, v, v, o};
}

/// The estimate v with a relative spread on both sides, such as 0.12 for +-12 %.
template <class Q>
constexpr Estimate<Q> about(Q v, double relative, Origin o = Origin::typical) {
    const Q half = v.si < 0.0 ? Q{-v.si * relative} : Q{v.si * relative};
    return {v, v - half, v + half, o};
}

/// The wider half of the interval as a share of the value; 0 where the value is 0.
template <class Q>
constexpr double relative_spread(const Estimate<Q>& e) {
    if (e.value.si == 0.0) return 0.0; // exact: "does not apply"
    const double up = e.high.si - e.value.si, down = e.value.si - e.low.si;
    const double size = e.value.si < 0.0 ? -e.value.si : e.value.si;
    return (up > down ? up : down) / size;
}

/// The sum of two estimates whose errors are independent: half-widths add in quadrature.
///
/// Source  first-order propagation, JCGM 100:2008 (GUM) 5.1.2, each side by itself
template <class Q>
Estimate<Q> add_independent(const Estimate<Q>& a, const Estimate<Q>& b) {
    // Widths are far from where their squares overflow or vanish, so no hypot is needed.
    const double a_down = a.value.si - a.low.si, b_down = b.value.si - b.low.si;
    const double a_up = a.high.si - a.value.si, b_up = b.high.si - b.value.si;
    const double down = std::sqrt(a_down * a_down + b_down * b_down);
    const double up = std::sqrt(a_up * a_up + b_up * b_up);
    const Q v = a.value + b.value;
    return {v, v - Q{down}, v + Q{up}, a.origin > b.origin ? a.origin : b.origin};
}

} // namespace wrapwright
