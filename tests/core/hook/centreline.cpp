#include "core/hook/centreline.h"
#include "tests/support/close.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>
#include <vector>

using namespace wrapwright;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

/// Every typical hook, jig hooks at several angles, each with its eye straight, up and down.
std::vector<Hook> all_hooks() {
    std::vector<Hook> hooks;
    for (const HookFamily f : {HookFamily::dry, HookFamily::wet, HookFamily::long_shank,
                               HookFamily::streamer, HookFamily::curved, HookFamily::jig}) {
        for (int n = 4; n <= 24; ++n) {
            const Result<Hook> hook = typical_hook(f, {n});
            if (!hook.ok()) continue;
            for (const double jig : {45.0, 60.0, 70.0, 90.0}) {
                if (f != HookFamily::jig && jig != 45.0) continue;
                for (const double eye : {-30.0, 0.0, 30.0}) {
                    Hook h = hook.value();
                    if (f == HookFamily::jig) h.jig_angle = exactly(degrees(jig));
                    h.eye_angle = degrees(eye);
                    hooks.push_back(h);
                }
            }
        }
    }
    return hooks;
}

double turned(const Centreline& c) {
    double sum = 0.0;
    for (int i = 0; i < c.piece_count(); ++i) {
        const WirePiece& p = c.pieces()[static_cast<std::size_t>(i)];
        sum += p.curvature * p.length.si;
    }
    return sum;
}

} // namespace

TEST_CASE("the wire goes on from piece to piece without a gap or a kink") {
    // Tolerance  sines of headings, 1e-15, over pieces of up to 30 mm
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Centreline c(hook);
        double at = -hook.eye_length.value.si;
        for (int i = 0; i < c.piece_count(); ++i) {
            const WirePiece& p = c.pieces()[static_cast<std::size_t>(i)];
            CHECK(glm::length(c.position(Length{at}) - p.start) < 1e-12);
            const double before = at - 1e-12, after = at + 1e-12;
            CHECK(glm::length(c.tangent(Length{before}) - c.tangent(Length{after})) < 1e-7);
            at += p.length.si;
        }
        CHECK(within(at, c.stations().tip.si, 1e-14));
    }
}

TEST_CASE("a millimetre along the wire is a millimetre of distance") {
    // Tolerance  a chord of 0.2 um on an arc of 0.25 mm radius is short by 3 in 1e8
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Centreline c(hook);
        const double begin = -hook.eye_length.value.si, end = c.stations().tip.si;
        for (int i = 1; i < 40; ++i) {
            const double at = begin + (end - begin) * i / 40.0, step = 1e-7;
            const glm::dvec2 chord = c.position(Length{at + step}) - c.position(Length{at - step});
            CHECK(within_share(glm::length(chord), 2.0 * step, 1e-7));
            CHECK(within_share(glm::dot(chord, c.tangent(Length{at})), glm::length(chord), 1e-7));
        }
    }
}

TEST_CASE("the stations lie along the wire in their order") {
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Stations s = Centreline(hook).stations();
        CHECK(s.eye.si == 0.0); // exact: the origin of the measure
        CHECK(s.eye <= s.leg_end);
        CHECK(s.leg_end <= s.front);
        CHECK(s.front < s.middle);
        CHECK(s.middle < s.bend);
        CHECK(s.front < s.point);
        CHECK(s.point < s.barb);
        CHECK(s.barb < s.bend);
        CHECK(s.bend < s.bend_bottom);
        CHECK(s.bend_bottom < s.tip);
    }
}

TEST_CASE("the point is one gape away from the nearest part of the shank") {
    // Tolerance  the nearest of 2000 samples over 25 mm is within 1e-3 of 5 mm by its square
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Centreline c(hook);
        const Stations& s = c.stations();
        const glm::dvec2 point = c.position(s.tip);
        double nearest = 1.0;
        for (int i = 0; i <= 2000; ++i) {
            const Length at = s.front + (i / 2000.0) * (s.bend - s.front);
            nearest = std::min(nearest, glm::length(c.position(at) - point));
        }
        CHECK(within_share(nearest, hook.gape.value.si, 1e-5));
        CHECK(point.y < 0.0);
    }
}

TEST_CASE("the stations above point and barb lie straight above them") {
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Centreline c(hook);
        const Stations& s = c.stations();
        const double barb = c.position(s.tip).x + 0.4 * hook.gape.value.si;
        CHECK(within(c.position(s.point).x, c.position(s.tip).x, 1e-12));
        CHECK(within(c.position(s.barb).x, barb, 1e-12));
    }
}

TEST_CASE("the shank starts at the origin and runs tailward") {
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Centreline c(hook);
        const Stations& s = c.stations();
        CHECK(glm::length(c.position(s.front)) < 1e-12);
        CHECK(within(c.position(s.bend).y, 0.0, 1e-12));
        CHECK(c.position(s.bend).x > 0.0);
        if (hook.shape == HookShape::curved) continue;
        CHECK(within(c.position(s.bend).x, hook.shank.value.si, 1e-12));
        CHECK(within(c.tangent(s.middle).x, 1.0, 1e-12));
    }
}

TEST_CASE("a jig hook's eye lies ahead of the shank on the point's side") {
    for (const Hook& hook : all_hooks()) {
        if (hook.shape != HookShape::jig) continue;
        const Centreline c(hook);
        CHECK(c.position(Length{}).x < 0.0);
        CHECK(c.position(Length{}).y < 0.0);
        const glm::dvec2 leg = c.tangent(0.5 * c.stations().leg_end);
        CHECK(
            within(glm::dot(leg, glm::dvec2(1.0, 0.0)), std::cos(hook.jig_angle.value.si), 1e-12));
        CHECK(leg.y > 0.0);
    }
}

TEST_CASE("an eye that is turned up lies higher than a straight one, turned down lower") {
    // Valid for the straight shank; the angle is the ring's to the wire behind it.
    Hook h = typical_hook(HookFamily::dry, {12}).value();
    h.eye_angle = degrees(30.0);
    const Centreline up(h);
    h.eye_angle = degrees(-30.0);
    const Centreline down(h);
    h.eye_angle = {};
    const Centreline straight(h);
    CHECK(up.eye_centre().y > 0.0);
    CHECK(within(up.eye_centre().y, -down.eye_centre().y, 1e-12));
    CHECK(within(straight.eye_centre().y, 0.0, 1e-15));
    const glm::dvec2 ring = up.tangent(-h.eye_length.value);
    CHECK(within(ring.x, std::cos(h.eye_angle.si + degrees(30.0).si), 1e-12));
    CHECK(within(ring.y, -0.5, 1e-12));
}

TEST_CASE("the spear of every hook runs back to the eye, parallel to the shank") {
    for (const Hook& hook : all_hooks()) {
        CAPTURE(hook.label);
        const Centreline c(hook);
        CHECK(within(c.tangent(c.stations().tip).x, -1.0, 1e-12));
        const double shank = hook.shape == HookShape::curved ? std::numbers::pi / 6.0 : 0.0;
        const double behind = -shank - std::numbers::pi; // from the shank's front to the point
        CHECK(within(turned(c) - hook.eye_angle.si + hook.jig_angle.value.si, behind, 1e-12));
    }
}

TEST_CASE("before the eye and behind the point the wire's own ends answer") {
    const Hook h = typical_hook(HookFamily::jig, {14}).value();
    const Centreline c(h);
    CHECK(c.position(metres(-1.0)) == c.position(-h.eye_length.value));
    CHECK(c.position(metres(1.0)) == c.position(c.stations().tip));
    CHECK(c.tangent(metres(-1.0)) == c.tangent(-h.eye_length.value));
    CHECK(c.tangent(metres(1.0)) == c.tangent(c.stations().tip));
}

TEST_CASE("a straight hook's wire is shank and 2.27 gapes long behind its eye") {
    // Source     the mass model of hook.h: pi / 2 gapes of round bend and 0.7 of spear
    // Tolerance  pi / 2 + 0.7 is 2.2708, against 2.27
    for (const Hook& hook : all_hooks()) {
        if (hook.shape == HookShape::curved) continue;
        const double leg =
            hook.jig_leg.value.si + hook.jig_angle.value.si * hook.jig_radius.value.si;
        const double expected = leg + hook.shank.value.si + 2.27 * hook.gape.value.si;
        CHECK(within_share(Centreline(hook).stations().tip.si, expected, 4e-4));
    }
}

TEST_CASE("a curved hook keeps its gape whatever its shank is to it") {
    // Tolerance  as for the typical hooks above
    for (const double ratio : {0.7, 0.9, 1.0, 1.2, 1.5, 2.0, 3.0}) {
        CAPTURE(ratio);
        Hook h;
        h.shape = HookShape::curved;
        h.gape = exactly(millimetres(5.0), Origin::measured);
        h.shank = exactly(millimetres(5.0 * ratio), Origin::measured);
        const Centreline c(complete_hook(h).value());
        const Stations& s = c.stations();
        double nearest = 1.0;
        for (int i = 0; i <= 2000; ++i) {
            const Length at = s.front + (i / 2000.0) * (s.bend - s.front);
            nearest = std::min(nearest, glm::length(c.position(at) - c.position(s.tip)));
        }
        CHECK(within_share(nearest, 5e-3, 1e-5));
    }
}
