#include "core/water/balance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

constexpr double height_doubt = 0.15e-3; // m, of delta

/// Unit normal of a line, on the point's side (negative y).
glm::dvec2 towards_point(const glm::dvec2& line) {
    const double size = glm::length(line);
    if (!(size > 0.0)) return {0.0, -1.0};
    const glm::dvec2 n = glm::dvec2{-line.y, line.x} / size;
    return n.y > 0.0 || (n.y == 0.0 && n.x > 0.0) ? -n : n;
}

Angle from_down(const glm::dvec2& down) {
    const double size = glm::length(down);
    return {size > 0.0 ? std::acos(std::clamp(down.x / size, -1.0, 1.0)) : 0.0};
}

} // namespace

Centres centres_of(const std::vector<Lump>& lumps, const Water& water) {
    Centres c;
    glm::dvec2 mass{}, volume{};
    for (const Lump& l : lumps) {
        c.mass += l.mass;
        c.volume += l.volume;
        mass += l.mass.si * l.at;
        volume += l.volume.si * l.at;
    }
    const double rho = water.density.si, lift = rho * c.volume.si, left = c.mass.si - lift;
    if (c.mass.si > 0.0) c.of_mass = mass / c.mass.si;
    if (c.volume.si > 0.0) c.of_volume = volume / c.volume.si;
    c.neutral = std::abs(left) <= 1e-6 * std::max(c.mass.si, lift);
    c.of_weight = c.neutral ? c.of_mass : (mass - rho * volume) / left;
    return c;
}

Angle hang_angle(const glm::dvec2& eye, const Centres& c) {
    const double sign = c.mass.si > 0.0 && !c.neutral ? 1.0 : 0.0;
    return from_down(sign * (c.of_weight - eye));
}

Angle sink_angle(const glm::dvec2& drag_centre, const Centres& c) {
    return from_down(drag_centre -
                     c.of_weight); // the shank's tailward way points up when head first
}

double roll_offset(const glm::dvec2& eye, const glm::dvec2& through, const glm::dvec2& weight) {
    return glm::dot(weight - eye, towards_point(through - eye));
}

std::string_view name(Ride ride) {
    constexpr std::array<std::string_view, 3> words{"point up", "undecided", "point down"};
    return words[static_cast<std::size_t>(ride)];
}

std::optional<Mass> bead_needed(double others, Length eye, Length bead) {
    if (others < 0.0) return Mass{};
    if (bead >= eye) return std::nullopt; // no lever on that side
    return Mass{others / (eye - bead).si};
}

namespace {

/// The doubt of an offset from the doubt of the masses: each portion moves the centre by its own
/// lever.
double mass_doubt(const FlyBody& body, const Water& water, const glm::dvec2& n,
                  const Centres& centres) {
    const double rho = water.density.si;
    const double left = centres.mass.si - rho * centres.volume.si;
    if (centres.neutral) return 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < body.portions.size(); ++i) {
        const Portion& p = body.portions[i];
        if (!(p.mass.value.si > 0.0)) continue;
        double lever = 0.0; // of its weight, kg m
        for (const Lump& l : body.lumps) {
            if (l.portion != static_cast<int>(i)) continue;
            lever += (l.mass.si - rho * l.volume.si) * glm::dot(l.at - centres.of_weight, n);
        }
        const double moved = lever * relative_spread(p.mass) / left;
        squares += moved * moved;
    }
    return std::sqrt(squares);
}

/// What would bring the offset from a line to -least_offset.
TurnOver turn_over(const FlyBody& body, const Centres& c, const Water& water, const glm::dvec2& n,
                   double delta, Length height, Density ballast) {
    TurnOver up;
    const double rho = water.density.si, left = c.mass.si - rho * c.volume.si;
    const double excess = delta + least_offset.si;
    if (c.neutral || left <= 0.0 || excess <= 0.0) return up;
    // Ballast at the weight's own place along the shank, on the far side: n . (r - eye) there.
    const double at = glm::dot(glm::dvec2{c.of_weight.x, height.si} - body.eye, n);
    const double heavy = 1.0 - rho / ballast.si;
    if (at < -least_offset.si && heavy > 0.0) {
        up.ballast = Mass{left * excess / (-least_offset.si - at) / heavy};
    }
    return up;
}

} // namespace

RideCheck ride(const FlyBody& body, const glm::dvec2& trailing, const Water& water,
               Length ballast_height, Density ballast) {
    RideCheck out;
    const Centres c = centres_of(body.lumps, water);
    const double left = c.mass.si - water.density.si * c.volume.si;
    out.weight = {left * free_fall};
    const glm::dvec2 shank = body.eye + glm::dvec2{1.0, 0.0};
    const double parallel = roll_offset(body.eye, shank, c.of_weight);
    const double through = roll_offset(body.eye, trailing, c.of_weight);
    const glm::dvec2 n = towards_point(trailing - body.eye);
    const double delta = 0.5 * (parallel + through), apart = 0.5 * std::abs(parallel - through);
    const double masses =
        std::max(mass_doubt(body, water, n, c), mass_doubt(body, water, {0.0, -1.0}, c));
    const double doubt = std::sqrt(height_doubt * height_doubt + apart * apart + masses * masses);
    out.along_shank = {parallel};
    out.through_drag = {through};
    out.delta = {delta};
    out.doubt = {doubt};
    const double clear = std::max(least_offset.si, doubt);
    if (!c.neutral && left > 0.0 && std::abs(delta) > clear) {
        out.verdict = delta < 0.0 ? Ride::point_up : Ride::point_down;
    }
    if (out.verdict == Ride::point_up) return out;
    out.up = turn_over(body, c, water, n, delta, ballast_height, ballast);
    // The heaviest lump moved away from the point by what its share of the weight asks for.
    const auto heaviest =
        std::max_element(body.lumps.begin(), body.lumps.end(),
                         [](const Lump& a, const Lump& b) { return a.mass.si < b.mass.si; });
    if (heaviest != body.lumps.end() && left > 0.0 && delta + least_offset.si > 0.0) {
        const double share = (heaviest->mass.si - water.density.si * heaviest->volume.si) / left;
        const bool is_bead =
            body.portions[static_cast<std::size_t>(heaviest->portion)].material != none;
        if (is_bead && share > 0.05) out.up.bead_out = Length{(delta + least_offset.si) / share};
    }
    return out;
}

} // namespace wrapwright
