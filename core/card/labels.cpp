#include "core/card/page_words.h"

#include "core/units/number_words.h"

#include <algorithm>

namespace wrapwright {

using namespace detail;

namespace {

/// The frame of a label, to cut along, with its hole.
std::string frame(double width, double height, double letters, bool hole) {
    std::string out(
        "<div class=\"keep\" style=\"box-sizing: border-box; border: 0.2mm dashed #666; "
        "overflow: hidden; padding: 1.5mm; width: ");
    out.append(svg_number(width)).append("mm; height: ").append(svg_number(height));
    out.append("mm; font-size: ").append(svg_number(letters)).append("mm; line-height: 1.25\">\n");
    if (hole) {
        Drawing d(4.0, 4.0);
        d.disc(2.0, 2.0, 1.5, "none", "#000", 0.2);
        out.append("<div style=\"float: left; margin-right: 1mm\">").append(d.svg());
        out.append("</div>");
    }
    return out;
}

std::string label(const PageFacts& facts, double width, double height, double letters, bool hole,
                  std::string_view count) {
    std::string out = frame(width, height, letters, hole);
    out.append("<b>").append(escaped(page_title(facts))).append("</b><br>\n");
    if (!count.empty()) out.append(escaped(count)).append("<br>\n");
    if (!facts.maker.empty()) out.append(escaped(facts.maker)).append("<br>\n");
    if (!facts.date.empty()) out.append(escaped(facts.date)).append("<br>\n");
    if (!facts.tied.moments.empty()) {
        out.append(mass_words(facts.tied.mass.value)).append("; contains lead: ");
        out.append(contains_lead(facts.resolved, facts.tied) ? "yes" : "no");
    }
    return out.append("</div>\n");
}

constexpr double tag_width = 56.0, tag_height = 20.0, tag_letters = 2.6; // mm

constexpr std::string_view rows = "<div style=\"display: flex; flex-wrap: wrap; gap: 2mm\">\n";

} // namespace

std::string toe_tags(const PageSize& size, const PageFacts& facts) {
    std::string body(rows);
    const int count = std::clamp(facts.flies, 1, 1000);
    for (int i = 0; i < count; ++i)
        body.append(label(facts, tag_width, tag_height, tag_letters, true, {}));
    body.append("</div>\n").append(small_scale());
    return html_page(size, "Tags: " + page_title(facts), body);
}

std::string blank_tags(const PageSize& size, const std::vector<std::string>& people, int each,
                       std::string_view date) {
    std::string body(rows);
    for (const std::string& name : people) {
        for (int i = 0; i < std::clamp(each, 1, 1000); ++i) {
            body.append(frame(tag_width, tag_height, tag_letters, true));
            body.append("<b>").append(escaped(name)).append("</b>");
            if (!date.empty()) body.append(", ").append(escaped(date));
            body.append("<br>\nFly: ____________________ #____<br>\n");
            body.append("contains lead: yes &#9633; no &#9633;</div>\n");
        }
    }
    body.append("</div>\n").append(small_scale());
    return html_page(size, "Tags", body);
}

std::string box_labels(const PageSize& size, const PageFacts& facts) {
    std::string count = std::to_string(facts.flies);
    count.append(facts.flies == 1 ? " fly" : " flies");
    std::string body(rows);
    body.append(label(facts, 90.0, 40.0, 5.0, false, count));
    body.append(label(facts, 60.0, 24.0, 3.2, false, count));
    body.append("</div>\n").append(small_scale());
    return html_page(size, "Labels: " + page_title(facts), body);
}

} // namespace wrapwright
