// Loose text, taken piece by piece; recipes that come whole; revisions held against each other.

#include "core/loose/loose.h"
#include "core/recipe/text.h"
#include "core/share/letter.h"
#include "gui/loose_work.h"
#include "gui/versions_work.h"
#include "tests/gui/person.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

std::shared_ptr<const TradeWords> trade_words() {
    std::ifstream file(WW_SOURCE_DIR "/assets/words/trade.txt");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    Result<TradeWords> words = read_trade_words(text);
    REQUIRE(words.ok());
    return std::make_shared<const TradeWords>(std::move(words).value());
}

/// Of the tests' own invention, in no shape that anybody has agreed on.
constexpr const char* letter_words = "Sluice Beetle, sizes 12-16\n"
                                     "Tail: ginger cock hackle fibres, half the shank\n"
                                     "Body: peacock herl\n"
                                     "ask old Tam about the shiny one\n"
                                     "Hackle: brown hen, 2 turns\n";

void paste(Person& person, const char* text) {
    person.model.trade_words = trade_words();
    person.press("Write");
    person.press("Text");
    person.press("loose");
    person.type(text);
    person.press("Read it");
    REQUIRE(person.model.edit.loose);
}

} // namespace

TEST_CASE("pasted text is proposed piece by piece, and what is not understood stays as text") {
    Person person("weirfoot-jig", {1280, 800});
    paste(person, letter_words);
    const LooseWork& work = *person.model.edit.loose;
    CHECK(work.text == letter_words);
    CHECK(says(person, "part tail"));
    CHECK(says(person, "ask old Tam about the shiny one"));
    CHECK(says(person, "stays as text"));
    const auto& pieces = work.loose.pieces;
    std::size_t body = pieces.size();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].kind == PieceKind::part && pieces[i].word == "body") body = i;
    }
    REQUIRE(body < pieces.size());
    REQUIRE(work.accepted[body]);
    // One piece is refused; the recipe is made of the others, with the text kept word for word.
    const std::string label = piece_words(work, pieces[body]);
    person.bring(label);
    person.press(label);
    CHECK_FALSE(person.model.edit.loose->accepted[body]);
    person.press("Make a recipe");
    REQUIRE_FALSE(person.effects.empty());
    const Effect& made = person.effects.back();
    REQUIRE(made.kind == EffectKind::new_recipe);
    const Result<Recipe> recipe = read_recipe(made.key);
    REQUIRE(recipe.ok());
    CHECK(recipe.value().verbatim == letter_words);
    const auto has = [&](const char* role) {
        return std::any_of(recipe.value().parts.begin(), recipe.value().parts.end(),
                           [&](const Part& p) { return p.role == role; });
    };
    CHECK(has("tail"));
    CHECK_FALSE(has("body"));
}

TEST_CASE("a letter is read back whole, with nothing to guess") {
    Person person("weirfoot-jig", {1280, 800});
    const Result<std::string> letter = write_letter(demo("sill-dun").recipe);
    REQUIRE(letter.ok());
    person.model.trade_words = trade_words();
    person.press("Write");
    person.press("Text");
    Wish w = wish(WishKind::edit_loose, static_cast<int>(LooseAsk::text), letter.value());
    person.model = apply(person.model, w, person.model.now).model;
    REQUIRE(person.model.edit.loose->shared);
    REQUIRE(person.model.edit.loose->shared->recipes.size() == 1);
    CHECK(write_recipe(person.model.edit.loose->shared->recipes[0].recipe) ==
          write_recipe(demo("sill-dun").recipe));
    person.frame();
    person.frame();
    CHECK(says(person, "nothing has to be guessed"));
    person.press("Take them in");
    CHECK(person.effects.back().kind == EffectKind::share);
    CHECK(person.effects.back().number == 1);
}

TEST_CASE("each recipe of a bundle is left, taken, or taken beside yours, as the person says") {
    Person person("weirfoot-jig", {1280, 800});
    person.model.trade_words = trade_words();
    Recipe other = demo("weirfoot-jig").recipe;
    other.notes = "slimmer";
    Bundle bundle;
    bundle.note = "for the club evening";
    bundle.files = {{"recipes/sill-dun.json", write_recipe(demo("sill-dun").recipe)},
                    {"recipes/weirfoot-jig.json", write_recipe(other)},
                    {"photos/sill-dun/14/side.jpg", "not really a photo"}};
    const Result<std::string> text = write_bundle(bundle);
    REQUIRE(text.ok());
    // A file that is dropped on the window, on whatever screen.
    person.model =
        apply(person.model, wish(WishKind::open_text, 0, text.value()), person.model.now).model;
    CHECK(person.model.screen == Screen::edit);
    CHECK(person.model.edit.view == EditView::loose);
    REQUIRE(person.model.edit.loose);
    // What the store would answer.
    auto work = std::make_shared<LooseWork>(*person.model.edit.loose);
    REQUIRE(work->shared->recipes.size() == 2);
    work->rows = {merge_row(work->shared->recipes[0], std::nullopt),
                  merge_row(work->shared->recipes[1], demo("weirfoot-jig").recipe)};
    work->takes = {TakeAs::taken, TakeAs::taken};
    person.model.edit.loose = work;
    person.frame();
    person.frame();
    CHECK(says(person, "for the club evening"));
    CHECK(says(person, "1 photo comes with them"));
    CHECK(says(person, "slimmer"));
    CHECK(says(person, "Sill Dun")); // the words at the left can be read before
    const auto takes = [&] { return person.model.edit.loose->takes; };
    person.press("Weirfoot Jig##shared 1");
    CHECK(takes()[1] == TakeAs::beside);
    person.press("Weirfoot Jig##shared 1");
    CHECK(takes()[1] == TakeAs::left);
    person.press("Sill Dun##shared 0");
    CHECK(takes()[0] == TakeAs::left);
    person.press("Another text");
    CHECK_FALSE(person.model.edit.loose);
}

TEST_CASE("a recipe of a newer program is shown to be read, and cannot be taken") {
    Person person("weirfoot-jig", {1280, 800});
    person.model.trade_words = trade_words();
    std::string text = write_recipe(demo("sill-dun").recipe);
    text.replace(text.find("\"version\": 1"), 12, "\"version\": 9");
    person.model = apply(person.model, wish(WishKind::open_text, 0, text), person.model.now).model;
    auto work = std::make_shared<LooseWork>(*person.model.edit.loose);
    REQUIRE(work->shared);
    work->rows = {merge_row(work->shared->recipes[0], std::nullopt)};
    work->takes = {next_choice(work->rows[0].kind, TakeAs::left)};
    person.model.edit.loose = work;
    person.frame();
    person.frame();
    CHECK(says(person, "of a newer program: to be read here"));
    CHECK(says(person, "Sill Dun"));
    person.press("Sill Dun##shared 0");
    CHECK(person.model.edit.loose->takes[0] == TakeAs::left);
    CHECK(person.find("Take them in") == nullptr);
}

TEST_CASE("text that is nothing at all is kept, and makes no recipe by force") {
    for (const char* text :
         {"", "\xF0\x9F\x8E\xA3 \xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D", "{\"wrapwright recipe\"",
          "\"unbalanced", "[wrapwright recipe 1\nzzzz\n]"}) {
        const auto work = read_pasted(text, *trade_words());
        CAPTURE(text);
        CHECK(work->text == text);
        CHECK(work->accepted.size() == work->loose.pieces.size());
    }
}

TEST_CASE("a revision is held against what is written: in words, and as two flies") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    person.press("Revisions");
    CHECK(std::any_of(person.effects.begin(), person.effects.end(),
                      [](const Effect& e) { return e.kind == EffectKind::versions; }));
    // What the store would answer.
    auto work = std::make_shared<VersionsWork>();
    work->rows = {{2, "longer tail", "2026-11-29"}, {1, "as it came", "2026-11-25"}};
    work->picked = 1;
    Recipe before = demo("weirfoot-jig").recipe;
    work->recipe = std::make_shared<const Recipe>(before);
    work->fly = person.model.edit.fly;
    Wish w = wish(WishKind::edit_set, 0, "9 mm");
    w.key = "parts[3].length";
    person.model = apply(person.model, w, person.model.now).model;
    work->changes = compare(before, person.model.edit.draft().recipe);
    REQUIRE(work->changes.size() == 1);
    person.model.edit.versions = work;
    person.frame();
    person.frame();
    CHECK(says(person, "9 mm"));
    CHECK(person.shown.wraps[0].width > 100.0F);
    CHECK(person.shown.wraps[1].width > 100.0F);
    CHECK(pictured(person.model, Picture::fewer).fly == work->fly);
    person.press("Back to it");
    CHECK(person.model.edit.draft().recipe == before);
    person.press("Undo");
    CHECK(person.model.edit.draft().recipe.parts[3].length.text == "9 mm");
    person.press("My version");
    CHECK(person.effects.back().kind == EffectKind::version);
    CHECK(person.effects.back().number == static_cast<int>(VersionAsk::fork));
}

TEST_CASE("what a sitting did differently is a revision in one press") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Begin now");
    for (int i = 0; i < 60; ++i) {
        const int moment = moment_of(person.model);
        const auto& fly = *person.model.fly;
        const auto act =
            static_cast<std::size_t>(fly.tied.moments[static_cast<std::size_t>(moment)].act);
        if (fly.resolved.acts[act].op == Op::counter_rib) break;
        person.key(ImGuiKey_Tab);
    }
    person.key(ImGuiKey_D);
    person.type("7 turns");
    person.press("Note it");
    REQUIRE(person.model.state.otherwise.size() == 1);
    person.press("Write");
    person.press("Revisions");
    auto work = std::make_shared<VersionsWork>();
    person.model.edit.versions = work;
    person.frame();
    person.frame();
    person.press("Revision from this sitting: 1 change");
    CHECK(person.model.edit.draft().recipe.parts[5].turns.at(HookSize{14}).value == 7.0);
    const auto saved =
        std::find_if(person.effects.begin(), person.effects.end(),
                     [](const Effect& e) { return e.kind == EffectKind::save_recipe; });
    REQUIRE(saved != person.effects.end());
    CHECK(saved->text == "7 turns");
}

TEST_CASE(
    "a bare label of wire or bead gets its inches beside it, and loses them when it is mended") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    const auto type = [&](const char* text) {
        Wish w = wish(WishKind::edit_set, 0, text);
        w.key = "materials[4].size";
        person.model = apply(person.model, w, person.model.now).model;
        return person.model.edit.draft().recipe.materials[4].size;
    };
    // Source  an inch is 25.4 mm: .006 in is 0.1524 mm
    Amount size = type(".006");
    CHECK(size.text == ".006");
    CHECK(size.is == ".006 in");
    size = type(".006 in");
    CHECK(size.text == ".006 in");
    CHECK(size.is.empty());
    size = type("fine");
    CHECK(size.is.empty());
    CHECK(person.model.edit.draft().unread.empty());
}

TEST_CASE("text and revisions hold in every shape of window") {
    for (const PixelSize window :
         {PixelSize{800, 480}, PixelSize{800, 1280}, PixelSize{1920, 1080}}) {
        Person person("weirfoot-jig", window);
        paste(person, letter_words);
        for (const char* view : {"Text", "Revisions"}) {
            person.press(view);
            auto work = std::make_shared<VersionsWork>();
            work->rows = {{1, "as it came", "2026-11-25"}};
            work->picked = 1;
            work->fly = person.model.edit.fly;
            person.model.edit.versions = work;
            person.frame();
            person.frame();
            for (const DrawnControl& c : person.shown.controls) {
                CHECK(c.box.width >= 40.0F);
                CHECK(c.box.right() <= static_cast<float>(window.width));
            }
        }
    }
}
