#pragma once
// Bags for a class, and who sends what in a swap.

#include "core/stock/uses.h"

#include <vector>

namespace wrapwright {

/// Spares of what is lost most: never fewer than `least` pieces, else a share of all.
/// Source  common practice, no source
struct SpareRule {
    int least = 2;
    double share = 0.2;
};

/// One material for a class.
struct KitRow {
    std::string what;
    StockUnit unit = StockUnit::pieces;
    double each = 0.0;  ///< in one student's bag
    double bags = 0.0;  ///< in all bags
    double spare = 0.0; ///< in the teacher's own bag
    double total = 0.0;
};

/// What goes into the bags of so many students who tie so many flies each.
///
/// Error   pieces are whole and rounded up in each bag; lengths and weights are net in each bag and
///         have the share as a spare
/// Valid   students >= 1, flies >= 1
[[nodiscard]] std::vector<KitRow> class_kit(const std::vector<StockUse>& uses, int students,
                                            int flies, const SpareRule& rule = {});

/// A swap of so many people: each ties one fly for every other and keeps none of his own, or one for
/// every one with his own among them; and so many extra for the host.
struct SwapCount {
    int each = 0; ///< flies that one person ties
    int back = 0; ///< that he gets
    int all = 0;  ///< that pass through the host's hands
    int tags = 0; ///< one on each
};
/// Source  common practice, no source: everybody ties as many as there are people
[[nodiscard]] SwapCount swap_count(int people, int extra_for_host);

/// When each step of a class begins and ends, if each takes so long for everybody.
struct RoomStep {
    int step = 0;
    double from = 0.0, to = 0.0; ///< minutes since the start
    bool catch_up = false;       ///< a restore point: who lags can wait here
};
/// The clock of a room: the steps' usual times, stretched for learners.
///
/// Valid   stretch >= 1: how much longer than the teacher they take
[[nodiscard]] std::vector<RoomStep>
room_clock(const Recipe& recipe, const std::vector<double>& minutes_each, double stretch);

} // namespace wrapwright
