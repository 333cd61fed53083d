#include "gui/camera.h"

#include "tests/support/close.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <glm/vec4.hpp>
#include <numbers>
#include <vector>

using namespace wrapwright;
using test::within;

namespace {

constexpr PixelSize size{800, 500};
constexpr float quarter = std::numbers::pi_v<float> / 2.0F;

glm::vec3 in_view(const Camera& camera, glm::vec3 p) {
    return glm::vec3(model_to_view(camera) * glm::vec4(p, 1.0F));
}

} // namespace

// Tolerances here: float arithmetic on numbers near 1 and near 1000.

TEST_CASE("a right-handed tyer sees the tail to the left, and a left-handed one to the right") {
    Camera camera;
    const glm::vec3 tail(5.0F, 0.0F, 0.0F);
    CHECK(in_picture(camera, size, tail).x < 400.0F);
    camera.mirrored = true;
    CHECK(in_picture(camera, size, tail).x > 400.0F);
}

TEST_CASE("what lies away from the tyer lies behind, and the point of the hook below") {
    const Camera camera;
    CHECK(in_view(camera, {0, 0, 1}).z < 0.0F);
    CHECK(in_picture(camera, size, {0, -1, 0}).y > 250.0F);
}

TEST_CASE("a picture without perspective is true to scale at every depth") {
    Camera camera;
    camera.height = 20.0F; // 25 pixels a millimetre in 500 pixels
    for (const float z : {-8.0F, 0.0F, 8.0F}) {
        CAPTURE(z);
        const glm::vec2 a = in_picture(camera, size, {1, 2, z});
        const glm::vec2 b = in_picture(camera, size, {3, -1, z});
        CHECK(within(a.x - b.x, 2.0 * 25.0, 1e-3));
        CHECK(within(b.y - a.y, 3.0 * 25.0, 1e-3));
    }
}

TEST_CASE("with perspective the scale holds at the target, and what is nearer is larger") {
    Camera camera;
    camera.height = 20.0F;
    camera.perspective = true;
    const auto height = [&](float z) {
        return in_picture(camera, size, {0, 0, z}).y - in_picture(camera, size, {0, 1, z}).y;
    };
    CHECK(within(height(0.0F), 25.0, 1e-3));
    CHECK(height(-5.0F) > height(0.0F));
}

TEST_CASE("a turn takes the top away from the tyer first") {
    Camera camera;
    camera.turn = quarter;
    CHECK(within(in_view(camera, {0, 1, 0}).z, -1.0, 1e-6));
    CHECK(within(in_view(camera, {1, 0, 0}).x, -1.0, 1e-6)); // the shank stays
}

TEST_CASE("a quarter of yaw looks the hook in the eye, for either hand") {
    for (const bool mirrored : {false, true}) {
        Camera camera;
        camera.yaw = quarter;
        camera.mirrored = mirrored;
        CHECK(within(in_view(camera, {-1, 0, 0}).z, 1.0, 1e-6));
    }
}

TEST_CASE("a quarter of elevation looks down on the fly") {
    Camera camera;
    camera.elevation = quarter;
    CHECK(within(in_view(camera, {0, 1, 0}).z, 1.0, 1e-6));
    CHECK(within(studio_axes(camera).up.z, 1.0, 1e-6));
}

TEST_CASE("framed points fill the picture within its margins from every side") {
    std::vector<glm::vec3> corners;
    for (const float x : {-3.0F, 14.0F}) {
        for (const float y : {-7.0F, 4.0F}) {
            for (const float z : {-2.0F, 2.0F}) corners.emplace_back(x, y, z);
        }
    }
    const Margins margins{40, 60, 80, 20};
    for (int n = 0; n < 32; ++n) {
        CAPTURE(n);
        Camera camera;
        camera.turn = 0.4F * static_cast<float>(n % 4);
        camera.yaw = -0.8F + 0.5F * static_cast<float>(n / 4 % 4);
        camera.elevation = n < 16 ? 0.0F : 0.6F;
        camera.mirrored = n % 3 == 0;
        frame_points(camera, size, corners, margins);
        glm::vec2 least(1e9F);
        glm::vec2 most(-1e9F);
        for (const glm::vec3& corner : corners) {
            const glm::vec2 p = in_picture(camera, size, corner);
            least = glm::vec2(std::min(least.x, p.x), std::min(least.y, p.y));
            most = glm::vec2(std::max(most.x, p.x), std::max(most.y, p.y));
        }
        // Tolerance: a hundredth of a pixel for float arithmetic.
        CHECK(least.x >= 40.0F - 0.01F);
        CHECK(most.x <= 740.0F + 0.01F);
        CHECK(least.y >= 80.0F - 0.01F);
        CHECK(most.y <= 480.0F + 0.01F);
        const bool wide = within(most.x - least.x, 700.0, 0.01);
        const bool high_enough = within(most.y - least.y, 400.0, 0.01);
        CHECK((wide || high_enough));
        CHECK(within(least.x + most.x, 780.0, 0.02)); // in the middle of what is left
        CHECK(within(least.y + most.y, 560.0, 0.02));
    }
}
