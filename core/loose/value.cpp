// What lies in the value of a part: "3-4 fibres of red hackle, short, or yellow floss (optional)".
#include "core/loose/reader.h"
#include "core/recipe/amount_scan.h"
#include "core/units/scan.h"
#include "core/units/thread_size.h"

#include <algorithm>
#include <initializer_list>
#include <optional>

namespace wrapwright::detail {

namespace {

constexpr std::size_t longest_amount = 120; ///< bytes that an amount may take up

/// What a word of the value turned out to be.
enum class Taken : unsigned char { no, kind, colour, apart, choice };

struct Value {
    Reader& r;
    int of;
    std::vector<Token> tokens;
    std::vector<Taken> taken;
    std::vector<int> choice; ///< of each word
    std::vector<int> found;  ///< pieces that were added, amounts among them
};

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> list) {
    return std::find(list.begin(), list.end(), key) != list.end();
}

/// Whether an amount may begin with the word; others are not tried.
bool may_begin_amount(std::string_view key) {
    if (is_digit(key.front()) || key.front() == '.') return true;
    if (static_cast<unsigned char>(key.front()) == 0xc2 || key.starts_with("\u2153")) return true;
    return is_one_of(
        key, {"about", "around", "roughly", "approximately", "approx", "circa", "ca",      "same",
              "equal", "as",     "twice",   "double",        "half",   "third", "quarter", "one",
              "two",   "three",  "four",    "five",          "six",    "seven", "eight",   "nine",
              "ten",   "eleven", "twelve",  "fifteen",       "twenty", "a",     "an",      "awg"});
}

int add_found(Value& v, PieceKind kind, std::size_t first, std::size_t last, bool sure) {
    Piece piece;
    piece.kind = kind;
    piece.span = piece.value = {v.tokens[first].span.begin, v.tokens[last - 1].span.end};
    piece.in = v.of;
    piece.sure = sure;
    const int at = v.r.add(std::move(piece));
    v.found.push_back(at);
    return at;
}

void take(Value& v, std::size_t first, std::size_t last, Taken what) {
    for (std::size_t i = first; i < last; ++i) v.taken[i] = what;
}

/// Takes an amount at a word; how many words it took.
std::size_t take_amount_at(Value& v, std::size_t at) {
    const Span value = v.r.piece(v.of).value;
    const std::size_t begin = v.tokens[at].span.begin;
    const std::string_view key = v.tokens[at].key;
    if (key.ends_with("/0") && key.size() <= 4) { // a thread's size: a label, never a number
        if (!parse_thread_size(key).ok()) return 0;
        const int piece = add_found(v, PieceKind::amount, at, at + 1, true);
        v.r.piece(piece).reading.kind = AmountKind::word;
        v.r.piece(piece).reading.unit = Unit::linear_density;
        return 1;
    }
    std::string_view rest = v.r.text.substr(begin, std::min(value.end - begin, longest_amount));
    const std::size_t whole = rest.size();
    const Result<std::optional<Reading>> taken = take_amount(rest, v.r.roles);
    if (!taken.ok() || !taken.value()) return 0;
    const std::size_t end = begin + (whole - rest.size());
    std::size_t last = at;
    while (last < v.tokens.size() && v.tokens[last].span.begin < end) ++last;
    // An amount ends with a word; "0.5" of "0.5x" does not.
    if (last == at || v.tokens[last - 1].span.end > end) return 0;
    const Reading& reading = *taken.value();
    if (reading.bare && !rest.empty() && (rest.front() == '/' || rest.front() == '%')) return 0;
    const int piece = add_found(v, PieceKind::amount, at, last, !reading.bare);
    Piece& p = v.r.piece(piece);
    p.reading = reading;
    // Marks that belong to it, such as the inch's.
    while (p.span.end < end && !blanks_at(v.r.text, p.span.end)) ++p.span.end;
    p.value = p.span;
    return last - at;
}

/// The end of a clause inside a value: a comma, a bracket, a stop.
std::size_t clause_end(const Value& v, std::size_t at) {
    std::size_t i = at + 1;
    while (i < v.tokens.size() &&
           between(v.r.text, v.tokens[i - 1], v.tokens[i]).find_first_of(",;()") ==
               std::string_view::npos) {
        ++i;
    }
    return i;
}

/// Takes what stands at a word; how many words it took, 0 where it says nothing known.
std::size_t take_at(Value& v, std::size_t at, int& choice) {
    Reader& r = v.r;
    const std::size_t n = v.tokens.size();
    const Match m = match_at(r.text, v.tokens, at, n, r.words);
    const auto words = static_cast<std::size_t>(m.words);
    const std::string* say = m.as(WordKind::say);
    if (say != nullptr && *say == "none" && at == 0 && words == n) {
        r.piece(v.of).none = true;
        take(v, at, n, Taken::apart);
        return words;
    }
    if (say != nullptr && *say == "optional") {
        r.piece(v.of).optional = true;
        add_found(v, PieceKind::condition, at, at + words, true);
        take(v, at, at + words, Taken::apart);
        return words;
    }
    if (say != nullptr && *say == "instead") {
        ++choice;
        const int piece = add_found(v, PieceKind::material, at, at + words, true);
        r.piece(piece).choice = choice;
        r.piece(piece).word = "instead";
        if (v.tokens[at].key == "or" && words > 1) {
            r.piece(piece).value.begin = v.tokens[at + 1].span.begin;
        }
        take(v, at, at + words, Taken::choice);
        return words;
    }
    if (say != nullptr && *say == "if") {
        const std::size_t end = clause_end(v, at);
        add_found(v, PieceKind::condition, at, end, true);
        take(v, at, end, Taken::apart);
        return end - at;
    }
    const std::size_t begin = v.tokens[at].span.begin;
    if (begin > 0 && r.text[begin - 1] == '#') { // a hook's size: "8 turns on #6"
        take(v, at, at + 1, Taken::apart);
        return 1;
    }
    if (may_begin_amount(v.tokens[at].key)) {
        if (const std::size_t taken = take_amount_at(v, at)) {
            take(v, at, at + taken, Taken::apart);
            return taken;
        }
    }
    if (m.as(WordKind::kind) != nullptr) {
        take(v, at, at + words, Taken::kind);
    } else if (m.as(WordKind::colour) != nullptr) {
        take(v, at, at + words, Taken::colour);
    } else if (m.as(WordKind::amount) != nullptr) {
        const int piece = add_found(v, PieceKind::amount, at, at + words, true);
        r.piece(piece).reading.kind = AmountKind::word;
        take(v, at, at + words, Taken::apart);
    } else if (const std::string* op = m.as(WordKind::manner)) {
        const int piece = add_found(v, PieceKind::manner, at, at + words, true);
        r.piece(piece).word = *op;
        take(v, at, at + words, Taken::apart);
    } else if (m.as(WordKind::place) != nullptr) {
        add_found(v, PieceKind::place, at, at + words, true);
        take(v, at, at + words, Taken::apart);
    } else if (v.tokens[at].key == "or") {
        ++choice;
        take(v, at, at + 1, Taken::choice);
        return 1;
    } else {
        return 0;
    }
    return words;
}

bool is_small(const Value& v, std::size_t at) {
    const Match m = match_at(v.r.text, v.tokens, at, v.tokens.size(), v.r.words);
    return m.as(WordKind::link) != nullptr && v.taken[at] == Taken::no;
}

/// Adds one material of the words first to last, with its kind and its colour.
void add_material(Value& v, std::size_t first, std::size_t last) {
    while (first < last && is_small(v, first)) ++first;
    while (first < last && is_small(v, last - 1)) --last;
    if (first == last) return;
    Reader& r = v.r;
    const int at = add_found(v, PieceKind::material, first, last, false);
    r.piece(at).choice = v.choice[first];
    for (std::size_t i = first; i < last;) {
        const Match m = match_at(r.text, v.tokens, i, last, r.words);
        const auto words = std::max<std::size_t>(1, static_cast<std::size_t>(m.words));
        if (const std::string* kind = m.as(WordKind::kind)) {
            r.piece(at).word = *kind; // the last one is the noun: "golden pheasant tippets"
            r.piece(at).sure = true;
        }
        i += words;
    }
    if (r.piece(at).word.empty()) { // "Hackle: black"
        const std::string* kind = r.words.find(phrase_of(r.piece(v.of).word), WordKind::usual);
        if (kind != nullptr) r.piece(at).word = *kind;
        r.piece(at).sure = kind != nullptr;
    }
    std::size_t colour = first;
    while (colour < last && v.taken[colour] != Taken::colour) ++colour;
    if (colour == last) return;
    std::size_t end = colour;
    while (end < last && v.taken[end] == Taken::colour) ++end;
    Piece piece;
    piece.kind = PieceKind::colour;
    piece.span = piece.value = {v.tokens[colour].span.begin, v.tokens[end - 1].span.end};
    piece.in = at;
    piece.sure = true;
    r.add(std::move(piece));
}

/// Adds the materials of one run of words: one, or several that "and" or a comma joins.
void add_run(Value& v, std::size_t first, std::size_t last) {
    const auto has_kind = [&](std::size_t a, std::size_t b) {
        return std::find(v.taken.begin() + static_cast<std::ptrdiff_t>(a),
                         v.taken.begin() + static_cast<std::ptrdiff_t>(b),
                         Taken::kind) != v.taken.begin() + static_cast<std::ptrdiff_t>(b);
    };
    std::size_t from = first;
    bool kind_before = false;
    for (std::size_t i = first; i < last; ++i) {
        const bool comma =
            i > from && between(v.r.text, v.tokens[i - 1], v.tokens[i]).find_first_of(",;+&/") !=
                            std::string_view::npos;
        const bool word = v.taken[i] == Taken::no &&
                          is_one_of(v.tokens[i].key, {"and", "with", "plus", "over", "under"});
        if ((comma || word) && kind_before && has_kind(i, last)) {
            add_material(v, from, i);
            from = word ? i + 1 : i;
            kind_before = false;
        }
        if (v.taken[i] == Taken::kind) kind_before = true;
    }
    add_material(v, from, last);
}

/// Whether an amount measures the material itself rather than how much of it goes on.
bool measures_material(const Piece& amount, const Piece& material) {
    if (amount.reading.unit == Unit::linear_density) return true;
    const bool length = amount.reading.unit == Unit::length &&
                        amount.reading.basis == Basis::none &&
                        amount.reading.kind != AmountKind::word;
    const bool decimal = amount.reading.bare && amount.reading.high < 0.2;
    return (length || decimal) &&
           is_one_of(material.word, {"wire", "ballast", "bead", "cone", "tinsel", "oval", "tube",
                                     "thread", "dumbbell", "foam", "eyes"});
}

/// Gives amounts that measure a material to the nearest one of the same choice.
void hand_out_amounts(Value& v) {
    for (const int a : v.found) {
        if (v.r.piece(a).kind != PieceKind::amount) continue;
        int best = -1;
        std::size_t nearest = 0;
        for (const int m : v.found) {
            const Piece& material = v.r.piece(m);
            if (material.kind != PieceKind::material || material.word == "instead") continue;
            if (!measures_material(v.r.piece(a), material)) continue;
            const Piece& amount = v.r.piece(a);
            const std::size_t gap =
                material.span.begin >= amount.span.end
                    ? material.span.begin - amount.span.end
                    : amount.span.begin - std::min(material.span.end, amount.span.begin);
            if (best < 0 || gap < nearest) {
                best = m;
                nearest = gap;
            }
        }
        if (best < 0) continue;
        v.r.piece(a).in = best;
        v.r.piece(a).sure = true;
    }
}

} // namespace

void read_value(Reader& r, int of) {
    Value v{r, of, tokens_of(r.text, r.piece(of).value), {}, {}, {}};
    v.taken.assign(v.tokens.size(), Taken::no);
    v.choice.assign(v.tokens.size(), 0);
    int choice = 0;
    for (std::size_t i = 0; i < v.tokens.size() && !r.full();) {
        const std::size_t taken = std::max<std::size_t>(1, take_at(v, i, choice));
        for (std::size_t k = i; k < i + taken; ++k) v.choice[k] = choice;
        i += taken;
    }
    if (!r.piece(of).none) {
        for (std::size_t i = 0; i < v.tokens.size() && !r.full();) {
            std::size_t end = i;
            const auto in_run = [&](std::size_t k) {
                return k < v.tokens.size() && v.taken[k] != Taken::apart &&
                       v.taken[k] != Taken::choice && v.choice[k] == v.choice[i];
            };
            while (in_run(end)) ++end;
            if (end > i) add_run(v, i, end);
            i = std::max(end, i + 1);
        }
    }
    hand_out_amounts(v);
}

} // namespace wrapwright::detail
