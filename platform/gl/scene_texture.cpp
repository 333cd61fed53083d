#include "platform/gl/scene_texture.h"

namespace wrapwright {

Result<SceneTexture> SceneTexture::make(const Gl& gl) {
    Result<SceneRenderer> renderer = SceneRenderer::make(gl);
    if (!renderer.ok()) return renderer.error();
    return SceneTexture(gl, std::move(renderer).value());
}

Result<GLuint> SceneTexture::draw(const Scene& scene) {
    if (target_.size() != scene.size) {
        Result<Target> target = Target::make(*gl_, TargetKind::colour, scene.size);
        if (!target.ok()) return target.error();
        target_ = std::move(target).value();
    }
    const Result<bool> drawn = renderer_.draw(scene, target_.framebuffer());
    if (!drawn.ok()) return drawn.error();
    const Result<bool> lettered = letters_->draw(*gl_, scene);
    if (!lettered.ok()) return lettered.error();
    return target_.colour();
}

} // namespace wrapwright
