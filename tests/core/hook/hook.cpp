#include "core/hook/hook.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace wrapwright;
using wrapwright::test::within_share;

namespace {

constexpr HookFamily families[] = {HookFamily::dry,      HookFamily::wet,    HookFamily::long_shank,
                                   HookFamily::streamer, HookFamily::curved, HookFamily::jig};

Hook typical(HookFamily family, int number) {
    const Result<Hook> hook = typical_hook(family, {number});
    REQUIRE(hook.ok());
    return hook.value();
}

Hook measured(Length shank, Length gape, Length wire) {
    Hook h;
    h.shank = exactly(shank, Origin::measured);
    h.gape = exactly(gape, Origin::measured);
    h.wire = exactly(wire, Origin::measured);
    return h;
}

} // namespace

TEST_CASE("a smaller number is a larger hook in every column") {
    for (const HookFamily f : families) {
        CAPTURE(name(f));
        for (int n = 6; n < 14; ++n) {
            const Hook large = typical(f, n), small = typical(f, n + 1);
            CHECK(large.shank.value > small.shank.value);
            CHECK(large.gape.value > small.gape.value);
            CHECK(large.wire.value > small.wire.value);
        }
    }
}

TEST_CASE("an odd number lies at the geometric mean of its even neighbours") {
    // Tolerance  rounding of pow, a few 1e-16
    for (const HookFamily f : families) {
        const Length a = typical(f, 12).shank.value, b = typical(f, 14).shank.value;
        CHECK(within_share(typical(f, 13).shank.value.si, std::sqrt(a.si * b.si), 1e-14));
    }
}

TEST_CASE("a typical hook says that it is typical and how far makers differ") {
    const Hook dry = typical(HookFamily::dry, 14);
    CHECK(dry.shank.origin == Origin::typical);
    CHECK(dry.size == HookSize{14});
    CHECK(dry.label == "#14 dry");
    CHECK(within_share(dry.shank.high / dry.shank.value, 1.12, 1e-12));
    CHECK(within_share(dry.wire.low / dry.wire.value, 0.90, 1e-12));
    const Hook jig = typical(HookFamily::jig, 14);
    CHECK(within_share(jig.gape.high / jig.gape.value, 1.20, 1e-12));
}

TEST_CASE("a number outside the column is refused with the column's ends") {
    for (const HookFamily f : families) {
        const Result<Hook> huge = typical_hook(f, {-3});
        REQUIRE_FALSE(huge.ok());
        CHECK(huge.error().code == ErrorCode::out_of_range);
        CHECK(huge.error().remedy.find(f == HookFamily::jig ? "6 to 20" : "4 to ") !=
              std::string::npos);
        CHECK_FALSE(typical_hook(f, {40}).ok());
    }
}

TEST_CASE("only a jig hook has a leg and a jig bend") {
    for (const HookFamily f : families) {
        const Hook h = typical(f, 10);
        CHECK((h.jig_angle.value.si > 0.0) == (f == HookFamily::jig));
        CHECK((h.jig_leg.value.si > 0.0) == (f == HookFamily::jig));
        CHECK((h.jig_radius.value.si > 0.0) == (f == HookFamily::jig));
    }
}

TEST_CASE("what is measured is kept and the rest filled in from it") {
    const Hook given = measured(millimetres(8.6), millimetres(4.5), millimetres(0.40));
    const Result<Hook> filled = complete_hook(given);
    REQUIRE(filled.ok());
    const Hook& h = filled.value();
    CHECK(h.shank == given.shank);
    CHECK(h.gape == given.gape);
    CHECK(h.wire == given.wire);
    CHECK(h.eye_length.origin == Origin::typical);
    CHECK(h.barb_height.value.si > 0.0);

    const Result<Hook> twice = complete_hook(h);
    REQUIRE(twice.ok());
    CHECK(twice.value().eye_length == h.eye_length);
    CHECK(twice.value().barb_height == h.barb_height);
}

TEST_CASE("one measured length gives the typical hook that has it") {
    // Tolerance  log and pow there and back, a few 1e-16
    for (const HookFamily f : families) {
        CAPTURE(name(f));
        const Hook whole = typical(f, 12);
        for (const auto member : {&Hook::shank, &Hook::gape, &Hook::wire}) {
            Hook part;
            part.family = f;
            part.*member = exactly((whole.*member).value, Origin::measured);
            const Result<Hook> filled = complete_hook(part);
            REQUIRE(filled.ok());
            CHECK(within_share(filled.value().shank.value.si, whole.shank.value.si, 1e-13));
            CHECK(within_share(filled.value().gape.value.si, whole.gape.value.si, 1e-13));
            CHECK(within_share(filled.value().wire.value.si, whole.wire.value.si, 1e-13));
        }
    }
}

TEST_CASE("a gape says more than the number on the packet") {
    // A "26" with the gape of a 20 has been published: the measured gape decides the rest.
    Hook h;
    h.size = HookSize{24};
    h.gape = exactly(millimetres(2.7), Origin::measured);
    const Result<Hook> filled = complete_hook(h);
    REQUIRE(filled.ok());
    CHECK(within_share(filled.value().wire.value.si, 0.36e-3, 1e-12));
}

TEST_CASE("a stated barb of nothing is a barbless hook, an unsaid one has a barb") {
    Hook h = measured(millimetres(8.0), millimetres(4.0), millimetres(0.45));
    // Common practice, no source: a raised barb stands a fifth to a half of the wire above it.
    CHECK(complete_hook(h).value().barb_height.value > 0.2 * h.wire.value);
    CHECK(complete_hook(h).value().barb_height.value < 0.5 * h.wire.value);
    h.barb_height = exactly(Length{}, Origin::stated);
    CHECK(complete_hook(h).value().barb_height.value.si == 0.0); // exact: given is never changed
}

TEST_CASE("absurd numbers about a hook are refused by name") {
    const Hook good = measured(millimetres(8.0), millimetres(4.0), millimetres(0.45));
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    for (const double bad : {-0.001, 5.0, nan, infinity}) {
        CAPTURE(bad);
        const std::pair<Estimate<Length> Hook::*, const char*> members[] = {
            {&Hook::shank, "shank"},
            {&Hook::gape, "gape"},
            {&Hook::wire, "wire"},
            {&Hook::eye_length, "eye_length"},
            {&Hook::eye_diameter, "eye_diameter"},
            {&Hook::barb_height, "barb_height"},
            {&Hook::jig_leg, "jig_leg"},
            {&Hook::jig_radius, "jig_radius"},
        };
        for (const auto& [member, key] : members) {
            Hook h = good;
            h.*member = exactly(metres(bad), Origin::measured);
            const Result<Hook> result = complete_hook(h);
            REQUIRE_FALSE(result.ok());
            CHECK(result.error().code == ErrorCode::out_of_range);
            CHECK(result.error().place.key == key);
        }
        Hook h = good;
        h.eye_angle = radians(bad);
        CHECK(complete_hook(h).ok() == (bad == -0.001));
    }
    Hook no_wire = good;
    no_wire.wire = exactly(Length{}, Origin::measured);
    CHECK_FALSE(complete_hook(no_wire).ok());
    CHECK_FALSE(complete_hook(Hook{}).ok());
}

TEST_CASE("a shape that is not straight decides the family, and the other way round") {
    Hook h = measured(millimetres(8.0), millimetres(4.5), millimetres(0.5));
    h.shape = HookShape::jig;
    CHECK(complete_hook(h).value().family == HookFamily::jig);
    h.shape = HookShape::straight;
    h.family = HookFamily::curved;
    CHECK(complete_hook(h).value().shape == HookShape::curved);
}

TEST_CASE("mass grows with the cube when every length of a hook is scaled") {
    // Tolerance  the curved hook's bend is found by bisection to 1e-15 of the gape
    for (const HookFamily f : families) {
        CAPTURE(name(f));
        Hook h = typical(f, 12);
        const Estimate<Mass> one = hook_mass(h);
        for (const auto member : {&Hook::shank, &Hook::gape, &Hook::wire, &Hook::eye_length,
                                  &Hook::eye_diameter, &Hook::jig_leg, &Hook::jig_radius}) {
            Estimate<Length>& e = h.*member;
            e = {2.0 * e.value, 2.0 * e.low, 2.0 * e.high, e.origin};
        }
        CHECK(within_share(hook_mass(h).value.si, 8.0 * one.value.si, 1e-12));
        CHECK(one.low < one.value);
        CHECK(one.value < one.high);
    }
}

TEST_CASE("a measured hook's mass is surer than a typical one's") {
    const Hook dry = typical(HookFamily::dry, 14);
    Hook own = measured(dry.shank.value, dry.gape.value, dry.wire.value);
    own = complete_hook(own).value();
    const Estimate<Mass> a = hook_mass(own), b = hook_mass(dry);
    CHECK(within_share(a.value.si, b.value.si, 1e-12));
    CHECK(within_share(a.high / a.value, 1.25, 1e-12));
    CHECK(b.high > a.high);
    // Wire counts twice, as its section does: 0.25, twice 0.10 and a share of 0.12 together.
    CHECK(relative_spread(b) > std::hypot(0.25, 0.20));
    CHECK(relative_spread(b) < std::hypot(0.25, 0.20, 0.12));
    CHECK(b.origin == Origin::typical);
    CHECK(a.origin == Origin::derived);
}
