#include "gui/dimensions.h"
#include "platform/gl/photographer.h"
#include "tests/support/image.h"

#include <doctest/doctest.h>
#include <imgui.h>

using namespace wrapwright;
using test::pixel;

namespace {

// An empty picture of 20 x 12.5 mm at 16 pixels to the millimetre, model x to the left.
Scene empty_scene(const FlyModel& model) {
    Scene scene;
    scene.model = &model;
    scene.model_stamp = 1;
    scene.size = {320, 200};
    scene.camera.height = 12.5F;
    return scene;
}

Image taken(const Scene& scene) {
    Result<Photographer> photographer = Photographer::open();
    REQUIRE(photographer.ok());
    Result<Image> image = photographer.value().take(scene);
    REQUIRE(image.ok());
    return std::move(image).value();
}

int dark_pixels(const Image& image, int left, int top, int right, int bottom) {
    int n = 0;
    for (int y = top; y < bottom; ++y) {
        for (int x = left; x < right; ++x) n += pixel(image, x, y)[1] < 90 ? 1 : 0;
    }
    return n;
}

} // namespace

TEST_CASE("a line of the overlay lies where its points are, to the pixel") {
    const FlyModel model;
    Scene scene = empty_scene(model);
    scene.lines.push_back({{5, 2, 0}, {-5, 2, 0}, Ink::measure, LineEnd::plain, 2.0F});
    const Image image = taken(scene);
    CHECK(dark_pixels(image, 82, 66, 238, 70) > 2 * 156 - 4); // y 100 - 2 * 16, two pixels thick
    CHECK(dark_pixels(image, 0, 0, 320, 66) == 0);
    CHECK(dark_pixels(image, 0, 70, 320, 200) == 0);
    CHECK(dark_pixels(image, 0, 66, 78, 70) == 0);
}

TEST_CASE("a label is written on the side of its point that it asks for") {
    const FlyModel model;
    for (const LabelSide anchor :
         {LabelSide::left, LabelSide::right, LabelSide::above, LabelSide::below}) {
        Scene scene = empty_scene(model);
        scene.labels.push_back({{0, 0, 0}, "gape 6.2 mm", Ink::measure, anchor, false});
        const Image image = taken(scene);
        const int left = dark_pixels(image, 0, 0, 158, 200);
        const int right = dark_pixels(image, 162, 0, 320, 200);
        const int above = dark_pixels(image, 0, 0, 320, 99);
        const int below = dark_pixels(image, 0, 101, 320, 200);
        CAPTURE(static_cast<int>(anchor));
        // All of it on that side, and at the middle of it crosswise.
        CHECK((right == 0) == (anchor == LabelSide::left));
        CHECK((left == 0) == (anchor == LabelSide::right));
        CHECK((below == 0) == (anchor == LabelSide::above));
        CHECK((above == 0) == (anchor == LabelSide::below));
        CHECK(left + right > 40);
    }
}

TEST_CASE("a label's letters stay within the box that the layout keeps free for it") {
    const FlyModel model;
    for (const char* text : {"shank about 12.5 mm", "for the head 1.39 mm", "MMM", "iii", "0"}) {
        for (const LabelSide side : {LabelSide::middle, LabelSide::left, LabelSide::below}) {
            Scene scene = empty_scene(model);
            scene.labels.push_back({{0, 0, 0}, text, Ink::measure, side, false});
            const Image image = taken(scene);
            const LabelBox box = label_box(scene, scene.labels[0]);
            const auto left = static_cast<int>(box.low.x);
            const auto right = static_cast<int>(box.high.x) + 1;
            const auto top = static_cast<int>(box.low.y);
            const auto bottom = static_cast<int>(box.high.y) + 1;
            CAPTURE(std::string(text));
            const int inside = dark_pixels(image, left, top, right, bottom);
            CHECK(inside > 3);
            CHECK(dark_pixels(image, 0, 0, 320, 200) == inside);
        }
    }
}

TEST_CASE("a hatch covers its four corners in the colour of a warning") {
    const FlyModel model;
    Scene scene = empty_scene(model);
    scene.hatches.push_back({{{{-2, -1, 0}, {2, -1, 0}, {2, 1, 0}, {-2, 1, 0}}}, Ink::warning});
    const Image image = taken(scene);
    int warm = 0;
    for (int y = 86; y < 114; ++y) {
        for (int x = 130; x < 190; ++x) {
            const auto p = pixel(image, x, y);
            warm += p[0] > p[2] + 6 ? 1 : 0;
        }
    }
    CHECK(warm == 28 * 60); // every pixel inside: hatch or veil
    const auto outside = pixel(image, 160, 60);
    CHECK(outside[0] <= outside[2]);
}

TEST_CASE("taking a picture leaves the program's own ImGui context as it was") {
    ImGuiContext* own = ImGui::CreateContext();
    ImGui::SetCurrentContext(own);
    const FlyModel model;
    Scene scene = empty_scene(model);
    scene.labels.push_back({{0, 0, 0}, "tail", Ink::measure, LabelSide::middle, true});
    taken(scene);
    CHECK(ImGui::GetCurrentContext() == own);
    ImGui::DestroyContext(own);
}
