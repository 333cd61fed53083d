// The fly in the water: what is shown is what the core reckons, and what is measured is kept.

#include "core/check/rules.h"
#include "core/recipe/text.h"
#include "core/water/water_words.h"
#include "tests/gui/person.h"
#include "tests/support/close.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

RuleSet small_beads() {
    RuleSet rules;
    rules.id = rules.name = "Small beads";
    rules.date = "2026-01-01";
    rules.bead_most = millimetres(2.0);
    return rules;
}

void count_effects(const Person& person, EffectKind kind, int n) {
    CHECK(std::count_if(person.effects.begin(), person.effects.end(),
                        [&](const Effect& e) { return e.kind == kind; }) == n);
}

} // namespace

TEST_CASE("the screen shows the numbers of the core, with the words that promise nothing") {
    for (const char* recipe : {"weirfoot-jig", "tailrace-spider", "sill-dun", "lockgate-sedge"}) {
        Person person(recipe, {1280, 800});
        person.press("Water");
        REQUIRE(person.model.screen == Screen::water);
        const OpenFly& fly = *person.model.fly;
        const Result<InWater> w = in_water(fly.pattern, fly.resolved, fly.tied, {});
        REQUIRE(w.ok());
        for (const std::string& words :
             {sink_words(w.value()), film_words(w.value()), ride_words(w.value()),
              hang_words(w.value()), weight_words(w.value().mass),
              drift_words(w.value(), metres(6.0))}) {
            CAPTURE(words);
            CHECK(says(person, words));
        }
        CHECK(says(person, until_timed));
        for (const std::string& words : ground_words(fly.pattern, w.value())) {
            CHECK(says(person, words));
        }
    }
}

TEST_CASE("a slider answers in the same frame, and is remembered") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Water");
    const Speed before = person.model.dipped->sink.value;
    const std::string words = sink_words(*person.model.dipped);
    person.press("length"); // the middle of its slider: 2 m
    CHECK(within(person.model.settings.tippet_m, 2.0, 0.051));
    CHECK(person.model.dipped->sink.value < before);
    CHECK_FALSE(says(person, words));
    CHECK(says(person, sink_words(*person.model.dipped)));
    CHECK(std::any_of(person.effects.begin(), person.effects.end(), [](const Effect& e) {
        return e.kind == EffectKind::save_setting && e.key == "tippet length";
    }));
    // No slider, wherever it is put, leaves the screen without an answer.
    for (const char* slider : {"current", "depth", "temperature", "length", "thickness"}) {
        const DrawnControl* control = person.find(slider);
        REQUIRE(control != nullptr);
        const Box box = control->box;
        for (const float share : {0.0F, 1.0F, 0.4F}) {
            ImGuiIO& io = ImGui::GetIO();
            io.AddMousePosEvent(box.x + share * box.width, box.y + 0.5F * box.height);
            person.frame();
            io.AddMouseButtonEvent(0, true);
            person.frame();
            io.AddMouseButtonEvent(0, false);
            person.frame();
            CAPTURE(slider);
            CHECK(person.model.dipped != nullptr);
        }
    }
}

TEST_CASE("a fall that was timed is kept and narrows the band, and forgetting it widens it again") {
    Person person("weirfoot-jig", {1080, 1920});
    person.press("Water");
    const auto width = [&] {
        const Estimate<Speed>& s = person.model.dipped->sink_free;
        return (s.high - s.low).si / s.value.si;
    };
    const double before = width();
    person.bring("fall metres");
    person.press("fall metres");
    person.type("0.5");
    person.press("fall seconds");
    person.type("0.9");
    person.press("Keep the fall");
    REQUIRE(person.model.falls.size() == 1);
    count_effects(person, EffectKind::keep_fall, 1);
    CHECK(width() < 0.3 * before);
    CHECK_FALSE(says(person, until_timed));
    CHECK(says(person, "by one timed fall"));
    person.bring("Forget");
    person.press("Forget");
    CHECK(person.model.falls.empty());
    count_effects(person, EffectKind::drop_fall, 1);
    CHECK(within(width(), before, 1e-12));
    // Nonsense is said to be so, and nothing is kept.
    person.bring("fall metres");
    person.press("fall metres");
    person.type("0.5");
    person.press("fall seconds");
    person.type("0");
    person.press("Keep the fall");
    CHECK(person.model.falls.empty());
    CHECK_FALSE(person.model.notice.empty());
}

TEST_CASE("the whole fly on a scale narrows its mass, and without a number nothing is weighed") {
    Person person("weirfoot-jig", {1080, 1920});
    person.press("Water");
    const Mass before = person.model.dipped->mass.high - person.model.dipped->mass.low;
    person.bring("weighed");
    person.press("weighed");
    person.type("221");
    person.press("Keep the weight");
    count_effects(person, EffectKind::keep_weighing, 1);
    CHECK(within(in_milligrams(person.model.dipped->mass.value), 221.0, 1.0));
    CHECK(person.model.dipped->mass.high - person.model.dipped->mass.low < 0.3 * before);
    CHECK(says(person, "Weighed: the whole fly"));
    person.press("Forget it");
    CHECK(person.model.weighed.value.si == 0.0);
    person.bring("weighed");
    person.press("weighed");
    person.type("heavy");
    person.press("Keep the weight");
    CHECK(person.model.weighed.value.si == 0.0);
}

TEST_CASE("the rule set's name and date stay in sight with what it says of the fly") {
    Person person("weirfoot-jig", {800, 480});
    person.model.rule_sets = {small_beads(), {}};
    person.model.rule_sets[1].id = person.model.rule_sets[1].name = "No rules";
    person.model.rule_sets[1].date = "2026-02-02";
    person.press("Water");
    CHECK(says(person, "Small beads, as of 2026-01-01: 1 fail"));
    person.bring("Other rules");
    person.press("Other rules");
    CHECK(says(person, "No rules, as of 2026-02-02"));
    CHECK(person.model.settings.rules == "No rules");
}

TEST_CASE("a way to another mass is found, tied and left in the library as it was") {
    Person person("weirfoot-jig", {1080, 1920});
    std::ifstream file(WW_SOURCE_DIR "/assets/sets/catalogue.json");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    person.model.stock = stock_of(read_recipe(text).value().materials);
    person.press("Water");
    const Mass before = person.model.dipped->mass.value;
    const auto fly = person.model.fly;
    person.bring("+##reach");
    for (int i = 0; i < 8; ++i) person.press("+##reach"); // 220 mg and 80 more
    REQUIRE(person.model.reached);
    REQUIRE_FALSE(person.model.reached->ways.empty());
    const ReachWay way = person.model.reached->ways.front();
    CHECK(within_share(in_milligrams(way.mass.value), 300.0, 0.03));
    CHECK_FALSE(way.has_lead);
    const std::string label = way_words(person.model.stock, way) + "##way 1";
    person.bring(label);
    person.press(label);
    CHECK(person.model.fly != fly);
    CHECK(person.model.dipped->mass.value == way.mass.value);
    CHECK(person.model.dipped->mass.value > before);
    CHECK(person.model.fly->id == fly->id);
    count_effects(person, EffectKind::append, 0);
    // A depth and a sink rate are asked for by the same buttons.
    person.bring("a mass##aim");
    person.press("a mass##aim");
    CHECK(person.model.ask.aim == Aim::sink);
    person.press("a sink rate##aim");
    REQUIRE(person.model.reached);
    CHECK(within(person.model.reached->ways.front().depth.si, 0.8, 0.05));
}

TEST_CASE("keys alone walk to a slider and move it, and lead out again") {
    Person person("weirfoot-jig", {1280, 800});
    person.key(ImGuiKey_N);
    REQUIRE(person.model.screen == Screen::water);
    const auto on = [&](const char* label) {
        const DrawnControl* control = person.find(label);
        return control != nullptr && control->focused;
    };
    for (int i = 0; i < 30 && !on("depth"); ++i) person.key(ImGuiKey_Tab);
    REQUIRE(on("depth"));
    const double before = person.model.settings.river_deep_m;
    person.key(ImGuiKey_RightArrow);
    CHECK(person.model.settings.river_deep_m > before);
    CHECK(person.model.screen == Screen::water);
    person.key(ImGuiKey_N);
    CHECK(person.model.screen == Screen::bench);
}

TEST_CASE("what is pressed is large enough for a knuckle, in every window") {
    for (const PixelSize window : {PixelSize{800, 480}, {480, 800}, {1280, 800}, {1080, 1920}}) {
        Person person("weirfoot-jig", window);
        person.press("Water");
        for (const DrawnControl& control : person.shown.controls) {
            CAPTURE(control.label);
            CHECK(control.box.height >= least_control - 0.5F);
            CHECK(control.box.width >= least_control - 0.5F);
        }
    }
}

TEST_CASE("words alone have no weight, and the screen says so") {
    Person person("keepers-note", {1280, 800});
    person.press("Water");
    CHECK(person.model.dipped == nullptr);
    CHECK(says(person, "words alone"));
}
