#pragma once
// All that open orders come to: needs, days and cost, from the book and what is known of each fly.

#include "core/stock/book.h"
#include "core/stock/needs.h"
#include "core/stock/plan.h"
#include "core/tally/cost.h"

#include <array>
#include <span>
#include <string>
#include <vector>

namespace wrapwright {

/// What is known of the fly of one line.
struct LineFacts {
    std::int64_t line = 0;
    std::vector<StockUse> uses{};
    std::string why_not{}; ///< no uses are known: the recipe is gone, or cannot be tied

    std::vector<double> step_seconds{}; ///< median of each step of one fly; 0: never timed
    double finishing_seconds = 0.0;     ///< of them, the steps that are done for all at once, last
    std::vector<double> fly_seconds{};  ///< of flies that were timed whole, oldest first
};

/// What the person says of time and money.
struct WorkTerms {
    NeedTerms need{};
    Day today{};
    std::array<Duration, 7> room{}; ///< Monday to Sunday
    LearningModel model = LearningModel::crawford;
    double rate = 1.0; ///< of the learning curve where none can be fitted; 1: no learning
    Money hourly{}, packing{}, postage{};
    double fee = 0.0, tax = 0.0;
};

/// The pace of a line: the person's own minutes, or what was timed, with a curve through six or more
/// whole flies. `first` is 0 where nothing is known.
[[nodiscard]] Learning pace_of(const OrderLine& line, const LineFacts& facts,
                               const WorkTerms& terms);

struct OrderWork {
    Needs needs{};
    DayPlan plan{};
    std::vector<std::int64_t> no_time{}; ///< lines whose pace nobody knows: in no plan
};

/// Needs and days of all open lines. A line without facts counts as unknown.
[[nodiscard]] OrderWork work_of(const Book& book, std::span<const LineFacts> facts,
                                const WorkTerms& terms);

/// The cost of one line; of a whole order where its lines are given.
///
/// Materials that no item of the stock stands for, or that have no price, are named in `unpriced` and
/// are in no sum.
struct OrderCost {
    CostSheet sheet{};
    int good = 0, starts = 0;
    Duration time{};
    std::vector<std::string> unpriced{};
    Money price{}; ///< that was agreed
};
[[nodiscard]] OrderCost cost_of_lines(const Book& book, std::span<const std::int64_t> lines,
                                      std::span<const LineFacts> facts, const WorkTerms& terms);

} // namespace wrapwright
