#include "core/card/page_words.h"

#include "core/card/drawing.h"
#include "core/tying/step_text.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"
#include "core/water/in_water.h"
#include "core/water/water_words.h"

#include <algorithm>

namespace wrapwright {

bool contains_lead(const Resolved& resolved, const Tied& tied) {
    return std::any_of(tied.takes.begin(), tied.takes.end(), [&](const PartTake& take) {
        return take.material != none && take.mass.value.si > 0.0 &&
               resolved.materials[static_cast<std::size_t>(take.material)].toxic;
    });
}

namespace detail {

std::string page_title(const PageFacts& facts) {
    const Recipe& recipe = facts.pattern.recipe;
    std::string title = recipe.name.empty() ? recipe.id : recipe.name;
    return title.append(" #").append(write_hook_size(facts.tied.size));
}

std::string paragraph(std::string_view text, std::string_view kind) {
    if (text.empty()) return {};
    std::string out("<p");
    if (!kind.empty()) out.append(" class=\"").append(kind).append("\"");
    return out.append(">").append(escaped(text)).append("</p>\n");
}

std::vector<std::string> water_lines(const PageFacts& facts) {
    std::vector<std::string> lines;
    if (facts.tied.moments.empty()) return lines;
    const Result<InWater> water = in_water(facts.pattern, facts.resolved, facts.tied, {});
    if (!water.ok()) return lines;
    std::string weight("Weighs ");
    lines.push_back(weight.append(weight_words(water.value().mass)));
    lines.push_back(sink_words(water.value()));
    lines.push_back(ride_words(water.value()));
    return lines;
}

std::vector<std::string> caution_lines(const PageFacts& facts) {
    std::vector<std::string> lines;
    Caution all = Caution::quiet;
    for (std::size_t s = 0; s < facts.pattern.recipe.steps.size(); ++s) {
        all = all | step_cautions(facts.pattern, facts.resolved, static_cast<int>(s));
    }
    for (const Caution one : each_of(all)) lines.emplace_back(caution_text(one));
    if (contains_lead(facts.resolved, facts.tied)) {
        lines.emplace_back("Contains lead. Check the rules where you fish and sell.");
    }
    return lines;
}

std::string fly_picture(const PageFacts& facts, double fold, double widest, double highest,
                        int moment) {
    const FlyOutline fly = outline_of(facts.pattern, facts.resolved, facts.tied, moment);
    const OutlineBounds b = bounds_of(fly);
    const double wide = std::max(1.0, b.right - b.left), high = std::max(1.0, b.bottom - b.top);
    const double shown = std::min({fold, (widest - 2.0) / wide, (highest - 2.0) / high});
    Drawing d(shown * wide + 2.0, shown * high + 2.0);
    const double x = facts.left_handed ? 1.0 + shown * b.right : 1.0 - shown * b.left;
    draw_outline(d, fly, x, 1.0 - shown * b.top, shown, facts.left_handed);
    return d.svg();
}

std::string small_scale() {
    Drawing d(30.0, 8.5);
    d.line(0.5, 2.5, 20.5, 2.5, 0.25, "#000", "scale-mm");
    for (int i = 0; i <= 20; ++i) {
        d.line(0.5 + i, 2.5, 0.5 + i, i % 10 == 0 ? 0.5 : i % 5 == 0 ? 1.0 : 1.6, 0.1);
    }
    d.words(21.5, 2.8, 1.9, "20 mm");
    d.line(0.5, 6.5, 25.9, 6.5, 0.25, "#000", "scale-in");
    for (int i = 0; i <= 8; ++i) {
        d.line(0.5 + i * 3.175, 6.5, 0.5 + i * 3.175, i % 8 == 0 ? 4.5 : 5.4, 0.1);
    }
    d.words(26.4, 6.8, 1.9, "1 in");
    return d.svg();
}

} // namespace detail

} // namespace wrapwright
