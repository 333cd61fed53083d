#include "core/card/drawing.h"

#include <algorithm>

namespace wrapwright {

OutlineBounds bounds_of(const FlyOutline& fly) {
    return {static_cast<double>(fly.low.x), static_cast<double>(fly.high.x),
            static_cast<double>(-fly.high.y), static_cast<double>(-fly.low.y)};
}

void draw_outline(Drawing& drawing, const FlyOutline& fly, double x, double y, double fold,
                  bool mirrored) {
    const auto at_x = [&](const glm::vec2& p) {
        return x + (mirrored ? -fold : fold) * static_cast<double>(p.x);
    };
    const auto at_y = [&](const glm::vec2& p) { return y - fold * static_cast<double>(p.y); };
    const auto point = [&](const glm::vec2& p) {
        return svg_number(at_x(p)).append(" ").append(svg_number(at_y(p)));
    };
    const auto stroke = [&](const FlyOutline::Stroke& s, std::string_view ink, double least) {
        std::string d("M ");
        for (std::size_t i = 0; i < s.points.size(); ++i) {
            if (i > 0) d.append(" L ");
            d.append(point(s.points[i]));
        }
        drawing.path(d, "none", ink, std::max(least, fold * static_cast<double>(s.thick)));
    };
    for (const auto& s : fly.fibres) stroke(s, "#555", 0.1);
    for (const auto& s : fly.wires) stroke(s, "#000", 0.15);
    if (!fly.body.empty()) {
        // One area round all of it: over its upper edge to the rear, and back below.
        std::string d("M ");
        d.append(point(fly.body.front()[0]));
        for (const auto& q : fly.body) d.append(" L ").append(point(q[1]));
        for (auto q = fly.body.rbegin(); q != fly.body.rend(); ++q) {
            d.append(" L ").append(point((*q)[2]));
        }
        d.append(" L ").append(point(fly.body.front()[3])).append(" Z");
        drawing.path(d, "#ccc", "#000", 0.15);
    }
    for (const auto& s : fly.ribs) stroke(s, "#000", 0.15);
    for (const auto& d : fly.discs) {
        drawing.disc(at_x(d.centre), at_y(d.centre), fold * static_cast<double>(d.radius),
                     d.ring ? "none" : "#eee", "#000", 0.2);
    }
}

} // namespace wrapwright
