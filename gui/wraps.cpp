#include "gui/wraps.h"

#include "core/geometry/fly/build.h"
#include "core/water/light.h"
#include "gui/overlays.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr double fineness_step = 1.5; ///< meshes hold for a zoom within this factor

Camera camera_of(const WrapsView& view, bool left_handed) {
    Camera camera;
    camera.mirrored = left_handed;
    camera.turn = view.turn;
    const auto stand = [&](double yaw_degrees, double elevation_degrees) {
        camera.yaw = static_cast<float>(degrees(yaw_degrees).si);
        camera.elevation = static_cast<float>(degrees(elevation_degrees).si);
    };
    switch (view.view) {
    case PictureView::side: break;
    case PictureView::three_quarter: stand(36.0, 20.0); break;
    case PictureView::top: stand(0.0, 90.0); break;
    case PictureView::eye: stand(90.0, 0.0); break;
    }
    camera.yaw += view.yaw;
    camera.elevation += view.elevation;
    return camera;
}

} // namespace

void WrapsScene::frame(const Asked& asked) {
    scene_.camera = camera_of(asked.view, asked.left_handed);
    const auto [width, height] = asked.size;
    const float edge = 0.06F * static_cast<float>(std::min(width, height));
    const float room = std::min(2.6F * asked.text_px, 0.2F * static_cast<float>(height));
    // Labels stand above, below, and outside of what they name.
    const float aside = std::min(4.0F * asked.text_px, 0.12F * static_cast<float>(width));
    frame_points(scene_.camera, asked.size, outline_,
                 {edge + aside, edge + aside, edge + room, edge + room});
    // Shifts are shares of the whole picture's height, so that they hold while zooming.
    scene_.camera.height /= asked.view.zoom;
    const glm::mat4 to_view = model_to_view(scene_.camera);
    const glm::vec3 right(to_view[0][0], to_view[1][0], to_view[2][0]);
    const glm::vec3 up(to_view[0][1], to_view[1][1], to_view[2][1]);
    const float high = scene_.camera.height;
    scene_.camera.target -= asked.view.shift_x * high * right;
    scene_.camera.target += asked.view.shift_y * high * up;
}

const Scene& WrapsScene::compose(const Model& model, PixelSize size, float text_px, Picture which) {
    const Pictured shown = pictured(model, which);
    const bool writing = model.screen == Screen::edit;
    Asked asked{shown.fly,
                shown.moment,
                model.wraps,
                model.settings.left_handed != model.settings.facing,
                model.settings.theme,
                size,
                text_px,
                model.state.turns,
                model.screen != Screen::film && !writing && at_work(model),
                model.settings.count_turns,
                model.settings.inches,
                model.settings.depth_m,
                {}};
    std::copy(std::begin(model.settings.overlays), std::end(model.settings.overlays),
              asked.overlays.begin());
    changed_ = asked_ != asked;
    if (!changed_) return scene_;
    const OpenFly& fly = *shown.fly;
    const int last = static_cast<int>(fly.tied.moments.size()) - 1;
    if (framed_ != shown.fly && (writing || framed_ != model.fly)) {
        build_fly(fly.pattern, fly.tied, last, {4.0, false, false}, model_);
        outline_.clear();
        for (const FlyPiece& piece : model_.pieces) {
            for (const Vertex& v : piece.mesh.vertices) {
                outline_.emplace_back(v.position[0], v.position[1], v.position[2]);
            }
        }
        framed_ = writing ? shown.fly : model.fly; // what is tried keeps the frame
        built_.reset();
    }
    scene_.size = size;
    scene_.text_px = text_px;
    scene_.backdrop = model.settings.theme == Theme::dark ? Backdrop::dark : Backdrop::light;
    scene_.supersample = 1;
    frame(asked);
    const double dots = size.height / static_cast<double>(scene_.camera.height);
    const int fineness = static_cast<int>(std::ceil(std::log(dots) / std::log(fineness_step)));
    const Built wanted{shown.fly, asked.moment, fineness};
    if (built_ != wanted) {
        build_fly(fly.pattern, fly.tied, asked.moment,
                  {std::pow(fineness_step, fineness), true, true}, model_);
        scene_.model_stamp = ++stamp_;
        built_ = wanted;
    }
    // The eye has got used to the water: the colour that is left most stays as it is.
    const std::array<double, 3> left = light_left(metres(asked.depth_m));
    const double most = std::max({left[0], left[1], left[2]});
    for (int i = 0; i < 3; ++i) {
        scene_.light[i] = static_cast<float>(left[static_cast<std::size_t>(i)] / most);
    }
    scene_.model = &model_;
    scene_.highlight = {};
    if (asked.working) {
        const Counted counted = counted_at(fly, asked.moment);
        if (counted.last > counted.first) scene_.highlight.act = asked.moment;
    }
    scene_.lines.clear();
    scene_.hatches.clear();
    scene_.labels.clear();
    if (asked.moment != none && model.screen != Screen::film) {
        add_overlays(model, fly, asked.moment, scene_);
    }
    asked_ = std::move(asked);
    return scene_;
}

} // namespace wrapwright
