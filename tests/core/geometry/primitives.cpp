#include "core/geometry/primitives.h"
#include "tests/support/close.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <glm/ext/matrix_transform.hpp>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

constexpr double pi = std::numbers::pi;

// Whether all normals are unit vectors that point to the side that their triangles face.
bool normals_face_out(const Mesh& mesh) {
    for (std::size_t t = 0; t < mesh.indices.size(); t += 3) {
        std::array<glm::vec3, 3> p{};
        for (std::size_t i = 0; i < 3; ++i) {
            const float* x = mesh.vertices[mesh.indices[t + i]].position;
            p[i] = {x[0], x[1], x[2]};
        }
        const glm::vec3 face = glm::cross(p[1] - p[0], p[2] - p[0]);
        for (std::size_t i = 0; i < 3; ++i) {
            const float* n = mesh.vertices[mesh.indices[t + i]].normal;
            const glm::vec3 normal(n[0], n[1], n[2]);
            if (!within(glm::length(normal), 1.0, 1e-5)) return false;
            if (glm::dot(face, normal) <= 0.0F) return false;
        }
    }
    return true;
}

} // namespace

TEST_CASE("every primitive is a closed solid that faces outwards") {
    Mesh sphere, cylinder, cone, torus, slab;
    append_sphere(sphere, 1.4F, 48);
    append_cone(cylinder, 3.0F, 0.5F, 0.5F, 48);
    append_cone(cone, 3.0F, 0.9F, 0.0F, 48);
    append_torus(torus, 1.0F, 0.2F, 24, 48);
    append_slab(slab, {1.0F, 2.0F, 3.0F});
    struct Case {
        const Mesh& mesh;
        int euler;
        double volume; // of the smooth solid; by Euclid, Archimedes and Pappus
    };
    for (const Case& c :
         {Case{sphere, 2, 4.0 / 3.0 * pi * 1.4 * 1.4 * 1.4}, Case{cylinder, 2, pi * 0.25 * 3.0},
          Case{cone, 2, pi * 0.81}, Case{torus, 0, 2.0 * pi * pi * 0.04}, Case{slab, 2, 6.0}}) {
        const MeshCheck check = check_mesh(c.mesh);
        CAPTURE(c.volume);
        CHECK(check.closed);
        CHECK(check.euler == c.euler);
        CHECK(normals_face_out(c.mesh));
        // Tolerance  sin(x)/x of 48 sides and 24: 0.3 % and 1.1 %, all to the low side
        CHECK(check.volume_mm3 <= c.volume * (1.0 + 1e-6));
        CHECK(within_share(check.volume_mm3, c.volume, 0.02));
    }
}

TEST_CASE("a sphere of n sides has exactly the volume of its cones") {
    // Derivation  a band between two parallels is a frustum of an n-gon pyramid: its volume is
    //             h/3 (A0 + sqrt(A0 A1) + A1) with A = n/2 r^2 sin(2 pi / n)
    constexpr int sides = 20;
    double volume = 0.0;
    for (int i = 0; i < sides / 2; ++i) {
        const double a = pi * i / (sides / 2);
        const double b = pi * (i + 1) / (sides / 2);
        const double h = std::cos(a) - std::cos(b);
        const double s = sides / 2.0 * std::sin(2.0 * pi / sides);
        volume +=
            h / 3.0 * s *
            (std::sin(a) * std::sin(a) + std::sin(a) * std::sin(b) + std::sin(b) * std::sin(b));
    }
    Mesh mesh;
    append_sphere(mesh, 1.0F, sides);
    CHECK(within_share(check_mesh(mesh).volume_mm3, volume, 1e-6));
}

TEST_CASE("a bead with a bore is a ring, and its bore takes away its own volume") {
    // A square-sectioned bead: outside from x 0 to 2 at radius 1.5, bore of 0.5 back.
    const std::array<MeridianPoint, 5> line{
        {{0.0F, 1.5F}, {2.0F, 1.5F}, {2.0F, 0.5F}, {0.0F, 0.5F}, {0.0F, 1.5F}}};
    Mesh mesh;
    append_lathe(mesh, line, 64);
    const MeshCheck check = check_mesh(mesh);
    CHECK(check.closed);
    CHECK(check.euler == 0);
    CHECK(normals_face_out(mesh));
    const double share = std::sin(2.0 * pi / 64) / (2.0 * pi / 64);
    CHECK(within_share(check.volume_mm3, share * pi * 2.0 * (2.25 - 0.25), 1e-6));
}

TEST_CASE("a lathe keeps sharp edges sharp and shades a pole smoothly") {
    Mesh cylinder;
    append_cone(cylinder, 1.0F, 1.0F, 1.0F, 12);
    for (const Vertex& v : cylinder.vertices) { // each normal along the axis or square to it
        CHECK((std::abs(v.normal[0]) < 1e-6F || std::abs(v.normal[0]) > 1.0F - 1e-6F));
    }
    Mesh sphere;
    append_sphere(sphere, 2.0F, 32);
    for (const Vertex& v : sphere.vertices) { // each normal from the middle
        for (int i = 0; i < 3; ++i) CHECK(within(v.normal[i], v.position[i] / 2.0F, 1e-5));
    }
}

TEST_CASE(
    "turning and scaling keep a solid closed, its normals unit and its volume in proportion") {
    Mesh mesh;
    append_cone(mesh, 2.0F, 0.7F, 0.3F, 16);
    const double before = check_mesh(mesh).volume_mm3;
    const std::size_t first = mesh.vertices.size();
    append_cone(mesh, 2.0F, 0.7F, 0.3F, 16);
    glm::mat4 placing = glm::translate(glm::mat4(1.0F), {10.0F, 0.0F, 0.0F});
    placing = glm::rotate(placing, 0.7F, {0.3F, 1.0F, -0.4F});
    placing = glm::scale(placing, glm::vec3(2.0F));
    transform(mesh, first, placing);
    const MeshCheck check = check_mesh(mesh);
    CHECK(check.closed);
    CHECK(check.euler == 4); // two solids
    CHECK(within_share(check.volume_mm3, before * (1.0 + 8.0), 1e-5));
    CHECK(normals_face_out(mesh));
}

TEST_CASE("appending a mesh adds its solid") {
    Mesh a, b;
    append_sphere(a, 1.0F, 12);
    append_slab(b, {1.0F, 1.0F, 1.0F});
    transform(b, 0, glm::translate(glm::mat4(1.0F), {5.0F, 0.0F, 0.0F}));
    const double sum = check_mesh(a).volume_mm3 + check_mesh(b).volume_mm3;
    append(a, b);
    CHECK(check_mesh(a).closed);
    CHECK(within_share(check_mesh(a).volume_mm3, sum, 1e-6));
}

TEST_CASE("a mesh with a hole, a flipped triangle or nothing is not closed") {
    Mesh mesh;
    append_slab(mesh, {1.0F, 1.0F, 1.0F});
    Mesh holed = mesh;
    holed.indices.resize(holed.indices.size() - 3);
    CHECK_FALSE(check_mesh(holed).closed);
    Mesh flipped = mesh;
    std::swap(flipped.indices[0], flipped.indices[1]);
    CHECK_FALSE(check_mesh(flipped).closed);
    CHECK_FALSE(check_mesh(Mesh{}).closed);
}
