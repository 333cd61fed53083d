#include "core/water/drag.h"

#include "core/water/drag_law.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

using std::numbers::pi;

constexpr double blunt_end = 0.95; // 0.9 to 1.0 for lengths of 1 to 8 diameters, from memory
constexpr double full_disc = 1.15; // of a disc across the flow, from memory

struct Flow {
    double speed, pressure, density, viscosity;

    Flow(Speed u, const Water& water)
        : speed(u.si), pressure(0.5 * water.density.si * u.si * u.si), density(water.density.si),
          viscosity(water.viscosity.si) {}

    [[nodiscard]] double reynolds(double length, double share = 1.0) const {
        return density * speed * share * length / viscosity;
    }
};

double on_fibres(const WetFibres& f, const Flow& flow) {
    if (!(f.across > 0.0) || !(f.diameter.si > 0.0)) return 0.0;
    const double re = flow.reynolds(f.diameter.si, f.across);
    const double s3 = f.across * f.across * f.across;
    const double sum = f.count * s3 * cylinder_drag(re) * f.diameter.si * f.length.si;
    return flow.pressure * (f.most.si > 0.0 ? std::min(sum, full_disc * f.most.si) : sum);
}

double on_bead(const WetShape& shape, const Flow& flow) {
    if (!(shape.bead.si > 0.0)) return 0.0;
    return flow.pressure * sphere_drag(flow.reynolds(shape.bead.si)) * disc_area(shape.bead).si;
}

double on_body(const WetShape& shape, const Flow& flow) {
    double force = flow.pressure * blunt_end * shape.blunt.si;
    if (shape.skin.si > 0.0) {
        force += flow.pressure * skin_drag(flow.reynolds(shape.skin_length.si)) * shape.skin.si;
    }
    return force;
}

} // namespace

Force drag(const WetShape& shape, Speed speed, const Water& water) {
    if (!(speed.si > 0.0)) return {};
    const Flow flow(speed, water);
    double force = on_bead(shape, flow) + on_body(shape, flow);
    for (const WetFibres& f : shape.fibres) force += on_fibres(f, flow);
    return {shape.factor * force};
}

glm::dvec2 drag_centre(const WetShape& shape, Speed speed, const Water& water, bool whole) {
    const Flow flow(Speed{std::max(speed.si, 1e-6)}, water);
    glm::dvec2 moment{};
    double force = 0.0;
    const auto add = [&](double f, const glm::dvec2& at) {
        force += f;
        moment += f * at;
    };
    if (whole) add(on_bead(shape, flow), shape.bead_at);
    add(on_body(shape, flow), shape.body_at);
    for (const WetFibres& f : shape.fibres) add(on_fibres(f, flow), f.at);
    return force > 0.0 ? moment / force : shape.bead_at;
}

namespace {

double axial(const Tippet& tippet, const Flow& flow) {
    const double a = 0.5 * tippet.thickness.si, length = tippet.length.si;
    const double nu = flow.viscosity / flow.density;
    const double logarithm = std::max(3.0, std::log(4.0 * nu * length / (flow.speed * a * a)));
    const double slender = 4.0 * pi * flow.viscosity * flow.speed / (logarithm - 1.0) * length;
    const double plate = flow.pressure * skin_drag(flow.reynolds(length)) * 2.0 * pi * a * length;
    return std::max(slender, plate);
}

double across(const Tippet& tippet, const Flow& flow) {
    return flow.pressure * cylinder_drag(flow.reynolds(tippet.thickness.si)) * tippet.thickness.si *
           tippet.length.si;
}

/// The mean of s^2 C(s Re) over s from 0 to 1: Gauss-Legendre in u with s = u^2, which takes the bend
/// at s = 0 out.
double bowed(const Tippet& tippet, const Flow& flow) {
    constexpr std::array<double, 8> node{
        -0.9602898564975363, -0.7966664774136267, -0.5255324099163290, -0.1834346424956498,
        0.1834346424956498,  0.5255324099163290,  0.7966664774136267,  0.9602898564975363};
    constexpr std::array<double, 8> weight{
        0.1012285362903763, 0.2223810344533745, 0.3137066458778873, 0.3626837833783620,
        0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763};
    const double re = flow.reynolds(tippet.thickness.si);
    double mean = 0.0;
    for (std::size_t i = 0; i < node.size(); ++i) {
        const double u = 0.5 * (1.0 + node[i]), s = u * u;
        mean += 0.5 * weight[i] * 2.0 * u * s * s * cylinder_drag(re * s);
    }
    return flow.pressure * mean * tippet.thickness.si * tippet.length.si;
}

} // namespace

Force tippet_drag(const Tippet& tippet, TippetWay way, Speed speed, const Water& water) {
    if (!(speed.si > 0.0) || !(tippet.length.si > 0.0)) return {};
    const Flow flow(speed, water);
    switch (way) {
    case TippetWay::axial: return {axial(tippet, flow)};
    case TippetWay::bowed: return {bowed(tippet, flow)};
    case TippetWay::across: break;
    }
    return {across(tippet, flow)};
}

Force tippet_weight(const Tippet& tippet, const Water& water) {
    const Volume volume = disc_area(tippet.thickness) * tippet.length;
    return {(tippet.density - water.density).si * volume.si * free_fall};
}

} // namespace wrapwright
