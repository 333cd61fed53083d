#include "platform/gl/grain.h"

#include "core/geometry/frame.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

// What the edges at one corner say together, in the plane across its normal: s is the step to the
// neighbour, t how much the normal turns on it.
struct Sum {
    float ss_xx = 0.0F, ss_xy = 0.0F, ss_yy = 0.0F;
    float ts_xx = 0.0F, ts_xy = 0.0F, ts_yx = 0.0F, ts_yy = 0.0F;
    float up_x = 0.0F, up_y = 0.0F; // steps towards neighbours with a higher number
};

glm::vec3 vec(const float (&v)[3]) { return {v[0], v[1], v[2]}; }

void add_edge(Sum& sum, const Vertex& from, const Vertex& to, float sign) {
    const glm::vec3 n = vec(from.normal);
    const glm::vec3 e1 = any_normal(n);
    const glm::vec3 e2 = glm::cross(n, e1);
    const glm::vec3 step = vec(to.position) - vec(from.position);
    const glm::vec3 turn = vec(to.normal) - n;
    const float sx = glm::dot(step, e1);
    const float sy = glm::dot(step, e2);
    const float tx = glm::dot(turn, e1);
    const float ty = glm::dot(turn, e2);
    sum.ss_xx += sx * sx;
    sum.ss_xy += sx * sy;
    sum.ss_yy += sy * sy;
    sum.ts_xx += tx * sx;
    sum.ts_xy += tx * sy;
    sum.ts_yx += ty * sx;
    sum.ts_yy += ty * sy;
    sum.up_x += sign * sx;
    sum.up_y += sign * sy;
}

Grain grain_from(const Sum& sum, const Vertex& corner) {
    const float determinant = sum.ss_xx * sum.ss_yy - sum.ss_xy * sum.ss_xy;
    const float size = sum.ss_xx + sum.ss_yy;
    if (determinant <= 1e-6F * size * size) return {}; // all its edges lie in one line
    // Shape operator k = ts ss^-1, made symmetric.
    const float xx = (sum.ts_xx * sum.ss_yy - sum.ts_xy * sum.ss_xy) / determinant;
    const float yy = (sum.ts_yy * sum.ss_xx - sum.ts_yx * sum.ss_xy) / determinant;
    const float xy = 0.5F *
                     (sum.ts_xy * sum.ss_xx - sum.ts_xx * sum.ss_xy + sum.ts_yx * sum.ss_yy -
                      sum.ts_yy * sum.ss_xy) /
                     determinant;
    // Its principal curvatures are middle +- apart; the greater in size lies across.
    const float middle = 0.5F * (xx + yy);
    const float apart = std::hypot(0.5F * (xx - yy), xy);
    const float most = std::abs(middle) + apart;
    if (most < 1e-6F) return {};
    const float least = std::abs(std::abs(middle) - apart);
    const float sure = std::clamp(1.25F * (1.0F - least / most) - 0.25F, 0.0F, 1.0F);
    const float first = 0.5F * std::atan2(2.0F * xy, xx - yy); // of middle + apart
    const float angle = middle >= 0.0F ? first + 1.57079633F : first;
    float x = std::cos(angle);
    float y = std::sin(angle);
    if (x * sum.up_x + y * sum.up_y < 0.0F) {
        x = -x;
        y = -y;
    }
    const glm::vec3 n = vec(corner.normal);
    const glm::vec3 e1 = any_normal(n);
    const glm::vec3 along = sure * (x * e1 + y * glm::cross(n, e1));
    const auto packed = [](float v) {
        return static_cast<std::int16_t>(std::lround(32767.0F * v));
    };
    return {packed(along.x), packed(along.y), packed(along.z), 0};
}

} // namespace

void find_grain(const Mesh& mesh, std::vector<Grain>& out) {
    std::vector<Sum> sums(mesh.vertices.size());
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3) {
        for (std::size_t k = 0; k < 3; ++k) {
            const std::uint32_t i = mesh.indices[t + k];
            const std::uint32_t j = mesh.indices[t + (k + 1) % 3];
            // A closed mesh has each edge twice, once each way, so one end a time is enough.
            add_edge(sums[i], mesh.vertices[i], mesh.vertices[j], j > i ? 1.0F : -1.0F);
        }
    }
    out.resize(mesh.vertices.size());
    for (std::size_t v = 0; v < sums.size(); ++v) out[v] = grain_from(sums[v], mesh.vertices[v]);
}

} // namespace wrapwright
