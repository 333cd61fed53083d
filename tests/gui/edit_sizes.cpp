// The table over all sizes: lights, cells, and how far a change reaches. Help, and the first tour.

#include "core/recipe/by_size.h"
#include "gui/glossary.h"
#include "gui/sizes_work.h"
#include "gui/tour.h"
#include "tests/gui/person.h"

using namespace wrapwright;
using namespace wrapwright::test;

TEST_CASE("the table tells what scales, what steps, and what is found at each size") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    person.press("Sizes");
    REQUIRE(person.model.edit.sizes);
    const SizesWork& sizes = *person.model.edit.sizes;
    REQUIRE(sizes.columns.size() == 5); // 10 to 18 by twos
    const auto row = [&](const char* path) {
        const auto it = std::find_if(sizes.rows.begin(), sizes.rows.end(),
                                     [&](const SizesWork::Row& r) { return r.path == path; });
        REQUIRE(it != sizes.rows.end());
        return *it;
    };
    CHECK(row("parts[3].length").way == SizeWay::scales); // half the shank
    CHECK(row("parts[3].count").way == SizeWay::steps);   // a table
    CHECK(row("parts[7].turns").way == SizeWay::stays);   // two turns
    CHECK(row("parts[3].count").cells == std::vector<std::string>{"10", "10", "8", "6", "6"});
    CHECK(says(person, "scales"));
    for (const auto& column : sizes.columns) CHECK(column.stops == 0);
}

TEST_CASE("a part that a size leaves out is told so") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    Wish w = wish(WishKind::edit_set, 0, "10-14");
    w.key = "parts[7].only_sizes";
    person.model = apply(person.model, w, person.model.now).model;
    person.press("Sizes");
    for (const auto& row : person.model.edit.sizes->rows) {
        if (row.path != "parts[7].turns") continue;
        CHECK(row.cells == std::vector<std::string>{"2", "2", "2", "", ""});
    }
    CHECK(says(person, "drops out"));
}

TEST_CASE("a cell is picked, typed into, and holds from its size down") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    person.press("Sizes");
    const DrawnControl* cell = nullptr;
    for (const DrawnControl& c : person.shown.controls) {
        if (c.label.ends_with("##parts[3].count 14")) cell = &c;
    }
    REQUIRE(cell != nullptr);
    person.press(cell->label);
    person.press("sized");
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Ctrl, true);
    person.key(ImGuiKey_A);
    ImGui::GetIO().AddKeyEvent(ImGuiMod_Ctrl, false);
    person.frame();
    person.type("7 fibres");
    person.press("From here down");
    const Amount& count = person.model.edit.draft().recipe.parts[3].count;
    CHECK(words_at(count, HookSize{12}) == "10 fibres");
    for (const int size : {14, 16, 18}) CHECK(words_at(count, HookSize{size}) == "7 fibres");
    CHECK(person.model.edit.size == HookSize{14});
    person.press("Undo");
    CHECK(words_at(person.model.edit.draft().recipe.parts[3].count, HookSize{14}) == "8 fibres");
}

TEST_CASE("the table holds in every shape of window, even with eleven sizes") {
    for (const PixelSize window :
         {PixelSize{800, 480}, PixelSize{800, 1280}, PixelSize{1920, 1080}}) {
        Person person("weirfoot-jig", window);
        person.press("Write");
        Wish w = wish(WishKind::edit_set, 0, "8-18, 9, 11, 13, 15, 17");
        w.key = "sizes";
        person.model = apply(person.model, w, person.model.now).model;
        person.press("Sizes");
        REQUIRE(person.model.edit.sizes->columns.size() == 11);
        for (const DrawnControl& c : person.shown.controls) {
            CHECK(c.box.width >= 40.0F);
            CHECK(c.box.right() <= static_cast<float>(window.width));
        }
    }
}

TEST_CASE("every word of the glossary says something, and is found under help") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Keys");
    person.press("Words");
    CHECK(says(person, "Weighting wire wound on the bare shank"));
    for (const GlossaryWord& one : glossary()) {
        CHECK(one.meaning.size() > 20);
        CHECK(one.meaning.ends_with("."));
    }
}

TEST_CASE("the tour leads from screen to screen, leaves them usable, and can be left at any stop") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Keys");
    person.press("Tour");
    person.press("Begin the tour");
    for (std::size_t i = 0; i < tour_stops().size(); ++i) {
        CHECK(person.model.tour == static_cast<int>(i));
        CHECK(person.model.screen == tour_stops()[i].screen);
        CHECK(person.find("Leave") != nullptr);
        person.press(i + 1 == tour_stops().size() ? "That is all" : "Go on");
    }
    CHECK(person.model.tour == -1);
    person.model = apply(person.model, wish(WishKind::tour, 0), person.model.now).model;
    person.frame();
    person.press("Begin now"); // the screen below is the person's
    CHECK(at_work(person.model));
    CHECK(person.model.tour == 0);
    person.press("Leave");
    CHECK(person.model.tour == -1);
}

TEST_CASE("the tour's words find room in small windows") {
    for (const PixelSize window : {PixelSize{800, 480}, PixelSize{800, 1280}}) {
        Person person("weirfoot-jig", window);
        for (std::size_t i = 0; i < tour_stops().size(); ++i) {
            person.model =
                apply(person.model, wish(WishKind::tour, static_cast<int>(i)), person.model.now)
                    .model;
            person.frame();
            person.frame();
            const auto it = std::find_if(
                person.shown.texts.begin(), person.shown.texts.end(), [&](const DrawnText& t) {
                    return t.text.find(tour_stops()[i].words) != t.text.npos;
                });
            REQUIRE(it != person.shown.texts.end());
            CAPTURE(window.width);
            CAPTURE(i);
            CHECK(it->whole);
        }
    }
}
