#include "core/stock/needs.h"

#include "core/tally/starts.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <unordered_map>

namespace wrapwright {

namespace {

/// Finds or makes the row of a material.
class Rows {
  public:
    Rows(std::vector<ItemNeed>& rows, std::span<const StockItem> items, const Holdings& holdings)
        : rows_(rows), items_(items), names_(items), holdings_(holdings) {}

    int of(const StockUse& use) {
        const int at = names_.find(use.what);
        std::string key = plain_name(use.what);
        if (at >= 0) {
            // Two names of one item are one row.
            key = plain_name(items_[static_cast<std::size_t>(at)].what);
        }
        const auto [found, is_new] = index_.emplace(std::move(key), static_cast<int>(rows_.size()));
        if (is_new) {
            ItemNeed row;
            row.what = use.what;
            row.unit = usual_unit(use);
            if (at >= 0) {
                const StockItem& item = items_[static_cast<std::size_t>(at)];
                const Holding holding = holdings_.of(item.id);
                row.what = item.what;
                row.item = item.id;
                row.unit = item.unit;
                row.on_hand = holding.on_hand;
                row.reserved = holding.reserved;
            }
            rows_.push_back(std::move(row));
            stock_.push_back(at);
            left_.push_back(std::max(0.0, rows_.back().on_hand - rows_.back().reserved));
        }
        return found->second;
    }
    /// What is on hand and reserved for no line, less what earlier lines took of it.
    double& left(int row) { return left_[static_cast<std::size_t>(row)]; }
    [[nodiscard]] const StockItem* item(std::size_t row) const {
        return stock_[row] < 0 ? nullptr : &items_[static_cast<std::size_t>(stock_[row])];
    }

  private:
    std::vector<ItemNeed>& rows_;
    std::span<const StockItem> items_;
    StockNames names_;
    const Holdings& holdings_;
    std::unordered_map<std::string, int> index_{};
    std::vector<int> stock_{}; // index into items, -1: none
    std::vector<double> left_{};
};

/// Those that are due first, then the older ones; lines without a day come last.
bool served_before(const LineAsk& a, const LineAsk& b) {
    const auto key = [](const OrderLine& l) { return std::tuple(l.due == Day{}, l.due, l.id); };
    return key(*a.line) < key(*b.line);
}

using Takers = std::vector<std::vector<std::int64_t>>; // for each row

/// Gives a line what there is of one material: its own reservation first, then what is free.
void serve(LineUse& use, const LineNeed& line, Rows& rows, std::vector<ItemNeed>& items,
           Takers& takers, const Holdings& holdings, const NeedTerms& terms) {
    ItemNeed& item = items[static_cast<std::size_t>(use.item)];
    const bool by_piece = item.unit == StockUnit::pieces || item.unit == StockUnit::flies;
    use.need = use.each * line.starts / (by_piece ? 1.0 : 1.0 - terms.waste);
    const double own = std::max(0.0, holdings.reserved(item.item, line.line));
    // What is reserved is there only while nothing else was drawn.
    const double from_own = std::min({use.need, own, std::max(0.0, item.on_hand)});
    const double from_free = std::min(use.need - from_own, rows.left(use.item));
    rows.left(use.item) -= from_free;
    use.got = from_own + from_free;
    use.short_of = use.need - use.got <= 1e-9 * use.need ? 0.0 : use.need - use.got;
    item.need += use.need;
    item.short_of += use.short_of;
    auto& before = takers[static_cast<std::size_t>(use.item)];
    if (use.short_of > 0.0) use.eaten_by = before;
    if (use.got > 0.0) before.push_back(line.line);
}

} // namespace

bool LineNeed::short_of_something() const {
    return std::any_of(uses.begin(), uses.end(),
                       [](const LineUse& use) { return use.short_of > 0.0; });
}

Result<int> starts_by(const NeedTerms& terms, int good) {
    if (terms.sure > 0.0) return starts_for(good, terms.spoil, terms.sure);
    const Result<int> fits = starts_for(good, terms.spoil, 0.5); // refuses the same
    if (!fits.ok()) return fits.error();
    return static_cast<int>(std::ceil(good * (1.0 + terms.spoil) - 1e-9));
}

Needs needs_of(const std::vector<LineAsk>& asks, std::span<const StockItem> items,
               const Holdings& holdings, const NeedTerms& terms) {
    Needs out;
    Rows rows(out.items, items, holdings);
    std::vector<LineAsk> served;
    served.reserve(asks.size());
    for (const LineAsk& ask : asks) {
        if (open(ask.line->status) && !ask.line->gone) served.push_back(ask);
    }
    std::sort(served.begin(), served.end(), served_before);
    Takers takers;
    for (const LineAsk& ask : served) {
        LineNeed line;
        line.line = ask.line->id;
        line.to_tie = std::max(0, ask.line->flies - holdings.finished(ask.line->id));
        line.unknown = ask.uses.empty();
        const Result<int> starts = starts_by(terms, line.to_tie);
        line.starts = starts.ok() ? starts.value() : line.to_tie;
        // Two materials that one item stands for are one use.
        for (const StockUse& use : ask.uses) {
            const int at = rows.of(use);
            ItemNeed& item = out.items[static_cast<std::size_t>(at)];
            const std::optional<double> each = use_in(item.unit, use);
            if (!each) {
                item.other_unit = true;
                continue;
            }
            const auto same = std::find_if(line.uses.begin(), line.uses.end(),
                                           [&](const LineUse& of) { return of.item == at; });
            if (same == line.uses.end()) {
                line.uses.push_back({at, *each, 0.0, 0.0, 0.0, {}});
            } else if (item.unit != StockUnit::flies) {
                same->each += *each;
            }
        }
        takers.resize(out.items.size());
        for (LineUse& use : line.uses) serve(use, line, rows, out.items, takers, holdings, terms);
        out.lines.push_back(std::move(line));
    }
    for (std::size_t i = 0; i < out.items.size(); ++i) {
        ItemNeed& row = out.items[i];
        const StockItem* item = rows.item(i);
        if (item == nullptr || row.short_of <= 0.0) continue;
        row.packs = packs_for(row.short_of, 0.0, item->pack);
        row.cash = {item->price.minor * row.packs};
        out.cash += row.cash;
    }
    return out;
}

std::vector<Entry> reserve(const LineNeed& line, const Needs& needs, const Holdings& holdings,
                           std::int64_t now) {
    std::vector<Entry> out;
    for (const LineUse& use : line.uses) {
        const ItemNeed& item = needs.items[static_cast<std::size_t>(use.item)];
        const double more = use.got - holdings.reserved(item.item, line.line);
        if (item.item == 0 || more <= 1e-12) continue;
        Entry entry;
        entry.kind = EntryKind::reserved;
        entry.item = item.item;
        entry.amount = more;
        entry.line = line.line;
        entry.made = now;
        out.push_back(std::move(entry));
    }
    return out;
}

std::vector<Entry> release(std::int64_t line, const Holdings& holdings, std::int64_t now) {
    std::vector<Entry> out;
    for (const auto& [item, amount] : holdings.held_by(line)) {
        Entry entry;
        entry.kind = EntryKind::released;
        entry.item = item;
        entry.amount = amount;
        entry.line = line;
        entry.made = now;
        out.push_back(std::move(entry));
    }
    return out;
}

} // namespace wrapwright
