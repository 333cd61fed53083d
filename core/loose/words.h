#pragma once
// The words that a loose text is read by: a list that somebody can add to, told as text.

#include "core/result.h"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace wrapwright {

/// What a phrase of the list may be.
enum class WordKind : unsigned char {
    role,    ///< a part of the fly
    turn,    ///< a part, also in the middle of a clause: "ribbed with"
    base,    ///< what the fly is tied on
    field,   ///< something of the recipe that is no part
    heading, ///< says what follows
    kind,    ///< of material
    usual,   ///< the kind of material that a part is of where nothing says
    colour,
    amount, ///< how much, in no number
    place,
    manner, ///< how it goes on, by an operation
    say,    ///< "none", "optional", "or equivalent"
    link,   ///< between a part and what it is
    verb,   ///< begins a step, by an operation
};

/// One meaning of a phrase.
struct WordMeaning {
    WordKind kind = WordKind::role;
    std::string word; ///< what it stands for: "tail", "soft hackle", "tie in"
};

/// The list, ready to look phrases up in.
struct TradeWords {
    /// By phrase: lower case, single blanks, hyphens as blanks.
    std::unordered_map<std::string, std::vector<WordMeaning>> phrases;
    /// By first word: how many words the longest phrase has that begins so.
    std::unordered_map<std::string, int> longest;

    /// What a phrase stands for as that kind of word; null where it is none.
    [[nodiscard]] const std::string* find(std::string_view phrase, WordKind kind) const;
};

/// The list from its text, such as assets/words/trade.txt.
///
/// Fails   malformed, with the line, for a line that is no "KIND MEANING = phrase, phrase";
///         unknown_word for a kind that is none of the above; too_large over 1 MiB
[[nodiscard]] Result<TradeWords> read_trade_words(std::string_view text);

/// The words of a text in lower case, with single blanks, hyphens as blanks and one apostrophe.
[[nodiscard]] std::string phrase_of(std::string_view text);

} // namespace wrapwright
