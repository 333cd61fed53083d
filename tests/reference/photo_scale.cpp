// Lengths on a photo against an image library and a Monte Carlo.

#include "core/check/photo_scale.h"
#include "tests/support/close.h"
#include "tests/support/dice.h"

#include <cmath>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>
#include <numbers>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

// The corners of the independent script's picture of a card.
constexpr std::array<glm::dvec2, 4> corners{
    {{412.0, 310.0}, {1705.0, 402.0}, {1622.0, 1190.0}, {455.0, 1105.0}}};
constexpr glm::dvec2 from{900.0, 700.0}, to{1130.0, 715.0};

double bell(test::Dice& dice) { // the sum of twelve even numbers: near enough to normal
    double sum = -6.0;
    for (int i = 0; i < 12; ++i) sum += dice.between(0.0, 1.0);
    return sum;
}

} // namespace

TEST_CASE("a length in a card's plane is what an image library gives") {
    // Source     scikit-image's ProjectiveTransform and a singular value decomposition, which agree to
    //            9 digits: 15.92091 mm; the scale of the top edge alone would say 15.220, 4.4 % less
    // Tolerance  half the last digit
    const PhotoScale card = PhotoScale::card(corners).value();
    CHECK(within(in_millimetres(card.distance(from, to).value), 15.92091, 6e-6));
    const PhotoScale edge = PhotoScale::two_points(corners[0], corners[1], card_width).value();
    CHECK(within(in_millimetres(edge.distance(from, to).value), 15.220, 6e-4));
}

TEST_CASE("the doubt of a length is that of a Monte Carlo") {
    // Source     the same script: corners 1 px, ends 0.7 px: 0.0697 mm by derivatives, 0.0692 by 4,000
    //            trials
    // Tolerance  half the last digit of the first, and 0.7 % of the card's own size beside it
    const PhotoScale card = PhotoScale::card(corners).value();
    PhotoDoubt doubt;
    doubt.scale_px = 1.0;
    doubt.point_px = 0.7;
    const Estimate<Length> e = card.distance(from, to, doubt);
    const double sd = in_millimetres(e.high - e.value) / 1.959964;
    const double own = 0.0007 * in_millimetres(e.value);
    CHECK(within(sd, std::hypot(0.0697, own), 1.2e-4));
    // The same by our own trials: 3,000 of them know a standard deviation to 1.3 %.
    test::Dice dice{9};
    double sum = 0.0, squares = 0.0;
    constexpr int trials = 3000;
    for (int i = 0; i < trials; ++i) {
        std::array<glm::dvec2, 4> moved = corners;
        for (glm::dvec2& c : moved) c += glm::dvec2{bell(dice), bell(dice)};
        const PhotoScale s = PhotoScale::card(moved).value();
        const double mm =
            1e3 * glm::length(s.to_plane(to + 0.7 * glm::dvec2{bell(dice), bell(dice)}) -
                              s.to_plane(from + 0.7 * glm::dvec2{bell(dice), bell(dice)}));
        sum += mm;
        squares += mm * mm;
    }
    const double mean = sum / trials;
    CHECK(within_share(std::sqrt(squares / trials - mean * mean), 0.0697, 0.04));
}

TEST_CASE("two points and a segment have the doubt of the worked example") {
    // Source     worked in the script: a ruler of 20 mm over 800 px, 150 px measured, 1 px at each end:
    //            0.96 %
    // Tolerance  half the last digit
    const PhotoScale ruler =
        PhotoScale::two_points({100.0, 100.0}, {900.0, 100.0}, millimetres(20.0)).value();
    const Estimate<Length> e = ruler.distance({200.0, 300.0}, {350.0, 300.0});
    CHECK(within(in_millimetres(e.value), 3.75, 1e-9));
    CHECK(within((e.high - e.value) / e.value / 1.959964, 0.0096, 6e-5));
}

TEST_CASE(
    "a card's own corners are its size, whatever the perspective, and the way back is exact") {
    test::Dice dice{31};
    for (int i = 0; i < 200; ++i) {
        std::array<glm::dvec2, 4> c = corners;
        for (glm::dvec2& p : c) p += glm::dvec2{dice.between(-80, 80), dice.between(-80, 80)};
        const Result<PhotoScale> card = PhotoScale::card(c);
        REQUIRE(card.ok());
        // Tolerance: rounding of an 8 by 8 system on numbers of some hundred.
        CHECK(within(card.value().distance(c[0], c[1]).value.si, card_width.si, 1e-10));
        CHECK(within(card.value().distance(c[1], c[2]).value.si, card_height.si, 1e-10));
        const glm::dvec2 p{dice.between(400, 1600), dice.between(300, 1100)};
        CHECK(glm::length(card.value().to_pixel(card.value().to_plane(p)) - p) < 1e-6);
    }
}

TEST_CASE(
    "a card that begins with its short side is turned, and one seen from behind is mirrored") {
    const std::array<glm::dvec2, 4> short_first{corners[1], corners[2], corners[3], corners[0]};
    CHECK(within(in_millimetres(PhotoScale::card(short_first).value().distance(from, to).value),
                 15.92091, 6e-6));
    const std::array<glm::dvec2, 4> other_way{corners[1], corners[0], corners[3], corners[2]};
    CHECK(within(in_millimetres(PhotoScale::card(other_way).value().distance(from, to).value),
                 15.92091, 6e-6));
}

TEST_CASE("what gives no scale is said plainly") {
    const auto card = [](std::array<glm::dvec2, 4> c) { return PhotoScale::card(c); };
    CHECK_FALSE(card({corners[0], corners[0], corners[2], corners[3]}).ok());
    CHECK_FALSE(card({corners[0], corners[2], corners[1], corners[3]}).ok()); // crossed
    CHECK_FALSE(card({{{0, 0}, {100, 0}, {200, 0}, {0, 100}}}).ok());         // three in a line
    CHECK_FALSE(card({{{0, 0}, {std::nan(""), 0}, {200, 100}, {0, 100}}}).ok());
    CHECK_FALSE(PhotoScale::two_points({5, 5}, {5, 5}, millimetres(10.0)).ok());
    CHECK_FALSE(PhotoScale::two_points({5, 5}, {500, 5}, Length{}).ok());
    CHECK_FALSE(PhotoScale::two_points({5, 5}, {500, 5}, Length{std::nan("")}).ok());
}
