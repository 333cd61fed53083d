#include "core/geometry/fly/colour.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using test::within;

TEST_CASE("sRGB becomes linear by the published curve") {
    // Source     IEC 61966-2-1: ((v + 0.055) / 1.055)^2.4 above 0.04045, v / 12.92 below;
    //            128/255 gives 0.215861, 10/255 gives 0.003035, worked out by hand calculator
    // Tolerance  1e-5: floats, and six digits of the expected values
    const Colour c = linear_colour(0xFF800A);
    CHECK(within(c[0], 1.0, 1e-6));
    CHECK(within(c[1], 0.215861, 1e-5));
    CHECK(within(c[2], 0.003035, 1e-5));
}

TEST_CASE("a tint is read as it is, in either case") {
    CHECK(colour_of_words("#B87333") == colour_of_words("#b87333"));
    CHECK(colour_of_words("#b87333") == linear_colour(0xB87333));
    CHECK_FALSE(colour_of_words("#b8733").has_value());
    CHECK_FALSE(colour_of_words("#b8733g").has_value());
}

TEST_CASE("words that name no colour give none") {
    CHECK_FALSE(colour_of_words("").has_value());
    CHECK_FALSE(colour_of_words("colour of choice").has_value());
    CHECK_FALSE(colour_of_words("redder").has_value()); // red is not a word of its own there
}

TEST_CASE("the last of two colour words weighs more") {
    const Colour olive = *colour_of_words("olive");
    const Colour brown = *colour_of_words("brown");
    const auto nearer = [](const Colour& c, const Colour& a, const Colour& b) {
        const auto off = [&](const Colour& x) {
            return std::abs(c[0] - x[0]) + std::abs(c[1] - x[1]) + std::abs(c[2] - x[2]);
        };
        return off(a) < off(b);
    };
    CHECK(nearer(*colour_of_words("brown olive"), olive, brown));
    CHECK(nearer(*colour_of_words("Olive Brown"), brown, olive));
}

TEST_CASE("a phrase of its own wins over its words, and modifiers change what follows") {
    CHECK(colour_of_words("black nickel") != colour_of_words("black"));
    CHECK((*colour_of_words("dark olive"))[1] < (*colour_of_words("olive"))[1]);
    CHECK((*colour_of_words("pale olive"))[1] > (*colour_of_words("olive"))[1]);
    const Colour hot = *colour_of_words("fluorescent orange");
    CHECK(hot[0] > (*colour_of_words("orange"))[0]);
    for (const float channel : hot) CHECK((channel >= 0.0F && channel <= 1.0F));
}

TEST_CASE("a material looks like its tint, else its word, else its substance, else its kind") {
    RecipeMaterial m;
    m.kind = MaterialKind::bead;
    m.substance = Substance::tungsten;
    const Colour bare = colour_of(m);
    m.substance = Substance::brass;
    CHECK(colour_of(m) != bare);
    m.colour = "silver";
    CHECK(colour_of(m) == *colour_of_words("silver"));
    m.tint = "#102030";
    CHECK(colour_of(m) == linear_colour(0x102030));
    m = {};
    m.kind = MaterialKind::wire;
    m.text = "fine copper wire";
    CHECK(colour_of(m) == *colour_of_words("copper"));
}
