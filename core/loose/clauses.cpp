// Prose: "The Alder has a tag of gold tinsel, no tail; the body is peacock herl and the hackle black."
//
// A clause ends at a mark, or at "and" and "with" before a part's word. It is a part where a part's
// word begins it (the value follows) or ends it (the value comes before); a step where a verb of tying
// begins it; it goes on with the part before where it only says more of it.
#include "core/loose/reader.h"
#include "core/recipe/amount_scan.h"
#include "core/units/scan.h"

#include <algorithm>
#include <initializer_list>
#include <optional>

namespace wrapwright::detail {

namespace {

enum class Stop : unsigned char { none, soft, colon, hard };

/// A part's or a base's word at a place in the text.
struct Head {
    std::size_t words = 0; ///< 0: none
    std::string word{};
    PieceKind kind = PieceKind::part;
    bool weak = false; ///< also the name of a material
};

struct Prose {
    Reader& r;
    std::vector<Token> tokens;
    std::size_t text_end;
};

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> list) {
    return std::find(list.begin(), list.end(), key) != list.end();
}

bool is_number(std::string_view key) {
    return !key.empty() && (is_digit(key.front()) || key.front() == '.');
}

/// How strongly the marks before a word part it from the word before.
Stop stop_before(const Prose& p, std::size_t at) {
    if (at == 0 || at >= p.tokens.size()) return Stop::hard;
    const std::string_view gap = between(p.r.text, p.tokens[at - 1], p.tokens[at]);
    const bool abbreviated = is_one_of(p.tokens[at - 1].key, {"no", "nos", "approx", "ca", "sz"}) &&
                             is_number(p.tokens[at].key);
    Stop stop = Stop::none;
    for (std::size_t i = 0; i < gap.size(); ++i) {
        const char c = gap[i];
        if (c == ';' || c == '!' || c == '?') return Stop::hard;
        if (c == '.' && !abbreviated && (i + 1 == gap.size() || blanks_at(gap, i + 1) > 0)) {
            return Stop::hard;
        }
        if (c == ':') stop = std::max(stop, Stop::colon);
        if (c == ',') stop = std::max(stop, Stop::soft);
        const std::string_view rest = gap.substr(i);
        if (rest.starts_with("\u2014") || rest.starts_with("\u2013 ") || rest.starts_with("- ") ||
            rest.starts_with("--")) {
            stop = std::max(stop, Stop::soft);
        }
    }
    return stop;
}

Head head_at(const Prose& p, std::size_t at, std::size_t end) {
    Head head;
    const Match m = match_at(p.r.text, p.tokens, at, end, p.r.words);
    const std::string* role = m.as(WordKind::role);
    const std::string* turn = m.as(WordKind::turn);
    const std::string* base = m.as(WordKind::base);
    const std::string* word = role != nullptr ? role : turn != nullptr ? turn : base;
    if (word == nullptr) return head;
    head.words = static_cast<std::size_t>(m.words);
    head.word = *word;
    head.kind = role == nullptr && turn == nullptr ? PieceKind::base : PieceKind::part;
    head.weak = m.as(WordKind::kind) != nullptr;
    return head;
}

std::size_t skip_links(const Prose& p, std::size_t at, std::size_t end, std::string_view which) {
    while (at < end) {
        const Match m = match_as(p.r.text, p.tokens, at, end, p.r.words, WordKind::link);
        const std::string* word = m.as(WordKind::link);
        if (word == nullptr || (*word != which && *word != "skip")) break;
        at += static_cast<std::size_t>(m.words);
    }
    return at;
}

bool says_none(const Prose& p, std::size_t at, std::size_t end) {
    const Match m = match_at(p.r.text, p.tokens, at, end, p.r.words);
    const std::string* say = m.as(WordKind::say);
    return say != nullptr && *say == "none";
}

/// Whether a part begins there, articles aside.
bool part_begins(const Prose& p, std::size_t at, std::size_t end, bool after_article = false) {
    const std::size_t start = skip_links(p, at, end, "skip");
    std::size_t next = start;
    if (next < end && says_none(p, next, end)) ++next;
    const Head head = head_at(p, next, end);
    return head.words > 0 && (!head.weak || !after_article || start > at);
}

bool is_joint(std::string_view key) {
    return is_one_of(key, {"and", "with", "but", "while", "plus"});
}

/// Whether the last words of a stretch are a part's word, and the first are not.
bool part_ends(const Prose& p, std::size_t from, std::size_t to) {
    if (from >= to) return false;
    const bool article = is_one_of(p.tokens[from].key, {"a", "an", "the", "its"});
    for (std::size_t i = from; i < to;) {
        const Match m = match_at(p.r.text, p.tokens, i, to, p.r.words);
        const auto words = std::max<std::size_t>(1, static_cast<std::size_t>(m.words));
        if (i + words == to && i > from) {
            const Head head = head_at(p, i, to);
            return head.words > 0 && (!head.weak || article);
        }
        i += words;
    }
    return false;
}

/// The end of the clause that begins at a word.
std::size_t clause_end(const Prose& p, std::size_t from) {
    const std::size_t n = p.tokens.size();
    const Head first = head_at(p, skip_links(p, from, n, "skip"), n);
    std::size_t i = from + 1;
    const std::size_t head_end = skip_links(p, from, n, "skip") + first.words;
    for (; i < n; ++i) {
        const Stop stop = stop_before(p, i);
        if (stop == Stop::colon && first.words > 0 && i == head_end) continue; // "body: ..."
        if (stop != Stop::none) return i;
        if (i < head_end) continue;
        const Match turn = match_as(p.r.text, p.tokens, i, n, p.r.words, WordKind::turn);
        if (turn.words > 0 && first.words > 0 &&
            match_at(p.r.text, p.tokens, i, n, p.r.words).as(WordKind::turn) != nullptr) {
            return i;
        }
        if (!is_joint(p.tokens[i].key)) continue;
        if (part_begins(p, i + 1, n)) return i;
        std::size_t next = i + 1;
        while (next < n && next < i + 9 && stop_before(p, next) == Stop::none &&
               !is_joint(p.tokens[next].key)) {
            ++next;
        }
        if (next <= i + 8 && part_ends(p, i + 1, next)) return i;
    }
    return n;
}

/// Where the words from a to b lie, up to the next word's marks.
Span span_of(const Prose& p, std::size_t a, std::size_t b) {
    Span span{p.tokens[a].span.begin, p.tokens[b - 1].span.end};
    const bool size = span.begin > 0 && p.r.text[span.begin - 1] == '#';
    if (size && (a == 0 || p.tokens[a - 1].span.end < span.begin)) --span.begin;
    return span;
}

/// Adds a part or base and reads its value.
int add_part(Prose& p, const Head& head, Span span, Span value, bool sure) {
    Piece piece;
    piece.kind = head.kind;
    piece.span = span;
    piece.value = trimmed(p.r.text, value);
    piece.sure = sure;
    piece.word = head.word;
    if (head.kind == PieceKind::part) piece.roles = {head.word};
    const int at = p.r.add(std::move(piece));
    p.r.last_part = at;
    return at;
}

void finish(Prose& p, int at) {
    if (p.r.piece(at).kind == PieceKind::base) {
        read_sizes(p.r, at, p.r.piece(at).value, true);
    } else {
        read_value(p.r, at);
    }
}

/// Adds the name that the words from a to b are; `all` of them up to the verb that follows belong to it.
void add_name(Prose& p, std::size_t a, std::size_t b, std::size_t all, bool sure) {
    const std::size_t first = a;
    while (a < b &&
           is_one_of(p.tokens[a].key, {"the", "a", "an", "for", "my", "our", "it", "this", "fly"}))
        ++a;
    if (a == b) return;
    Piece piece;
    piece.kind = PieceKind::name;
    piece.value = span_of(p, a, b);
    piece.span = span_of(p, first, all);
    piece.sure = sure;
    p.r.add(std::move(piece));
    p.r.named = true;
}

/// Whether a clause begins with an amount: "five turns", "half the gap wide", "two turns at most".
bool begins_amount(const Prose& p, std::size_t a, std::size_t b) {
    std::string_view words = p.r.text.substr(
        p.tokens[a].span.begin,
        std::min<std::size_t>(p.tokens[b - 1].span.end - p.tokens[a].span.begin, 80));
    const auto taken = take_amount(words, p.r.roles);
    return taken.ok() && taken.value().has_value() && !taken.value()->bare;
}

/// What the words of a clause hold that no part's word announces.
struct Holds {
    bool stuff = false;    ///< a material or a colour
    bool kind = false;     ///< a material
    std::size_t other = 0; ///< words that say nothing known
    bool detail = false;   ///< only how much, how, where
};

Holds holds(const Prose& p, std::size_t a, std::size_t b) {
    Holds h;
    for (std::size_t i = a; i < b;) {
        const Match m = match_at(p.r.text, p.tokens, i, b, p.r.words);
        const bool stuff = m.as(WordKind::kind) != nullptr || m.as(WordKind::colour) != nullptr;
        const bool detail = m.as(WordKind::amount) != nullptr ||
                            m.as(WordKind::manner) != nullptr || m.as(WordKind::place) != nullptr ||
                            m.as(WordKind::say) != nullptr || m.as(WordKind::link) != nullptr ||
                            is_number(p.tokens[i].key);
        h.stuff = h.stuff || stuff;
        h.detail = h.detail || detail;
        h.kind = h.kind || m.as(WordKind::kind) != nullptr;
        h.other += !stuff && !detail ? 1 : 0;
        i += std::max<std::size_t>(1, static_cast<std::size_t>(m.words));
    }
    h.detail = (h.detail && h.other == 0) || (b - a <= 7 && begins_amount(p, a, b));
    h.detail = h.detail && !h.stuff;
    return h;
}

/// "The Alder has a tag of gold": the words before "has" are its name; where the part begins.
std::size_t take_subject(Prose& p, std::size_t from, std::size_t end) {
    if (p.r.named) return from;
    for (std::size_t i = from + 1; i < std::min(end, from + 9); ++i) {
        const Match m = match_as(p.r.text, p.tokens, i, end, p.r.words, WordKind::link);
        const std::string* word = m.as(WordKind::link);
        if (word == nullptr || *word != "has") continue;
        if (head_at(p, skip_links(p, from, i, "skip"), i).words > 0) return from;
        const std::size_t next = i + static_cast<std::size_t>(m.words);
        if (!part_begins(p, next, end)) return from; // "whatever you have"
        add_name(p, from, i, next, false);
        return next;
    }
    return from;
}

/// The part's word that ends the clause, and where it begins.
std::optional<std::pair<std::size_t, Head>> last_head(const Prose& p, std::size_t a,
                                                      std::size_t b) {
    for (std::size_t i = a; i < b;) {
        const Head head = head_at(p, i, b);
        const bool sized = i > a && p.tokens[i - 1].span.begin > 0 &&
                           p.r.text[p.tokens[i - 1].span.begin - 1] == '#'; // "a #16 hook"
        const bool part = head.words > 0 && (head.kind == PieceKind::part || sized);
        if (part && i + head.words == b && i > a) return std::pair{i, head};
        const Match m = match_at(p.r.text, p.tokens, i, b, p.r.words);
        i += std::max<std::size_t>(1, static_cast<std::size_t>(m.words));
    }
    return std::nullopt;
}

/// Extends the part before by a clause that says more of it.
void extend(Prose& p, std::size_t b) {
    Piece& last = p.r.piece(p.r.last_part);
    last.span.end = last.value.end = p.tokens[b - 1].span.end;
}

/// Reads one clause; where the next one begins, which is later where a label takes the next's words.
std::size_t read_clause(Prose& p, std::size_t from, std::size_t end, int& open) {
    Reader& r = p.r;
    const Stop before = stop_before(p, from);
    const auto close = [&] {
        if (open >= 0) finish(p, open);
        open = -1;
    };
    const bool early = !r.named && !r.opened && from == 0;
    const std::size_t n = p.tokens.size();
    if (early && end <= 7 && end < n && stop_before(p, end) != Stop::hard &&
        stop_before(p, end) != Stop::none && part_begins(p, end, n) &&
        head_at(p, skip_links(p, 0, end, "skip"), end).words == 0 &&
        skip_links(p, 0, end, "skip") == 0) { // "Brown Hackle, tail none, ..."
        add_name(p, from, end, end, false);
        return end;
    }
    const std::size_t start = take_subject(p, from, end);
    if (start == end) return end;
    std::size_t at = skip_links(p, start, end, "has");
    const bool without = at < end && says_none(p, at, end);
    const Head head = head_at(p, without ? at + 1 : at, end);
    if (head.words > 0) {
        close();
        const std::size_t label = without ? at + 1 : at;
        std::size_t value = label + head.words;
        bool said = false;
        if (value < end) {
            const std::size_t after = skip_links(p, value, end, "is");
            said = after > value || stop_before(p, value) == Stop::colon;
            value = after;
        }
        if (without) {
            const int piece = add_part(p, head, span_of(p, start, end),
                                       {p.tokens[at].span.begin, p.tokens[at].span.end}, true);
            r.piece(piece).none = true;
            return end;
        }
        if (value < end) {
            open = add_part(p, head, span_of(p, start, end), span_of(p, value, end),
                            said || before != Stop::none || !head.weak);
            return end;
        }
        // The label stands alone: its value is the next clause, unless that is a part of its own.
        if (end < n && stop_before(p, end) == Stop::soft && !part_begins(p, end, n)) {
            const std::size_t next = clause_end(p, end);
            const bool listed =
                next == n || part_begins(p, next, n) || stop_before(p, next) == Stop::hard;
            if (!head.weak || listed) {
                open = add_part(p, head, span_of(p, start, next), span_of(p, end, next), false);
                return next;
            }
        }
        if (head.weak) {
            open = add_part(p, head, span_of(p, start, end), span_of(p, label, end), false);
            return end;
        }
        if (end < n && part_begins(p, end, n)) { // "tail and hackle red": they share what follows
            const std::size_t next = clause_end(p, end);
            const std::size_t second = skip_links(p, end, next, "skip");
            const Head other = head_at(p, second, next);
            const std::size_t words = skip_links(p, second + other.words, next, "is");
            if (other.words > 0 && other.kind == PieceKind::part && words < next &&
                stop_before(p, end) == Stop::none) {
                open = add_part(p, head, span_of(p, start, next), span_of(p, words, next), true);
                r.piece(open).roles.push_back(other.word);
                return next;
            }
        }
        open = add_part(p, head, span_of(p, start, end), span_of(p, label, end), false);
        return end;
    }
    if (begins_step(r, p.tokens, at, end) && (before == Stop::hard || r.in_steps)) {
        close();
        std::size_t stop = end;
        while (stop < p.tokens.size() && stop_before(p, stop) != Stop::hard) ++stop;
        read_step(r, span_of(p, at, stop), span_of(p, at, stop), false);
        r.last_part = -1;
        return stop;
    }
    if (const auto last = last_head(p, at, end)) {
        close();
        Span value = span_of(p, at, last->first);
        open = add_part(p, last->second, span_of(p, start, end), value, false);
        return end;
    }
    const Holds what = holds(p, start < end ? start : at, end);
    // After a material that no part's word announced, another one is a thing of its own.
    const bool bare = open >= 0 && r.piece(open).value.begin == r.piece(open).span.begin;
    const bool goes_on =
        open >= 0 && before != Stop::hard && (what.detail || (what.stuff && !bare));
    if (goes_on) {
        extend(p, end);
        return end;
    }
    close();
    if (start > from) return end; // "the Alder takes ..." and nothing known
    if (!what.stuff) return end;  // it stays text
    Piece piece;
    piece.kind = PieceKind::part;
    piece.span = piece.value = span_of(p, at, end);
    open = r.add(std::move(piece));
    r.last_part = open;
    return end;
}

} // namespace

void read_prose(Reader& r, Span within) {
    Prose p{r, tokens_of(r.text, within), within.end};
    int open = -1;
    for (std::size_t i = 0; i < p.tokens.size() && !r.full();) {
        const std::size_t end = clause_end(p, i);
        const std::size_t next = read_clause(p, i, end, open);
        r.opened = true;
        i = std::max(next, i + 1);
    }
    if (open >= 0) finish(p, open);
}

} // namespace wrapwright::detail
