#include "core/stock/order_work.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace wrapwright {

namespace {

/// Fewer timings than this make no curve (common practice, no source).
constexpr std::size_t least_timings = 6;

const LineFacts* facts_of(std::span<const LineFacts> facts, std::int64_t line) {
    const auto at = std::find_if(facts.begin(), facts.end(),
                                 [&](const LineFacts& of) { return of.line == line; });
    return at == facts.end() ? nullptr : &*at;
}

/// What each fly of several lines takes of one item, weighted by the flies that are begun.
struct Used {
    const StockItem* item = nullptr;
    double amount = 0.0; ///< of all flies that are begun, without waste
};

/// Flies that a fitted curve has behind it.
int learnt(const Learning& pace, const LineFacts& facts) {
    return pace.best.si > 0.0 ? static_cast<int>(facts.fly_seconds.size()) : 0;
}

} // namespace

Learning pace_of(const OrderLine& line, const LineFacts& facts, const WorkTerms& terms) {
    Learning pace{terms.model, {}, terms.rate, {}};
    if (line.minutes > 0.0) {
        pace.first = minutes(line.minutes);
        return pace;
    }
    if (facts.fly_seconds.size() >= least_timings) {
        const Result<Learning> fit = fit_learning(facts.fly_seconds);
        if (fit.ok()) {
            pace = fit.value();
            // Nobody gets quicker than the best fly so far only because a curve says so.
            pace.best =
                seconds(*std::min_element(facts.fly_seconds.begin(), facts.fly_seconds.end()));
            return pace;
        }
    }
    const double all = std::accumulate(facts.step_seconds.begin(), facts.step_seconds.end(), 0.0);
    pace.first = seconds(all - facts.finishing_seconds);
    return pace;
}

OrderWork work_of(const Book& book, std::span<const LineFacts> facts, const WorkTerms& terms) {
    OrderWork out;
    std::vector<LineAsk> asks;
    for (const OrderLine& line : book.lines) {
        if (line.gone || !open(line.status)) continue;
        const LineFacts* known = facts_of(facts, line.id);
        asks.push_back({&line, known != nullptr ? known->uses : std::vector<StockUse>{}});
    }
    out.needs = needs_of(asks, book.items, book.holdings, terms.need);
    std::vector<PlanAsk> days;
    for (const LineNeed& need : out.needs.lines) {
        const OrderLine& line = *line_of(book, need.line);
        const LineFacts* known = facts_of(facts, need.line);
        const LineFacts nothing;
        const LineFacts& of = known != nullptr ? *known : nothing;
        const Learning pace = pace_of(line, of, terms);
        if (need.starts > 0 && !(pace.first.si > 0.0)) {
            out.no_time.push_back(line.id);
            continue;
        }
        PlanAsk ask;
        ask.line = line.id;
        ask.due = line.due;
        ask.starts = need.starts;
        ask.done = std::max(line.flies - need.to_tie, learnt(pace, of));
        ask.pace = pace;
        // The person's own minutes are for the whole fly.
        if (line.minutes <= 0.0) {
            ask.finishing = seconds(need.starts * of.finishing_seconds);
        }
        days.push_back(ask);
    }
    out.plan = plan_days(terms.today, terms.room, std::move(days));
    return out;
}

OrderCost cost_of_lines(const Book& book, std::span<const std::int64_t> lines,
                        std::span<const LineFacts> facts, const WorkTerms& terms) {
    OrderCost out;
    const StockNames names(book.items);
    std::map<std::int64_t, Used> used;
    CostTerms cost;
    cost.good = cost.starts = 0;
    const auto unpriced = [&](const std::string& what) {
        if (std::find(out.unpriced.begin(), out.unpriced.end(), what) == out.unpriced.end()) {
            out.unpriced.push_back(what);
        }
    };
    for (const std::int64_t id : lines) {
        const OrderLine* line = line_of(book, id);
        if (line == nullptr) continue;
        const LineFacts* known = facts_of(facts, id);
        const LineFacts nothing;
        const LineFacts& of = known != nullptr ? *known : nothing;
        const Result<int> starts = starts_by(terms.need, line->flies);
        const int begun = starts.ok() ? starts.value() : line->flies;
        cost.good += line->flies;
        cost.starts += begun;
        const Learning pace = pace_of(*line, of, terms);
        const int before = learnt(pace, of);
        out.time += pace.total(before + 1, before + begun);
        if (line->minutes <= 0.0) out.time += seconds(begun * of.finishing_seconds);
        out.price += price_of(*line);
        for (const StockUse& use : of.uses) {
            const int at = names.find(use.what);
            if (at < 0) {
                unpriced(use.what);
                continue;
            }
            const StockItem& item = book.items[static_cast<std::size_t>(at)];
            const std::optional<double> each = use_in(item.unit, use);
            if (!each || item.price.minor == 0) {
                unpriced(item.what);
                continue;
            }
            Used& sum = used[item.id];
            sum.item = &item;
            sum.amount += *each * begun;
        }
    }
    out.good = cost.good;
    out.starts = cost.starts;
    if (cost.good == 0) return out;
    std::vector<CostItem> items;
    items.reserve(used.size());
    for (const auto& [id, sum] : used) {
        const bool by_piece =
            sum.item->unit == StockUnit::pieces || sum.item->unit == StockUnit::flies;
        items.push_back({sum.item->what, sum.item->price, sum.item->pack, sum.amount / cost.starts,
                         by_piece ? 0.0 : terms.need.waste,
                         std::max(0.0, book.holdings.of(id).on_hand)});
    }
    cost.hourly = terms.hourly;
    cost.finishing = out.time;
    cost.packing = terms.packing;
    cost.postage = terms.postage;
    cost.fee = terms.fee;
    cost.tax = terms.tax;
    out.sheet = cost_of(items, cost);
    return out;
}

} // namespace wrapwright
