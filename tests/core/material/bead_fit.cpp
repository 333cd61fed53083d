#include "core/material/bead.h"
#include "tests/support/bead_builder.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>
#include <numbers>

using namespace wrapwright;
using wrapwright::test::countersunk;
using wrapwright::test::drilled;
using wrapwright::test::slotted;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

double needed_mm(double wire, double radius, double angle, double length) {
    return in_millimetres(
        bore_needed(millimetres(wire), millimetres(radius), degrees(angle), millimetres(length)));
}

double needed_mm(const Bead& bead, double wire, double radius, double angle) {
    return in_millimetres(
        bead_bore_needed(bead, millimetres(wire), millimetres(radius), degrees(angle)));
}

Hook hook_of(double shank_mm, double gape_mm, double wire_mm, double barb_mm) {
    Hook h;
    h.shank = exactly(millimetres(shank_mm), Origin::measured);
    h.gape = exactly(millimetres(gape_mm), Origin::measured);
    h.wire = exactly(millimetres(wire_mm), Origin::measured);
    h.barb_height = exactly(millimetres(barb_mm), Origin::measured);
    return complete_hook(h).value();
}

constexpr Length clearance = millimetres(0.05);

} // namespace

TEST_CASE("no bend asks for a bore narrower than its wire") {
    for (const double wire : {0.3, 0.5, 0.8}) {
        for (const double radius : {0.5 * wire, wire, 2.0, 5.0}) {
            for (const double angle : {0.0, 30.0, 60.0, 90.0, 180.0}) {
                for (const double length : {0.0, 1.0, 2.5, 4.0}) {
                    // Tolerance  cancelling: 1e-15 mm of radii of 5 mm
                    CHECK(needed_mm(wire, radius, angle, length) >= wire - 1e-13);
                }
            }
        }
    }
}

TEST_CASE("a straight wire and a bore without length need no more than the wire") {
    CHECK(within(needed_mm(0.5, 1.0, 0.0, 2.5), 0.5, 1e-12));
    CHECK(within(needed_mm(0.5, 1.0, 60.0, 0.0), 0.5, 1e-12));
    CHECK(needed_mm(0.5, 1.0, 0.01, 2.5) < 0.501);
}

TEST_CASE("a bore must grow with its length and with the angle, and shrink with the radius") {
    for (const double angle : {20.0, 45.0, 60.0, 90.0, 150.0}) {
        for (double x = 0.6; x < 3.0; x += 0.2) {
            CHECK(needed_mm(0.5, 1.5, angle, x + 0.1) > needed_mm(0.5, 1.5, angle, x));
            const double tighter = needed_mm(0.5, x, angle, 2.0);
            const double wider = needed_mm(0.5, x + 0.1, angle, 2.0);
            CHECK((wider < tighter || wider == 2.5)); // 2.5: wire and length, no way round at all
        }
    }
    for (double angle = 5.0; angle < 175.0; angle += 5.0) {
        CHECK(needed_mm(0.5, 1.0, angle + 5.0, 2.0) >= needed_mm(0.5, 1.0, angle, 2.0));
    }
}

TEST_CASE(
    "the bore over a long bend and over its legs meet where the bend is as long as the bore") {
    // Tolerance  1e-6 mm either side of the change of branch
    const double inner = 1.0 - 0.25, length = 2.0 * inner * std::sin(degrees(30.0).si);
    CHECK(within(needed_mm(0.5, 1.0, 60.0, length - 1e-7), needed_mm(0.5, 1.0, 60.0, length + 1e-7),
                 1e-6));
}

TEST_CASE("a hairpin lets no bead round that is longer than its inside") {
    CHECK(needed_mm(0.5, 1.0, 180.0, 1.4) < 1.25);
    CHECK(needed_mm(0.5, 1.0, 180.0, 1.6) > 2.0);
}

TEST_CASE("the bore needed scales with every length") {
    // Tolerance  the search along the wire stops at 1e-5 of the bead's length
    CHECK(
        within_share(needed_mm(1.0, 2.0, 60.0, 4.0), 2.0 * needed_mm(0.5, 1.0, 60.0, 2.0), 1e-13));
    const Bead one = countersunk(2.8, 0.95, 1.7, degrees(15.0));
    const Bead two = countersunk(5.6, 1.9, 3.4, degrees(15.0));
    CHECK(within_share(needed_mm(two, 1.0, 1.8, 60.0), 2.0 * needed_mm(one, 0.5, 0.9, 60.0), 1e-6));
}

TEST_CASE("a countersink and a slot help a bead over a bend, a slot too narrow does not") {
    const double plain = needed_mm(drilled(2.8, 0.95), 0.5, 0.9, 60.0);
    CHECK(needed_mm(countersunk(2.8, 0.95, 1.7, degrees(15.0)), 0.5, 0.9, 60.0) < plain);
    CHECK(needed_mm(slotted(2.8, 0.95, 0.55, -0.3), 0.5, 0.9, 60.0) < plain);
    CHECK(needed_mm(slotted(2.8, 0.95, 0.54, -0.3), 0.5, 0.9, 60.0) == plain); // the same branch
    const double all = needed_mm(slotted(2.8, 0.95, 0.8, -1.4), 0.5, 0.9, 60.0);
    CHECK(within(all, 0.5, 1e-12)); // slotted from end to end: only the wire is left
}

TEST_CASE("a countersink that hardly opens asks for what a plain bore of its length does") {
    // Tolerance  the mouth is 0.002 mm wider than the bore
    const Bead bead = countersunk(2.8, 0.95, 0.952, degrees(0.05));
    const double plain = needed_mm(0.5, 0.9, 60.0, in_millimetres(bore_length(bead)));
    CHECK(within(needed_mm(bead, 0.5, 0.9, 60.0), plain, 2e-3));
}

TEST_CASE("a bead on a straight shank takes half its own thickness from the gape") {
    // Source     geometry of a bead centred on the wire: gape - (bead - wire) / 2
    const Hook hook = hook_of(10.0, 5.0, 0.5, 0.0);
    const BeadFit fit = bead_fit(drilled(3.0, 1.2), hook, clearance);
    CHECK(within(in_millimetres(fit.gape_left), 3.75, 1e-12));
    CHECK(within(fit.gape_share, 0.75, 1e-12));
    CHECK(fit.jig_bend.verdict == Passage::passes);
}

TEST_CASE("wire and barb stop a bead at once, a bend only beyond the clearance") {
    const auto verdict = [](double bore_mm) {
        return bead_fit(countersunk(3.0, bore_mm, 1.9, degrees(20.0)), hook_of(10.0, 5.0, 0.5, 0.2),
                        clearance);
    };
    CHECK(verdict(0.499).wire.verdict == Passage::sticks);
    CHECK(verdict(0.54).wire.verdict == Passage::tight);
    CHECK(verdict(0.56).wire.verdict == Passage::passes);
    CHECK(verdict(0.69).barb.verdict == Passage::sticks);
    CHECK(verdict(0.72).barb.verdict == Passage::tight);
    CHECK(verdict(0.76).barb.verdict == Passage::passes);

    // A straight bore, so that what is needed is known: 2.75 - sqrt(2.25^2 - h^2 / 4).
    const Hook hook = hook_of(10.0, 5.0, 0.5, 0.0);
    const Bead bead = drilled(3.0, 1.02);
    const double h = in_millimetres(bore_length(bead));
    const double needed = 2.75 - std::sqrt(2.25 * 2.25 - h * h / 4.0);
    const BeadFit fit = bead_fit(bead, hook, clearance);
    CHECK(within(in_millimetres(fit.bend.needed), needed, 1e-12));
    CHECK(within(in_millimetres(fit.bend.margin()), 1.02 - needed, 1e-12));
    CHECK(fit.bend.verdict == Passage::tight);
    CHECK(bead_fit(drilled(3.0, 0.9), hook, clearance).bend.verdict == Passage::sticks);
    CHECK(bead_fit(drilled(3.0, 1.2), hook, clearance).bend.verdict == Passage::passes);
}

TEST_CASE("a bore wider than the eye lets the bead fall off in front") {
    Hook hook = hook_of(10.0, 5.0, 0.5, 0.0);
    hook.eye_diameter = exactly(millimetres(1.4), Origin::measured);
    CHECK(bead_fit(drilled(3.5, 1.5), hook, clearance).eye.verdict == Passage::sticks);
    CHECK(bead_fit(drilled(3.5, 1.37), hook, clearance).eye.verdict == Passage::tight);
    CHECK(bead_fit(drilled(3.5, 1.2), hook, clearance).eye.verdict == Passage::passes);
}

TEST_CASE("only a jig hook's bend is asked for twice") {
    Hook jig = typical_hook(HookFamily::jig, {14}).value();
    const Bead bead = drilled(2.8, 0.95);
    const BeadFit fit = bead_fit(bead, jig, clearance);
    const double needed = needed_mm(bead, 0.5, 1.8 * 0.5, 60.0);
    CHECK(within(in_millimetres(fit.jig_bend.needed), needed, 1e-9));
    CHECK(fit.jig_bend.verdict == Passage::sticks);
    jig.jig_angle = exactly(degrees(45.0));
    CHECK(bead_fit(bead, jig, clearance).jig_bend.needed < fit.jig_bend.needed);
}
