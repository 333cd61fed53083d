// The screens under fingers, and in words alone.

#include "gui/touch.h"
#include "gui/field.h"
#include "gui/spoken.h"
#include "gui/step_words.h"
#include "tests/gui/person.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// Puts a finger down on a control, moves it by so much, and lifts it after so many frames.
void stroke(Person& person, const std::string& label, float x, float y, int frames = 3) {
    const DrawnControl* control = person.find(label);
    REQUIRE_MESSAGE(control != nullptr, "no control " << label);
    const ImVec2 from{control->box.x + 0.5F * control->box.width,
                      control->box.y + 0.5F * control->box.height};
    person.wait(0.6);
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
    io.AddMousePosEvent(from.x, from.y);
    io.AddMouseButtonEvent(0, true);
    person.frame();
    person.frame();
    for (int i = 1; i <= frames; ++i) {
        const float share = static_cast<float>(i) / static_cast<float>(frames);
        io.AddMousePosEvent(from.x + share * x, from.y + share * y);
        person.frame(0.05);
    }
    io.AddMouseButtonEvent(0, false);
    person.frame();
    person.frame();
}

/// A person in the middle of a sitting.
struct AtWork : Person {
    explicit AtWork(const char* recipe = "weirfoot-jig") : Person(recipe, {1280, 800}) {
        press("Begin now");
        REQUIRE(model.events.size() == 1);
    }
};

bool has(const std::vector<OutlineRow>& rows, OutlineKind kind, std::string_view part) {
    return std::any_of(rows.begin(), rows.end(), [&](const OutlineRow& row) {
        return row.kind == kind && row.text.find(part) != std::string::npos;
    });
}

} // namespace

TEST_CASE("a finger that slides over the step does not press it; one that trembles does") {
    AtWork person;
    stroke(person, "on", 60.0F, 0.0F);
    CHECK(person.model.events.size() == 1);
    stroke(person, "on", 5.0F, 4.0F);
    CHECK(person.model.events.size() == 2);
}

TEST_CASE("a finger that stays on the step asks for more words, once, and presses nothing") {
    AtWork person;
    stroke(person, "on", 0.0F, 0.0F, 30); // 1.5 s
    CHECK(person.model.more_words);
    CHECK(person.model.events.size() == 1);
}

TEST_CASE("a slider stays where it is when the finger on it is taken back") {
    AtWork person;
    person.press("Film");
    stroke(person, "moment", 0.0F, 0.0F);
    const int middle = person.model.film_at;
    REQUIRE(middle > 1);
    const DrawnControl* slider = person.find("moment");
    ImGuiIO& io = ImGui::GetIO();
    io.AddMousePosEvent(slider->box.x + 0.5F * slider->box.width, slider->box.y + 5.0F);
    io.AddMouseButtonEvent(0, true);
    person.frame();
    person.frame();
    io.AddMousePosEvent(-FLT_MAX, -FLT_MAX); // a second finger came, or a palm
    person.frame();
    io.AddMouseButtonEvent(0, false);
    person.frame();
    person.frame();
    CHECK(person.model.film_at == middle);
}

TEST_CASE("a finger sets a slider by going along it or by a tap, and not by pushing the list") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Film");
    const auto at = [&] { return person.model.film_at; };
    stroke(person, "moment", 0.0F, 0.0F);
    const int middle = at();
    REQUIRE(middle > 1);
    stroke(person, "moment", 10.0F, -120.0F);
    stroke(person, "moment", -10.0F, 120.0F);
    CHECK(at() == middle);
    stroke(person, "moment", 400.0F, 30.0F);
    CHECK(at() > middle);

    // Out and back again, a little lower: still the slider.
    const Box box = person.find("moment")->box;
    const float x = box.x + 0.5F * box.width, y = box.y + 0.5F * box.height;
    ImGuiIO& io = ImGui::GetIO();
    person.wait(0.6);
    io.AddMousePosEvent(x, y);
    io.AddMouseButtonEvent(0, true);
    person.frame();
    person.frame();
    for (const float way : {100.0F, 200.0F, 100.0F, 2.0F}) {
        io.AddMousePosEvent(x + way, y + 12.0F);
        person.frame();
        person.frame();
    }
    CHECK(std::abs(at() - middle) <= 1);
    io.AddMouseButtonEvent(0, false);
    person.frame();
}

TEST_CASE("a finger pushes the list of a recipe, and moves a row on which it has stayed") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Write");
    const auto order = [&] {
        std::string ids;
        for (const Part& part : person.model.edit.draft().recipe.parts) ids += part.id + ' ';
        return ids;
    };
    const std::string before = order();
    const std::string row = "row parts[1]"; // as its label ends
    const auto label = [&] {
        for (const DrawnControl& c : person.shown.controls) {
            if (c.label.ends_with("###" + row)) return c.label;
        }
        return std::string();
    };
    REQUIRE_FALSE(label().empty());
    const float high = person.find(label())->box.height;
    const float y = person.find(label())->box.y;
    stroke(person, label(), 0.0F, 2.2F * high); // the list is at its upper end
    CHECK(order() == before);
    stroke(person, label(), 0.0F, -2.2F * high);
    CHECK(order() == before);
    CHECK(person.find(label())->box.y < y - high);
    stroke(person, label(), 0.0F, 2.2F * high);

    // Held, it comes along; a palm that comes down beside it leaves all as it was.
    const auto hold = [&](bool palm) {
        const Box box = person.find(label())->box;
        const float x = box.x + 0.5F * box.width, from = box.y + 0.5F * box.height;
        person.wait(0.6);
        ImGuiIO& io = ImGui::GetIO();
        io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
        io.AddMousePosEvent(x, from);
        io.AddMouseButtonEvent(0, true);
        for (int i = 0; i < 20; ++i) person.frame(0.05);
        for (int i = 1; i <= 5; ++i) {
            io.AddMousePosEvent(x, from + 0.25F * static_cast<float>(i) * high);
            person.frame();
        }
        if (palm) {
            io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
            person.frame();
        }
        io.AddMouseButtonEvent(0, false);
        person.frame();
        person.frame();
    };
    hold(true);
    CHECK(order() == before);
    hold(false);
    CHECK(order() != before);
}

TEST_CASE("what can hurt is read first where not all of a step can be read") {
    Settings near;
    near.reading_m = 0.5; // as for a tablet
    Person person("weirfoot-jig", {480, 600}, near);
    person.press("Begin now");
    int seen = 0;
    for (int i = 0; i < 100 && at_work(person.model); ++i) {
        const StepWords words = step_words(person.model);
        for (const std::string& caution : words.cautions) {
            ++seen;
            const auto shown = [&](const DrawnText& t) { return t.text == caution && t.whole; };
            CHECK_MESSAGE(std::any_of(person.shown.texts.begin(), person.shown.texts.end(), shown),
                          caution);
        }
        person.key(ImGuiKey_Tab);
    }
    CHECK(seen > 5);
}

TEST_CASE("what a key alone did stands beside more words, and below the fields of a row") {
    AtWork person;
    for (const char* act : {"Skip the count", "Count by itself", "Measure", "Strip"}) {
        CHECK(person.find(act) == nullptr);
    }
    stroke(person, "on", 0.0F, 0.0F, 30);
    REQUIRE(person.model.more_words);
    while (std::round(counted_at(*person.model.fly, moment_of(person.model)).turns) < 3.0) {
        stroke(person, "Skip the count", 0.0F, 0.0F);
        REQUIRE(at_work(person.model));
        CHECK_FALSE(person.model.more_words); // of the step before
        stroke(person, "on", 0.0F, 0.0F, 30);
    }
    stroke(person, "Count by itself", 0.0F, 0.0F);
    CHECK(person.model.counting);
    stroke(person, "Strip", 0.0F, 0.0F);
    CHECK(person.model.sheet == Sheet::strip);
    person.key(ImGuiKey_Escape);
    // In the lowest window the words keep their room, and no act lies on another control.
    ImGui::GetIO().DisplaySize = {480.0F, 320.0F};
    person.frame();
    person.frame();
    for (const DrawnControl& a : person.shown.controls) {
        CHECK(a.box.height > 0.0F);
        for (const DrawnControl& b : person.shown.controls) {
            if (&a == &b || a.label.starts_with("wraps") || b.label.starts_with("wraps")) continue;
            const bool apart = a.box.right() <= b.box.x + 1.0F || b.box.right() <= a.box.x + 1.0F ||
                               a.box.bottom() <= b.box.y + 1.0F || b.box.bottom() <= a.box.y + 1.0F;
            CHECK_MESSAGE(apart, a.label << " lies on " << b.label);
        }
    }
    ImGui::GetIO().DisplaySize = {1280.0F, 800.0F};
    person.frame();

    person.press("Write");
    const std::size_t parts = person.model.edit.draft().recipe.parts.size();
    for (const DrawnControl& c : std::vector(person.shown.controls)) {
        if (c.label.ends_with("###row parts[1]")) stroke(person, c.label, 0.0F, 0.0F);
    }
    REQUIRE(person.model.edit.row == "parts[1]");
    const std::string second = person.model.edit.draft().recipe.parts[1].id;
    person.bring("Earlier");
    stroke(person, "Earlier", 0.0F, 0.0F);
    CHECK(person.model.edit.draft().recipe.parts[0].id == second);
    person.bring("Take away");
    stroke(person, "Take away", 0.0F, 0.0F);
    CHECK(person.model.edit.draft().recipe.parts.size() == parts - 1);
}

TEST_CASE("a finger in a field says where it puts the caret, and nothing when it is gone") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Recipes");
    person.frame();
    person.typing().outside = OutsideText{"wört sedge dun", 14, 14};
    person.frame();
    person.frame();
    const auto field = [&] {
        return *std::find_if(person.shown.fields.begin(), person.shown.fields.end(),
                             [](const DrawnField& f) { return f.active; });
    };
    CHECK(field().caret_from == -1);
    ImGuiIO& io = ImGui::GetIO();
    io.AddMousePosEvent(field().box.x + 40.0F, field().box.y + 0.5F * field().box.height);
    person.frame();
    io.AddMouseButtonEvent(0, true);
    person.frame();
    person.frame();
    CHECK(field().caret_from == field().caret_to);
    CHECK(field().caret_from > 0);
    CHECK(field().caret_from < 10); // of 13 characters in 14 bytes
    io.AddMouseButtonEvent(0, false);
    person.frame();
    person.frame();
    CHECK(field().caret_from == -1);
}

TEST_CASE(
    "a voice hears how long until it is hard, what is restored, and what was seen beside it") {
    AtWork person("millpool-leech");
    bool waited = false, restored = false;
    for (int i = 0; i < 200 && at_work(person.model); ++i) {
        const StepWords words = step_words(person.model);
        const std::vector<OutlineRow> rows = outline(person.model, person.shown);
        if (!words.spacing.empty()) CHECK(has(rows, OutlineKind::text, words.spacing));
        if (words.restore_point) {
            restored = true;
            CHECK(has(rows, OutlineKind::text, "falls back to here"));
        }
        if (wait_at(*person.model.fly, moment_of(person.model)).si > 0.0) {
            waited = true;
            CHECK(has(rows, OutlineKind::live, " until it is hard"));
        }
        person.key(ImGuiKey_Tab);
    }
    CHECK(restored);
    CHECK(waited);
}

TEST_CASE("with a sheet open the outline says what stands on it and nothing of what lies below") {
    AtWork person;
    const std::string below = step_words(person.model).what;
    const auto drawn = [&] {
        return std::any_of(person.shown.texts.begin(), person.shown.texts.end(),
                           [&](const DrawnText& text) { return text.text == below; });
    };
    CHECK(drawn());
    person.press("Spoilt");
    REQUIRE(person.model.sheet != Sheet::closed);
    person.frame();
    CHECK_FALSE(drawn());
    CHECK_FALSE(has(outline(person.model, person.shown), OutlineKind::text, below));
    CHECK(person.shown.texts.size() > 1);
}

TEST_CASE("a mouse may be slow and may slide") {
    AtWork person;
    person.press("on");
    CHECK(person.model.events.size() == 2);
}

TEST_CASE("a list is pushed by a finger, and the row below it is not pressed") {
    AtWork person;
    person.press("Settings");
    const std::string label = "Left-handed: the pictures mirror";
    const DrawnControl* row = person.find(label);
    REQUIRE(row != nullptr);
    const float before = row->box.y;
    stroke(person, label, 0.0F, -100.0F, 10);
    REQUIRE(person.find(label) != nullptr);
    CHECK(person.find(label)->box.y < before - 60.0F);
    CHECK_FALSE(person.model.settings.left_handed);
}

TEST_CASE(
    "what something outside writes stands in the field that is typed into, with its selection") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Recipes");
    person.frame();
    person.frame();
    const auto field = std::find_if(person.shown.fields.begin(), person.shown.fields.end(),
                                    [](const DrawnField& f) { return f.active; });
    REQUIRE(field != person.shown.fields.end()); // with a mouse the search has the keys at once
    CHECK_FALSE(field->number);
    person.typing().outside = OutsideText{"sedge wört", 0, 5};
    person.frame();
    person.frame();
    CHECK(person.model.search == "sedge wört");
    person.type("dun"); // in place of what is selected
    CHECK(person.model.search == "dun wört");
}

TEST_CASE("the outline says the step, the count, what was found, the tally and what can be done") {
    AtWork person;
    while (counted_at(*person.model.fly, moment_of(person.model)).turns < 2.0) {
        person.key(ImGuiKey_Tab);
        REQUIRE(at_work(person.model));
    }
    const std::vector<OutlineRow> before = outline(person.model, person.shown);
    CHECK(before.front().kind == OutlineKind::title);
    CHECK(has(before, OutlineKind::title, "hook size 14"));
    CHECK(has(before, OutlineKind::heading, "Step"));
    CHECK(has(before, OutlineKind::heading, "Tally"));
    CHECK(has(before, OutlineKind::live, "0 of "));
    CHECK(has(before, OutlineKind::control, "Thread broke"));
    CHECK_FALSE(has(before, OutlineKind::control, "##"));
    person.key(ImGuiKey_Space);
    CHECK(has(outline(person.model, person.shown), OutlineKind::live, "1 of "));
    for (const OutlineRow& row : before)
        CHECK((row.kind == OutlineKind::control) == (row.control >= 0));
}

TEST_CASE("the voice reads the action and its cautions at the bench, and nothing elsewhere") {
    AtWork person;
    const std::string words = spoken(person.model);
    CHECK(words.size() > 20);
    bool counted_turns = false, apart = false, said = false;
    for (int i = 0; i < 100 && at_work(person.model); ++i) {
        const StepWords step = step_words(person.model);
        const std::string heard = spoken(person.model);
        const double all = std::round(counted_at(*person.model.fly, moment_of(person.model)).turns);
        const std::string turns = std::to_string(std::lround(all)) + " turn";
        if (all >= 1.0) CHECK_MESSAGE(heard.find(turns) != std::string::npos, heard);
        if (!step.spacing.empty()) CHECK(heard.find(step.spacing) != std::string::npos);
        CHECK(heard.find(step.step) != std::string::npos);
        counted_turns = counted_turns || all >= 1.0;
        apart = apart || step.spacing.find("apart") != std::string::npos;
        said = said || !step.step.empty();
        person.key(ImGuiKey_Tab);
    }
    CHECK(counted_turns);
    CHECK(apart);
    CHECK(said);
    person.key(ImGuiKey_Y);
    CHECK(person.model.settings.voice);
    person.press("Settings");
    CHECK(spoken(person.model).empty());
}
