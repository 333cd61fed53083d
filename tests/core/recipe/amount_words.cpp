#include "core/recipe/amount_words.h"

#include "core/result.h"

#include <doctest/doctest.h>

using namespace wrapwright;

TEST_CASE("what was understood of an amount is said in the words of its kind") {
    // Source  the left column is from the recipe format's own table of amounts (assets/format.md)
    //         and the examples; 7/64 in is 2.778 mm by the exact inch of 25.4 mm
    struct Row {
        const char* written;
        const char* said;
    };
    for (const auto& [written, said] :
         {Row{"10 or 12", "10 to 12, 10 taken"}, Row{"10 or 12 turns", "10 to 12 turns, 10 taken"},
          Row{"1 turn", "1 turn"}, Row{"7/64 in", "2.778 mm"}, Row{".015 in", "0.381 mm"},
          Row{"half the shank", "half the shank"}, Row{"1.5 gape", "1.5 of the gape"},
          Row{"same as body", "as body"}, Row{"about 12", "about 12"}, Row{"4 mg", "4 mg"},
          Row{"20 min", "20 min"}, Row{"sparse", "a word, no number"}, Row{"", ""}}) {
        CAPTURE(written);
        const Result<Reading> read = read_amount(written, {"body"});
        REQUIRE(read.ok());
        CHECK(understood(read.value()) == said);
    }
}

TEST_CASE("what was understood of a place is said from its landmark") {
    struct Row {
        const char* written;
        const char* said;
    };
    for (const auto& [written, said] :
         {Row{"barb", "above the barb"},
          Row{"0.3 shank", "0.3 of the shank behind the front of the shank"},
          Row{"1 mm behind bead", "1 mm behind the bead"},
          Row{"0.2 shank ahead of bend", "0.2 of the shank ahead of the bend"},
          Row{"front of body", "the front of body"}, Row{"", ""}}) {
        CAPTURE(written);
        const Result<Spot> read = read_spot(written, {"body"});
        REQUIRE(read.ok());
        CHECK(understood(read.value()) == said);
    }
}
