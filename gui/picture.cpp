#include "gui/picture.h"

#include "core/geometry/fly/build.h"
#include "gui/dimensions.h"

#include <algorithm>

namespace wrapwright {

namespace {

Camera camera_for(const PictureOptions& options) {
    Camera camera;
    camera.turn = static_cast<float>(options.turn.si);
    camera.mirrored = options.left_handed;
    const auto stand = [&](double yaw_degrees, double elevation_degrees) {
        camera.yaw = static_cast<float>(degrees(yaw_degrees).si);
        camera.elevation = static_cast<float>(degrees(elevation_degrees).si);
    };
    switch (options.view) {
    case PictureView::side: break;
    case PictureView::three_quarter:
        stand(36.0, 20.0);
        camera.perspective = true;
        break;
    case PictureView::top: stand(0.0, 90.0); break;
    case PictureView::eye: stand(90.0, 0.0); break;
    }
    return camera;
}

std::vector<glm::vec3> points_of(const FlyModel& model) {
    std::vector<glm::vec3> points;
    for (const FlyPiece& piece : model.pieces) {
        for (const Vertex& v : piece.mesh.vertices) {
            points.emplace_back(v.position[0], v.position[1], v.position[2]);
        }
    }
    return points;
}

} // namespace

void compose_picture(const Pattern& pattern, const Tied& tied, int moment,
                     const PictureOptions& options, FlyModel& model, Scene& scene) {
    scene = Scene{};
    scene.size = options.size;
    scene.backdrop = options.backdrop;
    scene.highlight = options.highlight;
    scene.camera = camera_for(options);
    // The finished fly, roughly, for its bounds.
    const int last = static_cast<int>(tied.moments.size()) - 1;
    build_fly(pattern, tied, last, {4.0, false, false}, model);
    const std::vector<glm::vec3> points = points_of(model);
    const auto [width, height] = options.size;
    scene.text_px = std::max(11.0F, 0.016F * static_cast<float>(height));
    const bool flat = options.view == PictureView::side && options.turn.si == 0.0;
    if (options.dimensions && flat) {
        const std::vector<Measure> most = measures_of(pattern, tied, last);
        frame_points(scene.camera, scene.size, points,
                     margins_for(most, scene.size, scene.text_px));
        // Another base than the first may be all that is in sight.
        if (tied.moments.empty() || tied.moments[static_cast<std::size_t>(moment)].base == 0) {
            add_dimensions(measures_of(pattern, tied, moment), tied.bases.front(), model.low,
                           model.high, scene);
        }
    } else {
        const float edge = 0.07F * static_cast<float>(std::min(width, height));
        frame_points(scene.camera, scene.size, points, {edge, edge, edge, edge});
    }
    build_fly(pattern, tied, moment,
              {static_cast<double>(height) / scene.camera.height, options.vise, true}, model);
    scene.model = &model;
}

} // namespace wrapwright
