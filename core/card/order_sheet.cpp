#include "core/card/order_sheet.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

void cell(std::string& out, std::string_view text, bool right = false) {
    out.append(right ? "<td style=\"text-align: right; white-space: nowrap\">" : "<td>");
    out.append(escaped(text)).append("</td>");
}

const LineNeed* need_of(const OrderFacts& facts, std::int64_t line) {
    for (const LineNeed& need : facts.work.needs.lines) {
        if (need.line == line) return &need;
    }
    return nullptr;
}

void lines_table(std::string& out, const OrderFacts& facts) {
    constexpr std::array<std::string_view, 5> stages{"tied", "finished", "checked", "packed",
                                                     "sent"};
    out.append("<table><tr><th>no.</th><th>flies</th><th>fly</th><th>size</th><th>colour</th>"
               "<th>weight</th><th>tied</th><th>begin</th><th>price</th>");
    for (const std::string_view stage : stages) out.append("<th>").append(stage).append("</th>");
    out.append("</tr>\n");
    for (const OrderLine* line : facts.lines) {
        const LineNeed* need = need_of(facts, line->id);
        out.append("<tr>");
        cell(out, std::to_string(line->id), true);
        cell(out, write_flies(line->flies), true);
        cell(out, line->name);
        cell(out, line->size, true);
        cell(out, line->colour);
        cell(out, line->weight);
        cell(out, std::to_string(facts.book.holdings.finished(line->id)), true);
        cell(out, need == nullptr ? std::string() : std::to_string(need->starts), true);
        cell(out, line->dozen.minor == 0 ? std::string() : write_money(price_of(*line)), true);
        for (std::size_t i = 0; i < stages.size(); ++i) out.append("<td>\xE2\x98\x90</td>");
        out.append("</tr>\n");
        std::string more;
        if (!line->model.empty()) more.append("model: ").append(line->model);
        if (!line->note.empty()) more.append(more.empty() ? "" : "; ").append(line->note);
        if (more.empty()) continue;
        out.append("<tr><td></td><td colspan=\"13\">").append(escaped(more)).append("</td></tr>\n");
    }
    out.append("</table>\n");
}

void shortages(std::string& out, const OrderFacts& facts) {
    std::string rows;
    bool known = true;
    for (const OrderLine* line : facts.lines) {
        const LineNeed* need = need_of(facts, line->id);
        if (need == nullptr) continue;
        if (need->unknown) {
            out.append("<p>What line ").append(std::to_string(line->id));
            out.append(" takes is not known.</p>\n");
            known = false;
        }
        for (const LineUse& use : need->uses) {
            if (use.short_of <= 0.0) continue;
            const ItemNeed& item = facts.work.needs.items[static_cast<std::size_t>(use.item)];
            rows.append("<tr>");
            cell(rows, std::to_string(line->id), true);
            cell(rows, item.what);
            cell(rows, write_rounded(use.need, 2), true);
            cell(rows, write_rounded(use.short_of, 2), true);
            cell(rows, name(item.unit));
            cell(rows, item.packs > 0 ? std::to_string(item.packs) : std::string("?"), true);
            rows.append("</tr>\n");
        }
    }
    if (rows.empty() && !known) return;
    if (rows.empty()) {
        out.append("<p>Everything for it is in the stock.</p>\n");
        return;
    }
    out.append("<h2>Missing before the first fly</h2>\n<table><tr><th>line</th><th>material</th>"
               "<th>needs</th><th>short</th><th>of</th><th>packs, all orders</th></tr>\n");
    out.append(rows).append("</table>\n");
}

void days(std::string& out, const OrderFacts& facts) {
    for (const OrderLine* line : facts.lines) {
        const auto& plan = facts.work.plan.lines;
        const auto at = std::find_if(plan.begin(), plan.end(),
                                     [&](const PlanLine& of) { return of.line == line->id; });
        if (at == plan.end()) continue;
        std::string words("Line ");
        words.append(std::to_string(line->id)).append(": ");
        words.append(write_rounded(at->time.si / 3600.0, 1)).append(" h");
        if (at->ready == Day{}) {
            words.append("; no day has time for it");
        } else {
            words.append(", ready ").append(write_day(at->ready));
            if (!at->met) {
                words.append(": ").append(write_rounded(at->late.si / 3600.0, 1));
                words.append(" h too late");
            }
        }
        out.append("<p>").append(escaped(words)).append(".</p>\n");
    }
}

} // namespace

std::string order_sheet(const PageSize& size, const OrderFacts& facts) {
    const OrderLine& first = *facts.lines.front();
    std::string title("Order");
    if (!first.who.empty()) title.append(" for ").append(first.who);
    std::string out("<h1>");
    out.append(escaped(title)).append("</h1>\n<p>");
    if (first.taken != Day{}) out.append("Taken ").append(write_day(first.taken)).append(". ");
    out.append(first.due == Day{} ? "No day said" : "Due ").append(write_day(first.due));
    out.append(".</p>\n");
    lines_table(out, facts);
    if (facts.cost.price.minor != 0) {
        out.append("<p><b>Price agreed: ").append(write_money(facts.cost.price));
        if (!facts.currency.empty()) out.append(1, ' ').append(escaped(facts.currency));
        out.append("</b></p>\n");
    }
    shortages(out, facts);
    days(out, facts);
    return html_page(size, title, out);
}

} // namespace wrapwright
