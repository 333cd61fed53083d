#pragma once
// What flies cost: what they use up, and what has to be paid for whole packs; never the one for the
// other.

#include "core/tally/money.h"
#include "core/units/quantity.h"

#include <string>
#include <vector>

namespace wrapwright {

/// One material as it is bought, and how much of it one fly takes, in the pack's own unit.
struct CostItem {
    std::string what;
    Money price{};      ///< of a pack
    double pack = 1.0;  ///< units in it: hooks, beads, metres, flies of a cape
    double use = 0.0;   ///< of one fly
    double waste = 0.0; ///< share that is lost, below 1
    double have = 0.0;  ///< on hand, paid for before
};

/// What else a batch costs.
struct CostTerms {
    int good = 12;        ///< flies to deliver
    int starts = 12;      ///< flies to begin: each uses material and time
    Money hourly{};       ///< the person's own rate; shown even when it is 0
    Duration each{};      ///< for one fly
    Duration finishing{}; ///< for the batch, apart
    Money packing{}, postage{};
    double fee = 0.0; ///< share of the price that a market takes
    double tax = 0.0; ///< share of the price; 0: off. A reminder and no advice
};

/// One line of the sheet, each rounded to the minor unit by itself so that the lines add up.
struct CostLine {
    std::string what;
    double used = 0.0; ///< units of the whole batch, with waste
    int packs = 0;     ///< to buy
    Money consumed{}, cash{};
};

struct CostSheet {
    std::vector<CostLine> lines{}; ///< materials, then labour, packing, postage
    Money consumed{}, cash{};      ///< sums of the lines
    double per_fly = 0.0;          ///< consumed, minor units, of a good one
    double per_dozen = 0.0;
    Money price{}; ///< of the batch that covers `consumed`, fee and tax
};

/// The sheet of a batch.
///
/// Valid   packs > 0; uses, waste and haves >= 0, waste below 1; fee + tax below 1; starts >= good > 0
/// Source  consumed = price / pack * use / (1 - waste) * starts; cash = whole packs of what is missing
[[nodiscard]] CostSheet cost_of(const std::vector<CostItem>& items, const CostTerms& terms);

} // namespace wrapwright
