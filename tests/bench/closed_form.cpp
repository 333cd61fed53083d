#include "tests/bench/closed_form.h"

#include "core/tying/profile.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright::bench {

double closed_form(const std::vector<Stretch>& stretches, double cell, double wire,
                   double* diameter) {
    std::fill_n(diameter, profile_cells, wire);
    double mass = 0.0;
    for (const Stretch& s : stretches) {
        const double span = (s.last - s.first + 1) * cell, nu = s.turns / span, pitch = 1.0 / nu;
        const double add = 2.0 * s.height * std::min(1.0, nu * s.width);
        double length = 0.0;
        for (int i = s.first; i <= s.last; ++i) {
            const double round = std::numbers::pi * (diameter[i] + s.height);
            length += std::sqrt(round * round + pitch * pitch);
            diameter[i] += add;
        }
        mass += length * nu * cell * s.linear;
    }
    return mass;
}

} // namespace wrapwright::bench
