#include "platform/gl/photographer.h"

#include "tests/support/close.h"
#include "tests/support/image.h"
#include "tests/support/small_fly.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using test::pixel;
using test::within;

namespace {

// A red ball of 4 mm in the middle of a picture of 20 x 12.5 mm, 16 pixels to the millimetre.
FlyModel red_ball(Look look = Look::thread) {
    FlyModel model;
    test::add_piece(model, look, {0.5F, 0.02F, 0.02F}, 0).mesh = test::ball({}, 2.0F, 40);
    model.low = {-2, -2, -2};
    model.high = {2, 2, 2};
    return model;
}

Scene scene_of(const FlyModel& model) {
    Scene scene;
    scene.model = &model;
    scene.model_stamp = 1;
    scene.size = {320, 200};
    scene.camera.height = 12.5F;
    return scene;
}

Image taken(const Scene& scene, GlKind kind = GlKind::desktop_33) {
    Result<Photographer> photographer = Photographer::open(kind);
    REQUIRE(photographer.ok());
    Result<Image> image = photographer.value().take(scene);
    REQUIRE(image.ok()); // an error that the driver reports would be a refusal
    return std::move(image).value();
}

bool is_red(std::array<int, 3> p) { return p[0] > 1.6 * p[1] && p[0] > 1.6 * p[2]; }
bool is_grey(std::array<int, 3> p) {
    return std::max({p[0], p[1], p[2]}) - std::min({p[0], p[1], p[2]}) <= 8;
}

int red_pixels(const Image& image) {
    int n = 0;
    for (int y = 0; y < image.size.height; ++y) {
        for (int x = 0; x < image.size.width; ++x) n += is_red(pixel(image, x, y)) ? 1 : 0;
    }
    return n;
}

} // namespace

TEST_CASE("the fly is in the middle in its colour, and the corners are a plain grey") {
    const FlyModel model = red_ball();
    for (const Backdrop backdrop : {Backdrop::light, Backdrop::dark}) {
        Scene scene = scene_of(model);
        scene.backdrop = backdrop;
        const Image image = taken(scene);
        CHECK(is_red(pixel(image, 160, 100)));
        for (const int x : {2, 317}) {
            for (const int y : {2, 197}) {
                CHECK(is_grey(pixel(image, x, y)));
                CHECK((pixel(image, x, y)[1] > 110) == (backdrop == Backdrop::light));
            }
        }
    }
}

TEST_CASE("a ball of 4 mm at 16 pixels to the millimetre is 64 pixels wide and high, and round") {
    const FlyModel model = red_ball();
    const Image image = taken(scene_of(model));
    const auto is_ball = [&](int x, int y) { return is_red(pixel(image, x, y)); };
    int left = 160;
    int right = 160;
    int top = 100;
    int bottom = 100;
    while (is_ball(left - 1, 100)) --left;
    while (is_ball(right + 1, 100)) ++right;
    while (is_ball(160, top - 1)) --top;
    while (is_ball(160, bottom + 1)) ++bottom;
    // Tolerance: one pixel at each side, half of which is backdrop.
    CHECK(within(right - left + 1, 64, 2));
    CHECK(within(bottom - top + 1, 64, 2));
    CHECK(within(left + right + 1, 320, 2)); // as far to the left as to the right
    CHECK(within(top + bottom + 1, 200, 2));
}

TEST_CASE("the same scene gives the same bytes, in one context and in a new one") {
    const FlyModel model = red_ball();
    const Scene scene = scene_of(model);
    Result<Photographer> photographer = Photographer::open();
    REQUIRE(photographer.ok());
    const Result<Image> first = photographer.value().take(scene);
    const Result<Image> second = photographer.value().take(scene);
    REQUIRE(first.ok());
    REQUIRE(second.ok());
    CHECK(first.value().rgba == second.value().rgba);
    const Image third = taken(scene);
    CHECK(first.value().rgba == third.rgba);
}

TEST_CASE("GL 3.3 and ES 3.0 draw the same picture") {
    const FlyModel model = red_ball(Look::metal);
    const Scene scene = scene_of(model);
    const Image desktop = taken(scene, GlKind::desktop_33);
    const Image es = taken(scene, GlKind::es_30);
    // Tolerance: two levels of 255; a driver may round one way in one and the other in the other.
    CHECK(test::compare(desktop, es, 2).share == 0.0);
}

TEST_CASE("a model is sent anew when its stamp changes or is 0, and only then") {
    Result<Photographer> photographer = Photographer::open();
    REQUIRE(photographer.ok());
    const FlyModel ball = red_ball();
    const FlyModel nothing = [] {
        FlyModel m = red_ball();
        m.pieces[0].mesh.indices.clear();
        return m;
    }();
    const auto shows_ball = [&](const FlyModel& model, std::uint64_t stamp) {
        Scene scene = scene_of(model);
        scene.model_stamp = stamp;
        const Result<Image> image = photographer.value().take(scene);
        REQUIRE(image.ok());
        return red_pixels(image.value()) > 2500;
    };
    CHECK(shows_ball(ball, 1));
    CHECK_FALSE(shows_ball(nothing, 2));
    CHECK(shows_ball(ball, 0));
    CHECK_FALSE(shows_ball(nothing, 0));
    CHECK(shows_ball(ball, 3));
    CHECK(shows_ball(nothing, 3)); // the caller broke the rule, and so sees what is there
}

TEST_CASE("the light comes from the upper left: the shadow falls to the lower right") {
    const FlyModel model = red_ball(Look::ground);
    const Image image = taken(scene_of(model));
    const int lit = pixel(image, 80, 180)[1];
    const int shaded = pixel(image, 240, 180)[1];
    CHECK(shaded < lit - 8);
    CHECK(pixel(image, 145, 85)[0] > pixel(image, 175, 120)[0] + 8); // on the ball too
}

TEST_CASE("one thing throws its shadow on another") {
    FlyModel model = red_ball();
    const auto brightness = [&] { return pixel(taken(scene_of(model)), 150, 88)[0]; };
    const int lit = brightness();
    // A ball between that place and the key light, out of the camera's way. View space has x right
    // and z to the camera; model space has both the other way.
    test::add_piece(model, Look::thread, {0.5F, 0.02F, 0.02F}, 1).mesh =
        test::ball({2.4F, 3.2F, -3.0F}, 1.2F, 24);
    CHECK(brightness() < lit - 20);
}

TEST_CASE("a hollow between two things is darker, though neither stands in the other's light") {
    FlyModel model = red_ball(Look::ground);
    const auto brightness = [&] { return pixel(taken(scene_of(model)), 181, 113)[0]; };
    const int open = brightness();
    // Below to the right, away from the key light; they touch beside that place.
    test::add_piece(model, Look::ground, {0.5F, 0.02F, 0.02F}, 1).mesh =
        test::ball({-1.8F, -1.125F, -1.325F}, 0.5F, 24);
    CHECK(brightness() < open - 5);
}

TEST_CASE("with one part highlighted the others go calmer and it stays as it is") {
    FlyModel model = red_ball();
    test::add_piece(model, Look::thread, {0.02F, 0.5F, 0.02F}, 1).mesh =
        test::ball({6, 0, 0}, 1.5F, 24);
    Scene scene = scene_of(model);
    const Image plain = taken(scene);
    scene.highlight.part = 1;
    const Image marked = taken(scene);
    const auto strength = [](std::array<int, 3> p) {
        return std::max({p[0], p[1], p[2]}) - std::min({p[0], p[1], p[2]});
    };
    CHECK(strength(pixel(marked, 160, 100)) < strength(pixel(plain, 160, 100)) / 2);
    CHECK(pixel(marked, 64, 100) == pixel(plain, 64, 100)); // 6 mm to the left
}

TEST_CASE("through a film what lies behind still shows") {
    FlyModel model = red_ball();
    FlyPiece& film = test::add_piece(model, Look::film, {0.6F, 0.6F, 0.6F}, 1);
    film.opacity = 0.2F;
    film.mesh = test::ball({}, 2.6F, 40);
    const Image image = taken(scene_of(model));
    const auto through = pixel(image, 165, 110);
    CHECK(through[0] > through[1] + 25);
    const auto beside = pixel(image, 160, 100 + 38); // film alone, over the backdrop
    CHECK(is_grey(beside));
}

TEST_CASE("a fibre a third of a pixel thick is a line and not a row of dots") {
    FlyModel model;
    const std::array<PathPoint, 2> path{{{{-8, -3, 0}, 0.01F}, {{8, 4, 0}, 0.01F}}};
    append_path(test::add_piece(model, Look::fibre, {0.01F, 0.01F, 0.01F}, 0).mesh, path,
                ellipse_section(5));
    const Image with = taken(scene_of(model));
    model.pieces[0].mesh.indices.clear();
    const Image without = taken(scene_of(model));
    double least = 1e9;
    double sum = 0.0;
    int columns = 0;
    for (int x = 60; x < 260; ++x, ++columns) {
        double dark = 0.0; // light that the fibre takes from this column
        for (int y = 0; y < 200; ++y) dark += pixel(without, x, y)[1] - pixel(with, x, y)[1];
        least = std::min(least, dark);
        sum += dark;
    }
    CHECK(sum / columns > 15.0);
    CHECK(least > 0.4 * sum / columns);
}

TEST_CASE("a picture larger than the driver or the memory can hold is refused with a remedy") {
    const FlyModel model = red_ball();
    Scene scene = scene_of(model);
    Result<Photographer> photographer = Photographer::open();
    REQUIRE(photographer.ok());
    for (const PixelSize size : {PixelSize{200000, 100}, {8000, 8000}}) {
        scene.size = size;
        const Result<Image> image = photographer.value().take(scene);
        REQUIRE_FALSE(image.ok());
        CHECK(image.error().code == ErrorCode::too_large);
        CHECK(image.error().remedy != "");
    }
    scene.size = {320, 200}; // and the next one is taken
    CHECK(photographer.value().take(scene).ok());
}
