#pragma once
// What open orders need of the stock: shortages before the first fly, which line eats whose stock, and
// the packs to buy.

#include "core/stock/ledger.h"
#include "core/stock/order.h"
#include "core/stock/stock_item.h"
#include "core/stock/uses.h"

#include <span>
#include <string>
#include <vector>

namespace wrapwright {

/// How careful the reckoning is.
struct NeedTerms {
    double spoil = 0.05; ///< share of flies that are spoilt
    double sure = 0.95;  ///< that enough are good; 0: just the share on top, safe half the time
    double waste = 0.10; ///< of what comes by length or weight
    friend bool operator==(const NeedTerms&, const NeedTerms&) = default;
};

/// Flies to begin for so many good ones.
///
/// Source  starts_for, or good * (1 + spoil) rounded up where `sure` is 0
/// Fails   as starts_for
[[nodiscard]] Result<int> starts_by(const NeedTerms& terms, int good);

/// One open line, with what one fly of it takes; no uses where its recipe cannot be tied.
struct LineAsk {
    const OrderLine* line = nullptr;
    std::vector<StockUse> uses{};
};

/// One material of one line.
struct LineUse {
    int item = 0;      ///< index into Needs::items
    double each = 0.0; ///< of one fly
    double need = 0.0; ///< of all that are still to be begun, with waste
    double got = 0.0;  ///< of what is there: its own reservation, then what is free
    double short_of = 0.0;
    std::vector<std::int64_t> eaten_by{}; ///< earlier lines that take of the same, when it is short
};

struct LineNeed {
    std::int64_t line = 0;
    int to_tie = 0; ///< good flies that are missing
    int starts = 0;
    bool unknown = false; ///< its recipe cannot be tied, so nothing is known
    std::vector<LineUse> uses{};
    [[nodiscard]] bool short_of_something() const;
};

/// One material over all lines.
struct ItemNeed {
    std::string what;
    std::int64_t item = 0; ///< 0: nothing in the stock is called that
    StockUnit unit = StockUnit::pieces;
    double need = 0.0, on_hand = 0.0, reserved = 0.0;
    double short_of = 0.0;
    int packs = 0; ///< that cover it; 0 where the size of a pack is not known
    Money cash{};
    bool other_unit = false; ///< the stock counts in what the fly has no amount of
};

struct Needs {
    std::vector<LineNeed> lines{}; ///< in the order in which they are served: by due day, then age
    std::vector<ItemNeed> items{};
    Money cash{};
};

/// Reckons what the open lines need.
///
/// Error   never too few: starts and packs are rounded up
[[nodiscard]] Needs needs_of(const std::vector<LineAsk>& asks, std::span<const StockItem> items,
                             const Holdings& holdings, const NeedTerms& terms);

/// The entries that reserve what a line got; those that give back all that it holds.
[[nodiscard]] std::vector<Entry> reserve(const LineNeed& line, const Needs& needs,
                                         const Holdings& holdings, std::int64_t now);
[[nodiscard]] std::vector<Entry> release(std::int64_t line, const Holdings& holdings,
                                         std::int64_t now);

} // namespace wrapwright
