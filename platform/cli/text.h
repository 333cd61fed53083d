#pragma once
// The record as text for people: the parts that several commands print.

#include "core/tally/tally.h"
#include "platform/cli/load.h"
#include "platform/cli/terminal.h"

namespace wrapwright::cli {

enum class Hand : unsigned char { right, left };

/// "275 mg (233 to 300)".
[[nodiscard]] std::string mass_words(const Estimate<Mass>& mass);

/// The findings, each with its evidence and remedy; one line where there are none.
[[nodiscard]] std::string findings_text(const Pattern& pattern, const Tied& tied,
                                        const Terminal& to);

/// "1 stops the fly, 2 likely, 1 note" or "nothing to find".
[[nodiscard]] std::string findings_count(const Tied& tied);

/// The tally of one fly by part, as a table.
[[nodiscard]] std::string parts_text(const Pattern& pattern, const Fly& fly, const Terminal& to);

/// Everything that `plan` prints.
[[nodiscard]] std::string plan_text(const Loaded& loaded, const Fly& fly, Hand hand,
                                    const Terminal& to);

/// A recipe that is words alone, as it was written.
[[nodiscard]] std::string words_text(const Recipe& recipe, const Terminal& to);

} // namespace wrapwright::cli
