// Whole sittings by real widgets and real keys, in windows of several shapes.

#include "gui/input.h"
#include "gui/step_words.h"
#include "tests/gui/person.h"

#include <set>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

constexpr PixelSize windows[] = {{800, 480}, {1280, 800}, {1080, 1920}};

Settings near_settings() {
    Settings settings;
    settings.reading_m = 0.6;
    return settings;
}

bool happened(const Person& person, EventKind kind) {
    return std::any_of(person.stored.begin(), person.stored.end(),
                       [&](const Event& e) { return e.kind == kind; });
}

} // namespace

TEST_CASE("a fly is tied from the lay-out list to the box with the space bar alone") {
    for (const PixelSize window : windows) {
        CAPTURE(window.width);
        Person person("sill-dun", window, near_settings());
        for (int i = 0; i < 800 && !person.finished(); ++i) person.key(ImGuiKey_Space);
        CHECK(person.finished());
        CHECK(person.model.state.fly_state == std::vector{FlyState::done});
        CHECK(person.stored == person.model.events);
    }
}

TEST_CASE("a batch with every kind of event is worked by pressing what is on the screen") {
    for (const PixelSize window : windows) {
        CAPTURE(window.width);
        Person person("weirfoot-jig", window, near_settings());
        person.press("+##Flies in this sitting");
        person.press("+##Flies in this sitting");
        CHECK(person.model.flies == 3);
        person.press("Begin now");
        CHECK(person.model.screen == Screen::bench);
        for (int i = 0; i < 30; ++i) person.press("on");
        person.press("Back");
        person.press("on");
        person.press("Undo");
        person.press("Thread broke");
        person.press("Go back there");
        person.press("Differently");
        person.press("more turns");
        person.press("Spoilt");
        person.press("came loose");
        person.key(ImGuiKey_Delete);
        person.press("Start again");
        for (int i = 0; i < 900 && !person.finished(); ++i) person.press("on");
        CHECK(person.finished());
        for (const EventKind kind :
             {EventKind::begin, EventKind::next, EventKind::back, EventKind::turn,
              EventKind::thread_broke, EventKind::done_otherwise, EventKind::fly_spoilt,
              EventKind::strip, EventKind::undo}) {
            CAPTURE(static_cast<int>(kind));
            CHECK(happened(person, kind));
        }
        CHECK(std::count(person.model.state.fly_state.begin(), person.model.state.fly_state.end(),
                         FlyState::spoilt) == 1);
        CHECK(person.stored == person.model.events);
    }
}

TEST_CASE("a left-hander ties a dozen from 3 m in a tall window, and two of them are spoilt") {
    Settings settings;
    settings.reading_m = 3.0;
    settings.left_handed = true;
    Person person("weirfoot-jig", {1080, 1920}, settings);
    for (int i = 1; i < 12; ++i) person.key(ImGuiKey_Equal);
    CHECK(person.model.flies == 12);
    person.press("Begin now");
    for (int spoilt = 0; spoilt < 2; ++spoilt) {
        for (int i = 0; i < 40; ++i) person.key(ImGuiKey_Tab);
        person.key(ImGuiKey_X);
        person.frame();
        person.press("came loose");
    }
    for (int i = 0; i < 500 && !person.finished(); ++i) person.key(ImGuiKey_Tab);
    CHECK(person.finished());
    const auto& flies = person.model.state.fly_state;
    CHECK(std::count(flies.begin(), flies.end(), FlyState::done) == 10);
    CHECK(std::count(flies.begin(), flies.end(), FlyState::spoilt) == 2);
    CHECK(step_words(person.model).facts[0] == "10 flies in the box");
}

TEST_CASE("words that are typed are noted with the action where they were said") {
    Person person("sill-dun", {1280, 800});
    person.press("Begin now");
    person.key(ImGuiKey_Tab);
    person.key(ImGuiKey_D);
    CHECK(person.model.sheet == Sheet::otherwise);
    person.frame();
    person.type("six barbs, not eight");
    person.key(ImGuiKey_Enter);
    REQUIRE(person.model.state.otherwise.size() == 1);
    CHECK(person.model.state.otherwise[0].text == "six barbs, not eight");
    CHECK(person.model.sheet == Sheet::closed);
}

TEST_CASE("a recipe of words alone is read, and no key makes it more") {
    Person person("keepers-note", {1280, 800});
    CHECK_FALSE(pictured(person.model).fly);
    person.key(ImGuiKey_Escape);
    const std::string words = person.model.fly->pattern.recipe.verbatim;
    CHECK(std::any_of(person.shown.texts.begin(), person.shown.texts.end(),
                      [&](const DrawnText& t) { return t.text == words && t.whole; }));
    for (int k = ImGuiKey_A; k <= ImGuiKey_Z; ++k) {
        person.key(static_cast<ImGuiKey>(k));
        person.key(ImGuiKey_Space);
        person.key(ImGuiKey_Escape);
    }
    CHECK(person.stored.empty());
}

TEST_CASE("every screen is reached by a key and left by escape") {
    Person person("sill-dun", {1280, 800});
    const std::pair<ImGuiKey, Screen> doors[] = {{ImGuiKey_S, Screen::settings},
                                                 {ImGuiKey_K, Screen::keys},
                                                 {ImGuiKey_F, Screen::library},
                                                 {ImGuiKey_L, Screen::lay_out},
                                                 {ImGuiKey_N, Screen::water}};
    person.key(ImGuiKey_Escape);
    for (const auto& [key, screen] : doors) {
        CHECK(person.model.screen == Screen::bench);
        person.key(key);
        CHECK(person.model.screen == screen);
        person.key(ImGuiKey_Escape);
    }
    CHECK(person.model.screen == Screen::bench);
}

TEST_CASE("a recipe is found, picked and opened by keys alone, however long the list") {
    Person person("sill-dun", {1280, 800});
    for (int i = 0; i < 10'000; ++i) {
        LibraryRow row;
        row.id = "fly-" + std::to_string(i);
        row.name = row.id;
        person.model.library.rows.push_back(row);
    }
    person.key(ImGuiKey_Escape);
    person.key(ImGuiKey_F);
    person.frame();
    person.type("sedge");
    CHECK(person.model.search == "sedge"); // the store, which is not here, would list what has it
    for (int i = 0; i < 30; ++i) person.key(ImGuiKey_DownArrow);
    person.key(ImGuiKey_UpArrow);
    CHECK(person.find("fly-29") != nullptr);   // it was scrolled into sight
    CHECK(person.shown.controls.size() < 100); // and only what is in sight was drawn
    person.key(ImGuiKey_Enter);
    CHECK(person.effects.back().kind == EffectKind::open_recipe);
    CHECK(person.effects.back().text == "fly-29");
}

TEST_CASE("settings are changed by keys alone") {
    Person person("sill-dun", {1280, 800});
    // Tab comes to every control in turn, and space presses the one that has the focus.
    person.key(ImGuiKey_Escape);
    person.key(ImGuiKey_S);
    std::set<std::string> reached;
    int changed = 0;
    for (int i = 0; i < 60; ++i) {
        person.key(ImGuiKey_Tab);
        const auto& all = person.shown.controls;
        const auto at =
            std::find_if(all.begin(), all.end(), [](const DrawnControl& c) { return c.focused; });
        if (at == all.end()) continue;
        reached.insert(at->label);
        const bool door = at->box.y < 60.0F;
        if (door || at->label.starts_with("##")) continue;
        const Settings before = person.model.settings;
        person.key(ImGuiKey_Space);
        if (!(person.model.settings == before)) ++changed;
    }
    for (const DrawnControl& control : person.shown.controls) {
        CAPTURE(control.label);
        CHECK(reached.count(control.label) == 1);
    }
    CHECK(changed > 8);
}

TEST_CASE("every key that comes with the bench reaches its command, a pad's too") {
    // 2026-11-30: ImGui dropped the keys of pads and pedals, and nobody had pressed one
    Person person("weirfoot-jig", windows[1]);
    person.press("Begin now");
    REQUIRE(person.model.screen == Screen::bench);
    const Model bench = person.model;
    for (const KeyUse& use : usual_keys()) {
        CAPTURE(use.key);
        const bool ctrl = use.key.starts_with("ctrl ");
        int key = ImGuiKey_NamedKey_BEGIN;
        while (key < ImGuiKey_NamedKey_END && key_word(static_cast<ImGuiKey>(key), ctrl) != use.key)
            ++key;
        REQUIRE(key < ImGuiKey_NamedKey_END);
        person.model = bench;
        person.frame(0.6);
        ImGuiIO& io = ImGui::GetIO();
        io.AddKeyEvent(ImGuiMod_Ctrl, ctrl);
        io.AddKeyEvent(static_cast<ImGuiKey>(key), true);
        person.frame();
        CHECK(
            std::any_of(person.shown.wishes.begin(), person.shown.wishes.end(), [&](const Wish& w) {
                return w.kind == WishKind::command && w.number == static_cast<int>(use.command);
            }));
        io.AddKeyEvent(static_cast<ImGuiKey>(key), false);
        io.AddKeyEvent(ImGuiMod_Ctrl, false);
        person.frame();
        person.frame();
    }
}

TEST_CASE("a key that is given to a command works, and is gone from what it did before") {
    Person person("sill-dun", {1280, 800});
    person.press("Begin now");
    person.key(ImGuiKey_K);
    person.press(std::string(words(Command::undo)));
    person.key(ImGuiKey_B);
    CHECK(command_of(person.model.settings.keys, "b") == Command::undo);
    person.key(ImGuiKey_Escape);
    person.key(ImGuiKey_Tab);
    const int stood = person.model.state.at;
    person.key(ImGuiKey_B);
    CHECK(person.model.state.at == stood - 1);
    CHECK(person.model.sheet == Sheet::closed);
}

TEST_CASE(
    "nothing that is pressed is smaller than a fingertip, and what moves on is a third of all") {
    for (const PixelSize window : windows) {
        CAPTURE(window.width);
        Person person("weirfoot-jig", window, near_settings());
        const auto check = [&] {
            for (const DrawnControl& control : person.shown.controls) {
                CAPTURE(control.label);
                // Source  the task's own measure: controls of 44 dots at least
                CHECK(control.box.height >= least_control);
                CHECK(control.box.width >= least_control);
            }
        };
        check();
        person.press("Begin now");
        check();
        const DrawnControl* zone = person.find("on");
        REQUIRE(zone != nullptr);
        CHECK(zone->box.width * zone->box.height >=
              static_cast<float>(window.width * window.height) / 3.0F);
        for (const char* door : {"Settings", "Keys", "Recipes", "Lay out"}) {
            person.press(door);
            check();
        }
        person.key(ImGuiKey_Escape);
        for (const ImGuiKey key : {ImGuiKey_B, ImGuiKey_D, ImGuiKey_X, ImGuiKey_Delete}) {
            person.key(key);
            CHECK(person.model.sheet != Sheet::closed);
            check();
            person.key(ImGuiKey_Escape);
        }
    }
}

TEST_CASE("what to do now is whole at every action, near and far, and what is cut says so") {
    for (const PixelSize window : windows) {
        for (const double distance : {0.6, 1.0, 2.0}) {
            if (window.width == 800 && distance > 1.0) continue; // too few dots for that
            CAPTURE(window.width);
            CAPTURE(distance);
            Settings settings;
            settings.reading_m = distance;
            Person person("weirfoot-jig", window, settings);
            person.press("Begin now");
            while (!person.finished()) {
                const StepWords words = step_words(person.model);
                const auto drawn = [&](const std::string& text) {
                    const auto it =
                        std::find_if(person.shown.texts.begin(), person.shown.texts.end(),
                                     [&](const DrawnText& t) { return t.text == text && t.whole; });
                    return it != person.shown.texts.end();
                };
                CAPTURE(words.what);
                CHECK(drawn(words.what));
                bool all = drawn(words.step);
                for (const std::string& fact : words.facts) all = all && drawn(fact);
                for (const std::string& caution : words.cautions) all = all && drawn(caution);
                CHECK((all || drawn("more: m")));
                person.key(ImGuiKey_Tab);
            }
        }
    }
}

TEST_CASE("no letters are smaller than the distance asks, but for captions at arm's length") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Begin now");
    for (const DrawnText& text : person.shown.texts) {
        CAPTURE(text.text);
        CHECK(text.size >= person.sizes.small);
    }
}
