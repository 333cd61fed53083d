#include "gui/fly_drawing.h"

#include <algorithm>

namespace wrapwright {

namespace {

template <class F>
void each_point(const FlyOutline& fly, F&& take) {
    for (const auto& s : fly.wires) {
        for (const glm::vec2& p : s.points) take(p);
    }
    for (const auto& s : fly.fibres) {
        for (const glm::vec2& p : s.points) take(p);
    }
    for (const auto& d : fly.discs) {
        take(d.centre + glm::vec2{d.radius, d.radius});
        take(d.centre - glm::vec2{d.radius, d.radius});
    }
}

} // namespace

FlyBounds bounds_of(const FlyPose& pose, const FlyOutline& fly) {
    FlyBounds out{{1e9F, 1e9F}, {-1e9F, -1e9F}};
    each_point(fly, [&](const glm::vec2& p) {
        const glm::vec2 r = pose.turned(p);
        out.low = {std::min(out.low.x, r.x), std::min(out.low.y, r.y)};
        out.high = {std::max(out.high.x, r.x), std::max(out.high.y, r.y)};
    });
    return out;
}

void fit(FlyPose& pose, const FlyOutline& fly, const Box& box) {
    const auto [low, high] = bounds_of(pose, fly);
    const glm::vec2 size{std::max(1.0F, high.x - low.x), std::max(1.0F, high.y - low.y)};
    pose.scale = std::min(box.width / size.x, box.height / size.y);
    pose.at = {box.x + 0.5F * box.width - pose.scale * 0.5F * (low.x + high.x),
               box.y + 0.5F * box.height + pose.scale * 0.5F * (low.y + high.y)};
}

void draw_fly(ImDrawList& list, const FlyOutline& fly, const FlyPose& pose, const Palette& c) {
    const auto dots = [&](float mm) { return std::max(1.0F, mm * pose.scale); };
    for (const auto& s : fly.fibres) {
        list.AddLine(pose.on(s.points[0]), pose.on(s.points[1]), im(c.soft), dots(s.thick));
    }
    for (const auto& s : fly.wires) {
        for (const glm::vec2& p : s.points) list.PathLineTo(pose.on(p));
        list.PathStroke(im(c.ink), 0, dots(s.thick));
    }
    // Neighbours share their edges: softened ones would leave seams.
    const ImDrawListFlags flags = list.Flags;
    list.Flags &= ~ImDrawListFlags_AntiAliasedFill;
    for (const auto& q : fly.body) {
        list.AddQuadFilled(pose.on(q[0]), pose.on(q[1]), pose.on(q[2]), pose.on(q[3]), im(c.soft));
    }
    list.Flags = flags;
    for (const auto& s : fly.ribs) {
        list.AddLine(pose.on(s.points[0]), pose.on(s.points[1]), im(c.accent), dots(s.thick));
    }
    for (const auto& d : fly.discs) {
        if (d.ring) {
            list.AddCircle(pose.on(d.centre), dots(d.radius), im(c.ink), 0, dots(0.4F));
        } else {
            list.AddCircleFilled(pose.on(d.centre), dots(d.radius), im(c.accent));
            list.AddCircle(pose.on(d.centre), dots(d.radius), im(c.ink), 0, 1.5F);
        }
    }
}

} // namespace wrapwright
