#include "core/water/drift.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr double karman = 0.4;

double bed_height(const Stream& stream) { return stream.roughness.si / 30.0; }

void check(const Stream& stream, Speed sink) {
    WW_ASSERT(stream.depth.si > 0.0 && stream.surface.si > 0.0 && sink.si > 0.0);
}

} // namespace

Speed shear_speed(const Stream& stream) {
    WW_ASSERT(stream.depth > stream.roughness);
    return {karman * stream.surface.si / std::log(stream.depth.si / bed_height(stream))};
}

namespace {

/// The logarithmic profile's way along, as a function of the depth below the surface.
class LogWay {
  public:
    LogWay(const Stream& stream, Speed sink)
        : y0_(bed_height(stream)), depth_(stream.depth.si),
          scale_(shear_speed(stream).si / (karman * sink.si)) {}

    [[nodiscard]] double deepest() const { return depth_ - y0_; }
    [[nodiscard]] double at(double z) const { return scale_ * (g(depth_) - g(depth_ - z)); }

  private:
    [[nodiscard]] double g(double y) const { return y * std::log(y / y0_) - y; }
    double y0_, depth_, scale_;
};

} // namespace

Length drift_depth(const Stream& stream, Speed sink, Length along) {
    check(stream, sink);
    if (stream.profile == CurrentProfile::power) {
        const double left =
            1.0 - 8.0 / 7.0 * sink.si * along.si / (stream.surface.si * stream.depth.si);
        if (left <= 0.0) return stream.depth;
        return stream.depth * (1.0 - std::pow(left, 7.0 / 8.0));
    }
    const LogWay way(stream, sink);
    double low = 0.0, high = way.deepest();
    if (way.at(high) <= along.si) return stream.depth;
    while (high - low > 1e-10) {
        const double middle = 0.5 * (low + high);
        (way.at(middle) < along.si ? low : high) = middle;
    }
    return {0.5 * (low + high)};
}

Length drift_to_bed(const Stream& stream, Speed sink) {
    check(stream, sink);
    if (stream.profile == CurrentProfile::logarithmic) {
        const LogWay way(stream, sink);
        return {way.at(way.deepest())};
    }
    return {7.0 / 8.0 * stream.surface.si * stream.depth.si / sink.si};
}

Length turbulent_spread(const Stream& stream, Duration time) {
    const double shear = shear_speed(stream).si;
    if (!(shear > 0.0) || !(time.si > 0.0)) return {};
    const double memory = 0.067 * stream.depth.si / shear;
    const double t = time.si / memory;
    return {shear * memory * std::sqrt(2.0 * (t - 1.0 + std::exp(-t)))};
}

namespace {

/// Where the fly is and how it moves, and the rates of the same.
struct State {
    double x = 0.0, z = 0.0, vx = 0.0, vz = 0.0;

    [[nodiscard]] State after(const State& rate, double dt) const {
        return {x + rate.x * dt, z + rate.z * dt, vx + rate.vx * dt, vz + rate.vz * dt};
    }
};

} // namespace

std::vector<DriftPoint> drift_path(const WetShape& shape, Mass mass, Volume volume,
                                   const Water& water, const Stream& stream, Length along) {
    const double weight = weight_in_water(mass, volume, water).si;
    const double moved = mass.si + 0.5 * water.density.si * volume.si;
    const double depth = stream.depth.si;
    const auto rate = [&](const State& s) {
        const double height = std::max((depth - s.z) / depth, 1e-6);
        const double rx = s.vx - stream.surface.si * std::pow(height, 1.0 / 7.0), rz = s.vz;
        const double r = std::sqrt(rx * rx + rz * rz) + 1e-12;
        const double f = drag(shape, Speed{r}, water).si / r;
        return State{s.vx, s.vz, -f * rx / moved, (weight - f * rz) / moved};
    };
    std::vector<DriftPoint> path{{}};
    State s;
    constexpr double dt = 1e-3;
    for (int i = 1; i <= 60000; ++i) {
        const State a = rate(s), b = rate(s.after(a, 0.5 * dt)), c = rate(s.after(b, 0.5 * dt)),
                    d = rate(s.after(c, dt));
        s.x += dt / 6.0 * (a.x + 2.0 * b.x + 2.0 * c.x + d.x);
        s.z += dt / 6.0 * (a.z + 2.0 * b.z + 2.0 * c.z + d.z);
        s.vx += dt / 6.0 * (a.vx + 2.0 * b.vx + 2.0 * c.vx + d.vx);
        s.vz += dt / 6.0 * (a.vz + 2.0 * b.vz + 2.0 * c.vz + d.vz);
        path.push_back({seconds(i * dt), metres(s.x), metres(std::clamp(s.z, 0.0, depth))});
        if (s.z >= depth || s.x >= along.si) break;
    }
    return path;
}

} // namespace wrapwright
