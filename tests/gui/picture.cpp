#include "gui/picture.h"

#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <algorithm>
#include <glm/vec4.hpp>

using namespace wrapwright;
using test::within;

namespace {

struct Composed {
    FlyModel model;
    Scene scene;
};

Composed compose(const Pattern& pattern, const Tied& tied, int moment,
                 const PictureOptions& options) {
    Composed c;
    compose_picture(pattern, tied, moment, options, c.model, c.scene);
    return c;
}

} // namespace

TEST_CASE("the pictures of all steps have one camera") {
    const Pattern pattern = test::demo("sill-dun");
    const Tied tied = test::tied(pattern, HookSize{14});
    for (const bool dimensions : {false, true}) {
        PictureOptions options;
        options.dimensions = dimensions;
        const Composed first = compose(pattern, tied, 0, options);
        const int last = static_cast<int>(tied.moments.size()) - 1;
        const Composed end = compose(pattern, tied, last, options);
        CHECK(first.scene.camera.height == end.scene.camera.height); // exact: the same sum
        CHECK(first.scene.camera.target == end.scene.camera.target);
    }
}

TEST_CASE("the finished fly lies within the picture from every view, and fills it") {
    const Pattern pattern = test::demo("lockgate-sedge");
    const Tied tied = test::tied(pattern, HookSize{12});
    const int last = static_cast<int>(tied.moments.size()) - 1;
    for (const PictureView view :
         {PictureView::side, PictureView::three_quarter, PictureView::top, PictureView::eye}) {
        for (const double turn : {0.0, 75.0}) {
            PictureOptions options;
            options.view = view;
            options.turn = degrees(turn);
            options.vise = false;
            const Composed c = compose(pattern, tied, last, options);
            glm::vec2 least(1e9F);
            glm::vec2 most(-1e9F);
            for (const FlyPiece& piece : c.model.pieces) {
                for (const Vertex& v : piece.mesh.vertices) {
                    const glm::vec2 p = in_picture(c.scene.camera, options.size,
                                                   {v.position[0], v.position[1], v.position[2]});
                    least = glm::min(least, p);
                    most = glm::max(most, p);
                }
            }
            CAPTURE(static_cast<int>(view));
            CAPTURE(turn);
            CHECK(least.x >= 0.0F);
            CHECK(least.y >= 0.0F);
            CHECK(most.x <= 1600.0F);
            CHECK(most.y <= 1000.0F);
            CHECK((most.x - least.x > 0.75F * 1600.0F || most.y - least.y > 0.75F * 1000.0F));
        }
    }
}

TEST_CASE("the eye of the hook points to the right for a right-hander, to the left for the other") {
    const Pattern pattern = test::demo("sill-dun");
    const Tied tied = test::tied(pattern, HookSize{14});
    for (const PictureView view :
         {PictureView::side, PictureView::three_quarter, PictureView::top}) {
        for (const bool left : {false, true}) {
            PictureOptions options;
            options.view = view;
            options.left_handed = left;
            const Composed c = compose(pattern, tied, 0, options);
            const float eye = in_picture(c.scene.camera, options.size, {0, 0, 0}).x;
            const float bend = in_picture(c.scene.camera, options.size, {8, 0, 0}).x;
            CHECK((eye > bend) == !left);
        }
    }
}

TEST_CASE("dimensions are drawn in the plain side view and nowhere else") {
    const Pattern pattern = test::demo("sill-dun");
    const Tied tied = test::tied(pattern, HookSize{14});
    PictureOptions options;
    options.dimensions = true;
    CHECK_FALSE(compose(pattern, tied, 9, options).scene.labels.empty());
    options.turn = degrees(20.0);
    CHECK(compose(pattern, tied, 9, options).scene.labels.empty());
    options.turn = {};
    options.view = PictureView::top;
    CHECK(compose(pattern, tied, 9, options).scene.labels.empty());
}

TEST_CASE("of a fly on two bases the first has dimensions while it is worked on") {
    const Pattern pattern = test::demo("millpool-leech");
    const Tied tied = test::tied(pattern, HookSize{8});
    PictureOptions options;
    options.dimensions = true;
    bool both[2] = {false, false};
    for (std::size_t m = 0; m < tied.moments.size(); m += 3) {
        const int base = tied.moments[m].base;
        both[base] = true;
        const bool bare = compose(pattern, tied, static_cast<int>(m), options).scene.labels.empty();
        CHECK(bare == (base != 0));
    }
    CHECK((both[0] && both[1]));
}

TEST_CASE("in the smallest picture, and in narrow ones, the fly still has its room") {
    const Pattern pattern = test::demo("weirfoot-jig");
    const Tied tied = test::tied(pattern, HookSize{14});
    for (const PixelSize size : {PixelSize{160, 120}, PixelSize{160, 2000}, PixelSize{3000, 120}}) {
        PictureOptions options;
        options.size = size;
        options.dimensions = true;
        const Composed c = compose(pattern, tied, 20, options);
        const float eye = in_picture(c.scene.camera, size, {0, 0, 0}).x;
        const float bend = in_picture(c.scene.camera, size, {7, 0, 0}).x;
        CHECK(eye - bend > 0.15F * static_cast<float>(std::min(size.width, size.height)));
    }
}

TEST_CASE("a turn shows the other side: what was near the tyer goes below, then away") {
    const Pattern pattern = test::demo("sill-dun");
    const Tied tied = test::tied(pattern, HookSize{14});
    PictureOptions options;
    options.turn = degrees(180.0);
    const Composed c = compose(pattern, tied, 0, options);
    const glm::vec4 near_side = model_to_view(c.scene.camera) * glm::vec4(4, 0, -1, 1);
    const glm::vec4 far_side = model_to_view(c.scene.camera) * glm::vec4(4, 0, 1, 1);
    CHECK(far_side.z > near_side.z);
    const float point = in_picture(c.scene.camera, options.size, {4, -4, 0}).y;
    const float shank = in_picture(c.scene.camera, options.size, {4, 0, 0}).y;
    CHECK(point < shank); // the point of the hook is up
}
