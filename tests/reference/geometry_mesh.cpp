// Frames and swept meshes against closed forms and independent computations.

#include "core/geometry/detail.h"
#include "core/geometry/frame.h"
#include "core/geometry/primitives.h"
#include "core/geometry/sweep.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <glm/vec3.hpp>
#include <numbers>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

constexpr double pi = std::numbers::pi;

struct HelixPoint {
    glm::dvec3 place, tangent, normal; // Frenet's
};

HelixPoint helix(double radius, double pitch, double turns) {
    const double c = pitch / (2.0 * pi);
    const double a = 2.0 * pi * turns;
    const double w = std::hypot(radius, c);
    return {{radius * std::cos(a), radius * std::sin(a), c * a},
            {-radius * std::sin(a) / w, radius * std::cos(a) / w, c / w},
            {-std::cos(a), -std::sin(a), 0.0}};
}

std::vector<PathPoint> helix_path(double radius, double pitch, int turns, int steps, double wire) {
    std::vector<PathPoint> path;
    for (int i = 0; i <= turns * steps; ++i) {
        path.push_back({glm::vec3(helix(radius, pitch, static_cast<double>(i) / steps).place),
                        static_cast<float>(wire)});
    }
    return path;
}

// Angle by which the frame is turned against Frenet's after one turn.
double frame_angle(double radius, double pitch, int steps) {
    HelixPoint here = helix(radius, pitch, 0.0);
    glm::dvec3 normal = here.normal;
    for (int i = 1; i <= steps; ++i) {
        const HelixPoint next = helix(radius, pitch, static_cast<double>(i) / steps);
        normal = next_normal(glm::normalize(next.place - here.place), here.tangent, next.tangent,
                             normal);
        here = next;
    }
    return std::atan2(glm::dot(normal, glm::cross(here.tangent, here.normal)),
                      glm::dot(normal, here.normal));
}

} // namespace

TEST_CASE("frames turn along a helix by its torsion and no more, to the fourth order") {
    // Source     the integral of torsion over one turn, -2 pi c / sqrt(a^2 + c^2) = -1.45899959 rad
    //            for a 1, p 1.5, equal to an RK45 solution of the frame's equation (scipy); errors
    //            by an independent script 2.47e-6, 1.54e-7, 9.6e-9, 6.0e-10
    // Tolerance  last digit given
    const double c = 1.5 / (2.0 * pi);
    const double exact = -2.0 * pi * c / std::hypot(1.0, c);
    CHECK(within(exact, -1.45899959, 5e-9));
    struct Case {
        int steps;
        double error, last_digit;
    };
    double before = 0.0;
    for (const Case& k : {Case{16, 2.47e-6, 5e-9}, Case{32, 1.54e-7, 5e-10},
                          Case{64, 9.6e-9, 5e-11}, Case{128, 6.0e-10, 5e-12}}) {
        CAPTURE(k.steps);
        const double error = std::abs(frame_angle(1.0, 1.5, k.steps) - exact);
        CHECK(within(error, k.error, k.last_digit));
        if (before > 0.0) CHECK(within(std::log2(before / error), 4.0, 0.05));
        before = error;
    }
}

TEST_CASE("the sweep of a path carries those frames") {
    // Source     as above. Tangents halfway between chords turn by the chords' own torsion, which
    //            is off by a share of D^2 / 24, D the angle of a step
    // Tolerance  (2 pi / 256)^2 / 24 of 1.459 rad, 4e-5, and 256 roundings of a float, 3e-5
    const auto path = helix_path(1.0, 1.5, 1, 256, 0.1);
    const HelixPoint start = helix(1.0, 1.5, 0.0);
    const HelixPoint end = helix(1.0, 1.5, 1.0);
    Mesh mesh;
    append_path(mesh, path, ellipse_section(4), glm::vec3(start.normal));
    const float* n = mesh.vertices[mesh.vertices.size() - 4].normal; // vertex 0 of the last ring
    const glm::dvec3 normal(n[0], n[1], n[2]);
    const double angle = std::atan2(glm::dot(normal, glm::cross(end.tangent, end.normal)),
                                    glm::dot(normal, end.normal));
    CHECK(within(angle, -1.45899959, 1e-4));
}

TEST_CASE("a swept coil has the volume that its sides and steps leave of it") {
    // Source     independent computation (numpy, exact tangents): volume of the mesh over Pappus'
    //            for a coil of radius .7, pitch .503, wire .5, 5 turns
    // Tolerance  0.1/steps^2: our tangents come from the points, so the end rings tilt by half a
    // step
    struct Case {
        int sides, steps;
        double share;
    };
    const double volume = pi * 0.25 * 0.25 * 5.0 * std::hypot(2.0 * pi * 0.7, 0.503);
    const double c = 0.503 / (2.0 * pi);
    const double turning = 2.0 * pi * 0.7 / std::hypot(0.7, c);
    for (const Case& k :
         {Case{8, 16, 0.877616}, Case{8, 32, 0.894613}, Case{12, 32, 0.948882},
          Case{16, 48, 0.971750}, Case{24, 64, 0.987049}, Case{48, 128, 0.996751}}) {
        CAPTURE(k.sides);
        CAPTURE(k.steps);
        const auto path = helix_path(0.7, 0.503, 5, k.steps, 0.25);
        Mesh mesh;
        append_path(mesh, path, ellipse_section(k.sides));
        const MeshCheck check = check_mesh(mesh);
        CHECK(check.closed);
        CAPTURE(check.volume_mm3 / volume);
        CHECK(check.euler == 2);
        const double tolerance = 0.1 / (k.steps * k.steps) + 2e-5;
        CHECK(within(check.volume_mm3 / volume, k.share, tolerance));
        // Against    the prediction sinc(2 pi / n) sinc(D)
        CHECK(within(check.volume_mm3 / volume,
                     section_share(k.sides) * path_share(radians(turning / k.steps)), tolerance));
    }
    // Source     as above, (16, 48) with a section of equal area: .997183
    Mesh mesh;
    append_path(mesh, helix_path(0.7, 0.503, 5, 48, 0.25), with_true_area(ellipse_section(16)));
    CHECK(within(check_mesh(mesh).volume_mm3 / volume, 0.997183, 1e-4));
}

TEST_CASE("a ring of 24 steps and 12 sides keeps 0.94405867 of its volume") {
    // Source     sinc(2 pi / 12) sinc(2 pi / 24) = an independent mesh to 8 digits
    // Tolerance  coordinates of 24 bits
    Mesh mesh;
    append_torus(mesh, 2.0F, 0.5F, 12, 24);
    const MeshCheck check = check_mesh(mesh);
    CHECK(check.closed);
    CHECK(check.euler == 0);
    CHECK(within(check.volume_mm3 / (2.0 * pi * pi * 2.0 * 0.25), 0.94405867, 1e-6));
}

TEST_CASE("sections have as many sides as a chord error asks") {
    // Source     independent computation: ceil(pi / acos(1 - e/r))
    CHECK(sides_for(millimetres(0.25), millimetres(0.01)) == 12);
    CHECK(sides_for(millimetres(0.25), millimetres(0.002)) == 25);
    CHECK(sides_for(millimetres(0.05), millimetres(0.005)) == 7);
    CHECK(sides_for(millimetres(1.5), millimetres(0.005)) == 39);
}
