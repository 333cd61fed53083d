#include "core/tying/words.h"

#include <doctest/doctest.h>

using namespace wrapwright;

TEST_CASE("one turn is a turn and any other number are turns") {
    CHECK(counted(1.0, "turn", "turns") == "1 turn");
    CHECK(counted(1.04, "turn", "turns") == "1 turn");
    CHECK(counted(2.5, "turn", "turns") == "2.5 turns");
    CHECK(counted(0.0, "turn", "turns") == "0 turns");
}

TEST_CASE("a part goes by its role, and by its id as well where two parts share the role") {
    Recipe recipe;
    for (const auto& [id, role] :
         {std::pair{"a", "tail"}, {"b", "body"}, {"c", "body"}, {"d", ""}}) {
        Part part;
        part.id = id;
        part.role = role;
        recipe.parts.push_back(part);
    }
    CHECK(part_words(recipe, 0) == "tail");
    CHECK(part_words(recipe, 1) == "body (b)");
    CHECK(part_words(recipe, 3) == "d");
}

TEST_CASE("a single hook is the hook, and two are told apart") {
    Recipe recipe;
    CHECK(base_words(recipe, 0) == "hook");
    Base base;
    base.id = "front";
    recipe.bases.push_back(base);
    CHECK(base_words(recipe, 0) == "hook");
    base.id = "rear";
    base.kind = "trailing hook";
    recipe.bases.push_back(base);
    CHECK(base_words(recipe, 0) == "front hook");
    CHECK(base_words(recipe, 1) == "rear hook");
}

TEST_CASE("the two senses differ only in away and towards, whichever hand it is") {
    CHECK(sense_words(Sense::with_thread) == "over the top, away from you");
    CHECK(sense_words(Sense::against_thread) == "over the top, towards you");
}
