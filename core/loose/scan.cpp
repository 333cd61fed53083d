#include "core/loose/scan.h"

#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

// Marks of Unicode that end a word, as their bytes: dashes, quotation marks, bullet, ellipsis, the
// no-break space, guillemets, the middle dot, fullwidth and Arabic commas and colons are left alone.
constexpr std::string_view marks[] = {"\u2013", "\u2014", "\u201c", "\u201d", "\u201e", "\u2022",
                                      "\u2026", "\u00a0", "\u00ab", "\u00bb", "\u00b7", "\u2018",
                                      "\u2019", "\u2010", "\u2011", "\u2212"};
constexpr std::string_view apostrophe = "\u2019";

/// How many bytes of a mark of Unicode start there; 0: none.
std::size_t mark_at(std::string_view text, std::size_t at) {
    if (static_cast<unsigned char>(text[at]) < 0x80) return 0;
    for (const std::string_view mark : marks) {
        if (text.substr(at, mark.size()) == mark) return mark.size();
    }
    return 0;
}

bool is_word_byte(std::string_view text, std::size_t at) {
    const char c = text[at];
    if (is_letter(c) || is_digit(c)) return true;
    return static_cast<unsigned char>(c) >= 0x80 && mark_at(text, at) == 0 &&
           text.substr(at, apostrophe.size()) != apostrophe;
}

/// Bytes of an apostrophe, or of a point or stroke of a number, that goes on with the word.
std::size_t joint_at(std::string_view text, std::size_t at, std::size_t end) {
    std::size_t bytes = 0;
    if (text[at] == '\'') bytes = 1;
    if (text.substr(at, apostrophe.size()) == apostrophe) bytes = apostrophe.size();
    if (bytes > 0) {
        return at + bytes < end && is_word_byte(text, at + bytes) ? bytes : 0;
    }
    const bool numeric = (text[at] == '.' || text[at] == '/') && at > 0 && is_digit(text[at - 1]);
    return numeric && at + 1 < end && is_digit(text[at + 1]) ? 1 : 0;
}

/// Whether two words are joined into a phrase: by blanks, or by one hyphen.
bool joined(std::string_view gap) {
    if (gap == "-" || gap == "\u2010" || gap == "\u2011") return true;
    return gap.size() <= 8 && blanks_at(gap, 0) == gap.size();
}

} // namespace

std::vector<Token> tokens_of(std::string_view text, Span within) {
    std::vector<Token> tokens;
    std::size_t at = within.begin;
    const std::size_t end = within.end;
    while (at < end) {
        const bool point = text[at] == '.' && at + 1 < end && is_digit(text[at + 1]) &&
                           (at == within.begin || !is_word_byte(text, at - 1));
        if (!point && !is_word_byte(text, at)) {
            const std::size_t mark = mark_at(text, at);
            at += std::max<std::size_t>(mark, 1);
            continue;
        }
        Token token;
        token.span.begin = at;
        if (point) token.key += text[at++];
        while (at < end) {
            if (is_word_byte(text, at)) {
                token.key += lower(text[at++]);
                continue;
            }
            const std::size_t joint = joint_at(text, at, end);
            if (joint == 0) break;
            token.key += joint == 1 ? text[at] : '\'';
            at += joint;
        }
        token.span.end = at;
        tokens.push_back(std::move(token));
    }
    return tokens;
}

const std::string* Match::as(WordKind kind) const {
    if (meanings == nullptr) return nullptr;
    for (const WordMeaning& m : *meanings) {
        if (m.kind == kind) return &m.word;
    }
    return nullptr;
}

std::string_view between(std::string_view text, const Token& a, const Token& b) {
    return text.substr(a.span.end, b.span.begin - a.span.end);
}

namespace {

template <class Wanted>
Match longest_match(std::string_view text, const std::vector<Token>& tokens, std::size_t at,
                    std::size_t end, const TradeWords& words, Wanted wanted) {
    Match best;
    if (at >= end) return best;
    const auto longest = words.longest.find(tokens[at].key);
    if (longest == words.longest.end()) return best;
    std::string phrase;
    for (std::size_t n = 0; n < static_cast<std::size_t>(longest->second) && at + n < end; ++n) {
        if (n > 0) {
            if (!joined(between(text, tokens[at + n - 1], tokens[at + n]))) break;
            phrase += ' ';
        }
        phrase += tokens[at + n].key;
        const auto found = words.phrases.find(phrase);
        if (found == words.phrases.end()) continue;
        const Match match{static_cast<int>(n) + 1, &found->second};
        if (wanted(match)) best = match;
    }
    return best;
}

} // namespace

Match match_at(std::string_view text, const std::vector<Token>& tokens, std::size_t at,
               std::size_t end, const TradeWords& words) {
    return longest_match(text, tokens, at, end, words, [](const Match&) { return true; });
}

Match match_as(std::string_view text, const std::vector<Token>& tokens, std::size_t at,
               std::size_t end, const TradeWords& words, WordKind kind) {
    return longest_match(text, tokens, at, end, words,
                         [kind](const Match& m) { return m.as(kind) != nullptr; });
}

Span trimmed(std::string_view text, Span span) {
    const auto loose = [](char c) {
        return c == ' ' || (c >= '\t' && c <= '\r') || c == ',' || c == ';' || c == ':' ||
               c == '=' || c == '|' || c == '*' || c == '_';
    };
    const auto mark = [&](std::string_view rest) -> std::size_t {
        for (const std::string_view m : {"\u2013", "\u2014", "\u2022", "\u00a0"}) {
            if (rest.starts_with(m)) return m.size();
        }
        return 0;
    };
    while (span.begin < span.end) {
        const std::string_view rest = span.of(text);
        if (const std::size_t m = mark(rest)) {
            span.begin += m;
        } else if (loose(rest.front()) || rest.starts_with("- ")) {
            ++span.begin;
        } else {
            break;
        }
    }
    while (span.begin < span.end) {
        const std::string_view rest = span.of(text);
        std::size_t m = 0;
        for (const std::string_view dash : {"\u2013", "\u2014", "\u00a0"}) {
            if (rest.ends_with(dash)) m = dash.size();
        }
        const bool stop = rest.back() == '.' && !rest.ends_with("..");
        if (m == 0 && !loose(rest.back()) && !stop && rest.back() != '-') break;
        span.end -= std::max<std::size_t>(m, 1);
    }
    return span;
}

} // namespace wrapwright::detail
