#pragma once
// The commands about recipes as writing: read in, told apart, handed on.

#include "platform/cli/commands.h"

namespace wrapwright::cli {

void add_read(CLI::App& app, Job& job);

} // namespace wrapwright::cli
