#include "core/loose/words.h"

#include "core/loose/scan.h"
#include "core/units/scan.h"

#include <algorithm>
#include <array>
#include <optional>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 14> kind_words{
    "role",   "turn",   "base",  "field",  "heading", "kind", "usual",
    "colour", "amount", "place", "manner", "say",     "link", "verb"};
static_assert(kind_words.back() == "verb", "a word is missing");

constexpr std::size_t most_words = 6; ///< in a phrase

Error bad_line(ErrorCode code, int line, std::string message) {
    return {code,
            std::move(message),
            "write KIND MEANING = phrase, phrase; such as: role tail = tail, tails, whisks",
            {line, {}}};
}

std::optional<WordKind> word_kind(std::string_view word) {
    const auto found = std::find(kind_words.begin(), kind_words.end(), word);
    if (found == kind_words.end()) return std::nullopt;
    return static_cast<WordKind>(found - kind_words.begin());
}

void add(TradeWords& words, const std::string& phrase, const WordMeaning& meaning) {
    const std::string first = phrase.substr(0, phrase.find(' '));
    const int count = 1 + static_cast<int>(std::count(phrase.begin(), phrase.end(), ' '));
    int& longest = words.longest[first];
    longest = std::max(longest, count);
    std::vector<WordMeaning>& meanings = words.phrases[phrase];
    for (const WordMeaning& m : meanings) {
        if (m.kind == meaning.kind) return; // the first line that says it counts
    }
    meanings.push_back(meaning);
}

} // namespace

const std::string* TradeWords::find(std::string_view phrase, WordKind kind) const {
    const auto found = phrases.find(std::string(phrase));
    if (found == phrases.end()) return nullptr;
    for (const WordMeaning& m : found->second) {
        if (m.kind == kind) return &m.word;
    }
    return nullptr;
}

std::string phrase_of(std::string_view text) {
    std::string phrase;
    for (const detail::Token& token : detail::tokens_of(text, {0, text.size()})) {
        if (!phrase.empty()) phrase += ' ';
        phrase += token.key;
    }
    return phrase;
}

Result<TradeWords> read_trade_words(std::string_view text) {
    if (text.size() > (std::size_t{1} << 20)) {
        return Error{ErrorCode::too_large, "a word list over 1 MiB", "shorten it", {}};
    }
    TradeWords words;
    int number = 0;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = detail::trimmed(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        ++number;
        if (line.empty() || line.front() == '#') continue;
        const std::size_t equals = line.find('=');
        const std::size_t blank = line.find(' ');
        if (equals == std::string_view::npos || blank > equals) {
            return bad_line(ErrorCode::malformed, number, "no 'KIND MEANING =' in the word list");
        }
        const auto kind = word_kind(line.substr(0, blank));
        if (!kind) {
            return bad_line(ErrorCode::unknown_word, number,
                            detail::quoted(line.substr(0, blank)) + " is no kind of word");
        }
        const std::string_view meaning = detail::trimmed(line.substr(blank, equals - blank));
        if (meaning.empty()) {
            return bad_line(ErrorCode::malformed, number, "a line that means nothing");
        }
        std::string_view rest = line.substr(equals + 1);
        while (!rest.empty()) {
            const std::size_t comma = std::min(rest.find(','), rest.size());
            const std::string phrase = phrase_of(rest.substr(0, comma));
            rest.remove_prefix(std::min(comma + 1, rest.size()));
            const auto blanks = std::count(phrase.begin(), phrase.end(), ' ');
            if (phrase.empty() || blanks >= static_cast<std::ptrdiff_t>(most_words)) {
                return bad_line(ErrorCode::malformed, number,
                                "a phrase of no word, or of more than six");
            }
            add(words, phrase, {*kind, std::string(meaning)});
        }
    }
    return words;
}

} // namespace wrapwright
