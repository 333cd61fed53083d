#pragma once
// Findings in words: one row for each rule, filled in with the finding's own numbers.

#include "core/tying/record.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// "stops", "likely", "note".
[[nodiscard]] std::string_view name(Level level);

/// The word for a rule, such as "bead-will-not-pass".
[[nodiscard]] std::string_view name(Rule rule);

/// The rule of that word.
[[nodiscard]] std::optional<Rule> rule(std::string_view word);

/// One number of the evidence, named and in the unit that it is read in.
struct EvidenceText {
    std::string_view what;
    double value = 0.0;
    std::string_view unit; ///< "mm", "turns", "N" ...; empty for a ratio or a count
};

/// A finding in words; each text is one line.
struct FindingText {
    std::string message;
    std::vector<EvidenceText> evidence;
    std::string remedy;
    std::string caution; ///< empty where none is due
};

[[nodiscard]] FindingText describe(const Pattern& pattern, const Finding& finding);

/// The evidence in one line: "bore 0.7 mm, needed 1.02 mm".
[[nodiscard]] std::string evidence_words(const std::vector<EvidenceText>& evidence);

} // namespace wrapwright
