// Two recipes side by side: what differs is told, and only that.
#include "core/share/compare.h"
#include "tests/support/demo.h"
#include "tests/support/dice.h"

#include <algorithm>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

std::vector<std::string> told(const Recipe& a, const Recipe& b) {
    std::vector<std::string> words;
    for (const Change& c : compare(a, b)) words.push_back(change_words(c));
    return words;
}

/// The recipe as its file gives it, so that readings fit their words.
Recipe settled(const Recipe& recipe) {
    Result<Recipe> read = read_recipe(write_recipe(recipe));
    REQUIRE(read.ok());
    return std::move(read).value();
}

} // namespace

TEST_CASE("a recipe does not differ from itself") {
    for (const std::string_view name : {"weirfoot-jig", "keepers-note"}) {
        CHECK(compare(demo(name).recipe, demo(name).recipe).empty());
    }
}

TEST_CASE("a changed number is told with how far it moved") {
    const Recipe a = demo("sill-dun").recipe;
    Recipe b = a;
    b.steps[1].actions[0].turns.text = "7 turns";
    CHECK(told(a, settled(b)) ==
          std::vector<std::string>{"step 2, start thread, turns: 5 turns -> 7 turns (+2 turns)"});
    b = a;
    b.parts[1].length.text = "1.2 shank";
    CHECK(told(a, settled(b)) ==
          std::vector<std::string>{"tail, length: 1 shank -> 1.2 shank (+0.2 of it)"});
}

TEST_CASE("parts, materials and steps that come, go and move are told by their names") {
    const Recipe a = demo("sill-dun").recipe;
    Recipe b = a;
    Part rib;
    rib.id = "rib";
    rib.role = "rib";
    rib.text = "fine gold wire";
    b.parts.push_back(rib);
    b.steps.erase(b.steps.begin() + 6);
    std::swap(b.parts[0], b.parts[1]);
    const std::vector<std::string> words = told(a, settled(b));
    REQUIRE(words.size() == 3);
    CHECK(words[0] == "rib: new: id: rib; role: rib; fine gold wire");
    CHECK(words[1] == "order of the parts changed");
    CHECK(words[2].find("step 7: gone: Let the body dry") == 0);
}

TEST_CASE("nothing is told exactly where both have the same bytes") {
    // Property: any single change of a text of the recipe is told, and by one line at most for each
    // key that it touches.
    const Recipe a = demo("weirfoot-jig").recipe;
    Dice dice{11};
    for (int i = 0; i < 200; ++i) {
        Recipe b = a;
        switch (dice.roll(8)) {
        case 0: b.name += "x"; break;
        case 1: b.materials[static_cast<std::size_t>(dice.roll(8))].text += "x"; break;
        case 2: b.parts[static_cast<std::size_t>(dice.roll(10))].text += "x"; break;
        case 3: b.steps[static_cast<std::size_t>(dice.roll(12))].tip += "x"; break;
        case 4: b.provenance.credit += "x"; break;
        case 5: b.tags.emplace_back("x"); break;
        case 6: b.parts[static_cast<std::size_t>(dice.roll(10))].copies += 1; break;
        default: b.steps[static_cast<std::size_t>(dice.roll(12))].restore_point ^= true; break;
        }
        CAPTURE(i);
        CHECK(compare(a, b).size() == 1);
        CHECK(compare(b, a).size() == 1);
        CHECK((compare(a, b).empty() == (write_recipe(a) == write_recipe(b))));
    }
}
