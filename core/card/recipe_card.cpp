#include "core/card/page_words.h"

#include "core/tally/lay_out.h"
#include "core/tying/words.h"
#include "core/units/number_text.h"
#include "core/units/number_words.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

using namespace detail;

namespace {

/// What the card says, line by line, so that the size of its letters can be reckoned.
struct CardText {
    std::vector<std::string> materials{}, steps{}, notes{};
};

CardText card_text(const PageFacts& facts) {
    const Recipe& recipe = facts.pattern.recipe;
    CardText out;
    for (const LayOutItem& item :
         lay_out_list(facts.pattern, facts.resolved, facts.tied, 1, false)) {
        if (item.tool) continue;
        std::string line = item.what;
        out.materials.push_back(line.append(": ").append(item.amount));
    }
    for (std::size_t s = 0; s < recipe.steps.size(); ++s) {
        std::string line = std::to_string(s + 1);
        out.steps.push_back(line.append(". ").append(recipe.steps[s].text));
    }
    if (recipe.steps.empty() && !recipe.verbatim.empty()) out.steps.push_back(recipe.verbatim);
    out.notes = water_lines(facts);
    for (std::string& line : caution_lines(facts)) out.notes.push_back(std::move(line));
    if (!recipe.provenance.credit.empty()) out.notes.push_back(recipe.provenance.credit);
    return out;
}

/// The largest letters, in mm, with which the lines fill no more than that area.
double letters_for(const CardText& text, double column, double area) {
    constexpr double letter = 0.53, line = 1.28; // of the size: width on average, height
    for (int i = 0; i < 40; ++i) {
        const double size = 3.0 - 0.05 * i;
        const double per_line = std::floor(column / (letter * size));
        double lines = 0.0;
        const auto add = [&](const std::vector<std::string>& all, double apart) {
            for (const std::string& one : all) {
                lines += std::ceil(static_cast<double>(one.size()) / per_line) + apart;
            }
        };
        add(text.materials, 0.0);
        add(text.steps, 0.1);
        add(text.notes, 0.1);
        if (lines * line * size <= area / column) return size;
    }
    return 1.0;
}

std::string list_of(const std::vector<std::string>& lines, std::string_view kind) {
    std::string out;
    for (const std::string& line : lines) out.append(paragraph(line, kind));
    return out;
}

} // namespace

std::string recipe_card(const PageSize& size, const PageFacts& facts) {
    const Recipe& recipe = facts.pattern.recipe;
    const double wide = size.width - 2.0 * size.margin, high = size.height - 2.0 * size.margin;
    const CardText text = card_text(facts);
    const bool tied = !facts.tied.moments.empty();
    const double picture = tied ? 0.3 * high : 0.0;
    const double column = 0.5 * (wide - 3.0);
    // Columns never fill to the last line, and the scale and the drawing stand in one of them.
    const double area = 2.0 * column * (high - 7.0) - column * (picture + 10.0);
    const std::string letters = svg_number(letters_for(text, column, 0.9 * area)).append("mm");
    std::string body("<style>p { margin: 0 0 0.1em 0; } h1 { font-size: 4.2mm; line-height: 6mm; "
                     "margin: 0; } .two { columns: 2; column-gap: 3mm; line-height: 1.25; "
                     "font-size: ");
    body.append(letters).append("; height: ").append(svg_number(high - 7.0));
    body.append("mm; column-fill: auto; } .note { font-style: italic; }</style>\n<h1>");
    body.append(escaped(page_title(facts)));
    if (!recipe.fly_class.empty()) body.append(", ").append(escaped(recipe.fly_class));
    body.append("</h1>\n<div class=\"two\">\n");
    if (tied) body.append(fly_picture(facts, 2.0, column, picture));
    body.append(small_scale());
    body.append(list_of(text.materials, "material"));
    body.append(list_of(text.steps, "step"));
    body.append(list_of(text.notes, "note"));
    body.append("</div>\n");
    return html_page(size, page_title(facts), body);
}

} // namespace wrapwright
