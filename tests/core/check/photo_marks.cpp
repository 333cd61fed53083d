// Marks on a photo, edges near them, and the fly laid over them.

#include "core/check/photo_marks.h"
#include "core/check/photo_found.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"
#include "tests/support/dice.h"

#include <cmath>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// A smooth step from dark to light across a line through a place, as a lens blurs it.
GreyPicture edge_at(const glm::dvec2& place, double angle) {
    GreyPicture out;
    out.width = 120;
    out.height = 90;
    const glm::dvec2 across{std::cos(angle), std::sin(angle)};
    for (int y = 0; y < out.height; ++y) {
        for (int x = 0; x < out.width; ++x) {
            const double far = glm::dot(glm::dvec2(x, y) - place, across);
            out.grey.push_back(static_cast<float>(0.2 + 0.6 / (1.0 + std::exp(-far / 0.8))));
        }
    }
    return out;
}

/// A card with round corners, blurred over a pixel.
GreyPicture card_picture(const PhotoScale& scale, Dice& dice) {
    GreyPicture out;
    out.width = 900;
    out.height = 640;
    for (int y = 0; y < out.height; ++y) {
        for (int x = 0; x < out.width; ++x) {
            double sum = 0.0;
            for (const double d : {-0.5, 0.5}) {
                for (const double e : {-0.5, 0.5}) {
                    const glm::dvec2 q = scale.to_plane({x + d, y + e});
                    const double w = card_width.si, h = card_height.si, r = 3.18e-3;
                    const double dx = std::max({r - q.x, q.x - (w - r), 0.0});
                    const double dy = std::max({r - q.y, q.y - (h - r), 0.0});
                    sum += 0.25 * (std::hypot(dx, dy) <= r ? 0.9 : 0.35);
                }
            }
            out.grey.push_back(static_cast<float>(sum + dice.between(-0.03, 0.03)));
        }
    }
    return out;
}

} // namespace

TEST_CASE(
    "a mark snaps to a straight edge within a fifth of a pixel, whichever way the edge runs") {
    // Tolerance  the doc comment's "some tenths": bilinear samples of a smooth step
    Dice dice{11};
    for (int i = 0; i < 60; ++i) {
        const double angle = dice.between(0.0, 6.28);
        const glm::dvec2 place{dice.between(40, 80), dice.between(30, 60)};
        const GreyPicture picture = edge_at(place, angle);
        const glm::dvec2 near = place + glm::dvec2(dice.between(-4, 4), dice.between(-4, 4));
        const glm::dvec2 snapped = snap_to_edge(picture.view(), near, 10.0);
        const glm::dvec2 across{std::cos(angle), std::sin(angle)};
        CAPTURE(angle);
        CHECK(std::abs(glm::dot(snapped - place, across)) < 0.2);
    }
}

TEST_CASE("where nothing is to be seen a mark stays where it was set") {
    GreyPicture flat;
    flat.width = flat.height = 60;
    flat.grey.assign(3600, 0.5F);
    CHECK(snap_to_edge(flat.view(), {20.25, 31.5}, 12.0) == glm::dvec2(20.25, 31.5));
    const double nan = std::nan("");
    CHECK(std::isnan(snap_to_edge(flat.view(), {nan, 3.0}, 12.0).x));
    CHECK(snap_to_edge(flat.view(), {-5.0, 200.0}, 12.0) == glm::dvec2(-5.0, 200.0));
}

TEST_CASE("the corners of a card with round corners are found from its edges to half a pixel") {
    Dice dice{5};
    const std::array<glm::dvec2, 4> truth{
        {{100.3, 90.7}, {810.2, 120.4}, {790.9, 560.1}, {120.6, 530.8}}};
    const PhotoScale scale = PhotoScale::card(truth).value();
    const GreyPicture picture = card_picture(scale, dice);
    std::array<glm::dvec2, 4> rough = truth;
    for (glm::dvec2& p : rough) p += glm::dvec2(dice.between(-6, 6), dice.between(-6, 6));
    const auto found = card_by_edges(picture.view(), rough, 12.0);
    for (std::size_t i = 0; i < 4; ++i) {
        CAPTURE(i);
        CHECK(glm::length(found[i] - truth[i]) < 0.5);
    }
    SUBCASE("and left alone where no edge is seen") {
        GreyPicture flat;
        flat.width = 900;
        flat.height = 640;
        flat.grey.assign(900 * 640, 0.4F);
        CHECK(card_by_edges(flat.view(), rough, 12.0) == rough);
    }
}

TEST_CASE("marks keep every place through their text, and bad text leaves no mark") {
    PhotoMarks marks;
    marks.scale_by = ScaleBy::gape;
    marks.known = millimetres(9.7);
    marks.flipped = true;
    marks.choice = RibChoice::by_shift;
    Dice dice{3};
    for (std::size_t i = 0; i < photo_spots; i += 2) {
        marks.at[i] = glm::dvec2(dice.between(0, 8000), dice.between(0, 6000));
    }
    const PhotoMarks back = photo_marks_of(text_of(marks));
    CHECK(back.at == marks.at);
    CHECK(back.scale_by == marks.scale_by);
    CHECK(back.known == marks.known);
    CHECK(back.flipped);
    CHECK(back.choice == marks.choice);
    for (const char* bad :
         {"", ";;;", "eye=", "eye=1", "eye=a,b", "scale=;choice=9;known=x", "=1,2"}) {
        const PhotoMarks none_of_it = photo_marks_of(bad);
        for (const auto& place : none_of_it.at) CHECK_FALSE(place.has_value());
        CHECK(none_of_it.choice == RibChoice::unmade);
    }
}

TEST_CASE(
    "the recipe's fly laid over a photo meets eye and bend, its point on the side that is said") {
    const Pattern pattern = demo("sill-dun");
    const Tied record = tied(pattern, HookSize{14});
    const BaseRun& base = record.bases.front();
    PhotoMarks marks;
    marks.scale_by = ScaleBy::shank;
    for (const glm::dvec2 bend : {glm::dvec2{700.0, 350.0}, {120.0, 420.0}}) {
        marks[PhotoSpot::eye] = glm::dvec2{400.0, 300.0};
        marks[PhotoSpot::bend] = bend;
        const Result<PhotoScale> scale = scale_of(marks, base);
        REQUIRE(scale.ok());
        for (const bool flipped : {false, true}) {
            marks.flipped = flipped;
            const auto on = FlyOnPhoto::make(marks, scale.value(), base);
            REQUIRE(on);
            const auto at = [&](Length x) { return on->pixel(base.line.position(x)); };
            CHECK(glm::length(at({}) - *marks[PhotoSpot::eye]) < 1e-6);
            CHECK(glm::length(at(base.line.stations().bend) - bend) < 1e-6);
            // The tip of the point lies below the shank in the picture, or above it.
            const double middle = 0.5 * (300.0 + bend.y);
            CHECK((at(base.line.stations().tip).y > middle) == !flipped);
        }
    }
}

TEST_CASE("a scale by the hook's own shank carries the doubt of its typical length") {
    const Pattern pattern = demo("sill-dun");
    const Tied record = tied(pattern, HookSize{14});
    PhotoMarks marks;
    marks.scale_by = ScaleBy::shank;
    marks[PhotoSpot::eye] = glm::dvec2{100.0, 100.0};
    marks[PhotoSpot::bend] = glm::dvec2{500.0, 100.0};
    marks[PhotoSpot::tail_end] = glm::dvec2{900.0, 100.0};
    const PhotoFound found = find_on_photo({}, marks, {}, pattern, record, {});
    REQUIRE(found.scale);
    const auto& tail = found.lengths.parts[0];
    REQUIRE(tail);
    const Hook& hook = record.bases.front().hook;
    CHECK(within(tail->value.si, found.lengths.shank->value.si, 1e-9));
    const double own = (hook.shank.high - hook.shank.low) / hook.shank.value;
    CHECK((tail->high - tail->low) / tail->value >= 0.99 * own);
    marks[PhotoSpot::bend].reset();
    const PhotoFound without = find_on_photo({}, marks, {}, pattern, record, {});
    CHECK_FALSE(without.scale);
    CHECK(without.no_scale.find("mark the eye and the bend") != std::string::npos);
}
