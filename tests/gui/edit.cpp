// A recipe is written: by typing, by keys, by presses on the hook; the fly follows each letter.

#include "core/recipe/text.h"
#include "core/units/number_text.h"
#include "gui/wraps.h"
#include "tests/gui/person.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

const Recipe& written(const Person& person) { return person.model.edit.draft().recipe; }

std::string bytes(const Person& person) { return write_draft(person.model.edit.draft()); }

/// Keys on whatever has them, with ctrl held.
void ctrl(Person& person, ImGuiKey key) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddKeyEvent(ImGuiMod_Ctrl, true);
    person.key(key);
    io.AddKeyEvent(ImGuiMod_Ctrl, false);
    person.frame();
}

/// Brings a row of the outline into sight and presses it.
void pick(Person& person, const std::string& row) {
    std::string label;
    for (const DrawnControl& c : person.shown.controls) {
        if (c.label.ends_with("###row " + row)) label = c.label;
    }
    REQUIRE_MESSAGE(!label.empty(), "no row " << row);
    const auto in_sight = [&] {
        const DrawnControl* c = person.find(label);
        const float middle = c->box.y + 0.5F * c->box.height;
        return middle > 200.0F && middle < 0.9F * ImGui::GetIO().DisplaySize.y;
    };
    if (!in_sight()) person.bring(label);
    person.press(label);
    CHECK(person.model.edit.row == row);
}

/// Scrolls the fields, which stand at the lower right, until one of them is in sight.
void reach(Person& person, const std::string& label) {
    ImGuiIO& io = ImGui::GetIO();
    for (int i = 0; i < 100; ++i) {
        const DrawnControl* control = person.find(label);
        REQUIRE_MESSAGE(control != nullptr, "no control " << label);
        const float middle = control->box.y + 0.5F * control->box.height;
        const float high = io.DisplaySize.y;
        if (middle > 0.66F * high && middle < 0.8F * high) return;
        io.AddMousePosEvent(0.75F * io.DisplaySize.x, 0.75F * high);
        person.frame();
        io.AddMouseWheelEvent(0.0F, middle > 0.73F * high ? -0.3F : 0.3F);
        person.frame();
        person.frame();
    }
}

} // namespace

TEST_CASE("the door and its key open the recipe that is open; escape leads back") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    CHECK(person.model.screen == Screen::edit);
    CHECK(person.model.edit.id == "weirfoot-jig");
    CHECK(says(person, "Weirfoot Jig"));
    CHECK(says(person, "Nothing is in the way"));
    person.key(ImGuiKey_Escape);
    CHECK(person.model.screen == Screen::bench);
    person.key(ImGuiKey_F2);
    CHECK(person.model.screen == Screen::edit);
}

TEST_CASE(
    "an amount is typed as people write it, read back beside it, and kept with every letter") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    pick(person, "parts[7]"); // the legs, "2 turns"
    reach(person, "parts[7].turns");
    person.press("parts[7].turns");
    const auto fly = person.model.edit.fly;
    const auto before = person.effects.size();
    ctrl(person, ImGuiKey_A);
    for (const char letter : std::string("10 or 12 turns")) person.type(std::string(1, letter));
    CHECK(written(person).parts[7].turns.text == "10 or 12 turns");
    CHECK(says(person, "understood: 10 to 12 turns, 10 taken"));
    CHECK(person.model.edit.fly != fly);
    const auto kept =
        std::count_if(person.effects.begin() + static_cast<long>(before), person.effects.end(),
                      [](const Effect& e) { return e.kind == EffectKind::keep_draft; });
    CHECK(kept >= 14); // with each letter, before it is shown
    // All of it was one step of the history.
    person.key(ImGuiKey_Escape);
    CHECK(person.model.screen == Screen::edit);
    CHECK(written(person).parts[7].turns.text == "10 or 12 turns");
    person.press("Undo");
    CHECK(bytes(person) == write_recipe(demo("weirfoot-jig").recipe));
    person.press("Redo");
    CHECK(written(person).parts[7].turns.text == "10 or 12 turns");
}

TEST_CASE("words that cannot be meant stay in their field with the reason, and the fly stays") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    pick(person, "parts[7]");
    reach(person, "parts[7].turns");
    person.press("parts[7].turns");
    ctrl(person, ImGuiKey_A);
    person.type("3 mm");
    CHECK(says(person, "is not a number of turns"));
    CHECK(bytes(person).find("\"3 mm\"") != std::string::npos);
    CHECK(person.model.edit.fly != nullptr);
}

TEST_CASE("a share is told in millimetres on this very hook") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    pick(person, "parts[3]"); // the tail, "half the shank"
    person.frame();
    const double shank = person.model.edit.fly->tied.bases[0].hook.shank.value.si;
    std::string wanted = "half the shank: ";
    // Against  half of the hook's own shank, not the resolved number that the field reads
    wanted += write_rounded(500.0 * shank, 1);
    CHECK(says(person, wanted));
}

TEST_CASE("a part is added by one line, its material with it, and goes again by a key") {
    Person person("tailrace-spider", {1280, 800});
    person.press("Write");
    const std::string before = bytes(person);
    const std::size_t parts = written(person).parts.size();
    const std::size_t materials = written(person).materials.size();
    person.bring("add to parts");
    person.press("add to parts");
    person.type("tail: ginger cock fibres, half the shank, 8 fibres");
    person.key(ImGuiKey_Enter);
    REQUIRE(written(person).parts.size() == parts + 1);
    REQUIRE(written(person).materials.size() == materials + 1);
    const Part& tail = written(person).parts.back();
    CHECK(tail.role == "tail");
    CHECK(tail.text == "ginger cock fibres, half the shank, 8 fibres");
    CHECK(tail.length.text == "half the shank");
    CHECK(tail.count.text == "8 fibres");
    CHECK(written(person).materials.back().text == "ginger cock fibres");
    CHECK(written(person).materials.back().kind == MaterialKind::fibres);
    // The line has the keys still: the next part follows at once.
    person.type("head: tying silk");
    person.key(ImGuiKey_Enter);
    CHECK(written(person).parts.size() == parts + 2);
    person.key(ImGuiKey_Escape);
    person.press("Undo");
    person.press("Undo");
    CHECK(bytes(person) == before);
}

TEST_CASE("rows go, come back and change places by keys alone") {
    Person person("tailrace-spider", {1280, 800});
    person.press("Write");
    const Recipe before = written(person);
    REQUIRE(before.parts.size() >= 3);
    person.key(ImGuiKey_DownArrow); // from the head to the first part
    CHECK(person.model.edit.row == "parts[0]");
    ctrl(person, ImGuiKey_DownArrow);
    CHECK(person.model.edit.row == "parts[1]");
    CHECK(written(person).parts[1].id == before.parts[0].id);
    ctrl(person, ImGuiKey_UpArrow);
    CHECK(written(person).parts[0].id == before.parts[0].id);
    person.key(ImGuiKey_Delete);
    CHECK(written(person).parts.size() == before.parts.size() - 1);
    ctrl(person, ImGuiKey_Z);
    CHECK(written(person) == before);
    ctrl(person, ImGuiKey_Y);
    CHECK(written(person).parts.size() == before.parts.size() - 1);
}

TEST_CASE("a row is dragged to another place of its list") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    const Recipe before = written(person);
    const DrawnControl* first = nullptr;
    const DrawnControl* third = nullptr;
    for (const DrawnControl& c : person.shown.controls) {
        if (c.label.ends_with("###row parts[1]")) first = &c;
        if (c.label.ends_with("###row parts[3]")) third = &c;
    }
    REQUIRE(first != nullptr);
    REQUIRE(third != nullptr);
    const ImVec2 a{first->box.x + 40.0F, first->box.y + 0.5F * first->box.height};
    const ImVec2 b{third->box.x + 40.0F, third->box.y + 0.5F * third->box.height};
    ImGuiIO& io = ImGui::GetIO();
    io.AddMousePosEvent(a.x, a.y);
    person.frame();
    io.AddMouseButtonEvent(0, true);
    person.frame();
    for (int i = 1; i <= 5; ++i) {
        io.AddMousePosEvent(a.x, a.y + 0.2F * static_cast<float>(i) * (b.y - a.y));
        person.frame();
    }
    io.AddMouseButtonEvent(0, false);
    person.frame();
    person.frame();
    CHECK(written(person).parts[3].id == before.parts[1].id);
    CHECK(written(person).parts[1].id == before.parts[2].id);
}

TEST_CASE("actions are typed one after the other, and each changes what can be done next") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    // The recipe without its steps from the third on: thread is not on yet.
    std::vector<Edit> cut;
    for (int i = 11; i >= 2; --i) cut.push_back({EditKind::remove, "steps", {}, i, 0});
    const Result<Draft> next = edited(person.model.edit.draft(), cut);
    REQUIRE(next.ok());
    person.model.edit.history->did(next.value());
    run_draft(person.model.edit);
    pick(person, "steps[1]");
    person.bring("+ do something in step 2");
    person.press("+ do something in step 2");
    REQUIRE(person.model.edit.picking);
    person.frame();
    person.frame();
    CHECK(says(person, "no thread is on: start it first"));
    person.type("tie tail");
    CHECK(says(person, "start it first"));
    person.key(ImGuiKey_Enter); // it cannot be done yet
    person.frame();
    CHECK(written(person).steps[1].actions.size() == 2);
    ctrl(person, ImGuiKey_A);
    person.type("start");
    person.key(ImGuiKey_Enter);
    person.frame();
    person.type("tie in tail");
    person.key(ImGuiKey_Enter);
    const auto& actions = written(person).steps[1].actions;
    REQUIRE(actions.size() == 4);
    CHECK(actions[2].op == Op::start_thread);
    CHECK(actions[2].part == "thread");
    CHECK(actions[3].op == Op::tie_in);
    CHECK(actions[3].part == "tail");
    CHECK(says(person, "the tail is tied in"));
    person.key(ImGuiKey_Escape);
    CHECK_FALSE(person.model.edit.picking);
    CHECK(person.model.screen == Screen::edit);
}

TEST_CASE("operations typed after a part was added go to their own list") {
    // 2026-11-29: the line that had added a part took the letters back
    Person person("tailrace-spider", {1600, 1500});
    person.press("Write");
    person.press("add to parts");
    person.type("wing: hen fibres");
    person.key(ImGuiKey_Enter);
    const std::size_t parts = written(person).parts.size();
    pick(person, "steps[1]");
    person.press("+ do something in step 2");
    person.frame();
    person.frame();
    const std::size_t actions = written(person).steps[1].actions.size();
    person.type("tie wing");
    person.key(ImGuiKey_Enter);
    person.frame();
    CHECK(written(person).parts.size() == parts);
    REQUIRE(written(person).steps[1].actions.size() == actions + 1);
    CHECK(written(person).steps[1].actions.back().part == "wing");
    person.type("bind wing");
    person.key(ImGuiKey_Enter);
    CHECK(written(person).steps[1].actions.size() == actions + 2);
}

TEST_CASE("a press on the hook writes the place there: a landmark near one, else a share") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    pick(person, "steps[6].actions[0]"); // dub: from barb to 0.4 shank
    REQUIRE(written(person).steps[6].actions[0].op == Op::dub);
    reach(person, "steps[6].actions[0].to");
    person.press("steps[6].actions[0].to");
    person.key(ImGuiKey_Escape);
    reach(person, "place on the hook");
    const DrawnControl* hook = person.find("place on the hook");
    REQUIRE(hook != nullptr);
    const Box box = hook->box;
    ImGuiIO& io = ImGui::GetIO();
    std::vector<std::string> words;
    for (const float share : {0.45F, 0.5F, 0.55F}) {
        const std::size_t effects = person.effects.size();
        io.AddMousePosEvent(box.x + share * box.width, box.y + 0.5F * box.height);
        person.frame();
        io.AddMouseButtonEvent(0, true);
        person.frame();
        io.AddMouseButtonEvent(0, false);
        person.frame();
        person.frame();
        words.push_back(written(person).steps[6].actions[0].to.text);
        CHECK(person.effects.size() > effects);
        CHECK(person.model.edit.draft().unread.empty());
        CHECK(written(person).steps[6].actions[0].from.text == "barb"); // the other place stays
    }
    CHECK(words[0] != words[1]);
    CHECK(words[1] != words[2]);
}

TEST_CASE("the fly follows each letter, with no frame between them") {
    // how long that takes: tests/bench/edit.cpp
    for (const char* name : {"weirfoot-jig", "sill-dun"}) {
        Person person(name, {1280, 800});
        person.press("Write");
        std::shared_ptr<const OpenFly> before = person.model.edit.fly;
        for (int i = 0; i < 5; ++i) {
            Wish w = wish(WishKind::edit_set, 0, std::to_string(3 + i) + " turns");
            w.key = "parts[3].turns";
            person.model = apply(person.model, w, person.model.now).model;
            REQUIRE(person.model.edit.fly != nullptr);
            CHECK(person.model.edit.fly != before);
            CHECK(write_recipe(person.model.edit.fly->pattern.recipe) == bytes(person));
            before = person.model.edit.fly;
        }
    }
}

TEST_CASE("the screen for writing holds in every shape of window, and every field can be reached") {
    for (const PixelSize window :
         {PixelSize{800, 480}, PixelSize{1280, 800}, PixelSize{800, 1280}, PixelSize{1920, 1080}}) {
        Person person("weirfoot-jig", window);
        person.press("Write");
        for (const char* row :
             {"", "parts[3]", "materials[1]", "steps[2]", "steps[6].actions[0]"}) {
            ImGui::SetWindowFocus(
                nullptr); // the keys are nowhere, so that no row is picked by them
            person.model =
                apply(person.model, wish(WishKind::edit_row, 0, row), person.model.now).model;
            person.frame();
            CAPTURE(row);
            CAPTURE(window.width);
            for (const DrawnControl& c : person.shown.controls) {
                CHECK(c.box.width >= 40.0F);
                CHECK(c.box.height >= 40.0F);
                CHECK(c.box.x >= 0.0F);
                CHECK(c.box.right() <= static_cast<float>(window.width));
            }
        }
    }
}
