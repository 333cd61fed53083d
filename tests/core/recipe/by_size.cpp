// An amount over the sizes of a recipe: changed for one, from one down, or for all.

#include "core/recipe/by_size.h"

#include "tests/support/demo.h"
#include "tests/support/dice.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// The bead of the jig: 4.0, 3.3, 2.8, 2.4, 2.0 mm at 10, 12, 14, 16, 18.
const std::string bead = "materials[1].size";

Draft changed(const Draft& draft, HookSize size, SizeScope scope, const std::string& words) {
    const Amount& amount = draft.recipe.materials[1].size;
    const Result<Draft> next =
        edited(draft, sized_edits(draft.recipe, bead, amount, size, scope, words));
    REQUIRE_MESSAGE(next.ok(), next.error().message);
    return next.value();
}

std::vector<std::string> table(const Draft& draft) {
    std::vector<std::string> words;
    for (const int size : {10, 12, 14, 16, 18}) {
        words.push_back(words_at(draft.recipe.materials[1].size, HookSize{size}));
    }
    return words;
}

using Words = std::vector<std::string>;

} // namespace

TEST_CASE("a value is changed at one size, from it down to the smallest hook, or at all") {
    const Draft draft{demo("weirfoot-jig").recipe, {}};
    CHECK(table(draft) == Words{"4.0 mm", "3.3 mm", "2.8 mm", "2.4 mm", "2.0 mm"});
    CHECK(table(changed(draft, HookSize{14}, SizeScope::this_size, "3.0 mm")) ==
          Words{"4.0 mm", "3.3 mm", "3.0 mm", "2.4 mm", "2.0 mm"});
    CHECK(table(changed(draft, HookSize{14}, SizeScope::from_here_down, "2.5 mm")) ==
          Words{"4.0 mm", "3.3 mm", "2.5 mm", "2.5 mm", "2.5 mm"});
    const Draft all = changed(draft, HookSize{14}, SizeScope::all, "2.5 mm");
    CHECK(table(all) == Words(5, "2.5 mm"));
    CHECK(all.recipe.materials[1].size.by_size.empty());
    CHECK(all.recipe.materials[1].size.reading.value == 0.0025);
}

TEST_CASE("sizes of the same words share a row, and no size is ever in two") {
    const Draft draft{demo("weirfoot-jig").recipe, {}};
    const Draft joined = changed(draft, HookSize{14}, SizeScope::from_here_down, "2.5 mm");
    const auto& rows = joined.recipe.materials[1].size.by_size;
    REQUIRE(rows.size() == 3);
    CHECK(rows[2].sizes == "14-18");
    Dice dice{8};
    Draft at = draft;
    for (int i = 0; i < 200; ++i) {
        const HookSize size{10 + 2 * dice.roll(5)};
        const auto scope = static_cast<SizeScope>(dice.roll(10) == 0 ? 2 : dice.roll(2));
        const std::string words = std::to_string(2 + dice.roll(3)) + " mm";
        Words wanted = table(at);
        for (int k = 0; k < 5; ++k) {
            const int one = 10 + 2 * k;
            const bool here = scope == SizeScope::all || one == size.number ||
                              (scope == SizeScope::from_here_down && one > size.number);
            if (here) wanted[static_cast<std::size_t>(k)] = words;
        }
        at = changed(at, size, scope, words);
        CHECK(at.unread.empty()); // a size in two rows would not read
        CHECK(table(at) == wanted);
    }
}

TEST_CASE("a plain amount gets a table where one size is to differ, and loses it where none does") {
    Draft draft{demo("weirfoot-jig").recipe, {}};
    const std::string path = "parts[7].turns";
    const auto with = [&](HookSize size, SizeScope scope, const char* words) {
        const Amount& amount = draft.recipe.parts[7].turns;
        const auto next =
            edited(draft, sized_edits(draft.recipe, path, amount, size, scope, words));
        REQUIRE(next.ok());
        draft = next.value();
    };
    with(HookSize{18}, SizeScope::this_size, "1 turn");
    CHECK(draft.recipe.parts[7].turns.text == "2 turns");
    CHECK(draft.recipe.parts[7].turns.at(HookSize{18}).value == 1.0);
    CHECK(draft.recipe.parts[7].turns.at(HookSize{10}).value == 2.0);
    with(HookSize{18}, SizeScope::this_size, "2 turns");
    CHECK(draft.recipe.parts[7].turns.by_size.empty());
}
