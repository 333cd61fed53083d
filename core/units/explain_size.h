#pragma once
// Everything that a size text can mean, in plain words: what the command line's `size` prints.

#include "core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// One line about a meaning: a name, the words for people, and the number where there is one.
struct SizeFact {
    std::string name;               ///< "millimetres", "as hook", "sold as" ...
    std::string text;               ///< with its unit, such as "2.778125 mm"
    std::optional<double> number{}; ///< in the unit that `name` says
};

/// One thing that the text can mean.
struct SizeMeaning {
    std::string what{}; ///< "length", "hook size", "thread label" ...
    std::vector<SizeFact> facts{};
};

/// What a size text can mean; several meanings are all listed and none is chosen.
struct SizeExplanation {
    std::string text;                    ///< verbatim
    std::vector<SizeMeaning> meanings{}; ///< empty when nothing was understood
    std::vector<std::string> warnings{};
    std::optional<Error> error{}; ///< why nothing, or not all, was understood
};

/// Explains any size text; never fails, since not understanding is an answer too.
[[nodiscard]] SizeExplanation explain_size(std::string_view text);

/// The explanation as lines for people, without colour.
[[nodiscard]] std::vector<std::string> lines(const SizeExplanation& explanation);

} // namespace wrapwright
