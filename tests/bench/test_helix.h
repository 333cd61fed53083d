#pragma once
// The winding that the sweep benches share: wire of 0.25 mm wound touching at radius 0.5 mm, 32
// points a turn, 12 sides.

#include "core/geometry/sweep.h"

#include <cmath>
#include <numbers>
#include <vector>

namespace wrapwright::bench {

inline constexpr double helix_radius = 0.5;
inline constexpr double wire_radius = 0.125;
inline constexpr double helix_pitch = 0.25;
inline constexpr int points_per_turn = 32;
inline constexpr int wire_sides = 12;

/// The helix as points, for whoever knows no helix.
inline std::vector<PathPoint> helix_points(int turns) {
    std::vector<PathPoint> path;
    for (int i = 0; i <= turns * points_per_turn; ++i) {
        const double a = 2.0 * std::numbers::pi * (i % points_per_turn) / points_per_turn;
        path.push_back({{static_cast<float>(helix_pitch * i / points_per_turn),
                         static_cast<float>(helix_radius * std::cos(a)),
                         static_cast<float>(helix_radius * std::sin(a))},
                        static_cast<float>(wire_radius)});
    }
    return path;
}

/// A straight core under that many turns, uneven by a twentieth, with a knot for every two cells of
/// a fly's profile.
inline std::vector<CoreKnot> helix_knots(int turns) {
    constexpr double spacing = 0.16;
    const int count = static_cast<int>(helix_pitch * turns / spacing) + 2;
    std::vector<CoreKnot> knots(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        CoreKnot& k = knots[static_cast<std::size_t>(i)];
        k.axis.x = static_cast<float>(helix_pitch * turns * i / (count - 1));
        k.radius = static_cast<float>(helix_radius * (1.0 + 0.05 * std::sin(0.1 * i)));
        k.section = static_cast<float>(wire_radius);
    }
    return knots;
}

inline WindingPath helix_winding(const std::vector<CoreKnot>& knots, int turns) {
    WindingPath w;
    w.knots = knots;
    w.spacing = helix_pitch * turns / (static_cast<double>(knots.size()) - 1.0);
    w.to = helix_pitch * turns;
    w.turns = turns;
    w.steps_per_turn = points_per_turn;
    return w;
}

/// Volume of the wire by Pappus: its section times the length of its centre.
inline double helix_volume(int turns) {
    return std::numbers::pi * wire_radius * wire_radius * turns *
           std::hypot(2.0 * std::numbers::pi * helix_radius, helix_pitch);
}

} // namespace wrapwright::bench
