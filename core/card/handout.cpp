#include "core/card/page_words.h"

#include "core/tally/lay_out.h"
#include "core/tying/step_text.h"

namespace wrapwright {

using namespace detail;

namespace {

std::string lay_out_table(const PageFacts& facts, int flies) {
    std::string out("<table>\n");
    for (const LayOutItem& item :
         lay_out_list(facts.pattern, facts.resolved, facts.tied, flies, true)) {
        out.append("<tr><td class=\"box\"></td><td>").append(escaped(item.what));
        if (!item.instead.empty()) out.append(" (or: ").append(escaped(item.instead)).append(")");
        out.append("</td><td>").append(escaped(item.tool ? std::string("tool") : item.amount));
        out.append("</td></tr>\n");
    }
    return out.append("</table>\n");
}

constexpr std::string_view style =
    "<style>h1 { font-size: 6mm; margin: 0 0 2mm 0; } h2 { font-size: 4mm; margin: 3mm 0 1mm 0; } "
    "p, td { font-size: 3.4mm; line-height: 1.3; margin: 0 0 0.6mm 0; } table { border-collapse: "
    "collapse; width: 100%; } td { border-bottom: 0.2mm solid #999; padding: 0.6mm 1mm; } td.box { "
    "width: 3mm; border: 0.3mm solid #000; } .step { display: grid; grid-template-columns: 62mm "
    "1fr; "
    "column-gap: 4mm; border-top: 0.3mm solid #000; padding: 2mm 0; } .act { font-size: 2.9mm; } "
    ".caution { font-style: italic; } .notes { height: 14mm; border-bottom: 0.2mm dotted #666; }"
    "</style>\n";

std::string step_block(const PageFacts& facts, int step) {
    const Step& said = facts.pattern.recipe.steps[static_cast<std::size_t>(step)];
    int last = none;
    std::string acts;
    for (std::size_t m = 0; m < facts.tied.moments.size(); ++m) {
        if (facts.tied.moments[m].step != step) continue;
        last = static_cast<int>(m);
        acts.append(paragraph(action_text(facts.pattern, facts.resolved, facts.tied, last), "act"));
    }
    std::string out("<div class=\"step keep\">\n<div>");
    if (last != none) out.append(fly_picture(facts, 3.0, 60.0, 36.0, last));
    out.append("</div>\n<div>\n<p><b>").append(std::to_string(step + 1)).append(".</b> ");
    out.append(escaped(said.text)).append("</p>\n");
    if (!said.landmark.empty()) out.append(paragraph("Look for: " + said.landmark));
    if (!said.tip.empty()) out.append(paragraph("Tip: " + said.tip));
    out.append(acts).append(paragraph(said.caution, "caution"));
    for (const Caution one : each_of(step_cautions(facts.pattern, facts.resolved, step))) {
        out.append(paragraph(caution_text(one), "caution"));
    }
    if (said.restore_point) out.append(paragraph("A broken thread falls back to here.", "act"));
    return out.append("</div>\n</div>\n");
}

} // namespace

std::string handout(const PageSize& size, const PageFacts& facts) {
    const Recipe& recipe = facts.pattern.recipe;
    std::string body(style);
    body.append("<h1>").append(escaped(page_title(facts))).append("</h1>\n");
    body.append(paragraph(recipe.imitates)).append(paragraph(recipe.fishing));
    if (!facts.tied.moments.empty()) body.append(fly_picture(facts, 4.0, 120.0, 60.0));
    body.append(small_scale());
    for (const std::string& line : water_lines(facts)) body.append(paragraph(line));
    body.append("<h2>On the bench, for one fly</h2>\n").append(lay_out_table(facts, 1));
    body.append("<h2>Steps</h2>\n");
    for (std::size_t s = 0; s < recipe.steps.size(); ++s) {
        body.append(step_block(facts, static_cast<int>(s)));
    }
    if (recipe.steps.empty()) body.append(paragraph(recipe.verbatim));
    if (contains_lead(facts.resolved, facts.tied)) {
        body.append(
            paragraph("Contains lead. Wash your hands before you eat; check the rules where "
                      "you fish and sell.",
                      "caution"));
    }
    body.append("<h2>Notes</h2>\n<div class=\"notes\"></div>\n<div class=\"notes\"></div>\n");
    body.append(paragraph(recipe.provenance.credit));
    return html_page(size, page_title(facts), body);
}

std::string lay_out_page(const PageSize& size, const PageFacts& facts) {
    std::string body(style);
    body.append("<h1>Lay out: ").append(std::to_string(facts.flies)).append(" x ");
    body.append(escaped(page_title(facts))).append("</h1>\n");
    body.append(lay_out_table(facts, facts.flies)).append(small_scale());
    return html_page(size, "Lay out: " + page_title(facts), body);
}

} // namespace wrapwright
