// Any text goes in, and the same text comes out: junk, floods, other scripts.
#include "core/recipe/text.h"
#include "tests/core/loose/words.h"
#include "tests/support/dice.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// What holds of any text whatever.
void check_whole(std::string_view text) {
    const LooseText read = loose(text);
    CHECK(together(text, read) == text);
    CHECK(read.pieces.size() <= 2 * most_loose_pieces + 2);
    for (const Piece& p : read.pieces) {
        CHECK(p.value.begin >= p.span.begin);
        CHECK(p.value.end <= p.span.end);
        if (p.in >= 0) CHECK(&read.pieces[static_cast<std::size_t>(p.in)] < &p);
    }
    for (int fly = 0; fly < std::min(read.flies, 3); ++fly) {
        const Result<Recipe> recipe = make_recipe(text, read, accept_all(read), fly);
        if (text.size() > (std::size_t{2} << 20) || !is_utf8(text)) {
            CHECK_FALSE(recipe.ok());
            continue;
        }
        CAPTURE(recipe.ok() ? std::string() : recipe.error().message + recipe.error().place.key);
        REQUIRE(recipe.ok());
        CHECK(recipe.value().verbatim == text);
        const std::string once = write_recipe(recipe.value());
        const Result<Recipe> back = read_recipe(once);
        REQUIRE(back.ok());
        CHECK(write_recipe(back.value()) == once);
    }
}

std::string times(std::string_view text, int n) {
    std::string all;
    for (int i = 0; i < n; ++i) all += text;
    return all;
}

} // namespace

TEST_CASE("texts made of the trade's own words and marks come out as they went in") {
    constexpr std::string_view bits[] = {
        "tail",
        "body:",
        "hackle",
        " and ",
        ", ",
        "; ",
        ". ",
        "\n",
        "\r\n",
        "none",
        "or",
        "#12-16",
        "10 or 12 fibres",
        "half the shank",
        ".015",
        "7/64 in",
        "palmer",
        "red",
        "floss",
        "Wind ",
        "Tie in the ",
        "1. ",
        "- ",
        "|",
        "\t",
        "(",
        ")",
        "\"",
        "Steps:\n",
        "=",
        "Name: ",
        "a ",
        "of ",
        "the ",
        "no ",
        "ribbed with ",
        "\u2014",
        "\u00a0",
        "Hook: ",
        "2/0",
        "00",
        "hook",
        "size ",
        "  ",
        "turns",
        "if ",
        "optional",
        "peacock herl",
        "mixed",
        "\u2019s",
    };
    Dice dice{20261129};
    for (int i = 0; i < 3000; ++i) {
        std::string text;
        for (int n = dice.roll(40); n > 0; --n) {
            text += bits[dice.roll(static_cast<int>(std::size(bits)))];
            if (dice.roll(2) == 0) text += ' ';
        }
        CAPTURE(text);
        check_whole(text);
    }
}

TEST_CASE("any bytes come out as they went in") {
    Dice dice{7};
    for (int i = 0; i < 1000; ++i) {
        std::string text;
        for (int n = dice.roll(300); n > 0; --n) text += static_cast<char>(dice.roll(256));
        check_whole(text);
    }
    check_whole("");
    check_whole(std::string_view("\0\0\0", 3));
    check_whole("\xef\xbb\xbf"
                "Tail: red\n");
}

TEST_CASE("emoji, text from right to left and unbalanced quotes stay as they are") {
    for (const std::string_view text :
         {"\U0001F3A3 Tail: red \U0001F41F\U0001F41F floss\nBody: \U0001F469\u200D\U0001F3A3\n",
          "\u05d6\u05e0\u05d1: \u05d0\u05d3\u05d5\u05dd\nTail: red\n",
          "\u202eTail\u202c: \u0623\u062d\u0645\u0631\n", "Tail: \"red\nBody: 'black (thin\n",
          "name,tag,tail\n\"The \"\"Odd\"\" one,gold,red\n"}) {
        check_whole(text);
    }
    CHECK(part_of("Tail: \"red\nBody: 'black (thin\n", loose("Tail: \"red\nBody: 'black (thin\n"),
                  "body") == "'black (thin");
}

TEST_CASE("floods are read in bounded room, and what is not read stays") {
    check_whole(times("a", 3'000'000));
    check_whole(times("tail ", 400'000));
    check_whole(times("\n", 1'000'000));
    check_whole(times("Tail: red or ", 100'000));
    check_whole(times("1x", 300'000));
    check_whole(times("name,tag,tail\n", 50'000));
    check_whole(times("(", 600'000));
    check_whole(times("Tail: 1 1 1 1\n", 100'000));
    const std::string large = times("Tail: red floss, 3 turns\n", 400'000); // 10 MB
    const LooseText read = loose(large);
    CHECK(together(large, read) == large);
    CHECK_FALSE(read.notes.empty());
    const Result<Recipe> refused = make_recipe(large, read, accept_all(read));
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::too_large);
}

TEST_CASE("a list of 10,000 sizes gives each size once") {
    std::string text = "Hook: #12";
    for (int i = 1; i < 10'000; ++i) text += ", " + std::to_string(6 + i % 20);
    const LooseText read = loose(text);
    CHECK(together(text, read) == text);
    const Result<Recipe> recipe = make_recipe(text, read, accept_all(read));
    REQUIRE(recipe.ok());
    CHECK(recipe.value().size_list.size() == 20);
}

TEST_CASE("an old letter in Windows-1252 becomes UTF-8") {
    // Source  Windows-1252: 0xBD is one half, 0x92 the apostrophe, 0x96 the dash; from memory
    CHECK(from_windows_1252("\xbd shank, hare\x92s fur \x96 red") ==
          "\u00bd shank, hare\u2019s fur \u2013 red");
    CHECK_FALSE(is_utf8("\xbd"));
    CHECK_FALSE(is_utf8("\xc0\xaf"));     // overlong
    CHECK_FALSE(is_utf8("\xed\xa0\x80")); // half of a pair
    CHECK(is_utf8("\u00bd \u2019 \U0001F41F"));
}

TEST_CASE("a bad word list is refused with its line") {
    for (const std::string_view text :
         {"role tail tails\n", "colour red = red\nsort x = y\n", "role = tail\n",
          "role tail = one two three four five six seven\n"}) {
        const Result<TradeWords> read = read_trade_words(text);
        REQUIRE_FALSE(read.ok());
        CHECK(read.error().place.line > 0);
        CHECK_FALSE(read.error().remedy.empty());
    }
}
