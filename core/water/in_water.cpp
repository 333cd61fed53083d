#include "core/water/in_water.h"

#include "core/material/substance.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

std::optional<Error> refuse(const Fishing& f) {
    const auto bad = [](std::string message, std::string remedy, std::string key) {
        return Error{
            ErrorCode::out_of_range, std::move(message), std::move(remedy), {0, std::move(key)}};
    };
    const auto in = [](double v, double low, double high) { return v >= low && v <= high; };
    const Result<Water> water = water_at(f.temperature, f.kind);
    if (!water.ok()) return water.error();
    if (f.tippet.length.si != 0.0 &&
        !(in(f.tippet.length.si, 0.0, 30.0) && in(f.tippet.thickness.si, 2e-5, 2e-3))) {
        return bad("no tippet is like that", "give 0.02 to 2 mm by 0 to 30 m, such as 0.15mm:1m",
                   "tippet");
    }
    if (!in(f.stream.surface.si, 1e-3, 10.0)) {
        return bad("no river that is fished runs at that speed", "give 0.001 to 10 m/s", "current");
    }
    if (!in(f.stream.depth.si, 0.06, 100.0)) {
        return bad("no river that is fished is that deep", "give 0.06 to 100 m", "depth");
    }
    if (!in(f.stream.roughness.si, 1e-5, 0.9 * f.stream.depth.si)) {
        return bad("the bed's stones are no smaller than the water is deep",
                   "give less than nine tenths of the depth", "bed");
    }
    if (!in(f.drift.si, 0.1, 1000.0)) {
        return bad("no drift is that long", "give 0.1 to 1000 m", "drift");
    }
    if (!in(f.air.si, 0.0, 1e-6)) {
        return bad("no fly carries that much air", "give 0 to 1000 mm3", "air");
    }
    if (f.weighed.value.si != 0.0 && !in(f.weighed.value.si, 1e-7, 0.1)) {
        return bad("no fly weighs that", "give 0.1 mg to 100 g for one fly", "weighed");
    }
    return std::nullopt;
}

namespace {

/// The normal quantile, by halving: |error| below 1e-9.
double normal_quantile(double p) {
    double low = -8.0, high = 8.0;
    while (high - low > 1e-9) {
        const double middle = 0.5 * (low + high);
        (0.5 * std::erfc(-middle * std::numbers::sqrt2 / 2.0) < p ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// Three coordinates in (0, 1) that fill the cube evenly: an additive recurrence on the powers of
/// 1 / g, g^4 = g + 1.
struct Sample {
    double a, b, c;
};
Sample sample(int i) {
    constexpr double g = 1.2207440846057596;
    const auto part = [i](double step) {
        const double x = 0.5 + (i + 1) * step;
        return std::clamp(x - std::floor(x), 1e-6, 1.0 - 1e-6);
    };
    return {part(1.0 / g), part(1.0 / (g * g)), part(1.0 / (g * g * g))};
}

/// A value of an estimate whose ends are 2.5 and 97.5 in 100.
template <class Q>
Q draw(const Estimate<Q>& e, double z) {
    constexpr double end = 1.959964;
    return e.value + (z > 0.0 ? e.high - e.value : e.value - e.low) * (z / end);
}

/// The same in the logarithm, for what cannot fall below 0.
double draw_factor(const Estimate<Factor>& e, double z) {
    constexpr double end = 1.959964;
    const double side =
        z > 0.0 ? std::log(e.high.si / e.value.si) : std::log(e.value.si / e.low.si);
    return e.value.si * std::exp(side * z / end);
}

/// The speed on the tippet: between drawn along and bowed, by a share of the way in the logarithm.
double on_tippet(const WetShape& shape, Force weight, const Water& water, const Tippet& tippet,
                 double share) {
    const double axial = terminal_speed(shape, weight, water, tippet, TippetWay::axial).si;
    if (!(tippet.length.si > 0.0)) return axial;
    const double bowed = terminal_speed(shape, weight, water, tippet, TippetWay::bowed).si;
    const double product = axial * bowed;
    if (!(product > 0.0)) return 0.5 * (axial + bowed);
    return std::copysign(std::pow(std::abs(axial), 1.0 - share) * std::pow(std::abs(bowed), share),
                         axial);
}

} // namespace

Estimate<Speed> sink_speed(const WetShape& shape, const Estimate<Force>& weight, const Water& water,
                           const Tippet& tippet, const Estimate<Factor>& factor) {
    constexpr int points = 64;
    std::array<double, points> speeds{};
    const Force line = tippet_weight(tippet, water);
    WetShape drawn = shape;
    for (int i = 0; i < points; ++i) {
        const Sample s = sample(i);
        drawn.factor = draw_factor(factor, normal_quantile(s.a));
        const Force w = draw(weight, normal_quantile(s.b)) + line;
        speeds[static_cast<std::size_t>(i)] = on_tippet(drawn, w, water, tippet, s.c);
    }
    std::sort(speeds.begin(), speeds.end());
    const auto quantile = [&](double q) {
        const double x = std::clamp(q * points - 0.5, 0.0, points - 1.0);
        const auto k = static_cast<std::size_t>(std::min(x, points - 2.0));
        const double f = x - static_cast<double>(k);
        return speeds[k] * (1.0 - f) + speeds[k + 1] * f;
    };
    drawn.factor = factor.value.si;
    const double value = on_tippet(drawn, weight.value + line, water, tippet, 0.5);
    return {Speed{value}, Speed{std::min(value, quantile(0.025))},
            Speed{std::max(value, quantile(0.975))}, std::max(weight.origin, factor.origin)};
}

namespace {

constexpr Speed still = metres_per_second(1e-4); // slower than any river lets a thing sink

void fill_drift(InWater& out, const Fishing& fishing) {
    const auto depth_at = [&](Speed w, Length x) {
        return w > still ? drift_depth(fishing.stream, w, x) : Length{};
    };
    const auto bed_at = [&](Speed w) {
        const Length far = metres(1000.0);
        return w > still ? std::min(far, drift_to_bed(fishing.stream, w)) : far;
    };
    for (std::size_t i = 0; i < drift_places; ++i) {
        DriftPlace& p = out.drift[i];
        p.along = fishing.drift * (static_cast<double>(i) / (drift_places - 1));
        const Length value = depth_at(out.sink.value, p.along);
        const Length low = depth_at(out.sink.low, p.along);
        const Length high = depth_at(out.sink.high, p.along);
        const Duration time = p.along / fishing.stream.surface;
        const double swirl = 1.96 * turbulent_spread(fishing.stream, time).si;
        const double down = std::hypot((value - low).si, swirl);
        const double up = std::hypot((high - value).si, swirl);
        // It sinks on the whole: what it has surely reached it does not lose.
        const Length before = i == 0 ? Length{} : out.drift[i - 1].depth.low;
        p.depth = {value, std::max(before, value - Length{down}),
                   std::min(fishing.stream.depth, value + Length{up}), out.sink.origin};
    }
    out.to_bed = {bed_at(out.sink.value), bed_at(out.sink.high), bed_at(out.sink.low),
                  out.sink.origin};
}

} // namespace

Length ballast_height(const Tied& tied) {
    const BaseRun& base = tied.bases.front();
    const Length middle = base.line.stations().middle;
    return 0.5 * tied.profile(0).diameter_at(middle) + 0.5 * base.hook.wire.value;
}

Result<InWater> in_water(const Pattern& pattern, const Resolved& numbers, const Tied& tied,
                         const Fishing& fishing) {
    if (const std::optional<Error> error = refuse(fishing)) return *error;
    InWater out;
    out.water = water_at(fishing.temperature, fishing.kind).value();
    out.body = fly_body(pattern, numbers, tied);
    if (fishing.weighed.value.si > 0.0) weigh_whole(out.body, fishing.weighed);
    out.mass = out.body.mass;
    out.volume = out.body.volume;
    out.weight = fly_weight(out.body, out.water);
    const Force lift{out.water.density.si * fishing.air.si * free_fall};
    out.weight.value -= lift;
    out.weight.low -= lift;
    out.weight.high -= lift;
    const double carried = out.water.density.si * out.volume.value.si * free_fall;
    out.nearly_neutral = (out.weight.low.si <= 0.0 && out.weight.high.si >= 0.0) ||
                         std::abs(out.weight.value.si) < 0.02 * carried;
    WetShape shape = wet_shape(pattern, numbers, tied);
    Result<FallFit> fit = fit_falls(shape, out.body, fishing.falls);
    if (!fit.ok()) return fit.error();
    out.fit = std::move(fit).value();
    out.timed = !out.fit.each.empty();
    // A timed fall holds the doubt of this fly's weight in its factor: it is not counted twice.
    const Estimate<Force> weight =
        out.timed ? exactly(out.weight.value, out.weight.origin) : out.weight;
    out.sink_free = sink_speed(shape, weight, out.water, {}, out.fit.factor);
    out.sink = fishing.tippet.length.si > 0.0
                   ? sink_speed(shape, weight, out.water, fishing.tippet, out.fit.factor)
                   : out.sink_free;
    shape.factor = out.fit.factor.value.si;
    const Force on_line = weight.value + tippet_weight(fishing.tippet, out.water);
    out.drawn = terminal_speed(shape, on_line, out.water, fishing.tippet, TippetWay::axial);
    out.bowed = terminal_speed(shape, on_line, out.water, fishing.tippet, TippetWay::bowed);
    out.start = start_up(shape, out.mass.value, out.volume.value + fishing.air, out.water);
    out.centres = centres_of(out.body.lumps, out.water);
    out.film = floating(out.weight.value, Length{out.centres.of_weight.x},
                        lying_parts(pattern, numbers, tied, out.water));
    const Speed at = out.sink_free.value;
    out.drag_at = drag_centre(shape, at, out.water, true);
    out.hang = hang_angle(out.body.eye, out.centres);
    out.attitude = sink_angle(out.drag_at, out.centres);
    out.ride = ride(out.body, drag_centre(shape, at, out.water, false), out.water,
                    ballast_height(tied), substance_row(Substance::lead).density.value);
    fill_drift(out, fishing);
    return out;
}

} // namespace wrapwright
