// Pictures as they were when somebody last looked at them and found them good.
//
// A picture that differs fails, and leaves <name>.actual.png and <name>.diff.png in the build
// folder under golden/. To take the new one: look at both, then copy the actual one over
// tests/golden/.

#include "platform/gl/photographer.h"
#include "tests/support/image.h"
#include "tests/support/small_fly.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <string>

#include <stb/stb_image.h>

using namespace wrapwright;

namespace {

Image read_image(const std::string& file) {
    Image image;
    int channels = 0;
    stbi_uc* read = stbi_load(file.c_str(), &image.size.width, &image.size.height, &channels, 4);
    if (read == nullptr) return {};
    const std::size_t bytes = 4 * static_cast<std::size_t>(image.size.width) *
                              static_cast<std::size_t>(image.size.height);
    image.rgba.assign(read, read + bytes);
    stbi_image_free(read);
    return image;
}

void write_image(const std::filesystem::path& file, const Image& image) {
    const std::vector<std::uint8_t> png = png_of(image);
    std::ofstream(file, std::ios::binary)
        .write(reinterpret_cast<const char*>(png.data()), static_cast<std::streamsize>(png.size()));
}

// Allowed: 1 pixel in 100 off by more than 12 levels of 255: another version of the driver places
// the samples of an edge otherwise.
void check_golden(const Scene& scene, const std::string& name) {
    Result<Photographer> photographer = Photographer::open();
    REQUIRE(photographer.ok());
    const Result<Image> actual = photographer.value().take(scene);
    REQUIRE(actual.ok());
    const Image kept = read_image(WW_SOURCE_DIR "/tests/golden/" + name + ".png");
    const test::ImageDiff diff = test::compare(actual.value(), kept, 12);
    CAPTURE(name);
    CHECK(diff.share <= 0.01);
    if (diff.share <= 0.01) return;
    const auto folder = std::filesystem::path(WW_BINARY_DIR) / "golden";
    std::filesystem::create_directories(folder);
    write_image(folder / (name + ".actual.png"), actual.value());
    write_image(folder / (name + ".diff.png"), diff.shown);
}

void frame(Scene& scene) {
    std::vector<glm::vec3> points;
    for (const FlyPiece& piece : scene.model->pieces) {
        for (const Vertex& v : piece.mesh.vertices) {
            points.emplace_back(v.position[0], v.position[1], v.position[2]);
        }
    }
    frame_points(scene.camera, scene.size, points, {16, 16, 16, 16});
}

Scene scene_of(const FlyModel& fly) {
    Scene scene;
    scene.model = &fly;
    scene.model_stamp = 1;
    scene.size = {288, 180};
    frame(scene);
    return scene;
}

FlyModel fly_on_a_size_12() {
    const Result<Hook> hook = typical_hook(HookFamily::dry, parse_hook_size("12").value().size);
    REQUIRE(hook.ok());
    return test::small_fly(hook.value());
}

} // namespace

TEST_CASE("the small fly looks from the side as it did") {
    const FlyModel fly = fly_on_a_size_12();
    check_golden(scene_of(fly), "small_fly_side");
}

TEST_CASE("the small fly looks from before the eye, turned and on a dark ground, as it did") {
    const FlyModel fly = fly_on_a_size_12();
    Scene scene = scene_of(fly);
    scene.backdrop = Backdrop::dark;
    scene.camera.yaw = 0.7F;
    scene.camera.elevation = 0.4F;
    scene.camera.turn = 0.5F;
    frame(scene);
    check_golden(scene, "small_fly_dark");
}

TEST_CASE("comparing pictures counts the pixels that are further off than allowed") {
    Image a{{10, 10}, std::vector<std::uint8_t>(400, 100)};
    Image b = a;
    b.rgba[4 * 7 + 1] = 125; // 25 off
    b.rgba[4 * 31 + 2] = 80; // 20 off
    b.rgba[4 * 90 + 3] = 0;  // alpha does not count
    CHECK(test::compare(a, b, 24).share == 0.01);
    CHECK(test::compare(a, b, 19).share == 0.02);
    CHECK(test::compare(a, a, 0).share == 0.0);
    b.size = {20, 5};
    CHECK(test::compare(a, b, 255).share == 1.0);
}
