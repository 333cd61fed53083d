// Is the fly in proportion: a person measures, marks a photo, and reads what to mend.

#include "core/units/number_text.h"
#include "gui/wraps.h"
#include "tests/gui/person.h"
#include "tests/support/close.h"
#include "tests/support/fly_photo.h"

#include <glm/geometric.hpp>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// Presses a place of the photo, as it is fitted into its control; taken back, the pointer goes away
/// before the button, as when a second finger comes.
void touch(Person& person, const glm::dvec2& pixel, bool taken_back = false) {
    const DrawnControl* photo = person.find("photo");
    REQUIRE(photo != nullptr);
    const GreyPicture& p = *person.model.check.photo.picture;
    const double scale = std::min(static_cast<double>(photo->box.width) / p.width,
                                  static_cast<double>(photo->box.height) / p.height);
    ImGuiIO& io = ImGui::GetIO();
    io.AddMousePosEvent(photo->box.x + 0.5F * photo->box.width +
                            static_cast<float>((pixel.x + 0.5 - 0.5 * p.width) * scale),
                        photo->box.y + 0.5F * photo->box.height +
                            static_cast<float>((pixel.y + 0.5 - 0.5 * p.height) * scale));
    person.frame();
    io.AddMouseButtonEvent(0, true);
    person.frame();
    if (taken_back) io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    if (taken_back) person.frame();
    io.AddMouseButtonEvent(0, false);
    person.frame();
    person.frame();
}

} // namespace

TEST_CASE(
    "a length typed at the check is kept and answered in words, by the standard that is picked") {
    Person person("sill-dun", {1280, 800});
    person.press("Check");
    REQUIRE(person.model.screen == Screen::check);
    const std::string first = standard_of(person.model);
    CHECK(says(person, "By \"" + first + "\""));
    person.press("caliper");
    person.type("tail 4.6");
    person.press("Keep it");
    REQUIRE(person.model.check.readings.size() == 1);
    const FlyReading& r = person.model.check.readings[0];
    CHECK(r.part == "tail");
    CHECK(within(r.value, 0.0046, 1e-12));
    CHECK(r.low < r.value);
    CHECK(std::count_if(person.effects.begin(), person.effects.end(), [](const Effect& e) {
              return e.kind == EffectKind::keep_readings && e.number == 1;
          }) == 1);
    CHECK(says(person, "too short by "));
    CHECK(says(person, "step 3"));
    person.press("By \"" + first + "\", one of 3");
    CHECK(standard_of(person.model) != first);
    CHECK(person.model.settings.standard == standard_of(person.model));
}

TEST_CASE("what names no part or no length is refused with a remedy, and nothing is kept") {
    for (const char* words : {"4.6", "elbow 4.6", "tail", "tail long", "tail -2", "tail 0",
                              "mass x", "tail 9999", "mass nan", "tail inf"}) {
        Person person("sill-dun", {1280, 800});
        person.model = apply(person.model, wish(WishKind::show, static_cast<int>(Screen::check)),
                             person.model.now)
                           .model;
        const Applied applied =
            apply(person.model, wish(WishKind::caliper, 0, words), person.model.now);
        CAPTURE(words);
        CHECK(applied.model.check.readings.empty());
        CHECK(applied.effects.empty());
        CHECK_FALSE(applied.model.notice.empty());
    }
}

TEST_CASE(
    "at the vise a key opens the caliper for this fly, and the answer stays beside the target") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Begin now");
    person.key(ImGuiKey_E);
    REQUIRE(person.model.sheet == Sheet::caliper);
    person.type("tail 3.4");
    person.press("Keep it");
    CHECK(person.model.sheet == Sheet::caliper);
    REQUIRE(person.model.check.readings.size() == 1);
    CHECK(person.model.check.readings[0].fly == 1);
    CHECK(says(person, "3.4 is "));
    person.key(ImGuiKey_Escape);
    CHECK(person.model.sheet == Sheet::closed);
    CHECK(at_work(person.model));
}

TEST_CASE("a photo marked by hand names the part, the millimetres and the step") {
    std::optional<FlyPhoto> taken;
    for (const PixelSize window : {PixelSize{1280, 800}, PixelSize{1080, 1920}}) {
        Person person("sill-dun", window);
        person.press("Check");
        person.press("Photo");
        CHECK(says(person, "Drop a photo here"));
        if (!taken) taken = photo_of(*person.model.fly);
        const FlyPhoto& photo = *taken;
        person.model.check.photo.picture = std::make_shared<const GreyPicture>(photo.picture);
        person.frame();
        // A press that is taken back marks nothing, and picks no other spot, also where it is enlarged.
        const auto untouched = person.model.check.photo.marks.at;
        touch(person, *photo.truth.at[0], true);
        person.press("Closer");
        touch(person, *photo.truth.at[0], true);
        person.press("Whole photo");
        CHECK(person.model.check.photo.marks.at == untouched);
        CHECK(person.typing().photo_spot == 0);
        // Corners roughly, then by the card's edges; the tail is marked 4 mm beyond its end.
        for (std::size_t i = 0; i < 4; ++i) touch(person, *photo.truth.at[i] + glm::dvec2(3, -3));
        person.press("Corners by the card's edges");
        for (std::size_t i = 0; i < 4; ++i) {
            REQUIRE(person.model.check.photo.marks.at[i]);
            CHECK(glm::length(*person.model.check.photo.marks.at[i] - *photo.truth.at[i]) < 1.0);
        }
        const glm::dvec2 along = *photo.truth[PhotoSpot::tail_end] - *photo.truth[PhotoSpot::bend];
        const glm::dvec2 beyond =
            *photo.truth[PhotoSpot::tail_end] + 4.0 * 14.5 * glm::normalize(along);
        touch(person, *photo.truth[PhotoSpot::eye]);
        touch(person, *photo.truth[PhotoSpot::bend]);
        touch(person, beyond);
        const auto& found = person.model.check.photo.found;
        REQUIRE(found.scale);
        const auto& tail = found.lengths.parts[0];
        REQUIRE(tail);
        const auto own =
            own_measure(person.model.fly->pattern, person.model.fly->tied, Measured::tail);
        // Tolerance  a finger's press on a photo shown at a fifth: 3 px are 0.2 mm at each end
        CHECK(within(in_millimetres(tail->value), in_millimetres(own->length) + 4.0, 0.6));
        CHECK(says(person, "too long by "));
        CHECK(says(person, "step " + std::to_string(own->step + 1)));
        person.bring("Keep these lengths");
        person.press("Keep these lengths");
        REQUIRE_FALSE(person.model.check.readings.empty());
        CHECK(person.model.check.readings[0].by_photo);
        CHECK(person.model.check.readings[0].part == "tail");
    }
}

TEST_CASE("two ways that see different ribs are both shown, and the one that is picked is kept") {
    Person person("weirfoot-jig", {1280, 800});
    person.press("Check");
    person.press("Photo");
    person.model.check.photo.picture =
        std::make_shared<const GreyPicture>(GreyPicture{64, 64, std::vector<float>(4096, 0.5F)});
    RibMeasure ribs;
    ribs.by_spectrum = millimetres(0.4);
    ribs.by_shift = millimetres(0.8);
    ribs.period = about(millimetres(0.4), 0.02, Origin::measured);
    auto& found = person.model.check.photo.found;
    found.scale = PhotoScale::two_points({0, 0}, {60, 0}, millimetres(10)).value();
    found.ribs = ribs;
    person.frame();
    CHECK(says(person, "do not agree"));
    CHECK(person.find("0.4 mm by the spectrum") != nullptr);
    person.press("0.8 mm by shifting");
    CHECK(person.model.check.photo.marks.choice == RibChoice::by_shift);
}

TEST_CASE("a card held to the glass sets this screen's dots, and the 50 mm bar follows") {
    Person person("sill-dun", {1280, 800});
    person.model.screen_name = "test screen 1280 x 800";
    person.press("Check");
    person.press("True size");
    CHECK(says(person, "50 mm: lay a ruler on the glass"));
    person.press("Measure this screen with a card");
    const DrawnControl* right = person.find("right edge of the card");
    REQUIRE(right != nullptr);
    ImGuiIO& io = ImGui::GetIO();
    const float x = right->box.x + 0.5F * right->box.width;
    const float y = right->box.y + 0.5F * right->box.height;
    io.AddMousePosEvent(x, y);
    person.frame();
    io.AddMouseButtonEvent(0, true);
    person.frame();
    io.AddMousePosEvent(x + 85.6F, y);
    person.frame();
    person.frame();
    io.AddMouseButtonEvent(0, false);
    person.frame();
    const double before = dots_per_mm(person.model);
    person.press("This is the card");
    CHECK_FALSE(person.model.check.calibrating);
    CHECK(within(dots_per_mm(person.model), before + 1.0, 0.02));
    REQUIRE(person.model.settings.screens.size() == 1);
    CHECK(person.model.settings.screens[0].first == "test screen 1280 x 800");
    person.model.screen_name = "another";
    CHECK(within(dots_per_mm(person.model), before, 1e-9)); // each screen has its own
}

TEST_CASE("the spread of a batch is told with its worst fly, and twins follow the limit") {
    Person person("sill-dun", {1280, 800});
    person.press("Check");
    person.press("Batch");
    const double mm[] = {8.4, 8.5, 8.3, 9.9};
    for (int i = 0; i < 4; ++i) {
        person.press("caliper");
        person.type("tail " + write_rounded(mm[i], 1));
        person.press("Keep it");
        person.press("+##Fly");
    }
    CHECK(says(person, "tail: 4 flies"));
    CHECK(says(person, "not twins by 10 %; farthest is fly 4"));
    for (int i = 0; i < 4; ++i) person.press("+##Twins are within, of their mean##twins");
    CHECK(says(person, "twins, within 14 %"));
    person.bring("Forget##reading 3");
    person.press("Forget##reading 3");
    CHECK(person.model.check.readings.size() == 3);
}

TEST_CASE(
    "the targets of the picked standard stand on the fly in the 3D view when they are asked for") {
    Settings settings;
    settings.overlays[static_cast<std::size_t>(Overlay::targets)] = true;
    Person person("sill-dun", {1280, 800}, settings);
    WrapsScene wraps;
    const Scene& scene = wraps.compose(person.model, {640, 400}, 14.0F);
    int named = 0;
    for (const OverlayLabel& label : scene.labels) {
        if (measured_part(label.text)) ++named;
    }
    CHECK(named == 3); // tail, body, hackle: this dun has no wing
}
