#include "core/tally/cost.h"

#include "core/assert.h"
#include "core/tally/starts.h"

#include <cmath>

namespace wrapwright {

CostSheet cost_of(const std::vector<CostItem>& items, const CostTerms& terms) {
    WW_ASSERT(terms.good > 0 && terms.starts >= terms.good && terms.fee + terms.tax < 1.0);
    CostSheet out;
    for (const CostItem& item : items) {
        WW_ASSERT(item.pack > 0.0 && item.use >= 0.0 && item.waste >= 0.0 && item.waste < 1.0);
        CostLine line;
        line.what = item.what;
        line.used = item.use / (1.0 - item.waste) * terms.starts;
        line.packs = packs_for(line.used, item.have, item.pack);
        line.consumed = money_of(static_cast<double>(item.price.minor) * line.used / item.pack);
        line.cash = {item.price.minor * line.packs};
        out.lines.push_back(std::move(line));
    }
    const double hours = in_seconds(terms.starts * terms.each + terms.finishing) / 3600.0;
    const Money labour = money_of(static_cast<double>(terms.hourly.minor) * hours);
    out.lines.push_back({"labour", hours, 0, labour, {}});
    out.lines.push_back({"packing", 1.0, 0, terms.packing, terms.packing});
    out.lines.push_back({"postage", 1.0, 0, terms.postage, terms.postage});
    for (const CostLine& line : out.lines) {
        out.consumed += line.consumed;
        out.cash += line.cash;
    }
    out.per_fly = static_cast<double>(out.consumed.minor) / terms.good;
    out.per_dozen = 12.0 * out.per_fly;
    // Rounded up: a price below what it has to cover covers it not.
    const double whole = static_cast<double>(out.consumed.minor) / (1.0 - terms.fee - terms.tax);
    out.price = money_of(std::ceil(whole - 1e-9));
    return out;
}

} // namespace wrapwright
