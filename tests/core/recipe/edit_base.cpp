// What a fly is tied on, joints and targets are written as parts are: letter by letter, nothing lost.

#include "core/recipe/card_line.h"
#include "core/recipe/edit.h"
#include "core/recipe/text.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Draft after(const Draft& draft, const std::vector<Edit>& edits) {
    const Result<Draft> next = edited(draft, edits);
    REQUIRE_MESSAGE(next.ok(), next.error().message);
    return next.value();
}

Draft typed(const Draft& draft, const std::string& path, const std::string& text) {
    return after(draft, {{EditKind::set, path, text, 0, 0}});
}

Draft with_line(const Draft& draft, const std::string& list, std::size_t index,
                const std::string& line) {
    const auto edits = line_edits(draft.recipe, list, static_cast<int>(index), line);
    REQUIRE(edits.ok());
    return after(draft, edits.value());
}

} // namespace

TEST_CASE("a hook is measured letter by letter, and unmeasured to the same bytes") {
    const Draft before{demo("sill-dun").recipe, {}};
    REQUIRE_FALSE(before.recipe.bases[0].measured);
    const std::string path = "bases[0].measured.shank";
    Draft draft = before;
    const std::string words = "8.6 mm";
    for (std::size_t i = 1; i <= words.size(); ++i) {
        draft = typed(draft, path, words.substr(0, i));
        CAPTURE(i);
        // What does not read yet waits in its place.
        const Unread* waits = draft.unread_at(path);
        if (i < words.size()) {
            REQUIRE(waits != nullptr);
            CHECK(waits->text == words.substr(0, i));
        } else {
            CHECK(waits == nullptr);
        }
    }
    REQUIRE(draft.recipe.bases[0].measured);
    CHECK(within(draft.recipe.bases[0].measured->shank.value.si, 8.6e-3, 1e-15));
    CHECK(draft.recipe.bases[0].measured->shank.origin == Origin::measured);
    draft = typed(draft, path, "");
    CHECK(write_draft(draft) == write_draft(before));
}

TEST_CASE("a barb pressed flat waits until something tells how large the hook is") {
    Draft draft{demo("sill-dun").recipe, {}};
    draft = typed(draft, "bases[0].measured.barb_height", "0 mm");
    CHECK_FALSE(draft.recipe.bases[0].measured);
    REQUIRE(draft.unread_at("bases[0].measured.barb_height") != nullptr);
    CHECK(draft.unread_at("bases[0].measured.barb_height")->text == "0 mm");
    draft = typed(draft, "bases[0].measured.wire", ".023 in");
    REQUIRE(draft.recipe.bases[0].measured);
    CHECK(draft.unread.empty());
    CHECK(draft.recipe.bases[0].measured->barb_height.value.si == 0.0); // exact: as it was said
    // Source  an inch is 25.4 mm: .023 in is 0.5842 mm
    CHECK(within(draft.recipe.bases[0].measured->wire.value.si, 0.5842e-3, 1e-15));
    CHECK(write_draft(draft).find(".023 in") != std::string::npos);
}

TEST_CASE(
    "a line adds a shank, a joint with its wire, and a target; a base takes its joints along") {
    const Draft before{demo("millpool-leech").recipe, {}};
    Draft draft = before;
    const std::size_t bases = draft.recipe.bases.size();
    const std::size_t joints = draft.recipe.joints.size();
    const std::size_t targets = draft.recipe.targets.size();
    draft = with_line(draft, "bases", bases, "trailing hook, short, #6");
    REQUIRE(draft.recipe.bases.size() == bases + 1);
    CHECK(draft.recipe.bases.back().kind == "trailing hook");
    CHECK(draft.recipe.bases.back().text == "trailing hook, short, #6");
    draft = with_line(draft, "joints", joints, "braided wire, 12 mm");
    REQUIRE(draft.recipe.joints.size() == joints + 1);
    const Joint& joint = draft.recipe.joints.back();
    CHECK(joint.to == draft.recipe.bases.back().id);
    CHECK(joint.length.text == "12 mm");
    CHECK(draft.recipe.materials.back().text == "braided wire");
    CHECK(joint.material == draft.recipe.materials.back().id);
    draft = with_line(draft, "targets", targets, "Tail: 1.5 gape");
    REQUIRE(draft.recipe.targets.size() == targets + 1);
    CHECK(draft.recipe.targets.back().part == "tail");
    CHECK(draft.recipe.targets.back().length.text == "1.5 gape");
    const std::string row = "targets[" + std::to_string(targets) + "].within";
    CHECK(within(typed(draft, row, "0.15").recipe.targets.back().within, 0.15, 1e-15));
    // The file reads back the same, whatever is written in it.
    const Result<Recipe> back = read_recipe(write_recipe(draft.recipe));
    REQUIRE(back.ok());
    CHECK(back.value() == draft.recipe);
    draft = after(draft, {{EditKind::remove, "bases", {}, static_cast<int>(bases), 0}});
    CHECK(draft.recipe.joints.size() == joints);
}

TEST_CASE("a base is said to be undressed in a word, and dressed again to the same bytes") {
    const Draft before{demo("sill-dun").recipe, {}};
    Draft draft = typed(before, "bases[0].dressed", "no");
    CHECK_FALSE(draft.recipe.bases[0].dressed);
    draft = typed(draft, "bases[0].dressed", "yes");
    CHECK(write_draft(draft) == write_draft(before));
}

TEST_CASE("an operation is said with its place and amount in one line") {
    const Recipe& recipe = demo("sill-dun").recipe;
    const auto said = [&](std::string_view line) {
        return said_of_operation(recipe, line.substr(operation_end(line)));
    };
    const std::string_view line = "tie tail at bend, 3 turns";
    CHECK(line.substr(0, operation_end(line)) == "tie tail");
    CHECK(said(line) == R"(, "to": "bend", "turns": "3 turns")");
    CHECK(said("dub body from bend to 0.3 shank") == R"(, "from": "bend", "to": "0.3 shank")");
    CHECK(said("tie in tail, 8 fibres, firm") == R"(, "count": "8 fibres", "note": "firm")");
    CHECK(said("whip finish, 4 turns, 5 turns") == R"(, "turns": "4 turns")"); // the first stands
    CHECK(said("tie off hackle").empty());
    CHECK(said("rib, \"odd\"") == R"(, "note": "\"odd\"")");
}
