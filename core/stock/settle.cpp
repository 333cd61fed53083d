#include "core/stock/settle.h"

namespace wrapwright {

namespace {

/// What the ledger says of each fly: the marker that holds, if any.
std::vector<const Entry*> markers(std::span<const Entry> entries, const std::vector<bool>& holds,
                                  std::size_t flies) {
    std::vector<const Entry*> out(flies, nullptr);
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Entry& e = entries[i];
        const bool marks = e.kind == EntryKind::finished || e.kind == EntryKind::wasted;
        if (holds[i] && marks && e.fly >= 0 && static_cast<std::size_t>(e.fly) < flies) {
            out[static_cast<std::size_t>(e.fly)] = &e;
        }
    }
    return out;
}

} // namespace

std::vector<Entry> settle(const SittingFlies& flies, std::span<const Entry> entries,
                          std::span<const StockItem> items, std::int64_t now) {
    const SittingState& state = *flies.state;
    const std::vector<bool> holds = holding_entries(entries);
    const std::vector<const Entry*> marked = markers(entries, holds, state.fly_state.size());
    std::vector<Entry> out;
    const auto add = [&](EntryKind kind, std::int64_t item, double amount, int fly) {
        Entry entry;
        entry.kind = kind;
        entry.item = item;
        entry.amount = amount;
        entry.line = flies.line;
        entry.sitting = flies.sitting;
        entry.fly = fly;
        entry.made = now;
        out.push_back(std::move(entry));
    };
    const StockNames names(items);
    for (std::size_t f = 0; f < state.fly_state.size(); ++f) {
        const bool done = state.fly_state[f] == FlyState::done;
        const bool spoilt = state.fly_state[f] == FlyState::spoilt;
        const Entry* there = marked[f];
        if (there != nullptr && done && there->kind == EntryKind::finished) continue;
        if (there != nullptr && spoilt && there->kind == EntryKind::wasted) continue;
        if (there == nullptr && !done && !spoilt) continue;
        const int fly = static_cast<int>(f);
        for (std::size_t i = 0; i < entries.size(); ++i) {
            if (!holds[i] || entries[i].fly != fly) continue;
            add(EntryKind::drawn, 0, 0.0, fly);
            out.back().undoes = entries[i].id;
        }
        if (!done && !spoilt) continue;
        add(done ? EntryKind::finished : EntryKind::wasted, 0, 1.0, fly);
        const int until = done ? none : state.spoilt_step[f];
        const std::vector<StockUse> uses =
            stock_uses(*flies.pattern, *flies.resolved, *flies.tied, until);
        for (const StockUse& use : uses) {
            const int at = names.find(use.what);
            if (at < 0) continue;
            const StockItem& item = items[static_cast<std::size_t>(at)];
            const std::optional<double> amount = use_in(item.unit, use);
            if (amount) add(done ? EntryKind::drawn : EntryKind::spoilt, item.id, *amount, fly);
        }
    }
    return out;
}

} // namespace wrapwright
