#include "core/geometry/sweep.h"
#include "tests/support/close.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>
#include <glm/vec3.hpp>
#include <numbers>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

constexpr double pi = std::numbers::pi;

// A straight core along x whose radius runs evenly from r0 to r1.
std::vector<CoreKnot> straight_knots(double r0, double r1, double length, int count, double half) {
    std::vector<CoreKnot> knots(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double share = i / (count - 1.0);
        CoreKnot& k = knots[static_cast<std::size_t>(i)];
        k.axis.x = static_cast<float>(share * length);
        k.radius = static_cast<float>(r0 + share * (r1 - r0));
        k.section = static_cast<float>(half);
    }
    return knots;
}

WindingPath winding_on(const std::vector<CoreKnot>& knots, double spacing, double from, double to,
                       double turns) {
    WindingPath w;
    w.knots = knots;
    w.spacing = spacing;
    w.from = from;
    w.to = to;
    w.turns = turns;
    return w;
}

glm::dvec3 position(const Vertex& v) { return {v.position[0], v.position[1], v.position[2]}; }
glm::dvec3 normal(const Vertex& v) { return {v.normal[0], v.normal[1], v.normal[2]}; }

// The middle of a ring: the mean of its vertices, for a section that is its own mirror image.
glm::dvec3 centre(const Mesh& mesh, int ring, int sides) {
    glm::dvec3 sum(0.0);
    for (int k = 0; k < sides; ++k) {
        sum += position(mesh.vertices[static_cast<std::size_t>(ring * sides + k)]);
    }
    return sum / static_cast<double>(sides);
}

bool all_finite(const Mesh& mesh) {
    for (const Vertex& v : mesh.vertices) {
        for (int i = 0; i < 3; ++i) {
            if (!std::isfinite(v.position[i]) || !std::isfinite(v.normal[i])) return false;
        }
    }
    return true;
}

std::vector<PathPoint> wavy_path(int points) {
    std::vector<PathPoint> path;
    for (int i = 0; i < points; ++i) {
        const double t = 6.0 * i / (points - 1.0);
        path.push_back({{static_cast<float>(t), static_cast<float>(0.8 * std::sin(t)),
                         static_cast<float>(0.5 * std::cos(1.3 * t))},
                        0.1F});
    }
    return path;
}

} // namespace

TEST_CASE("a winding is a closed solid that faces outwards and has the volume of its wire") {
    const auto knots = straight_knots(0.7, 0.7, 6.0, 7, 0.25);
    WindingPath w = winding_on(knots, 1.0, 1.0, 1.0 + 5 * 0.503, 5.0);
    w.steps_per_turn = 128;
    for (const bool away : {true, false}) {
        w.away = away;
        Mesh mesh;
        append_winding(mesh, w, with_true_area(ellipse_section(24)));
        const MeshCheck check = check_mesh(mesh);
        CAPTURE(away);
        CHECK(check.closed);
        CHECK(check.euler == 2);
        // Source     Pappus: section times length of the centre
        // Tolerance  sin(D)/D of the steps, D = 2 pi / 128: 4e-4
        const double volume = pi * 0.25 * 0.25 * 5 * std::hypot(2 * pi * 0.7, 0.503);
        CHECK(within_share(check.volume_mm3, volume, 5e-4));
    }
}

TEST_CASE("a winding's centres lie where the formula puts them, its frames square to it") {
    // Against    z(u) by the geometric sum, radius linear, angle even: worked out here in double.
    //            Twenty knots and 300 rings, so that batches end anywhere on a stretch
    // Tolerance  24 bits of 12 mm: 1e-6; frames by central differences over 2e-4 of a turn: 1e-5
    const auto knots = straight_knots(0.4, 1.2, 10.0, 20, 0.1);
    const double spacing = 10.0 / 19;
    for (const bool away : {true, false}) {
        for (const double growth : {1.0, 1.08}) {
            for (const bool tailward : {true, false}) {
                WindingPath w =
                    winding_on(knots, spacing, tailward ? 0.5 : 9.5, tailward ? 9.5 : 0.5, 12.5);
                w.growth = growth;
                w.away = away;
                w.start_turn = 0.3;
                w.steps_per_turn = 24;
                CAPTURE(away);
                CAPTURE(growth);
                CAPTURE(tailward);
                const auto at = [&](double turn) {
                    const double q = growth;
                    const double share =
                        q == 1.0 ? turn / w.turns
                                 : (std::pow(q, turn) - 1.0) / (std::pow(q, w.turns) - 1.0);
                    const double z = w.from + (w.to - w.from) * share;
                    const double r = 0.4 + 0.08 * z;
                    const double a = (away ? 1.0 : -1.0) * 2.0 * pi * (w.start_turn + turn);
                    return glm::dvec3(z, r * std::cos(a), r * std::sin(a));
                };
                constexpr int sides = 8;
                Mesh mesh;
                append_winding(mesh, w, ellipse_section(sides));
                const int points = winding_points(w);
                REQUIRE(points == 301);
                double worst_place = 0.0;
                double worst_frame = 0.0;
                for (int i = 0; i < points; ++i) {
                    const double turn = w.turns * i / (points - 1);
                    const glm::dvec3 c = at(turn);
                    worst_place = std::max(worst_place, glm::distance(centre(mesh, i, sides), c));
                    const glm::dvec3 tangent = glm::normalize(at(turn + 1e-4) - at(turn - 1e-4));
                    // Vertex 0 stands on the surface, vertex sides/4 lies in it along the axis.
                    const auto first = static_cast<std::size_t>(i * sides);
                    const glm::dvec3 up = normal(mesh.vertices[first]);
                    const glm::dvec3 across = normal(mesh.vertices[first + sides / 4]);
                    const glm::dvec3 outward = glm::normalize(glm::dvec3(0.0, c.y, c.z));
                    const glm::dvec3 surface = glm::normalize(outward - glm::dvec3(0.08, 0.0, 0.0));
                    worst_frame =
                        std::max({worst_frame, std::abs(glm::dot(up, tangent)),
                                  std::abs(glm::dot(across, tangent)), glm::distance(up, surface),
                                  glm::distance(across, glm::cross(tangent, surface))});
                }
                CHECK(worst_place < 2e-6);
                CHECK(worst_frame < 1e-5);
            }
        }
    }
}

TEST_CASE("a winding follows a bent core, its frames square to its own path") {
    // A core that bends round z with radius 5; against differences of the centres themselves.
    // Tolerance  the axis goes straight from knot to knot while `along` turns, so they differ by up
    //            to half of the 0.05 rad between knots, of which the pitch's share 0.2 counts
    std::vector<CoreKnot> knots(32);
    const double spacing = 0.25;
    for (std::size_t i = 0; i < knots.size(); ++i) {
        const double a = static_cast<double>(i) * spacing / 5.0;
        const auto c = static_cast<float>(std::cos(a));
        const auto s = static_cast<float>(std::sin(a));
        knots[i].axis = {5.0F * s, 5.0F * c, 0.0F};
        knots[i].along = {c, -s, 0.0F};
        knots[i].up = {s, c, 0.0F};
        knots[i].radius = 0.8F;
        knots[i].section = 0.1F;
    }
    WindingPath w = winding_on(knots, spacing, 0.5, 7.0, 6.0);
    w.steps_per_turn = 120;
    constexpr int sides = 8;
    Mesh mesh;
    append_winding(mesh, w, ellipse_section(sides));
    CHECK(check_mesh(mesh).closed);
    double worst = 0.0;
    for (int i = 1; i + 1 < winding_points(w); ++i) {
        const glm::dvec3 tangent =
            glm::normalize(centre(mesh, i + 1, sides) - centre(mesh, i - 1, sides));
        for (int k = 0; k < sides; ++k) {
            const Vertex& v = mesh.vertices[static_cast<std::size_t>(i * sides + k)];
            worst = std::max(worst, std::abs(glm::dot(normal(v), tangent)));
        }
    }
    CHECK(worst < 6e-3);
}

TEST_CASE("a swept path is a closed solid for any number of sides") {
    const auto path = wavy_path(90);
    double length = 0.0;
    for (std::size_t i = 1; i < path.size(); ++i) {
        length += glm::distance(path[i].position, path[i - 1].position);
    }
    for (int sides = 3; sides <= max_sides; ++sides) {
        CAPTURE(sides);
        const Section section = ellipse_section(sides);
        Mesh mesh;
        append_path(mesh, path, section);
        const MeshCheck check = check_mesh(mesh);
        CHECK(check.closed);
        CHECK(check.euler == 2);
        // Source     Pappus; tolerance: the turning of a step, at most 0.12 rad: D^2/6
        CHECK(within_share(check.volume_mm3, section.area_share * pi * 0.01 * length, 3e-3));
    }
}

TEST_CASE("sweeping the other way round keeps the volume, scaling takes it with the cube") {
    auto path = wavy_path(60);
    Mesh forwards, backwards, scaled;
    const Section section = ellipse_section(12);
    append_path(forwards, path, section);
    std::reverse(path.begin(), path.end());
    append_path(backwards, path, section);
    for (PathPoint& p : path) p = {2.5F * p.position, 2.5F * p.radius};
    append_path(scaled, path, section);
    const double volume = check_mesh(forwards).volume_mm3;
    // Tolerance  the diagonals of the quads lie the other way
    CHECK(within_share(check_mesh(backwards).volume_mm3, volume, 1e-3));
    CHECK(within_share(check_mesh(scaled).volume_mm3,
                       2.5 * 2.5 * 2.5 * check_mesh(backwards).volume_mm3, 1e-4));
}

TEST_CASE("a flat strand lies with its width in the surface") {
    const auto knots = straight_knots(0.5, 0.5, 4.0, 5, 1.0);
    WindingPath w = winding_on(knots, 1.0, 0.5, 3.5, 3.0);
    const Section tinsel = stadium_section(12, 0.02, 0.25);
    Mesh mesh;
    append_winding(mesh, w, tinsel);
    CHECK(check_mesh(mesh).closed);
    for (const Vertex& v : mesh.vertices) { // nothing higher or lower than half the thickness
        const double r = std::hypot(v.position[1], v.position[2]);
        // The width is straight, so its edges stand off the round core: sqrt(R^2 + (w sin)^2).
        CHECK(r > 0.48 - 1e-6);
        CHECK(r < 0.56);
    }
    const double length = 3.0 * std::hypot(2 * pi * 0.5, 1.0);
    // Tolerance  sin(D)/D of 32 steps 0.6 %, corners of 12 sides 0.6 %
    const double area = pi * 0.02 * 0.02 + 4.0 * 0.02 * (0.25 - 0.02);
    CHECK(within_share(check_mesh(mesh).volume_mm3, area * length, 0.02));
}

TEST_CASE("sections know their share of the outline and can be made to fill it") {
    // Source     n-gon in a circle: sin(2 pi / n) / (2 pi / n)
    for (const int n : {3, 5, 8, 12, 64}) {
        const double share = std::sin(2 * pi / n) / (2 * pi / n);
        CHECK(within(ellipse_section(n).area_share, share, 1e-12));
        CHECK(within(ellipse_section(n, 0.3, 1.7).area_share, share, 1e-12)); // affine
    }
    CHECK(with_true_area(ellipse_section(6)).area_share == 1.0);
    // A stadium of 4 corners is its inner rectangle: h (w - h) of h (w - h) + pi h^2 / 4.
    CHECK(within(stadium_section(4, 0.1, 0.5).area_share, 0.2 * 0.8 / (0.2 * 0.8 + pi * 0.01),
                 1e-12));
}

TEST_CASE("normals lean where a strand grows thicker, and not where it does not") {
    std::vector<PathPoint> path;
    for (int i = 0; i <= 20; ++i) {
        path.push_back({{0.1F * static_cast<float>(i), 0.0F, 0.0F},
                        0.1F + 0.05F * static_cast<float>(i)}); // slope 0.5
    }
    Mesh mesh;
    append_path(mesh, path, ellipse_section(8));
    for (const Vertex& v : mesh.vertices) {
        CHECK(within(glm::length(normal(v)), 1.0, 1e-5));
        CHECK(within(v.normal[0], -0.5 / std::sqrt(1.25), 1e-5));
    }
    for (PathPoint& p : path) p.radius = 0.2F;
    Mesh level;
    append_path(level, path, ellipse_section(8));
    for (const Vertex& v : level.vertices) CHECK(within(v.normal[0], 0.0, 1e-7));
}

TEST_CASE("the first normal is where it was asked for") {
    const auto path = wavy_path(10);
    Mesh mesh;
    append_path(mesh, path, ellipse_section(8), {0.0F, 0.0F, 2.0F});
    const glm::dvec3 along = glm::normalize(glm::dvec3(path[1].position - path[0].position));
    glm::dvec3 wanted(0.0, 0.0, 1.0);
    wanted = glm::normalize(wanted - glm::dot(wanted, along) * along);
    CHECK(glm::distance(normal(mesh.vertices[0]), wanted) < 1e-6);
    // One that lies along the path can only be ignored.
    Mesh other;
    append_path(other, path, ellipse_section(8), path[1].position - path[0].position);
    CHECK(all_finite(other));
}

TEST_CASE("points at the same place, straight turns back and hair-thin strands give no NaN") {
    std::vector<PathPoint> path = wavy_path(8);
    path.insert(path.begin() + 3, path[3]);
    path.insert(path.begin(), path[0]);
    path.push_back(path[2]);
    path.push_back(path.back());
    for (PathPoint& p : path) p.radius = 0.0F;
    Mesh mesh;
    append_path(mesh, path, ellipse_section(5));
    CHECK(all_finite(mesh));
    std::vector<PathPoint> nowhere(3);
    append_path(mesh, nowhere, ellipse_section(5));
    const std::vector<PathPoint> back{{{0, 0, 0}, 1.0F}, {{1, 0, 0}, 1.0F}, {{0, 0, 0}, 1.0F}};
    append_path(mesh, back, ellipse_section(5));
    CHECK(all_finite(mesh));
}

TEST_CASE("a sweep writes its own vertices and none behind them") {
    const auto path = wavy_path(67); // batches and a rest
    const auto knots = straight_knots(0.5, 0.6, 4.0, 5, 0.1);
    const WindingPath w = winding_on(knots, 1.0, 0.5, 3.5, 2.1);
    for (int sides = 3; sides <= 20; ++sides) {
        CAPTURE(sides);
        const Section section = ellipse_section(sides);
        const Vertex mark{{7, 7, 7}, {7, 7, 7}};
        Buffer<Vertex> buffer(path.size() * static_cast<std::size_t>(sides) + 8, mark);
        const std::size_t in_path = path.size() * static_cast<std::size_t>(sides);
        sweep_path(path, section, std::span(buffer).first(in_path));
        for (std::size_t i = in_path; i < buffer.size(); ++i) CHECK(buffer[i].position[0] == 7.0F);
        CHECK(buffer[in_path - 1].position[0] != 7.0F);
        const std::size_t in_winding =
            static_cast<std::size_t>(winding_points(w)) * static_cast<std::size_t>(sides);
        buffer.assign(in_winding + 8, mark);
        sweep_winding(w, section, std::span(buffer).first(in_winding));
        for (std::size_t i = in_winding; i < buffer.size(); ++i) {
            CHECK(buffer[i].position[0] == 7.0F);
        }
        CHECK(buffer[in_winding - 1].position[0] != 7.0F);
    }
}

TEST_CASE("a large sweep past the cache is the same to the last bit") {
    // Against    the same tube into a buffer that starts off its line, which is stored plainly
    const auto knots = straight_knots(0.5, 0.9, 200.0, 300, 0.1);
    WindingPath w = winding_on(knots, 200.0 / 299, 0.0, 200.0, 950.0);
    const Section section = ellipse_section(12);
    const auto count = static_cast<std::size_t>(winding_points(w)) * 12;
    REQUIRE(count * sizeof(Vertex) > (std::size_t{8} << 20)); // the sweep's own threshold
    Buffer<Vertex> aligned(count);
    Buffer<Vertex> shifted(count + 1);
    sweep_winding(w, section, aligned);
    sweep_winding(w, section, std::span(shifted).subspan(1));
    CHECK(std::memcmp(aligned.data(), shifted.data() + 1, count * sizeof(Vertex)) == 0);
}

TEST_CASE("a tube's triangles are built once for a shape and kept") {
    SweepIndices indices;
    indices.build(10, 6);
    CHECK(indices.indices.size() == 3 * sweep_triangles(10, 6));
    indices.indices[0] = 12345; // would be put right by a second build
    indices.build(10, 6);
    CHECK(indices.indices[0] == 12345);
    const std::uint32_t* kept = indices.indices.data();
    indices.build(9, 6); // smaller: in the same memory
    CHECK(indices.indices[0] == 0);
    CHECK(indices.indices.data() == kept);
}
