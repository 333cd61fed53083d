#pragma once
// The commands about recipes as writing: read in, told apart, handed on.

#include "platform/cli/commands.h"

namespace wrapwright::cli {

void add_read(const Command& program, Job& job);
void add_compare(const Command& program, Job& job);
void add_share(const Command& program, Job& job);
void add_bundle(const Command& program, Job& job);
void add_unbundle(const Command& program, Job& job);
void add_merge(const Command& program, Job& job);

} // namespace wrapwright::cli
