#include "core/check/proportions.h"

#include "tests/support/close.h"
#include "tests/support/fly_builder.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

const ProportionRow& row_of(std::string_view standard, FlyKind kind, Measured part) {
    const auto rows = proportion_rows();
    const auto it = std::find_if(rows.begin(), rows.end(), [&](const ProportionRow& r) {
        return r.standard == standard && r.kind == kind && r.part == part;
    });
    REQUIRE(it != rows.end());
    return *it;
}

double target_mm(std::string_view standard, FlyKind kind, Measured part) {
    const Run1 fly = run(good_nymph());
    return in_millimetres(target_of(row_of(standard, kind, part), fly.pattern, fly.tied).value);
}

} // namespace

TEST_CASE("the standards keep to what is published, and to their quarrel about a dry fly's tail") {
    // Source     a club's course booklet: tail 1.0 shank, hackle 1.5 gape; a seller's chart: tail 1.25
    //            bodies; a collector's classical sheets: tail 1.5 bodies, hackle 0.75 body
    // Tolerance  exact: the test hook has a shank of 8.4 and a gape of 4.3 mm
    CHECK(within(target_mm("club course", FlyKind::dry, Measured::tail), 8.4, 1e-9));
    CHECK(within(target_mm("club course", FlyKind::dry, Measured::hackle), 1.5 * 4.3, 1e-9));
    const Run1 fly = run(good_nymph());
    const double body = in_millimetres(own_measure(fly.pattern, fly.tied, Measured::body)->length);
    CHECK(within(target_mm("chart", FlyKind::dry, Measured::tail), 1.25 * body, 1e-9));
    CHECK(within(target_mm("classical", FlyKind::dry, Measured::tail), 1.5 * body, 1e-9));
    CHECK(within(target_mm("classical", FlyKind::dry, Measured::hackle), 0.75 * body, 1e-9));
    // An instructor: a nymph's tail of a third to half a shank.
    const Estimate<Length> tail =
        target_of(row_of("instructor", FlyKind::nymph, Measured::tail), fly.pattern, fly.tied);
    CHECK(within(in_millimetres(tail.low), 8.4 / 3.0, 1e-9));
    CHECK(within(in_millimetres(tail.high), 8.4 / 2.0, 1e-9));
}

TEST_CASE("a fly is measured from its record") {
    const Run1 fly = run(good_nymph());
    const auto tail = own_measure(fly.pattern, fly.tied, Measured::tail);
    REQUIRE(tail.has_value());
    CHECK(within(in_millimetres(tail->length), 4.0, 1e-9)); // as the recipe says
    CHECK(tail->step == 2);
    CHECK_FALSE(own_measure(fly.pattern, fly.tied, Measured::wing).has_value());
    const auto body = own_measure(fly.pattern, fly.tied, Measured::body);
    REQUIRE(body.has_value());
    CHECK(body->length.si > 4e-3);
    CHECK(body->length.si < 8.4e-3);
}

TEST_CASE("a length is right within its tolerance, a little off within twice it, too far beyond") {
    const Estimate<Length> target{millimetres(5.0), millimetres(4.5), millimetres(5.5),
                                  Origin::measured};
    CHECK(fit_words(fit_of(target, millimetres(5.5))) == "right");
    CHECK(fit_words(fit_of(target, millimetres(5.6))) == "a little long by 0.6 mm");
    CHECK(fit_words(fit_of(target, millimetres(6.1))) == "too long by 1.1 mm");
    CHECK(fit_words(fit_of(target, millimetres(4.2))) == "a little short by 0.8 mm");
    CHECK(fit_words(fit_of(target, millimetres(3.0))) == "too short by 2 mm");
}

TEST_CASE("every kind has a standard, every row a source, and words of a class find their kind") {
    for (int k = 0; k <= static_cast<int>(FlyKind::emerger); ++k) {
        CHECK_FALSE(standards_for(static_cast<FlyKind>(k)).empty());
    }
    for (const ProportionRow& row : proportion_rows()) {
        CHECK_FALSE(row.source.empty());
        CHECK(row.shanks + row.gapes + row.bodies > 0.0);
    }
    CHECK(fly_kind("jig nymph") == FlyKind::jig_nymph);
    CHECK(fly_kind("marabou streamer") == FlyKind::woolly);
    CHECK(fly_kind("deer-hair sedge") == FlyKind::sedge);
    CHECK(fly_kind("dry") == FlyKind::dry);
    CHECK_FALSE(fly_kind("something else").has_value());
}

TEST_CASE("the spread of a batch names its worst fly and says whether they are twins") {
    // Hand-worked: mean 5.0, deviations 0.1 0.0 -0.1 0.4 -0.4: sd sqrt(0.34 / 4).
    const BatchSpread s = batch_spread({5.1, 5.0, 4.9, 5.4, 4.6}, 0.10);
    CHECK(within(s.mean, 5.0, 1e-12));
    CHECK(within(s.sd, 0.29154759, 1e-8));
    CHECK(s.worst == 3);
    CHECK(within(s.worst_off, 0.08, 1e-12));
    CHECK(s.twins);
    CHECK_FALSE(batch_spread({5.1, 5.0, 4.9, 5.4, 4.6}, 0.05).twins);
    CHECK(batch_spread({}, 0.1).worst == none);
    CHECK(batch_spread({3.0}, 0.1).sd == 0.0);
}
