// The jaws that hold the base being dressed, small enough to leave the fly in sight.

#include "core/geometry/fly/sketch.h"
#include "core/geometry/fly/turned.h"

#include <array>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

/// A section of a jaw: how far along its axis, its half height, and its two depths across.
struct JawSection {
    float along, half, inner, outer;
};

/// One jaw as a body of flat faces between chamfered sections.
void add_jaw(Mesh& mesh, const glm::vec3& tip, const glm::vec3& axis, const glm::vec3& side,
             const glm::vec3& depth, const std::array<JawSection, 5>& sections) {
    constexpr int corners = 6;
    const auto corner = [&](const JawSection& s, int k) {
        const float chamfer = 0.45F * s.half;
        const std::array<glm::vec2, corners> shape{{{-s.half, s.inner},
                                                    {s.half, s.inner},
                                                    {s.half, s.outer - chamfer},
                                                    {s.half - chamfer, s.outer},
                                                    {-s.half + chamfer, s.outer},
                                                    {-s.half, s.outer - chamfer}}};
        const glm::vec2 c = shape[static_cast<std::size_t>(k)];
        return tip + axis * s.along + side * c.x + depth * c.y;
    };
    const bool flipped = glm::dot(glm::cross(side, depth), axis) < 0.0F;
    const auto face = [&](std::array<glm::vec3, 4> p) {
        if (flipped) std::swap(p[1], p[3]);
        const glm::vec3 n = glm::normalize(glm::cross(p[2] - p[0], p[3] - p[1]));
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        for (const glm::vec3& v : p) mesh.vertices.push_back({{v.x, v.y, v.z}, {n.x, n.y, n.z}});
        for (const std::uint32_t k : {0U, 1U, 2U, 0U, 2U, 3U}) mesh.indices.push_back(first + k);
    };
    for (std::size_t i = 0; i + 1 < sections.size(); ++i) {
        for (int k = 0; k < corners; ++k) {
            const int next = (k + 1) % corners;
            face({corner(sections[i], k), corner(sections[i], next), corner(sections[i + 1], next),
                  corner(sections[i + 1], k)});
        }
    }
    const JawSection& a = sections.front();
    const JawSection& b = sections.back();
    face({corner(a, 3), corner(a, 2), corner(a, 1), corner(a, 0)});
    face({corner(a, 5), corner(a, 4), corner(a, 3), corner(a, 0)});
    face({corner(b, 0), corner(b, 1), corner(b, 2), corner(b, 3)});
    face({corner(b, 0), corner(b, 3), corner(b, 4), corner(b, 5)});
}

} // namespace

void draw_vise(Sketch& sketch, int index) {
    const BasePlace& base = sketch.base(index);
    const Hook& hook = base.run->hook;
    const Stations& at = base.run->line.stations();
    const float gape = mm(hook.gape.value);
    const float wire = mm(hook.wire.value);
    // A little below the rearmost place of the bend, and out from the bend's centre.
    const Length hold = at.bend_bottom + 0.36 * hook.gape.value;
    const WireFrame f = base.frame(std::min(hold, 0.5 * (at.bend_bottom + at.tip)));
    const glm::vec3 axis = glm::normalize(glm::vec3{0.80F, -0.60F, 0.0F});
    const glm::vec3 side{-axis.y, axis.x, 0.0F};
    const glm::vec3 tip = f.origin - axis * (0.13F * gape + wire);

    const int jaws = sketch.open(Look::steel, linear_colour(0x9498A0), none, none);
    const float unit = 0.75F * std::max(gape, 2.6F);
    for (const float way : {-1.0F, 1.0F}) {
        const glm::vec3 depth{0.0F, 0.0F, way};
        const float in = 0.42F * wire;
        const std::array<JawSection, 5> sections{
            {{0.0F, 0.10F * unit, in, in + 0.07F * unit},
             {0.10F * unit, 0.15F * unit, in, in + 0.12F * unit},
             {0.85F * unit, 0.30F * unit, in, in + 0.30F * unit},
             {1.75F * unit, 0.42F * unit, in, in + 0.40F * unit},
             {2.20F * unit, 0.42F * unit, in, in + 0.40F * unit}}};
        add_jaw(sketch.mesh(jaws), tip, axis, side, depth, sections);
    }
    // The collet that the jaws come out of, and its stem, which leaves the picture.
    const int collet = sketch.open(Look::steel, linear_colour(0x3A3D42), none, none);
    const Axis turned{tip, axis, side, glm::cross(axis, side)};
    const std::array<Corner, 10> outline{{{1.95F * unit, 0.0F, true},
                                          {1.95F * unit, 0.58F * unit, true},
                                          {2.05F * unit, 0.66F * unit, true},
                                          {2.45F * unit, 0.66F * unit, true},
                                          {2.52F * unit, 0.60F * unit, true},
                                          {2.60F * unit, 0.66F * unit, true},
                                          {3.60F * unit, 0.72F * unit, true},
                                          {3.68F * unit, 0.50F * unit, true},
                                          {16.0F * unit, 0.50F * unit, true},
                                          {16.0F * unit, 0.0F, true}}};
    add_turned(sketch.mesh(collet), turned, outline, sketch.sides(0.7F * unit, 24));
}

} // namespace wrapwright
