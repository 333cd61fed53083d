// Turns of the drawing against turns of the record.

#include "tests/core/geometry/fly/hand_made.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using test::HandMade;
using test::within;

namespace {

/// Turns of a drawn strand from y towards z, counted over its vertices in their order.
double turns_of(const Mesh& mesh) {
    double total = 0.0;
    double before = 0.0;
    for (std::size_t i = 0; i < mesh.vertices.size(); ++i) {
        const Vertex& v = mesh.vertices[i];
        const double now =
            std::atan2(static_cast<double>(v.position[2]), static_cast<double>(v.position[1]));
        if (i > 0) total += std::remainder(now - before, 2.0 * std::numbers::pi);
        before = now;
    }
    return total / (2.0 * std::numbers::pi);
}

float first_x(const Mesh& mesh) { return mesh.vertices.front().position[0]; }
float last_x(const Mesh& mesh) { return mesh.vertices.back().position[0]; }

} // namespace

TEST_CASE("a drawn winding has the turns of its record") {
    for (const double turns : {1.0, 2.5, 7.0, 23.25}) {
        CAPTURE(turns);
        HandMade fly;
        const int wire = fly.material(MaterialKind::wire, "copper", "rib");
        fly.wind(wire, 1.0, 7.0, turns, 0.13, 0.13);
        const FlyModel model = fly.draw();
        // Tolerance 0.1 turn: half the strand's own width, seen from the axis, at either end.
        CHECK(within(turns_of(test::piece_of(model, wire)->mesh), turns, 0.1));
    }
}

TEST_CASE(
    "wound with the thread it is a right-handed screw tailward and a left-handed one forward") {
    HandMade fly;
    const int thread = fly.material(MaterialKind::thread, "black", "thread");
    fly.wind(thread, 1.0, 6.0, 8.0, 0.2, 0.1);
    const FlyModel back = fly.draw();
    const Mesh& tailward = test::piece_of(back, thread)->mesh;
    // Over the top, away from you: y turns towards z; with x growing that is right-handed.
    CHECK(turns_of(tailward) > 7.5);
    CHECK(last_x(tailward) > first_x(tailward));

    HandMade other;
    const int again = other.material(MaterialKind::thread, "black", "thread");
    other.wind(again, 6.0, 1.0, 8.0, 0.2, 0.1);
    const FlyModel front = other.draw();
    const Mesh& forward = test::piece_of(front, again)->mesh;
    CHECK(turns_of(forward) > 7.5);
    CHECK(last_x(forward) < first_x(forward));
}

TEST_CASE("a counter rib turns against the body below it") {
    HandMade fly;
    const int floss = fly.material(MaterialKind::floss, "amber", "body");
    const int wire = fly.material(MaterialKind::wire, "gold", "rib");
    fly.wind(floss, 7.0, 1.0, 10.0, 0.6, 0.1);
    fly.wind(wire, 7.0, 1.0, 5.0, 0.13, 0.13, Sense::against_thread);
    const FlyModel model = fly.draw();
    const double body = turns_of(test::piece_of(model, floss)->mesh);
    const double rib = turns_of(test::piece_of(model, wire)->mesh);
    CHECK(body > 9.5);
    CHECK(rib < -4.5);
}

TEST_CASE("a strand lies on what is below it") {
    HandMade fly;
    const int thread = fly.material(MaterialKind::thread, "black", "thread");
    const int wire = fly.material(MaterialKind::wire, "gold", "rib");
    const double bare = in_millimetres(fly.tied.bases[0].hook.wire.value);
    fly.wind(thread, 1.0, 7.0, 30.0, 0.2, 0.1);
    fly.wind(wire, 6.0, 2.0, 5.0, 0.13, 0.13);
    const FlyModel model = fly.draw();
    double nearest = 1e9, farthest = 0.0;
    for (const Vertex& v : test::piece_of(model, wire)->mesh.vertices) {
        const double r =
            std::hypot(static_cast<double>(v.position[1]), static_cast<double>(v.position[2]));
        nearest = std::min(nearest, r);
        farthest = std::max(farthest, r);
    }
    const double below = 0.5 * bare + 0.1;
    // Tolerance 0.01 mm: corners of the section stand off its outline; the strand is straight
    // across its own width while the core is round.
    CHECK(within(nearest, below, 0.01));
    CHECK(within(farthest, below + 0.13, 0.01));
}

TEST_CASE("hundreds of turns too fine to tell apart become one body of the same size") {
    HandMade fly;
    const int thread = fly.material(MaterialKind::thread, "black", "thread");
    fly.wind(thread, 1.0, 7.0, 400.0, 0.02, 0.015);
    FlyDetail coarse;
    coarse.pixels_per_mm = 20.0;
    const FlyModel far = fly.draw(fly.last(), coarse);
    const FlyModel near = fly.draw(fly.last(), {400.0, false, false});
    const Mesh& body = test::piece_of(far, thread)->mesh;
    CHECK(check_mesh(body).closed);
    CHECK(body.indices.size() * 10 < test::piece_of(near, thread)->mesh.indices.size());
    const double expected = 0.5 * in_millimetres(fly.tied.bases[0].hook.wire.value) + 0.015;
    for (const Vertex& v : body.vertices) {
        const double r =
            std::hypot(static_cast<double>(v.position[1]), static_cast<double>(v.position[2]));
        // Tolerance: the ripple is 0.12 of the strand's height.
        if (r > 0.1) CHECK(within(r, expected, 0.12 * 0.015 + 1e-4));
    }
}
