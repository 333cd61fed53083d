#include "core/geometry/fly/fibre.h"

#include "core/assert.h"

#include <array>
#include <cmath>
#include <numbers>

namespace wrapwright {

glm::vec3 fibre_point(const Fibre& fibre, float share) {
    const float turn = 2.0F * std::numbers::pi_v<float>;
    const float swing =
        share * (std::sin(turn * fibre.waves * share + fibre.phase) - std::sin(fibre.phase));
    return fibre.root + fibre.length * (share * fibre.direction + share * share * fibre.bend +
                                        swing * fibre.wave);
}

void add_fibre(Mesh& mesh, const Section& section, const Fibre& fibre, int segments, float from,
               float to) {
    constexpr int most = 24;
    WW_ASSERT(segments >= 1 && segments <= most);
    std::array<PathPoint, most + 1> path{};
    for (int i = 0; i <= segments; ++i) {
        const float u = from + (to - from) * static_cast<float>(i) / static_cast<float>(segments);
        const float full = 1.0F - std::pow(u, fibre.fullness);
        path[static_cast<std::size_t>(i)] = {fibre_point(fibre, u),
                                             0.5F * (fibre.tip + (fibre.thick - fibre.tip) * full)};
    }
    append_path(mesh, std::span(path).first(static_cast<std::size_t>(segments) + 1), section,
                fibre.face);
}

} // namespace wrapwright
