// What a field of an editor makes of what somebody types into it.
#include "core/recipe/measure.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

const std::vector<std::string> parts{"tail", "body"};

TypedAmount typed(std::string_view text, AmountOf measure) {
    TypedAmount t = type_amount(text, measure, parts);
    CHECK(t.amount.text == text); // the words are never changed
    return t;
}

} // namespace

TEST_CASE("turns and pieces are read back as a number or a range") {
    CHECK(typed("6", AmountOf::turns).understood == "6 turns");
    CHECK(typed("10 or 12", AmountOf::count).understood == "10 to 12, 10 taken");
    CHECK(typed("about 12 wraps", AmountOf::turns).understood == "about 12 turns");
    CHECK(typed("1 turn", AmountOf::turns).understood == "1 turn");
}

TEST_CASE("shares are read back as shares") {
    CHECK(typed("half the shank", AmountOf::length).understood == "half the shank");
    CHECK(typed("1 1/2 gape", AmountOf::length).understood == "1.5 of the gape");
    CHECK(typed("same as body", AmountOf::length).understood == "as body");
}

TEST_CASE("words stay words, and nothing is said against them") {
    for (const std::string_view text : {"sparse", "to taste", "colour of choice"}) {
        const TypedAmount t = typed(text, AmountOf::count);
        CHECK_FALSE(t.number);
        CHECK_FALSE(t.error);
        CHECK(t.understood == "a word, no number");
    }
    CHECK(type_amount(" ", AmountOf::turns, parts).understood == "nothing written");
}

TEST_CASE("a bare .015 and 7/64 of a length are inches, beside the words") {
    // Source  1 in = 25.4 mm exactly: .015 in is 0.381 mm, 7/64 in is 2.778125 mm
    const TypedAmount wire = typed(".015", AmountOf::length);
    CHECK(wire.amount.is == ".015 in");
    CHECK(within(wire.amount.reading.value, 0.381e-3, 1e-15));
    CHECK(wire.understood == "0.381 mm");
    const TypedAmount bead = typed("7/64", AmountOf::length);
    CHECK(bead.amount.is == "7/64 in");
    CHECK(within(bead.amount.reading.value, 2.778125e-3, 1e-15));
}

TEST_CASE("a bare 2.8 of a length is not guessed, and the words stay") {
    const TypedAmount t = typed("2.8", AmountOf::length);
    REQUIRE(t.error);
    CHECK(t.understood.find("no unit") != std::string::npos);
    CHECK_FALSE(t.number);
    CHECK_FALSE(typed("5 turns", AmountOf::length).number);
}

TEST_CASE("thread and hook sizes are read back in their own units") {
    CHECK(typed("70 den", AmountOf::linear_density).understood == "7.778 tex");
    CHECK(typed("2/0", AmountOf::size).understood == "hook size 2/0");
    CHECK(typed("00", AmountOf::size).error.has_value()); // asks for the era
    CHECK(typed("20 min", AmountOf::duration).understood == "20 min");
}
