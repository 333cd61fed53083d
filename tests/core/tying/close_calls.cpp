// Rules about what only just fits, or is only a note. Thresholds are common practice, no source:
// core/tying/limits.h.

#include "tests/support/close.h"
#include "tests/support/fly_builder.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("a bead that passes with hardly any room is likely to stick, and does not stop the fly") {
    Recipe r = good_nymph();
    bool tight = false;
    for (double bore = 0.40; bore < 1.6; bore += 0.01) {
        r.materials[1].bore = mm(bore);
        r.materials[1].hole = "drilled";
        const Tied tied = run(r).tied;
        // From narrow to wide: it sticks, then it is tight, then it passes, and never two of these.
        const bool sticks = has_rule(tied, Rule::bead_will_not_pass);
        const bool now = has_rule(tied, Rule::bead_tight);
        CAPTURE(bore);
        CHECK_FALSE((sticks && (now || tight)));
        if (!now) continue;
        tight = true;
        const Finding& f = first(tied, Rule::bead_tight);
        CHECK(f.level == Level::likely);
        // Within what is not known of a bend, either way (README: clearances to 0.05 mm)
        CHECK(std::abs(f.evidence[2].si) <= Limits{}.bead_clearance.si);
    }
    CHECK(tight);
}

TEST_CASE("a bead whose bore is wider than the eye falls off over it") {
    Recipe r = good_nymph();
    r.materials[1].hole = "drilled";
    r.materials[1].bore = mm(2.2);
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::bead_falls_off));
    const Finding& f = first(tied, Rule::bead_falls_off);
    CHECK(f.evidence[0].si < f.evidence[1].si); // the eye is smaller than the hole
    CHECK_FALSE(has_rule(run(good_nymph()).tied, Rule::bead_falls_off));
}

TEST_CASE("ballast that is wound when the thread is on is noted") {
    Recipe r = good_nymph();
    const Action ballast = find_action(r, Op::wind_ballast);
    drop_action(r, Op::wind_ballast);
    drop_action(r, Op::lock_ballast);
    for (Step& step : r.steps) {
        for (std::size_t i = 0; i < step.actions.size(); ++i) {
            if (step.actions[i].op != Op::start_thread) continue;
            step.actions.insert(step.actions.begin() + static_cast<std::ptrdiff_t>(i) + 1, ballast);
            break;
        }
    }
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::ballast_after_thread));
    CHECK(first(tied, Rule::ballast_after_thread).level == Level::note);
    CHECK_FALSE(has_rule(run(good_nymph()).tied, Rule::ballast_after_thread));
}

TEST_CASE("thread wound up against the eye crowds the head where no bead is the head") {
    Recipe r = good_nymph();
    drop_action(r, Op::slide_on);
    Action last = action(Op::travel);
    last.to = spot(Landmark::eye, 0.1);
    for (Step& step : r.steps) {
        for (std::size_t i = 0; i < step.actions.size(); ++i) {
            if (step.actions[i].op != Op::whip_finish) continue;
            step.actions.insert(step.actions.begin() + static_cast<std::ptrdiff_t>(i), last);
            break;
        }
    }
    const Tied tied = run(r).tied;
    REQUIRE(has_rule(tied, Rule::head_crowded));
    CHECK(within(first(tied, Rule::head_crowded).evidence[0].si * 1e3, 0.1, 1e-9));
    CHECK_FALSE(has_rule(run(good_nymph()).tied, Rule::head_crowded));
}

TEST_CASE("varnish that runs up to the eye is noted, so that the eye is cleared") {
    Recipe r = good_nymph();
    drop_action(r, Op::slide_on);
    find_action(r, Op::coat).from = spot(Landmark::eye, 0.0);
    find_action(r, Op::coat).to = spot(Landmark::eye, 1.0);
    CHECK(has_rule(run(r).tied, Rule::eye_coated));
    find_action(r, Op::coat).from = spot(Landmark::eye, 0.8);
    CHECK_FALSE(has_rule(run(r).tied, Rule::eye_coated));
}
