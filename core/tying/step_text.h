#pragma once
// Steps in words: the caution that is due at each, and what every action came to in numbers.

#include "core/tying/op_table.h"
#include "core/tying/record.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// Every caution by itself, in the order in which they are read out.
[[nodiscard]] std::vector<Caution> each_of(Caution set);

/// The word for one caution, such as "point".
[[nodiscard]] std::string_view caution_word(Caution one);

/// One caution in a line or two; no verdict on law or safety.
[[nodiscard]] std::string_view caution_text(Caution one);

/// The cautions that the actions of that step ask for.
///
/// The author's own words (Step::caution) are not among them.
[[nodiscard]] Caution step_cautions(const Pattern& pattern, const Resolved& numbers, int step);

/// What one action came to, in plain hand-neutral words and with the record's numbers.
///
/// `moment` is an index into Tied::moments; `numbers` are those that the record was tied from.
[[nodiscard]] std::string action_text(const Pattern& pattern, const Resolved& numbers,
                                      const Tied& tied, int moment);

} // namespace wrapwright
