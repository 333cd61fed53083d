// Every rule is seen where its trouble is, and not on the fly that is tied well. Thresholds are
// common practice, no source: core/tying/limits.h.

#include "tests/support/close.h"
#include "tests/support/fly_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("a nymph that is tied well has nothing that stops it") {
    const Tied tied = run(good_nymph()).tied;
    for (const Finding& f : tied.findings) {
        CAPTURE(static_cast<int>(f.rule));
        CHECK(f.level != Level::stops);
    }
    CHECK(tied.moments.size() == 19);
}

TEST_CASE("a bead that comes after the thread stops the fly") {
    Recipe r = good_nymph();
    drop_action(r, Op::slide_on);
    r.steps[2].actions.push_back(action(Op::slide_on, "bead"));
    CHECK(has_rule(run(r).tied, Rule::bead_after_thread));
    CHECK_FALSE(has_rule(run(good_nymph()).tied, Rule::bead_after_thread));
}

TEST_CASE("a bead whose bore is narrower than the wire does not pass, and the margin is shown") {
    Recipe r = good_nymph();
    r.materials[1].bore = mm(0.45);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::bead_will_not_pass));
    const Finding& f = first(tied, Rule::bead_will_not_pass);
    CHECK(f.level == Level::stops);
    CHECK(within(f.evidence[1].si * 1e3, 0.45, 1e-9));
    CHECK(f.evidence[2].si < 0.0);
}

TEST_CASE("a barb left standing holds a bead that passes once it is flat") {
    Recipe r = good_nymph();
    r.materials[1].bore = mm(0.66); // wire 0.49 + barb 0.20 = 0.69
    r.materials[1].hole = "drilled";
    drop_action(r, Op::flatten_barb);
    const Tied standing = run(r).tied;
    REQUIRE(has_rule(standing, Rule::bead_will_not_pass));
}

TEST_CASE("a bead too large for the gape leaves too little of it") {
    Recipe r = good_nymph();
    r.materials[1].size = mm(4.6);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::gape_left_small));
    // Source  geometry: 4.3 - (4.6 - 0.49) / 2 mm
    CHECK(within(first(tied, Rule::gape_left_small).evidence[0].si * 1e3, 2.245, 1e-6));
}

TEST_CASE("ballast that runs into the bend does not fit") {
    Recipe r = good_nymph();
    r.parts[2].turns = turns(30);
    CHECK(first(run(r).tied, Rule::ballast_does_not_fit).level == Level::stops);
}

TEST_CASE("ballast pushed against the eye of a hook without bead crowds it") {
    Recipe r = good_nymph();
    drop_action(r, Op::slide_on);
    find_action(r, Op::wind_ballast).from = spot(Landmark::eye, 0.2);
    CHECK(has_rule(run(r).tied, Rule::ballast_crowds_eye));
    find_action(r, Op::wind_ballast).from = spot(Landmark::eye, 2.5);
    CHECK_FALSE(has_rule(run(r).tied, Rule::ballast_crowds_eye));
}

TEST_CASE("ballast that no thread crosses is not locked") {
    Recipe r = good_nymph();
    drop_action(r, Op::lock_ballast);
    CHECK(has_rule(run(r).tied, Rule::ballast_not_locked));
}

TEST_CASE("a body over the bare end of the ballast slides, and says where") {
    Recipe r = good_nymph();
    r.materials[2].size = mm(0.381);
    drop_action(r, Op::lock_ballast);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::step_too_steep));
    const Finding& f = first(tied, Rule::step_too_steep);
    const Winding& ballast = tied.windings.front();
    // Tolerance  the window over which a slope is taken, 0.3 mm, and a cell
    CHECK(within(in_millimetres(f.at), in_millimetres(ballast.to), 0.4));
    CHECK(f.evidence[0].si > 0.4);
}

TEST_CASE("a strand that is wound and never tied off stops the fly") {
    Recipe r = good_nymph();
    drop_action(r, Op::tie_off, "rib");
    drop_action(r, Op::trim, "rib");
    CHECK(first(run(r).tied, Rule::never_tied_off).level == Level::stops);
}

TEST_CASE("a strand that is tied in and never wound is found") {
    Recipe r = good_nymph();
    drop_action(r, Op::counter_rib);
    drop_action(r, Op::tie_off, "rib");
    drop_action(r, Op::trim, "rib");
    CHECK(has_rule(run(r).tied, Rule::never_wound));
}

TEST_CASE("a strand that is wound without being tied in stops the fly") {
    Recipe r = good_nymph();
    drop_action(r, Op::tie_in, "body");
    CHECK(first(run(r).tied, Rule::never_tied_in).level == Level::stops);
}

TEST_CASE("a strand that is trimmed before it is tied off stops the fly") {
    Recipe r = good_nymph();
    drop_action(r, Op::tie_off, "body");
    CHECK(first(run(r).tied, Rule::trimmed_too_soon).level == Level::stops);
}

TEST_CASE("one turn over a wire's end is too few") {
    Recipe r = good_nymph();
    find_action(r, Op::tie_off, "rib").turns = turns(1);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::tied_off_too_few));
    CHECK(first(tied, Rule::tied_off_too_few).evidence[1].si == 3.0);
}

TEST_CASE("a rib wound before its body stops the fly") {
    Recipe r = good_nymph();
    std::swap(r.steps[3], r.steps[4]);
    CHECK(first(run(r).tied, Rule::rib_before_body).level == Level::stops);
}

TEST_CASE("a rib that runs the way of a soft body locks nothing") {
    Recipe r = good_nymph();
    find_action(r, Op::counter_rib).op = Op::rib;
    CHECK(has_rule(run(r).tied, Rule::rib_locks_nothing));
    CHECK_FALSE(has_rule(run(good_nymph()).tied, Rule::rib_locks_nothing));
}

TEST_CASE("a rib against the thread is noted as hard to catch") {
    CHECK(first(run(good_nymph()).tied, Rule::rib_hard_to_catch).level == Level::note);
}

TEST_CASE("a hard wire end left standing where thread passes is found") {
    Recipe r = good_nymph();
    drop_action(r, Op::trim, "rib");
    CHECK(has_rule(run(r).tied, Rule::hard_end_standing));
    CHECK_FALSE(has_rule(run(good_nymph()).tied, Rule::hard_end_standing));
}

TEST_CASE("butts that end short of the ballast show as a bump, measured on the profile") {
    Recipe r = good_nymph();
    r.parts[3].count = count(30);
    Action bind = action(Op::bind_down, "tail");
    bind.from = spot(Landmark::bend);
    bind.to = spot_of(Landmark::part_rear, "ballast");
    bind.to.offset = spot(Landmark::eye, 1.2).offset;
    r.steps[2].actions.insert(r.steps[2].actions.begin() + 1, bind);
    drop_action(r, Op::lock_ballast);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::butt_bump));
    // Tolerance  a cell of the profile
    CHECK(within(first(tied, Rule::butt_bump).evidence[2].si * 1e3, 1.2, 0.1));
    SUBCASE("and butts that meet it do not") {
        find_action(r, Op::bind_down).to = spot_of(Landmark::part_rear, "ballast");
        CHECK_FALSE(has_rule(run(r).tied, Rule::butt_bump));
    }
}

TEST_CASE("a herl too short for its turns says how many it reaches") {
    Recipe r = good_nymph();
    r.materials[4].fibre_length = mm(20);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::fibre_too_short));
    const Finding& f = first(tied, Rule::fibre_too_short);
    CHECK(within(f.evidence[1].si * 1e3, 20.0, 1e-9));
    CHECK(f.evidence[3].si < f.evidence[2].si);
    CHECK(f.evidence[3].si > 0.0);
}

namespace {

Recipe with_hackle(double barb_mm) {
    Recipe r = good_nymph();
    RecipeMaterial hackle = material("hackle", MaterialKind::hackle, Substance::keratin);
    hackle.barb_length = mm(barb_mm);
    r.materials.push_back(hackle);
    r.parts.push_back(part("hackle", "hackle", "hackle"));
    Action in = action(Op::tie_in, "hackle");
    in.to = spot(Landmark::bead, 0.8);
    Action collar = action(Op::collar, "hackle");
    collar.turns = turns(3);
    Step s;
    s.actions = {in, collar, action(Op::tie_off, "hackle"), action(Op::trim, "hackle")};
    r.steps.insert(r.steps.begin() + 5, s);
    return r;
}

} // namespace

TEST_CASE("hackle is measured against one and a half gapes") {
    // Source  published in four pages: barbs of 1.5 gape; 1.5 x 4.3 mm = 6.45 mm
    CHECK_FALSE(has_rule(run(with_hackle(6.45)).tied, Rule::hackle_too_large));
    CHECK_FALSE(has_rule(run(with_hackle(6.45)).tied, Rule::hackle_too_small));
    const Tied large = run(with_hackle(10.0)).tied;
    REQUIRE(has_rule(large, Rule::hackle_too_large));
    CHECK(within(first(large, Rule::hackle_too_large).evidence[1].si * 1e3, 6.45, 1e-9));
    CHECK(has_rule(run(with_hackle(3.0)).tied, Rule::hackle_too_small));
}

TEST_CASE("dressing inside the head of a hook without bead is found with the millimetres left") {
    Recipe r = good_nymph();
    drop_action(r, Op::slide_on);
    find_action(r, Op::wind, "body").to = spot(Landmark::eye, 0.3);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::head_used_up));
    CHECK(within(first(tied, Rule::head_used_up).evidence[0].si * 1e3, 0.3, 1e-6));
}

TEST_CASE("hair spun with a thread that is too weak comes near its breaking load") {
    Recipe r = good_nymph();
    RecipeMaterial hair = material("hair", MaterialKind::hair, Substance::keratin);
    r.materials.push_back(hair);
    r.parts.push_back(part("hair", "head", "hair"));
    r.parts.back().count = count(60);
    r.materials[0].linear = den(40);
    Action spin = action(Op::spin_hair, "hair");
    spin.to = spot(Landmark::middle);
    r.steps[2].actions.push_back(spin);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::thread_near_breaking));
    CHECK(first(tied, Rule::thread_near_breaking).evidence[0].si == 5.0);
    SUBCASE("and gel-spun thread holds") {
        r.materials[0] = material("thread", MaterialKind::thread, Substance::gel_spun);
        r.materials[0].linear = den(130);
        CHECK_FALSE(has_rule(run(r).tied, Rule::thread_near_breaking));
    }
}

TEST_CASE("thread that is cut before a finish stops the fly, and hitches enough count as one") {
    Recipe r = good_nymph();
    drop_action(r, Op::whip_finish);
    CHECK(first(run(r).tied, Rule::cut_unfinished).level == Level::stops);
    Action hitch = action(Op::half_hitch);
    hitch.count = count(3);
    r.steps[5].actions.insert(r.steps[5].actions.begin(), hitch);
    CHECK_FALSE(has_rule(run(r).tied, Rule::cut_unfinished));
}

TEST_CASE("a fly whose thread is never cut is not finished") {
    Recipe r = good_nymph();
    drop_action(r, Op::cut_thread);
    CHECK(has_rule(run(r).tied, Rule::not_finished));
}

TEST_CASE("a whip finish of two turns is too short") {
    Recipe r = good_nymph();
    find_action(r, Op::whip_finish).turns = turns(2);
    CHECK(has_rule(run(r).tied, Rule::finish_too_few));
}

TEST_CASE("winding over a wet coat is found unless it is meant or cured") {
    Recipe r = good_nymph();
    Action wet = action(Op::coat, "coat");
    wet.from = spot(Landmark::bend);
    wet.to = spot(Landmark::middle);
    r.steps[2].actions.push_back(wet);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::wound_over_wet));
    CHECK(first(tied, Rule::wound_over_wet).evidence[0].si > 60.0); // varnish takes minutes
    SUBCASE("meant") {
        find_action(r, Op::wind, "body").over_wet = true;
        find_action(r, Op::counter_rib).over_wet = true;
        CHECK_FALSE(has_rule(run(r).tied, Rule::wound_over_wet));
    }
    SUBCASE("cured") {
        r.steps[2].actions.push_back(action(Op::cure, "coat"));
        CHECK_FALSE(has_rule(run(r).tied, Rule::wound_over_wet));
    }
}

TEST_CASE("a tie-in with many more turns than hold it is noted as bulk") {
    Recipe r = good_nymph();
    find_action(r, Op::tie_in, "body").turns = turns(20);
    CHECK(first(run(r).tied, Rule::thread_beyond_need).level == Level::note);
}

TEST_CASE("nothing is tied without thread") {
    Recipe r = good_nymph();
    drop_action(r, Op::start_thread);
    CHECK(first(run(r).tied, Rule::no_thread).level == Level::stops);
}

TEST_CASE("thread that is started twice is found") {
    Recipe r = good_nymph();
    r.steps[2].actions.push_back(action(Op::start_thread, "thread"));
    CHECK(has_rule(run(r).tied, Rule::thread_already_on));
}

TEST_CASE("a hook that never goes into the vise is noted") {
    Recipe r = good_nymph();
    drop_action(r, Op::clamp);
    CHECK(count_rule(run(r).tied, Rule::hook_not_clamped) == 1);
}

TEST_CASE("a barb that is flattened on a dressed hook is found") {
    Recipe r = good_nymph();
    r.steps[3].actions.push_back(action(Op::flatten_barb));
    CHECK(has_rule(run(r).tied, Rule::barb_after_dressing));
}

TEST_CASE("hair spun over a thread base does not spin") {
    Recipe r = good_nymph();
    RecipeMaterial hair = material("hair", MaterialKind::hair, Substance::keratin);
    r.materials.push_back(hair);
    r.parts.push_back(part("hair", "head", "hair"));
    Action base = action(Op::build_up);
    base.from = spot(Landmark::middle, -1.0);
    base.to = spot(Landmark::middle, 1.0);
    base.diameter = mm(1.4);
    Action spin = action(Op::spin_hair, "hair");
    spin.to = spot(Landmark::middle);
    r.steps[2].actions.push_back(base);
    r.steps[2].actions.push_back(spin);
    CHECK(has_rule(run(r).tied, Rule::spun_on_thread_base));
}

TEST_CASE("a part that no action uses is noted") {
    Recipe r = good_nymph();
    r.parts.push_back(part("spare", "legs", "fibres"));
    CHECK(has_rule(run(r).tied, Rule::part_never_used));
}

TEST_CASE("a word where a number is needed stays a word, and the number used instead is named") {
    Recipe r = good_nymph();
    r.parts[5].turns = a_word("sparse");
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::amount_is_a_word));
    CHECK(first(tied, Rule::amount_is_a_word).evidence[0].si == 5.0);
}

TEST_CASE("a place beyond the wire is found and brought back onto it") {
    Recipe r = good_nymph();
    find_action(r, Op::pinch_in, "tail").to = spot(Landmark::bend, 20.0);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::off_the_wire));
    for (const Placed& p : tied.placed) CHECK(p.at <= tied.profile(0).end());
}

TEST_CASE("a wing case tied in after the thorax is found") {
    Recipe r = good_nymph();
    RecipeMaterial fur = material("fur", MaterialKind::dubbing, Substance::keratin);
    r.materials.push_back(fur);
    r.parts.push_back(part("thorax", "thorax", "fur"));
    r.parts.push_back(part("case", "wing case", "fibres"));
    Action dub = action(Op::dub, "thorax");
    dub.from = spot(Landmark::middle);
    dub.to = spot(Landmark::bead, 0.4);
    Action in = action(Op::tie_in, "case");
    in.to = spot(Landmark::middle);
    Action over = action(Op::pull_over, "case");
    over.to = spot(Landmark::bead, 0.4);
    Step late;
    late.actions = {dub, in, over, action(Op::tie_off, "case"), action(Op::trim, "case")};
    r.steps.insert(r.steps.begin() + 5, late);
    CHECK(has_rule(run(r).tied, Rule::case_after_thorax));
    std::swap(r.steps[5].actions[0], r.steps[5].actions[1]);
    CHECK_FALSE(has_rule(run(r).tied, Rule::case_after_thorax));
}
