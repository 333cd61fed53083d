#pragma once
// The commands: each adds its options to the program and, when it is the one that was asked for,
// returns an exit code. Any of them may throw Failure.

#include "platform/cli/options.h"

namespace wrapwright::cli {

void add_plan(const Command& program, Job& job);
void add_card(const Command& program, Job& job);
void add_cost(const Command& program, Job& job);
void add_check(const Command& program, Job& job);
void add_tally(const Command& program, Job& job);
void add_picture(const Command& program, Job& job);
void add_model(const Command& program, Job& job);
void add_water(const Command& program, Job& job);
void add_reach(const Command& program, Job& job);
void add_rules(const Command& program, Job& job);
void add_proportions(const Command& program, Job& job);
void add_gauge(const Command& program, Job& job);
void add_measure(const Command& program, Job& job);
void add_size(const Command& program, Job& job);
void add_backup(const Command& program, Job& job);
void add_restore(const Command& program, Job& job);
void add_stock(const Command& program, Job& job);
void add_orders(const Command& program, Job& job);
void add_need(const Command& program, Job& job);

} // namespace wrapwright::cli
