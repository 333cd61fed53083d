// Whole flies: closed, in place, the same every time.

#include "tests/core/geometry/fly/hand_made.h"
#include "tests/support/close.h"

#include <cmath>
#include <cstring>
#include <doctest/doctest.h>

using namespace wrapwright;
using test::HandMade;
using test::within;

namespace {

/// One of everything that can be on a fly.
HandMade crowded_fly() {
    HandMade fly(HookFamily::jig, 12);
    const double s = fly.shank_mm();
    const int bead = fly.material(MaterialKind::bead, "copper", "bead");
    fly.pattern.recipe.materials[static_cast<std::size_t>(bead)].hole = "slotted";
    fly.put(PlacedKind::bead, bead, 1.5, 2.9, 3.0, 1);
    fly.put(PlacedKind::cone, fly.material(MaterialKind::cone, "gold", "head"), 3.5, 4.5, 3, 1);
    fly.put(PlacedKind::dumbbell, fly.material(MaterialKind::dumbbell, "lead", "eyes"), 4, 4, 2, 1);
    fly.put(PlacedKind::tube, fly.material(MaterialKind::tube, "", "tube"), 4, 8, 1.5, 1);
    const MaterialKind wound[] = {
        MaterialKind::thread, MaterialKind::ballast,  MaterialKind::wire,   MaterialKind::tinsel,
        MaterialKind::floss,  MaterialKind::chenille, MaterialKind::herl,   MaterialKind::quill,
        MaterialKind::yarn,   MaterialKind::hackle,   MaterialKind::dubbing};
    for (const MaterialKind kind : wound) {
        fly.wind(fly.material(kind, "olive", "body"), s, 0.5 * s, 6.0, 0.3, 0.1);
    }
    fly.wind(fly.material(MaterialKind::hackle, "grizzly", "hackle"), 5, 4, 5, 0.3, 0.3);
    fly.barbs(6.0, 90, 85.0);
    fly.wind(fly.material(MaterialKind::marabou, "olive", "collar"), 5, 4.4, 3, 0.3, 0.3);
    fly.barbs(9.0, 50, 40.0);
    const MaterialKind bundled[] = {
        MaterialKind::fibres, MaterialKind::hair, MaterialKind::marabou,     MaterialKind::cdc,
        MaterialKind::slip,   MaterialKind::biot, MaterialKind::foam,        MaterialKind::film,
        MaterialKind::flash,  MaterialKind::legs, MaterialKind::soft_hackle, MaterialKind::herl,
        MaterialKind::hackle, MaterialKind::yarn};
    for (const MaterialKind kind : bundled) {
        for (const double count : {1.0, 2.0, 20.0}) {
            Placed& p = fly.put(PlacedKind::bundle, fly.material(kind, "barred brown", "tail"), s,
                                s, 6.0, count);
            p.thick = millimetres(0.5);
            p.lean = degrees(count > 1.0 ? 10.0 : 88.0);
            p.spread = degrees(12.0);
        }
    }
    fly.put(PlacedKind::clump, fly.material(MaterialKind::hair, "deer", "head"), 4, 4, 3, 60);
    fly.put(PlacedKind::butt, fly.material(MaterialKind::fibres, "tan", "tail"), s, 5, 0, 8).thick =
        millimetres(0.4);
    fly.put(PlacedKind::case_strip, fly.material(MaterialKind::slip, "brown", "wing case"), 6, 4, 2,
            1)
        .thick = millimetres(2.0);
    fly.put(PlacedKind::coat, fly.material(MaterialKind::coat, "", "finish"), 4, 5, 0, 1).mass =
        milligrams(3.0);
    return fly;
}

} // namespace

TEST_CASE("everything that can be on a fly is drawn, and each piece of it is closed") {
    const HandMade fly = crowded_fly();
    const FlyModel model = fly.draw();
    for (std::size_t part = 0; part < fly.pattern.recipe.parts.size(); ++part) {
        CAPTURE(part);
        CHECK(test::piece_of(model, static_cast<int>(part)) != nullptr);
    }
    for (const FlyPiece& piece : model.pieces) {
        CAPTURE(piece.part);
        CAPTURE(static_cast<int>(piece.look));
        CHECK_FALSE(piece.mesh.indices.empty());
        CHECK(check_mesh(piece.mesh).closed);
        CHECK(check_mesh(piece.mesh).volume_mm3 > 0.0);
    }
}

TEST_CASE("every place and direction in a model is a number, and every direction is a unit") {
    const FlyModel model = crowded_fly().draw();
    for (const FlyPiece& piece : model.pieces) {
        bool fine = true;
        for (const Vertex& v : piece.mesh.vertices) {
            const float n = std::hypot(v.normal[0], v.normal[1], v.normal[2]);
            const float far = std::hypot(v.position[0], v.position[1], v.position[2]);
            // Tolerance 1e-3: halves of floats added up; 100 mm is far beyond any fly here.
            fine = fine && std::abs(n - 1.0F) < 1e-3F && far < 100.0F;
        }
        CAPTURE(piece.part);
        CAPTURE(static_cast<int>(piece.look));
        CHECK(fine);
    }
}

TEST_CASE("the same record gives the same bytes, in fresh buffers and in used ones") {
    const HandMade fly = crowded_fly();
    const FlyModel one = fly.draw();
    FlyModel two = fly.draw(3); // something else was drawn there before
    build_fly(fly.pattern, fly.tied, fly.last(), {}, two);
    REQUIRE(one.pieces.size() == two.pieces.size());
    for (std::size_t i = 0; i < one.pieces.size(); ++i) {
        const Mesh& a = one.pieces[i].mesh;
        const Mesh& b = two.pieces[i].mesh;
        REQUIRE(a.vertices.size() == b.vertices.size());
        REQUIRE(a.indices.size() == b.indices.size());
        CHECK(std::memcmp(a.vertices.data(), b.vertices.data(),
                          a.vertices.size() * sizeof(Vertex)) == 0);
        CHECK(a.indices == b.indices);
        CHECK(one.pieces[i].colour == two.pieces[i].colour);
        CHECK(one.pieces[i].look == two.pieces[i].look);
    }
}

TEST_CASE("a bare hook fills the box that its measures say") {
    const HandMade fly(HookFamily::wet, 14);
    const FlyModel model = fly.draw(-1);
    const Hook& hook = fly.tied.bases[0].hook;
    const double shank = in_millimetres(hook.shank.value);
    const double gape = in_millimetres(hook.gape.value);
    const double wire = in_millimetres(hook.wire.value);
    // Half the wire above the shank, half below the point; the bend is a half circle behind the
    // shank; the eye in front. Tolerance 0.02 mm: chords of the drawing.
    CHECK(within(static_cast<double>(model.high[1]), 0.5 * wire, 0.02));
    CHECK(within(static_cast<double>(model.low[1]), -gape - 0.5 * wire, 0.02));
    CHECK(within(static_cast<double>(model.high[0]), shank + 0.5 * gape + 0.5 * wire, 0.02));
    CHECK(model.low[0] < -0.8F * static_cast<float>(in_millimetres(hook.eye_length.value)));
    // The eye ring lies across the hook: as wide as its outside. Tolerance 3 %: drawn-down wire.
    const double across = static_cast<double>(model.high[2] - model.low[2]);
    CHECK(test::within_share(across, in_millimetres(hook.eye_diameter.value), 0.03));
}

TEST_CASE("a pressed barb is not drawn, a standing one rises towards the shank") {
    HandMade fly;
    const FlyModel barbed = fly.draw(-1);
    fly.tied.bases[0].hook.barb_height = exactly(Length{});
    const FlyModel pressed = fly.draw(-1);
    CHECK(barbed.pieces[0].mesh.vertices.size() > pressed.pieces[0].mesh.vertices.size());
    CHECK(check_mesh(barbed.pieces[0].mesh).closed);
    CHECK(check_mesh(pressed.pieces[0].mesh).closed);
}

TEST_CASE("a moment shows what exists by then and what has not been taken away") {
    HandMade fly;
    const int thread = fly.material(MaterialKind::thread, "black", "thread");
    const int wing = fly.material(MaterialKind::fibres, "grey", "wing");
    const int tail = fly.material(MaterialKind::fibres, "grey", "tail");
    fly.wind(thread, 1.0, 6.0, 12.0, 0.2, 0.1);
    fly.put(PlacedKind::bundle, wing, 3.0, 3.0, 5.0, 6);
    fly.put(PlacedKind::bundle, tail, 7.0, 7.0, 5.0, 6);
    fly.tied.placed[0].removed_act = 2;
    CHECK(test::piece_of(fly.draw(0), wing) == nullptr);
    CHECK(test::piece_of(fly.draw(1), wing) != nullptr);
    CHECK(test::piece_of(fly.draw(2), wing) == nullptr);
    CHECK(test::piece_of(fly.draw(2), tail) != nullptr);
    CHECK(test::piece_of(fly.draw(2), thread) != nullptr);
}

TEST_CASE("a tail reaches as far behind its place as the record says") {
    HandMade fly;
    const int tail = fly.material(MaterialKind::fibres, "grey", "tail");
    fly.put(PlacedKind::bundle, tail, 8.0, 8.0, 6.0, 12);
    const FlyModel model = fly.draw();
    float rear = 0.0F;
    for (const FlyPiece& piece : model.pieces) {
        if (piece.part != tail) continue;
        for (const Vertex& v : piece.mesh.vertices) rear = std::max(rear, v.position[0]);
    }
    // Tolerance 0.3 mm: fibres differ in length by a few per cent and bend a little.
    CHECK(within(static_cast<double>(rear), 14.0, 0.3));
}

TEST_CASE("barbs stand as far out as they are long, all round") {
    HandMade fly(HookFamily::dry, 14);
    const int hackle = fly.material(MaterialKind::hackle, "dun", "hackle");
    fly.wind(hackle, 2.5, 1.5, 5.0, 0.3, 0.3);
    fly.barbs(6.0, 120, 85.0);
    const FlyModel model = fly.draw();
    // Tolerance 0.5 mm: barbs lean and curve a little, and differ by a few per cent.
    CHECK(within(static_cast<double>(model.high[1]), 6.4, 0.5));
    CHECK(within(static_cast<double>(model.high[2]), 6.4, 0.5));
    CHECK(within(static_cast<double>(model.low[2]), -6.4, 0.5));
}

TEST_CASE("finer pictures get finer meshes, and the vise stays out of the bounds") {
    HandMade fly;
    fly.wind(fly.material(MaterialKind::thread, "black", "thread"), 1.0, 6.0, 12.0, 0.2, 0.1);
    const auto triangles = [](const FlyModel& m) {
        std::size_t n = 0;
        for (const FlyPiece& p : m.pieces) n += p.mesh.indices.size() / 3;
        return n;
    };
    const FlyModel coarse = fly.draw(0, {20.0, false, false});
    const FlyModel fine = fly.draw(0, {200.0, false, false});
    CHECK(triangles(fine) > 2 * triangles(coarse));
    const FlyModel held = fly.draw(0, {200.0, true, false});
    CHECK(held.pieces.size() > fine.pieces.size());
    CHECK(held.low == fine.low);
    CHECK(held.high == fine.high);
}

TEST_CASE("a joined base lies behind the first by the length of the joint") {
    HandMade fly(HookFamily::streamer, 6);
    fly.add_base(HookFamily::wet, 6);
    const FlyModel apart = fly.draw(-1);
    Joint joint;
    joint.from = "base1";
    joint.to = "base2";
    joint.length.text = "20 mm";
    joint.length.reading = {AmountKind::exact, Unit::length, Basis::none, 0.02, 0.02, 0.02, {}};
    fly.pattern.recipe.joints.push_back(joint);
    const FlyModel joined = fly.draw(-1);
    // The front of the rear eye is 20 mm behind the end of the front shank.
    float front = 1e9F;
    for (const Vertex& v : joined.pieces[1].mesh.vertices) front = std::min(front, v.position[0]);
    CHECK(within(static_cast<double>(front), fly.shank_mm() + 20.0, 0.1));
    CHECK(joined.high[0] > apart.high[0]);
}
