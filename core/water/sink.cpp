#include "core/water/sink.h"

#include "core/assert.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr double slowest = 1e-6, fastest = 10.0; // m/s

/// Gauss-Legendre of 8 points on each of 16 equal panels from a to b.
template <class F>
double integral(F&& f, double a, double b) {
    constexpr std::array<double, 4> node{0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                         0.9602898564975363};
    constexpr std::array<double, 4> weight{0.3626837833783620, 0.3137066458778873,
                                           0.2223810344533745, 0.1012285362903763};
    constexpr int panels = 16;
    const double half = 0.5 * (b - a) / panels;
    double sum = 0.0;
    for (int p = 0; p < panels; ++p) {
        const double middle = a + (2 * p + 1) * half;
        for (std::size_t i = 0; i < node.size(); ++i) {
            sum += weight[i] * (f(middle - half * node[i]) + f(middle + half * node[i]));
        }
    }
    return half * sum;
}

} // namespace

Speed terminal_speed(const WetShape& shape, Force weight, const Water& water, const Tippet& tippet,
                     TippetWay way) {
    const double target = std::abs(weight.si);
    WW_ASSERT(std::isfinite(target));
    const double sign = weight.si < 0.0 ? -1.0 : 1.0;
    const auto force = [&](double u) {
        return (drag(shape, Speed{u}, water) + tippet_drag(tippet, way, Speed{u}, water)).si;
    };
    if (target <= force(slowest)) return {}; // it stands still
    // Drag is nearly a power of the speed: secants in the logarithms, kept inside the bracket.
    double low = slowest, high = fastest;
    if (force(high) <= target) return {sign * high};
    double u = 0.3, previous = 0.0, previous_off = 0.0;
    for (int i = 0; i < 80; ++i) {
        const double off = std::log(force(u) / target);
        if (off > 0.0) {
            high = u;
        } else {
            low = u;
        }
        const double slope =
            i == 0 ? 1.8 : (off - previous_off) / (std::log(u) - std::log(previous));
        previous = u;
        previous_off = off;
        if (std::abs(off) < 1e-12 || high - low < 1e-10 * high) break;
        double next = slope > 0.1 ? u * std::exp(-off / slope) : 0.0;
        if (!(next > low && next < high)) next = std::sqrt(low * high);
        if (std::abs(next - u) <= 1e-10 * u) break;
        u = next;
    }
    return {sign * u};
}

StartUp start_up(const WetShape& shape, Mass mass, Volume volume, const Water& water,
                 double share) {
    WW_ASSERT(share > 0.0 && share < 1.0);
    const Force weight = weight_in_water(mass, volume, water);
    StartUp out;
    const double top = terminal_speed(shape, weight, water).si;
    if (!(top > 0.0)) return out;
    out.terminal = {top};
    const double moved = mass.si + 0.5 * water.density.si * volume.si;
    const auto pull = [&](double u) { return weight.si - drag(shape, Speed{u}, water).si; };
    const double end = share * top;
    out.time = {integral([&](double u) { return moved / pull(u); }, 0.0, end)};
    out.way = {integral([&](double u) { return moved * u / pull(u); }, 0.0, end)};
    out.behind = {
        integral([&](double u) { return moved * (top - u) / pull(u); }, 0.0, top * (1.0 - 1e-7))};
    return out;
}

} // namespace wrapwright
