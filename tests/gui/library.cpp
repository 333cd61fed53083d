// The library: what narrows its list, and the fly box, typed into and read.

#include "tests/gui/person.h"
#include "tests/support/close.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// A person before the list of three recipes, as the store would answer.
void open_library(Person& person, bool box) {
    LibraryWork& library = person.model.library;
    library.rows = {{"jig", "Weirfoot Jig", "jig nymph", "14-18", "", false, {}},
                    {"dun", "Sill Dun", "dry", "12-16", "", true, {}},
                    {"note", "A note", "", "", "", false, {}}};
    library.ask.box = box;
    BoxCounts counts;
    counts[{"jig", "14"}] = {7, 12};
    counts[{"dun", "16"}] = {9, 6};
    std::vector<BoxPattern> patterns;
    for (const LibraryRow& row : library.rows) {
        patterns.push_back({row.id, row.name, row.sizes, row.id == "dun" ? 24 : 0});
    }
    library.box = std::make_shared<const BoxGrid>(box_grid(std::move(patterns), counts));
    person.model.screen = Screen::library;
    person.typing().grid = {};
    person.typing().grid.column = 3; // the first size
    person.frame();
    person.frame();
}

void ctrl(Person& person, ImGuiKey key) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddKeyEvent(ImGuiMod_Ctrl, true);
    person.key(key);
    io.AddKeyEvent(ImGuiMod_Ctrl, false);
    person.frame();
}

const Effect& last(const Person& person) {
    REQUIRE_FALSE(person.effects.empty());
    return person.effects.back();
}

} // namespace

TEST_CASE("the box is walked and counted by keys alone, and works no fly meanwhile") {
    Person person("weirfoot-jig", {1280, 800});
    open_library(person, true);
    const Screen before = person.model.screen;
    // Columns: 12, 14, 16, 18.
    person.key(ImGuiKey_RightArrow);
    person.type("5/6");
    CHECK(person.typing().grid.editing);
    person.key(ImGuiKey_Enter);
    CHECK(last(person).kind == EffectKind::keep_box);
    CHECK(last(person).key == "jig");
    CHECK(last(person).text == "14");
    CHECK(last(person).cell == BoxCell{5, 6});
    CHECK(person.typing().grid.row == 1);
    person.type("/30");
    person.key(ImGuiKey_Tab);
    CHECK(last(person).key == "dun");
    CHECK_FALSE(last(person).cell.have); // how many there are was not said
    CHECK(last(person).cell.want == 30);
    CHECK(person.typing().grid.column == 5);
    const std::size_t effects = person.effects.size();
    person.key(ImGuiKey_Delete);
    REQUIRE(person.effects.size() == effects + 1);
    CHECK(last(person).number == 0);
    CHECK(last(person).event.number == 0);
    person.type("q"); // no key of the bench here
    person.key(ImGuiKey_Escape);
    CHECK(person.effects.size() == effects + 1);
    CHECK(person.model.screen == before);
    person.key(ImGuiKey_Escape);
    CHECK(person.model.screen == Screen::bench);
}

TEST_CASE("what a cell of the box cannot mean is told, and nothing is kept") {
    Person person("weirfoot-jig", {1280, 800});
    open_library(person, true);
    person.type("many");
    person.key(ImGuiKey_Enter);
    CHECK(std::none_of(person.effects.begin(), person.effects.end(),
                       [](const Effect& e) { return e.kind == EffectKind::keep_box; }));
    person.frame();
    CHECK(says(person, "'many' is no count of flies"));
    person.model.read_only = true;
    person.type("3");
    person.key(ImGuiKey_Enter);
    CHECK(std::none_of(person.effects.begin(), person.effects.end(),
                       [](const Effect& e) { return e.kind == EffectKind::keep_box; }));
}

TEST_CASE("a key turns the list into the box, and its letters go into the cells at once") {
    Person person("weirfoot-jig", {1280, 800});
    open_library(person, false);
    ctrl(person, ImGuiKey_B);
    CHECK(person.model.library.ask.box);
    CHECK(last(person).kind == EffectKind::search); // the store lays it out
    person.type("4");
    CHECK(person.typing().grid.editing);
    CHECK(person.model.search.empty());
    person.key(ImGuiKey_Escape);
    ctrl(person, ImGuiKey_F);
    person.type("dun");
    CHECK(person.model.search == "dun");
    person.press("Box");
    CHECK_FALSE(person.model.library.ask.box);
}

TEST_CASE("the list is narrowed by weight, in grains beside inches, and by what the stock makes") {
    // Source  a grain is 64.79891 mg exactly
    CHECK(within(asked_weight("250", false)->si, 250e-6, 1e-18));
    CHECK(within(asked_weight("3", true)->si, 3.0 * 64.79891e-6, 1e-18));
    CHECK(within(asked_weight("3 gr", false)->si, 3.0 * 64.79891e-6, 1e-18));
    CHECK(within(asked_weight("0.25 g", true)->si, 250e-6, 1e-18));
    for (const char* unread : {"", "heavy", "-3", "3 mm"}) {
        CHECK_FALSE(asked_weight(unread, false));
    }
    Person person("weirfoot-jig", {1280, 800});
    open_library(person, false);
    person.press("from");
    person.type("200");
    CHECK(person.model.library.ask.from == "200");
    CHECK(last(person).kind == EffectKind::search);
    person.press("to");
    person.type("heavy");
    CHECK(says(person, "'heavy' is no weight"));
    person.press("From stock");
    CHECK(person.model.library.ask.stock);
    CHECK(last(person).kind == EffectKind::search);
    person.model.library.rows[0].from_stock = "9 #14, 4 #16";
    person.frame();
    CHECK(says(person, "9 #14, 4 #16"));
}

TEST_CASE("list and box hold in every shape of window, and the list keeps room for rows") {
    for (const PixelSize window :
         {PixelSize{800, 480}, PixelSize{1280, 800}, PixelSize{1080, 1920}}) {
        for (const bool box : {false, true}) {
            Person person("weirfoot-jig", window);
            open_library(person, box);
            CAPTURE(window.width);
            CAPTURE(box);
            for (const DrawnControl& c : person.shown.controls) {
                CAPTURE(c.label);
                CHECK(c.box.height >= 40.0F);
                CHECK(c.box.x >= 0.0F);
                CHECK(c.box.right() <= static_cast<float>(window.width) + 1.0F);
            }
            if (box) continue;
            const DrawnControl* third = person.find("A note##note");
            REQUIRE(third != nullptr);
            const DrawnControl* open = person.find("Open");
            REQUIRE(open != nullptr);
            CHECK(third->box.bottom() <= open->box.y);
        }
    }
}
