#pragma once
// The commands about recipes as writing: read in, told apart, handed on.

#include "platform/cli/commands.h"

namespace wrapwright::cli {

void add_read(CLI::App& app, Job& job);
void add_compare(CLI::App& app, Job& job);
void add_share(CLI::App& app, Job& job);
void add_bundle(CLI::App& app, Job& job);
void add_unbundle(CLI::App& app, Job& job);
void add_merge(CLI::App& app, Job& job);

} // namespace wrapwright::cli
