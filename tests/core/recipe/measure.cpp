// What a field of an editor makes of what somebody types into it.
#include "core/recipe/measure.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

const std::vector<std::string> parts{"tail", "body"};

TypedAmount typed(std::string_view text, Measure measure) {
    TypedAmount t = type_amount(text, measure, parts);
    CHECK(t.amount.text == text); // the words are never changed
    return t;
}

} // namespace

TEST_CASE("turns and pieces are read back as a number or a range") {
    CHECK(typed("6", Measure::turns).understood == "6 turns");
    CHECK(typed("10 or 12", Measure::count).understood == "10 to 12; works with 10");
    CHECK(typed("about 12 wraps", Measure::turns).understood ==
          "10.8 to 13.2 turns; works with 12");
    CHECK(typed("1 turn", Measure::turns).understood == "1 turn");
}

TEST_CASE("shares are read back as shares") {
    CHECK(typed("half the shank", Measure::length).understood == "0.5 x the shank");
    CHECK(typed("1 1/2 gape", Measure::length).understood == "1.5 x the gape");
    CHECK(typed("same as body", Measure::length).understood == "1 x the body");
}

TEST_CASE("words stay words, and nothing is said against them") {
    for (const std::string_view text : {"sparse", "to taste", "colour of choice"}) {
        const TypedAmount t = typed(text, Measure::count);
        CHECK_FALSE(t.number);
        CHECK_FALSE(t.error);
        CHECK(t.understood == "kept as a word");
    }
    CHECK(type_amount(" ", Measure::turns, parts).understood == "nothing written");
}

TEST_CASE("a bare .015 and 7/64 of a length are inches, beside the words") {
    // Source  1 in = 25.4 mm exactly: .015 in is 0.381 mm, 7/64 in is 2.778125 mm
    const TypedAmount wire = typed(".015", Measure::length);
    CHECK(wire.amount.is == ".015 in");
    CHECK(within(wire.amount.reading.value, 0.381e-3, 1e-15));
    CHECK(wire.understood == "0.381 mm (0.015 in)");
    const TypedAmount bead = typed("7/64", Measure::length);
    CHECK(bead.amount.is == "7/64 in");
    CHECK(within(bead.amount.reading.value, 2.778125e-3, 1e-15));
}

TEST_CASE("a bare 2.8 of a length is not guessed, and the words stay") {
    const TypedAmount t = typed("2.8", Measure::length);
    REQUIRE(t.error);
    CHECK(t.understood.find("no unit") != std::string::npos);
    CHECK_FALSE(t.number);
    CHECK_FALSE(typed("5 turns", Measure::length).number);
}

TEST_CASE("thread and hook sizes are read back in their own units") {
    CHECK(typed("70 den", Measure::linear_density).understood == "70 den (7.78 tex)");
    CHECK(typed("2/0", Measure::size).understood == "hook size 2/0");
    CHECK(typed("00", Measure::size).error.has_value()); // asks for the era
    CHECK(typed("20 min", Measure::duration).understood == "20:00");
}
