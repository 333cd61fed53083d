#include "platform/web/touch.h"

#include <cfloat>
#include <cmath>
#include <imgui.h>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float wheel_step = 1.15F; ///< of a picture that is looked at, for one step of the wheel

} // namespace

Touch::Pair Touch::pair() const {
    const float x = points_[1].x - points_[0].x;
    const float y = points_[1].y - points_[0].y;
    return {0.5F * (points_[0].x + points_[1].x), 0.5F * (points_[0].y + points_[1].y),
            std::fmax(1.0F, std::hypot(x, y)), std::atan2(y, x)};
}

void Touch::begin_pair(ImGuiIO& io) {
    if (one_) end(io, ImGuiMouseButton_Left, false);
    one_ = false;
    two_ = true;
    const Pair now = pair();
    io.AddMousePosEvent(now.x, now.y);
    io.AddMouseButtonEvent(ImGuiMouseButton_Right, true);
}

/// Lets a button go: where it is, or, not to press anything, from far away.
void Touch::end(ImGuiIO& io, int button, bool pressed) {
    if (!pressed) io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    io.AddMouseButtonEvent(button, false);
    io.AddMousePosEvent(-FLT_MAX, -FLT_MAX); // a finger that is gone points at nothing
}

void Touch::finger(ImGuiIO& io, Finger what, int id, float x, float y) {
    io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
    int at = 0;
    while (at < count_ && points_[at].id != id) ++at;
    if (what == Finger::down) {
        if (count_ == 2) return; // a third one, or the heel of a hand
        points_[count_++] = {id, x, y};
        if (count_ == 2) return begin_pair(io);
        one_ = true;
        io.AddMousePosEvent(x, y);
        io.AddMouseButtonEvent(ImGuiMouseButton_Left, true);
        return;
    }
    if (at == count_) return;
    if (what == Finger::moves) {
        const Pair before = pair();
        points_[at] = {id, x, y};
        if (one_) return io.AddMousePosEvent(x, y);
        if (!two_) return; // what is left of two
        const Pair now = pair();
        io.AddMousePosEvent(now.x, now.y);
        const float turn =
            std::remainder(now.angle - before.angle, 2.0F * std::numbers::pi_v<float>);
        io.AddMouseWheelEvent(turn, std::log(now.apart / before.apart) / std::log(wheel_step));
        return;
    }
    if (one_) end(io, ImGuiMouseButton_Left, what == Finger::up);
    if (two_) end(io, ImGuiMouseButton_Right, false);
    one_ = two_ = false;
    if (at == 0) points_[0] = points_[1];
    --count_;
}

} // namespace wrapwright
