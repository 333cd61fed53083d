// Writing a recipe: any edit that is accepted can be undone to the same bytes, and no words are lost.

#include "core/recipe/edit.h"

#include "core/recipe/text.h"
#include "tests/support/demo.h"
#include "tests/support/dice.h"

#include <array>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

Draft draft_of(std::string_view name) { return {demo(name).recipe, {}}; }

Draft after(const Draft& draft, Edit edit) {
    const Result<Draft> next = edited(draft, {std::move(edit)});
    REQUIRE_MESSAGE(next.ok(), next.error().message);
    return next.value();
}

Edit set(std::string path, std::string text) {
    return {EditKind::set, std::move(path), std::move(text), 0, 0};
}

constexpr std::array<const char*, 6> demos{"weirfoot-jig",   "sill-dun",        "lockgate-sedge",
                                           "millpool-leech", "tailrace-spider", "keepers-note"};

/// Words of every shape that somebody may type into any field, and what cannot be meant.
constexpr std::array<const char*, 24> scraps{"",
                                             "10 or 12",
                                             "half the shank",
                                             "#12-16",
                                             "sparse",
                                             ".015",
                                             "7/64 in",
                                             "7/",
                                             "-3",
                                             "yes",
                                             "same as body",
                                             "front of tail",
                                             "barb",
                                             "0.4 shank",
                                             "3",
                                             "nan",
                                             "12-18",
                                             "hare, wool",
                                             "a\nb \"c",
                                             "\xC3\xA9t\xC3\xA9",
                                             "70 den",
                                             "0",
                                             "99999 turns",
                                             "wind"};

/// A path into the draft, now and then one that leads nowhere.
std::string some_path(const Draft& draft, Dice& dice) {
    const Recipe& r = draft.recipe;
    const auto entry = [&](const char* list, std::size_t size) {
        return std::string(list) + "[" + std::to_string(dice.roll(static_cast<int>(size) + 1)) +
               "].";
    };
    static constexpr std::array<const char*, 8> heads{
        "name", "class", "sizes", "tags", "notes", "verbatim", "aliases", "provenance.author"};
    static constexpr std::array<const char*, 10> of_part{
        "role",  "text",   "turns",   "count",      "length",
        "pitch", "copies", "made_of", "only_sizes", "turns.is"};
    static constexpr std::array<const char*, 8> of_material{"text",   "kind", "colour", "size",
                                                            "linear", "tint", "flat",   "size.is"};
    static constexpr std::array<const char*, 9> of_action{
        "do", "part", "from", "to", "turns", "diameter", "sense", "spacing", "over_wet"};
    switch (dice.roll(4)) {
    case 0: return heads[static_cast<std::size_t>(dice.roll(8))];
    case 1:
        return entry("parts", r.parts.size()) + of_part[static_cast<std::size_t>(dice.roll(10))];
    case 2:
        return entry("materials", r.materials.size()) +
               of_material[static_cast<std::size_t>(dice.roll(8))];
    default: break;
    }
    const auto s = static_cast<std::size_t>(dice.roll(static_cast<int>(r.steps.size()) + 1));
    const std::size_t actions = s < r.steps.size() ? r.steps[s].actions.size() : 0;
    return "steps[" + std::to_string(s) + "]." + entry("actions", actions) +
           of_action[static_cast<std::size_t>(dice.roll(9))];
}

Edit some_edit(const Draft& draft, Dice& dice) {
    Edit edit;
    const int kind = dice.roll(8);
    if (kind < 5) {
        edit.path = some_path(draft, dice);
        edit.text = scraps[static_cast<std::size_t>(dice.roll(scraps.size()))];
        return edit;
    }
    static constexpr std::array<const char*, 3> lists{"parts", "materials", "steps"};
    edit.path = lists[static_cast<std::size_t>(dice.roll(3))];
    edit.index = dice.roll(14);
    edit.to = dice.roll(14);
    edit.kind = kind == 5 ? EditKind::add : kind == 6 ? EditKind::remove : EditKind::move;
    edit.text = edit.path == "parts" ? R"({"id": "new-part", "role": "tail"})"
                : edit.path == "materials"
                    ? R"({"id": "new-stuff", "kind": "wire"})"
                    : R"({"text": "Do this.", "actions": [{"do": "clamp"}]})";
    return edit;
}

} // namespace

TEST_CASE("any edits that are accepted, undone, give the same bytes; done again, too") {
    Dice dice{20251129};
    int accepted = 0;
    for (const char* name : demos) {
        for (int round = 0; round < 12; ++round) {
            History history(draft_of(name));
            std::vector<std::string> bytes{write_draft(history.now())};
            CHECK(bytes[0] == write_recipe(demo(name).recipe));
            for (int i = 0; i < 25; ++i) {
                const Result<Draft> next = edited(history.now(), {some_edit(history.now(), dice)});
                if (!next.ok() || next.value() == history.now()) continue;
                history.did(next.value());
                bytes.push_back(write_draft(history.now()));
                ++accepted;
                // Whatever was typed, the text is a draft again, word for word.
                const Result<Draft> read = read_draft(bytes.back());
                REQUIRE_MESSAGE(read.ok(), read.error().message);
                CHECK(write_draft(read.value()) == bytes.back());
            }
            for (std::size_t i = bytes.size() - 1; i-- > 0;) {
                REQUIRE(history.undo());
                CHECK(write_draft(history.now()) == bytes[i]);
            }
            CHECK_FALSE(history.undo());
            for (std::size_t i = 1; i < bytes.size(); ++i) {
                REQUIRE(history.redo());
                CHECK(write_draft(history.now()) == bytes[i]);
            }
        }
    }
    CHECK(accepted > 500);
}

TEST_CASE(
    "an amount is read while it is typed, and words that do not read yet wait in their place") {
    Draft draft = draft_of("weirfoot-jig");
    for (const char* so_far :
         {"1", "10", "10 ", "10 o", "10 or", "10 or ", "10 or 1", "10 or 12"}) {
        draft = after(draft, set("parts[3].length.is", ""));
        draft = after(draft, set("parts[7].turns", so_far));
        const Unread* waits = draft.unread_at("parts[7].turns");
        CAPTURE(so_far);
        CHECK((waits != nullptr ? waits->text : draft.recipe.parts[7].turns.text) == so_far);
    }
    CHECK(draft.unread.empty());
    CHECK(draft.recipe.parts[7].turns.reading.low == 10.0);
    CHECK(draft.recipe.parts[7].turns.reading.high == 12.0);

    const Draft bad = after(draft, set("parts[7].turns", "7/"));
    REQUIRE(bad.unread.size() == 1);
    CHECK(bad.unread[0].path == "parts[7].turns");
    CHECK(bad.unread[0].text == "7/");
    CHECK_FALSE(bad.unread[0].why.empty());
    CHECK(write_draft(bad).find("\"7/\"") != std::string::npos);
    // It moves with its part, and is read as soon as it can be.
    const Draft moved = after(bad, {EditKind::move, "parts", {}, 7, 0});
    REQUIRE(moved.unread.size() == 1);
    CHECK(moved.unread[0].path == "parts[0].turns");
    CHECK(after(moved, set("parts[0].turns", "7 turns")).unread.empty());
}

TEST_CASE("a part that goes takes its actions with it, and what leaned on it is kept as words") {
    const Draft draft = draft_of("weirfoot-jig");
    const Draft without = after(draft, {EditKind::remove, "parts", {}, 4, 0}); // the abdomen
    CHECK(draft.recipe.parts[4].id == "abdomen");
    for (const Step& step : without.recipe.steps) {
        for (const Action& action : step.actions) CHECK(action.part != "abdomen");
    }
    REQUIRE(without.unread.size() == 2); // "front of abdomen", twice
    for (const Unread& words : without.unread) {
        CHECK(words.text == "front of abdomen");
        CHECK(words.why.find("abdomen") != std::string::npos);
    }
    // With a part of that name there again, they are places again.
    const Draft again =
        after(without, {EditKind::add, "parts", R"({"id": "abdomen", "role": "body"})", 4, 0});
    CHECK(again.unread.empty());
}

TEST_CASE("a material that goes leaves its parts and actions without it") {
    const Draft draft = draft_of("weirfoot-jig");
    REQUIRE(draft.recipe.materials[0].id == "thread");
    const Draft without = after(draft, {EditKind::remove, "materials", {}, 0, 0});
    CHECK(without.recipe.parts[0].made_of.empty());
    CHECK(link(without.recipe).ok());
}

TEST_CASE("a number beside words, and words beside a number, keep each other") {
    Draft draft = draft_of("sill-dun");
    draft = after(draft, set("parts[0].count", "a pinch or so"));
    draft = after(draft, set("parts[0].count.is", "8 fibres"));
    CHECK(draft.recipe.parts[0].count.text == "a pinch or so");
    CHECK(draft.recipe.parts[0].count.reading.value == 8.0);
    draft = after(draft, set("parts[0].count", "a small pinch"));
    CHECK(draft.recipe.parts[0].count.is == "8 fibres");
    draft = after(draft, set("parts[0].count.is", ""));
    CHECK(draft.recipe.parts[0].count.reading.kind == AmountKind::word);
}

TEST_CASE("typing on in one field is one step of the history") {
    History history(draft_of("sill-dun"));
    const std::string before = write_draft(history.now());
    for (const char* name : {"S", "Si", "Sil"}) {
        history.did(after(history.now(), set("name", name)), "name");
    }
    history.settle();
    history.did(after(history.now(), set("name", "Sill")), "name");
    CHECK(history.undo());
    CHECK(history.now().recipe.name == "Sil");
    CHECK(history.undo());
    CHECK(write_draft(history.now()) == before);
    CHECK_FALSE(history.can_undo());
}

TEST_CASE("ids come from the words, and no two are the same") {
    CHECK(fresh_id("Hare's mask fur, well mixed", {}) == "hare-s-mask-fur");
    CHECK(fresh_id("tail", {"tail", "tail-2"}) == "tail-3");
    CHECK(fresh_id("\xE2\x9C\x82", {}) == "new");
}

TEST_CASE("an edit that leads nowhere is refused, and nothing of its kin is done") {
    const Draft draft = draft_of("sill-dun");
    for (const Edit& bad :
         {Edit{EditKind::set, "parts[99].turns", "3", 0, 0},
          Edit{EditKind::remove, "parts", {}, 99, 0}, Edit{EditKind::move, "parts", {}, 0, -1},
          Edit{EditKind::add, "parts", "no object", 0, 0}, Edit{EditKind::add, "parts", "[]", 0, 0},
          Edit{EditKind::set, "parts[x].turns", "3", 0, 0}}) {
        CHECK_FALSE(edited(draft, {set("name", "other"), bad}).ok());
    }
}
