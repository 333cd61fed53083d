#include "core/water/fly_body.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>

// What the water leaves of the weight, and what a scale says of it.

namespace wrapwright {

namespace {

/// The half-width of a portion's m - rho V, in kg.
///
/// Where the mass is volume times density: d(m - rho V) = (rho_s - rho) dV + V d(rho_s). Where it
/// was weighed the volume is mass over density: d(m - rho V) = (1 - rho / rho_s) dm + rho V d(rho_s)
/// / rho_s.
double submerged_half(const Portion& p, double rho, double mass_half) {
    if (!(p.mass.value.si > 0.0)) return 0.0;
    const double m = p.mass.value.si, v = p.volume.value.si;
    const double ratio = rho * v / m;
    const double mass = mass_half / m, density = p.density_spread;
    if (p.weighed) return std::hypot((m - rho * v) * mass, m * ratio * density);
    const double volume = std::sqrt(std::max(0.0, mass * mass - density * density));
    return std::hypot((m - rho * v) * volume, m * std::min(mass, density));
}

} // namespace

Estimate<Force> fly_weight(const FlyBody& body, const Water& water) {
    const double rho = water.density.si;
    double down = 0.0, up = 0.0;
    Origin origin = Origin::measured;
    for (std::size_t i = 0; i < body.portions.size(); ++i) {
        const Portion& first = body.portions[i];
        bool seen = false;
        for (std::size_t k = 0; k < i; ++k) {
            seen = seen || body.portions[k].material == first.material;
        }
        if (seen) continue;
        double low = 0.0, high = 0.0; // one material's errors go together
        for (const Portion& p : body.portions) {
            if (p.material != first.material) continue;
            low += submerged_half(p, rho, (p.mass.value - p.mass.low).si);
            high += submerged_half(p, rho, (p.mass.high - p.mass.value).si);
            origin = std::max(origin, p.mass.origin);
        }
        down += low * low;
        up += high * high;
    }
    if (body.weighed_whole) { // then the whole is better known than its parts
        const double volume = 0.5 * rho * (body.volume.high - body.volume.low).si;
        const double mass = 0.5 * (body.mass.high - body.mass.low).si;
        down = up = mass * mass + volume * volume;
    }
    const double w = body.mass.value.si - rho * body.volume.value.si;
    return {Force{w * free_fall}, Force{(w - std::sqrt(down)) * free_fall},
            Force{(w + std::sqrt(up)) * free_fall}, origin};
}

Estimate<Mass> one_of_weighed(int pieces, Mass together, Mass readability) {
    WW_ASSERT(pieces >= 1 && together.si > 0.0 && readability.si >= 0.0);
    const double n = pieces;
    const double digit = std::sqrt(2.0) * 0.5 * readability.si / n;
    const double one = together.si / n;
    const double differ = pieces > 1 ? 0.1 * one / std::sqrt(n) : 0.0;
    const double half = std::min(one, std::hypot(digit, differ));
    return {Mass{one}, Mass{one - half}, Mass{one + half}, Origin::measured};
}

void weigh_whole(FlyBody& body, const Estimate<Mass>& whole) {
    WW_ASSERT(whole.value.si > 0.0);
    const auto half = [](const Estimate<Mass>& e) { return 0.5 * (e.high - e.low).si; };
    const double scale_square = half(whole) * half(whole);
    double before = 0.0, sum = 0.0;
    for (const Portion& p : body.portions) {
        before += half(p.mass) * half(p.mass);
        sum += p.mass.value.si;
    }
    const double squares = before + scale_square;
    const double off = whole.value.si - sum;
    std::vector<double> scale(body.portions.size(), 1.0);
    for (std::size_t i = 0; i < body.portions.size(); ++i) {
        Portion& p = body.portions[i];
        if (!(p.mass.value.si > 0.0)) continue;
        const double h = half(p.mass), gain = squares > 0.0 ? h * h / squares : 0.0;
        const double mass = std::max(0.0, p.mass.value.si + gain * off);
        const double left = h * std::sqrt(std::max(0.0, 1.0 - gain));
        scale[i] = mass / p.mass.value.si;
        p.mass = {Mass{mass}, Mass{std::max(0.0, mass - left)}, Mass{mass + left}, p.mass.origin};
        p.volume = {scale[i] * p.volume.value, scale[i] * p.volume.low, scale[i] * p.volume.high,
                    p.volume.origin};
    }
    for (Lump& lump : body.lumps) {
        const double k = scale[static_cast<std::size_t>(lump.portion)];
        lump.mass = k * lump.mass;
        lump.volume = k * lump.volume;
    }
    const double gain = squares > 0.0 ? before / squares : 0.0;
    const double mass = sum + gain * off, left = std::sqrt(gain * scale_square);
    body.mass = {Mass{mass}, Mass{mass - left}, Mass{mass + left}, whole.origin};
    body.volume = sum_of_volumes(body.portions);
    body.weighed_whole = true;
}

} // namespace wrapwright
