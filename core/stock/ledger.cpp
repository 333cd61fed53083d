#include "core/stock/ledger.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 8> kinds{"bought",  "drawn",  "reserved", "released",
                                                "counted", "spoilt", "finished", "wasted"};

} // namespace

std::string_view name(EntryKind kind) { return kinds[static_cast<std::size_t>(kind)]; }

Holding Holdings::of(std::int64_t item) const {
    const auto at = items_.find(item);
    return at == items_.end() ? Holding{} : at->second;
}

double Holdings::reserved(std::int64_t item, std::int64_t line) const {
    const auto at = reserved_.find({line, item});
    return at == reserved_.end() ? 0.0 : at->second;
}

int Holdings::finished(std::int64_t line) const {
    const auto at = finished_.find(line);
    return at == finished_.end() ? 0 : at->second;
}

std::vector<std::pair<std::int64_t, double>> Holdings::held_by(std::int64_t line) const {
    std::vector<std::pair<std::int64_t, double>> out;
    for (auto at = reserved_.lower_bound({line, 0});
         at != reserved_.end() && at->first.first == line; ++at) {
        if (at->second > 0.0) out.emplace_back(at->first.second, at->second);
    }
    return out;
}

void Holdings::take(const Entry& entry) {
    if (entry.kind == EntryKind::finished) {
        finished_[entry.line] += static_cast<int>(entry.amount);
        return;
    }
    if (entry.kind == EntryKind::wasted) return;
    Holding& item = items_[entry.item];
    // A line gives back no more than it holds; summed anew, so that nothing is left of rounding.
    const auto give_back = [&](double amount) {
        const auto at = reserved_.find({entry.line, entry.item});
        if (at == reserved_.end()) return;
        const double back = std::min(amount, at->second);
        at->second -= back;
        item.reserved -= back;
        if (at->second <= 0.0) reserved_.erase(at);
        if (item.reserved < 1e-12) item.reserved = 0.0;
    };
    switch (entry.kind) {
    case EntryKind::bought: item.on_hand += entry.amount; break;
    case EntryKind::counted: item.on_hand = entry.amount; break;
    case EntryKind::drawn:
    case EntryKind::spoilt:
        item.on_hand -= entry.amount;
        if (entry.line != 0) give_back(entry.amount);
        break;
    case EntryKind::reserved:
        if (entry.amount > 0.0) {
            reserved_[{entry.line, entry.item}] += entry.amount;
            item.reserved += entry.amount;
        }
        break;
    case EntryKind::released: give_back(entry.amount); break;
    case EntryKind::finished:
    case EntryKind::wasted: break;
    }
}

std::vector<bool> holding_entries(std::span<const Entry> entries) {
    std::vector<bool> holds(entries.size(), true);
    const auto find = [&](std::int64_t id) {
        return std::lower_bound(entries.begin(), entries.end(), id,
                                [](const Entry& entry, std::int64_t of) { return entry.id < of; });
    };
    // Newest first: an undoing that is itself undone undoes nothing.
    for (std::size_t i = entries.size(); i-- > 0;) {
        if (entries[i].undoes == 0) continue;
        if (holds[i]) {
            const auto at = find(entries[i].undoes);
            if (at != entries.end() && at->id == entries[i].undoes && at->id < entries[i].id) {
                holds[static_cast<std::size_t>(at - entries.begin())] = false;
            }
        }
        holds[i] = false;
    }
    return holds;
}

Holdings replay(std::span<const Entry> entries) {
    const std::vector<bool> holds = holding_entries(entries);
    Holdings out;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (holds[i]) out.take(entries[i]);
    }
    return out;
}

} // namespace wrapwright
