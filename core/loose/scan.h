#pragma once
// Words of a loose text with their places. Only for the readers of this room.

#include "core/loose/loose.h"
#include "core/loose/words.h"

#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::detail {

/// A word or a number, and where it is.
struct Token {
    Span span;
    std::string key; ///< in lower case
};

/// The words of a stretch of the text: letters, digits, their inner apostrophes, and fractions and
/// decimals whole; a hyphen ends a word.
[[nodiscard]] std::vector<Token> tokens_of(std::string_view text, Span within);

/// The longest phrase of the list at a word, and what it may mean.
struct Match {
    int words = 0; ///< 0: none
    const std::vector<WordMeaning>* meanings = nullptr;

    /// What it stands for as that kind of word; null where it is none.
    [[nodiscard]] const std::string* as(WordKind kind) const;
};

/// The longest phrase that begins at `at` and ends before `end`; blanks and single hyphens join its
/// words.
[[nodiscard]] Match match_at(std::string_view text, const std::vector<Token>& tokens,
                             std::size_t at, std::size_t end, const TradeWords& words);

/// The same, but the longest phrase that is of this kind, though a longer one may be of another.
[[nodiscard]] Match match_as(std::string_view text, const std::vector<Token>& tokens,
                             std::size_t at, std::size_t end, const TradeWords& words,
                             WordKind kind);

/// What lies between two words.
[[nodiscard]] std::string_view between(std::string_view text, const Token& a, const Token& b);

/// The stretch without blanks and loose marks around it.
[[nodiscard]] Span trimmed(std::string_view text, Span span);

} // namespace wrapwright::detail
