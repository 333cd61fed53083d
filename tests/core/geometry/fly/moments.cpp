// Tied flies step by step: what hangs, waits, covers and is cut.

#include "core/geometry/fly/surface.h"
#include "tests/core/geometry/fly/hand_made.h"
#include "tests/support/close.h"
#include "tests/support/fly_builder.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace wrapwright;
using test::HandMade;
using test::within;

namespace {

/// The moment after the last action of a kind, found in the recipe's order.
int moment_after(const test::Run1& run, Op op, const char* part = "") {
    int found = -1;
    for (std::size_t i = 0; i < run.pattern.actions.size(); ++i) {
        const auto& linked = run.pattern.actions[i];
        const Action& action = run.pattern.recipe.steps[static_cast<std::size_t>(linked.step)]
                                   .actions[static_cast<std::size_t>(linked.index)];
        const bool same = *part == '\0' || action.part == part;
        if (action.op == op && same) found = static_cast<int>(i);
    }
    REQUIRE(found >= 0);
    REQUIRE(found < static_cast<int>(run.tied.moments.size()));
    return found;
}

FlyModel draw(const test::Run1& run, int moment, const FlyDetail& detail = {}) {
    FlyModel model;
    build_fly(run.pattern, run.tied, moment, detail, model);
    return model;
}

int count_of(const FlyModel& model, Look look, int part) {
    int n = 0;
    for (const FlyPiece& p : model.pieces) n += p.look == look && p.part == part ? 1 : 0;
    return n;
}

/// How far a part reaches along one axis.
std::array<float, 2> reach_of(const FlyModel& model, int part, std::size_t axis) {
    std::array<float, 2> reach{1e9F, -1e9F};
    for (const FlyPiece& p : model.pieces) {
        if (p.part != part) continue;
        for (const Vertex& v : p.mesh.vertices) {
            reach[0] = std::min(reach[0], v.position[axis]);
            reach[1] = std::max(reach[1], v.position[axis]);
        }
    }
    return reach;
}

void say_in_step(HandMade& fly, Op op, int part) {
    if (fly.pattern.recipe.steps.empty()) fly.pattern.recipe.steps.emplace_back();
    Step& step = fly.pattern.recipe.steps.front();
    Pattern::LinkedAction linked;
    linked.index = static_cast<int>(step.actions.size());
    linked.part = part;
    step.actions.push_back(test::action(op));
    fly.pattern.actions.push_back(linked);
}

} // namespace

TEST_CASE("every moment of a tied fly is drawn, and every piece of it is closed") {
    const test::Run1 run = test::run(test::good_nymph());
    for (int m = 0; m < static_cast<int>(run.tied.moments.size()); ++m) {
        CAPTURE(m);
        for (const FlyPiece& piece : draw(run, m).pieces) {
            CAPTURE(piece.part);
            CAPTURE(static_cast<int>(piece.look));
            CHECK(check_mesh(piece.mesh).closed);
        }
    }
}

TEST_CASE("thread hangs from the hook while it is on, and no longer once it is cut") {
    const test::Run1 run = test::run(test::good_nymph());
    CHECK(count_of(draw(run, moment_after(run, Op::clamp)), Look::thread, none) == 0);
    CHECK(count_of(draw(run, moment_after(run, Op::start_thread)), Look::thread, none) == 1);
    CHECK(count_of(draw(run, moment_after(run, Op::whip_finish)), Look::thread, none) == 1);
    CHECK(count_of(draw(run, moment_after(run, Op::cut_thread)), Look::thread, none) == 0);
    const FlyDetail plain{60.0, false, false};
    CHECK(count_of(draw(run, moment_after(run, Op::start_thread), plain), Look::thread, none) == 0);
}

TEST_CASE("the vise holds the hook from the clamp to the unclamp") {
    const test::Run1 run = test::run(test::good_nymph());
    const auto steel = [&](Op op) {
        return count_of(draw(run, moment_after(run, op), {60.0, true, false}), Look::steel, none);
    };
    CHECK(steel(Op::slide_on) == 1); // the hook itself
    CHECK(steel(Op::clamp) == 3);    // jaws and collet beside it
    CHECK(steel(Op::unclamp) == 1);
}

TEST_CASE("a rib points back behind its tie-in until it is wound, and is gone when trimmed") {
    const test::Run1 run = test::run(test::good_nymph());
    const int rib = 5;
    const auto bend = static_cast<float>(in_millimetres(run.tied.bases[0].line.stations().bend));
    const FlyModel waiting = draw(run, moment_after(run, Op::tie_in, "rib"));
    CHECK(reach_of(waiting, rib, 0)[1] > bend + 3.0F);
    const FlyModel wound = draw(run, moment_after(run, Op::trim, "rib"));
    CHECK(count_of(wound, Look::metal, rib) == 1);
    CHECK(reach_of(wound, rib, 0)[1] < bend + 0.5F);
}

TEST_CASE("a coat that is wound over is not drawn, one that stays on top is") {
    HandMade fly;
    const int coat = fly.material(MaterialKind::coat, "", "bed");
    const int floss = fly.material(MaterialKind::floss, "amber", "body");
    fly.put(PlacedKind::coat, coat, 2.0, 6.0, 0.0, 1).mass = milligrams(2.0);
    CHECK(test::piece_of(fly.draw(), coat) != nullptr);
    fly.wind(floss, 6.5, 1.5, 10.0, 0.5, 0.1);
    CHECK(test::piece_of(fly.draw(), coat) == nullptr);
}

TEST_CASE("barbs wound on a post lie level above the hook") {
    HandMade fly(HookFamily::dry, 14);
    const int hackle = fly.material(MaterialKind::hackle, "dun", "hackle");
    say_in_step(fly, Op::wind_post, hackle);
    Placed& barbs = fly.put(PlacedKind::barbs, hackle, 2.5, 2.5, 6.0, 60);
    barbs.all_round = false;
    barbs.root = millimetres(0.8);
    const FlyModel model = fly.draw();
    const auto x = reach_of(model, hackle, 0);
    const auto y = reach_of(model, hackle, 1);
    const auto z = reach_of(model, hackle, 2);
    CHECK(y[0] > 0.0F);
    // Tolerance 0.5 mm: a barb of 6 mm from a post of 0.8 mm, leaning and curving a little.
    CHECK(within(static_cast<double>(x[1] - x[0]), 12.8, 0.5));
    CHECK(within(static_cast<double>(z[1] - z[0]), 12.8, 0.5));
    CHECK(y[1] - y[0] < 4.0F);
}

TEST_CASE("a palmer trimmed on top keeps its barbs below") {
    HandMade fly(HookFamily::dry, 14);
    const int hackle = fly.material(MaterialKind::hackle, "brown", "palmer");
    fly.wind(hackle, 7.0, 3.0, 5.0, 0.2, 0.2);
    fly.barbs(4.0, 100, 85.0);
    const auto whole = reach_of(fly.draw(), hackle, 1);
    say_in_step(fly, Op::shape, hackle);
    const auto trimmed = reach_of(fly.draw(), hackle, 1);
    CHECK(whole[1] > 3.5F);
    CHECK(trimmed[1] < 2.0F);
    CHECK(trimmed[0] < -3.5F);
}

TEST_CASE("gathered hair shows its butts until they are cut, and short ones after") {
    HandMade fly(HookFamily::dry, 12);
    const int hair = fly.material(MaterialKind::hair, "deer", "wing");
    say_in_step(fly, Op::gather, hair);
    Placed& wing = fly.put(PlacedKind::bundle, hair, 3.0, 3.0, 9.0, 30);
    wing.thick = millimetres(1.0);
    Strand strand;
    strand.part = strand.material = hair;
    strand.tied_in = 0;
    strand.trimmed = 1;
    fly.tied.strands.push_back(strand);
    fly.wind(fly.material(MaterialKind::thread, "tan", "thread"), 3.2, 2.8, 4.0, 0.1, 0.05);
    for (Moment& m : fly.tied.moments) m.strands = 1;
    const float standing = reach_of(fly.draw(0), hair, 0)[0];
    const float cut = reach_of(fly.draw(1), hair, 0)[0];
    CHECK(standing < cut - 0.5F);
    CHECK(cut < 2.5F);
}

TEST_CASE("a surface bridges steps, keeps what is level, and passes under no strand") {
    HandMade fly;
    const int wire = fly.material(MaterialKind::ballast, "lead", "ballast");
    fly.wind(wire, 3.0, 5.0, 4.0, 0.5, 0.5);
    const Pattern& pattern = fly.pattern;
    FlyModel out;
    const FlyDetail detail;
    const Sketch sketch(pattern, fly.tied, fly.last(), detail, out);
    const Profile& profile = fly.tied.profile(0);
    const Surface surface(sketch.base(0), profile);
    const float bare = static_cast<float>(0.5 * in_millimetres(fly.tied.bases[0].hook.wire.value));
    CHECK(within(static_cast<double>(surface.radius(1.0F)), static_cast<double>(bare), 1e-4));
    // The middle of the coil: half its own rise on each side. Tolerance: float coordinates.
    CHECK(
        within(static_cast<double>(surface.radius(4.0F)), static_cast<double>(bare + 0.5F), 1e-4));
    for (float at = 0.0F; at < 8.0F; at += 0.05F) {
        CAPTURE(at);
        const float rise = std::abs(surface.radius(at + 0.05F) - surface.radius(at)) / 0.05F;
        CHECK(rise < 0.75F); // 0.7 is the slope that strands climb; float steps add a little
    }
}
