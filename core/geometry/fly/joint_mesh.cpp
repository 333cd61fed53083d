// The wire that joins two bases, with its beads.

#include "core/geometry/fly/sketch.h"
#include "core/geometry/fly/turned.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

int index_of_base(const Sketch& sketch, const std::string& id) {
    const auto& bases = sketch.pattern.recipe.bases;
    for (std::size_t i = 0; i < bases.size(); ++i) {
        if (bases[i].id == id) return static_cast<int>(i);
    }
    return none;
}

/// A loop of doubled wire from one place through the eye at another.
void add_loop(Sketch& sketch, Mesh& mesh, const glm::vec3& start, const glm::vec3& eye,
              float wire) {
    const glm::vec3 run = eye - start;
    const glm::vec3 along = glm::normalize(run);
    const glm::vec3 out{0.0F, 0.0F, 1.0F};
    const float apart = 0.75F * wire;
    constexpr std::size_t steps = 10;
    std::array<PathPoint, 3 * steps + 1> path{};
    std::size_t n = 0;
    const auto point = [&](const glm::vec3& p) { path[n++] = {p, 0.5F * wire}; };
    for (std::size_t i = 0; i < steps; ++i) {
        point(start + run * (static_cast<float>(i) / steps) - out * apart);
    }
    for (std::size_t i = 0; i <= steps; ++i) {
        const float a = std::numbers::pi_v<float> * static_cast<float>(i) / steps;
        point(eye + (along * std::sin(a) - out * std::cos(a)) * apart);
    }
    for (std::size_t i = steps; i-- > 0;) {
        point(start + run * (static_cast<float>(i) / steps) + out * apart);
    }
    append_path(mesh, path, ellipse_section(sketch.sides(0.5F * wire, 8)), glm::cross(out, along));
}

} // namespace

void draw_joint(Sketch& sketch, const Placed& placed) {
    const Recipe& recipe = sketch.pattern.recipe;
    for (const Joint& joint : recipe.joints) {
        const int a = index_of_base(sketch, joint.from);
        const int b = index_of_base(sketch, joint.to);
        const bool ours = a == placed.base || b == placed.base;
        if (!ours || a == none || b == none || std::max(a, b) >= sketch.base_count()) continue;
        const BasePlace& front = sketch.base(a);
        const BasePlace& rear = sketch.base(b);
        const WireFrame bend = front.frame(front.run->line.stations().bend);
        const float lift = 0.5F * mm(front.run->hook.wire.value);
        const glm::dvec2 centre = rear.run->line.eye_centre() * 1e3;
        const float eye_half = 0.5F * mm(rear.run->hook.eye_diameter.value);
        const float wire =
            placed.material == none
                ? 0.35F
                : sketch.given_mm(recipe.materials[static_cast<std::size_t>(placed.material)].size,
                                  0.35F);
        const glm::vec3 start = bend.origin + bend.up * lift - bend.along * 1.0F;
        const glm::vec3 eye{static_cast<float>(centre.x) + rear.shift - 0.2F * eye_half,
                            static_cast<float>(centre.y) + 0.0F, 0.0F};
        const int piece =
            sketch.open(Look::metal, sketch.colour(placed.material), placed.part, placed.act);
        add_loop(sketch, sketch.mesh(piece), start, eye, wire);

        for (std::size_t m = 0; m < recipe.materials.size(); ++m) {
            const RecipeMaterial& bead = recipe.materials[m];
            if (joint.beads.empty() || bead.id != joint.beads) continue;
            const float d = sketch.given_mm(bead.size, 3.0F);
            const float bore = std::max(sketch.given_mm(bead.bore, 0.35F * d), 2.6F * wire);
            const bool glass = look_of(bead) == Look::film;
            const int balls = sketch.open(glass ? Look::film : Look::metal, colour_of(bead),
                                          placed.part, placed.act, glass ? 0.8F : 1.0F);
            const int n = std::clamp(static_cast<int>(placed.count), 0, 6);
            const glm::vec3 along = glm::normalize(eye - start);
            const glm::vec3 up = glm::normalize(glm::cross(glm::vec3{0, 0, 1}, along));
            const float last = glm::length(eye - start) - eye_half - 0.5F * d;
            for (int i = 0; i < n; ++i) {
                // They lie against the rear eye, one behind the other.
                const float at = last - 0.93F * d * static_cast<float>(i);
                const Axis axis{start + along * at, along, up, {0, 0, 1}};
                add_round_bead(sketch.mesh(balls), axis, 0.5F * d, std::min(bore, 0.7F * d), {},
                               sketch.sides(0.5F * d, 14));
            }
        }
        return;
    }
}

} // namespace wrapwright
