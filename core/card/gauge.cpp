#include "core/card/gauge.h"

#include "core/card/drawing.h"
#include "core/check/target_marks.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr double row_height = 11.0;

std::string mm(Length x) { return write_rounded(in_millimetres(x), 1); }

/// A bar from its root line: dark to the target, its tolerance as a frame, words beside it.
void bar(Drawing& d, double x, double y, const PartTarget& t) {
    const double low = in_millimetres(t.length.low), aim = in_millimetres(t.length.value);
    const double high = in_millimetres(t.length.high);
    d.rect(x, y + 1.5, aim, 3.0, "#bbb");
    d.rect(x + low, y, high - low, 6.0, "none", "#000", 0.15);
    d.line(x, y - 0.5, x, y + 6.5, 0.3);
    d.line(x + aim, y - 0.5, x + aim, y + 6.5, 0.4);
    std::string words(name(t.part));
    words.append(" ").append(mm(t.length.value)).append(" mm (").append(mm(t.length.low));
    words.append(" to ").append(mm(t.length.high)).append("), ").append(t.words);
    d.words(x + std::max(high, 20.0) + 4.0, y + 4.2, 3.2, words);
}

void silhouette(Drawing& d, const FlyOutline& fly, const std::vector<TargetMark>& marks, double x,
                double y, double fold) {
    draw_outline(d, fly, x, y, fold);
    const auto tick = [&](const glm::vec2& at, const glm::vec2& across, double half, double thick) {
        const double px = x + fold * static_cast<double>(at.x);
        const double py = y - fold * static_cast<double>(at.y);
        const double dx = half * static_cast<double>(across.x);
        const double dy = half * static_cast<double>(across.y);
        d.line(px - dx, py + dy, px + dx, py - dy, thick);
    };
    for (const TargetMark& m : marks) {
        tick(m.low, m.across, 1.2, 0.12);
        tick(m.high, m.across, 1.2, 0.12);
        tick(m.aim, m.across, 2.0, 0.3);
    }
}

} // namespace

std::string gauge_page(const PageSize& size, const Pattern& pattern, const Resolved& resolved,
                       const Tied& tied, const std::vector<PartTarget>& targets) {
    const double wide = size.width - 2.0 * size.margin;
    const FlyOutline fly = outline_of(pattern, resolved, tied);
    const std::vector<TargetMark> marks = target_marks(pattern, tied, targets);
    OutlineBounds b = bounds_of(fly);
    for (const TargetMark& m : marks) { // which may stand beyond the fly
        b.right = std::max(b.right, static_cast<double>(m.high.x) + 0.5);
        b.top = std::min(b.top, -static_cast<double>(m.high.y) - 0.5);
    }
    const double room = wide - 4.0, length = std::max(1.0, b.right - b.left);
    const double fold = std::min(5.0, room / length);
    const double large = std::min(fold * (b.bottom - b.top), 80.0);
    const double rows = row_height * static_cast<double>(targets.size());
    const double tall = 32.0 + rows + (b.bottom - b.top) + large + 24.0;
    Drawing d(wide, tall);
    std::string title = pattern.recipe.name.empty() ? pattern.recipe.id : pattern.recipe.name;
    title.append(" #").append(write_hook_size(tied.size));
    if (!targets.empty()) title.append(", by \"").append(targets.front().standard).append("\"");
    d.words(0.0, 5.0, 4.5, title);
    scale_bar(d, 1.0, 14.0, std::min(100, static_cast<int>(wide) - 10));
    double y = 30.0;
    for (const PartTarget& t : targets) {
        bar(d, 1.0, y, t);
        y += row_height;
    }
    d.words(0.0, y + 3.0, 3.2, "Life size: hold the fly over it, eye on eye");
    y += 6.0;
    silhouette(d, fly, marks, 2.0 - b.left, y - b.top, 1.0);
    y += b.bottom - b.top + 6.0;
    std::string words = write_rounded(large / std::max(0.1, b.bottom - b.top), 1);
    d.words(0.0, y, 3.2, words.append(" times as large"));
    y += 3.0;
    const double shown = large / std::max(0.1, b.bottom - b.top);
    silhouette(d, fly, marks, 2.0 - shown * b.left, y - shown * b.top, shown);
    return html_page(size, "Gauge: " + title, d.svg());
}

} // namespace wrapwright
