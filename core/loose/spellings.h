#pragma once
// Words that are one word to whoever searches: tyer and tier, vice and vise, silk and thread.

#include "core/result.h"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace wrapwright {

/// Groups of words that stand for each other in a search.
class Spellings {
  public:
    /// The word, in lower case, and the others of its group.
    [[nodiscard]] std::vector<std::string> alike(std::string_view word) const;

    /// The groups of a list such as assets/words/spellings.txt: a line each, words with commas.
    ///
    /// Fails   malformed, with its line, for a group of less than two single words
    [[nodiscard]] static Result<Spellings> read(std::string_view text);

  private:
    std::unordered_map<std::string, std::vector<std::string>> others_{};
};

} // namespace wrapwright
