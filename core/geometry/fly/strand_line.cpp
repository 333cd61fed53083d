#include "core/geometry/fly/strand_line.h"

#include "core/geometry/fly/wound_path.h"

namespace wrapwright {

WirePlace wire_place(const Pattern& pattern, const Tied& tied, int moment, int base, Length at) {
    FlyModel unused;
    const FlyDetail detail;
    const Sketch sketch(pattern, tied, moment, detail, unused);
    const WireFrame frame = sketch.base(base).frame(at);
    return {frame.origin, frame.along, frame.up, frame.out};
}

std::vector<glm::vec3> strand_line(const Pattern& pattern, const Tied& tied, int moment,
                                   int winding, double from, double to, int points) {
    FlyModel unused;
    const FlyDetail detail;
    const Sketch sketch(pattern, tied, moment, detail, unused);
    const WoundPath path(sketch, tied.windings[static_cast<std::size_t>(winding)]);
    std::vector<glm::vec3> line;
    line.reserve(static_cast<std::size_t>(points));
    for (int i = 0; i < points; ++i) {
        line.push_back(path.frame(from + (to - from) * i / (points - 1.0)).origin);
    }
    return line;
}

} // namespace wrapwright
