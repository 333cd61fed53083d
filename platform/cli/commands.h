#pragma once
// The commands: each adds its options to the program and, when it is the one that was asked for,
// returns an exit code. Any of them may throw Failure.

#include "platform/cli/failure.h"

#include <CLI/CLI.hpp>
#include <functional>

namespace wrapwright::cli {

/// What is run after the command line has been read.
using Job = std::function<ExitCode()>;

void add_plan(CLI::App& app, Job& job);
void add_card(CLI::App& app, Job& job);
void add_cost(CLI::App& app, Job& job);
void add_check(CLI::App& app, Job& job);
void add_tally(CLI::App& app, Job& job);
void add_picture(CLI::App& app, Job& job);
void add_model(CLI::App& app, Job& job);
void add_water(CLI::App& app, Job& job);
void add_reach(CLI::App& app, Job& job);
void add_rules(CLI::App& app, Job& job);
void add_proportions(CLI::App& app, Job& job);
void add_gauge(CLI::App& app, Job& job);
void add_measure(CLI::App& app, Job& job);
void add_size(CLI::App& app, Job& job);
void add_backup(CLI::App& app, Job& job);
void add_restore(CLI::App& app, Job& job);
void add_stock(CLI::App& app, Job& job);
void add_orders(CLI::App& app, Job& job);
void add_need(CLI::App& app, Job& job);

} // namespace wrapwright::cli
