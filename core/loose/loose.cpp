#include "core/loose/loose.h"

#include "core/loose/lines.h"
#include "core/units/scan.h"

#include <algorithm>
#include <array>

namespace wrapwright {

using namespace detail;

namespace {

constexpr std::array<std::string_view, 16> kind_names{
    "gap",   "text",     "heading", "name",   "field",  "base",  "part",      "step",
    "sizes", "material", "colour",  "amount", "manner", "place", "condition", "action"};
static_assert(kind_names.back() == "action", "a name is missing");

/// The text while its lines are read.
struct Lines {
    Reader r;
    std::size_t at = 0, end = 0;
    std::vector<Label> columns{}; ///< of the table that is being read

    [[nodiscard]] bool done() const { return at >= end || r.full(); }
    [[nodiscard]] Line peek() const { return line_from(r.text, at, end); }
    void next() { at = peek().whole.end; }
};

bool is_blank(std::string_view line) { return blanks_at(line, 0) == line.size(); }

void new_fly(Reader& r) {
    if (!r.opened && !r.named) return;
    ++r.fly;
    r.named = r.opened = r.in_steps = false;
    r.last_part = -1;
}

/// Adds what a label and its value say.
void add_labelled(Reader& r, const Label& label, Span span) {
    Piece piece;
    piece.kind = label.kind;
    piece.span = span;
    piece.value = label.value;
    piece.sure = true;
    piece.word = label.word;
    piece.roles = label.roles;
    piece.optional = label.optional;
    if (label.kind == PieceKind::field && label.word == "name") {
        if (r.named) new_fly(r);
        piece.kind = PieceKind::name;
        r.named = true;
    }
    r.opened = r.opened || piece.kind != PieceKind::name;
    const int at = r.add(std::move(piece));
    if (label.kind == PieceKind::part) {
        read_value(r, at);
        r.last_part = at;
    } else if (label.kind == PieceKind::base || label.word == "sizes") {
        read_sizes(r, at, label.value, true);
    }
}

/// Whether the line begins with a part's word, label or not.
bool begins_part(const Reader& r, Span content) {
    const std::vector<Token> tokens =
        tokens_of(r.text, {content.begin, std::min(content.end, content.begin + 80)});
    if (tokens.empty()) return false;
    const bool article = tokens[0].key == "the" || tokens[0].key == "a" || tokens[0].key == "an";
    const Match m = match_at(r.text, tokens, article ? 1 : 0, tokens.size(), r.words);
    return m.as(WordKind::role) != nullptr || m.as(WordKind::base) != nullptr;
}

/// Whether a line begins something of its own, so that the one before does not go on with it.
bool begins_anew(const Lines& in, Span content) {
    const std::string_view line = content.of(in.r.text);
    return is_blank(line) || bullet_of(line).bytes > 0 || label_of(in.r, content).has_value() ||
           begins_part(in.r, content) || columns_of(in.r, content).size() > 2;
}

/// Whether the line only goes on with the label before: it is set in, or begins in lower case.
bool goes_on(const Lines& in, Span content) {
    const std::string_view line = content.of(in.r.text);
    if (begins_anew(in, content)) return false;
    return blanks_at(line, 0) > 0 || (line.front() >= 'a' && line.front() <= 'z');
}

void read_label(Lines& in, Label label, std::size_t from) {
    Reader& r = in.r;
    in.next();
    std::size_t to = label.value.empty() ? label.label.end : label.value.end;
    if (label.kind == PieceKind::heading) {
        r.in_steps = label.word == "steps";
        Piece piece;
        piece.kind = PieceKind::heading;
        piece.span = piece.value = {from, label.label.end};
        piece.word = label.word;
        piece.sure = true;
        r.add(std::move(piece));
        if (!label.value.empty()) read_prose(r, label.value);
        return;
    }
    while (!in.done() && goes_on(in, in.peek().content)) {
        const Span more = trimmed(r.text, in.peek().content);
        if (label.value.empty()) label.value.begin = more.begin;
        label.value.end = to = more.end;
        in.next();
    }
    add_labelled(r, label, {from, to});
}

/// Reads the rows under a table's heads: each is a fly.
void read_rows(Lines& in) {
    Reader& r = in.r;
    while (!in.done()) {
        const Span content = in.peek().content;
        const std::vector<Span> cells = cells_of(r.text, content);
        if (is_blank(content.of(r.text)) || cells.size() < 2) break;
        in.next();
        if (tokens_of(r.text, content).empty()) continue; // the rule under the heads
        new_fly(r);
        for (std::size_t i = 0; i < cells.size() && i < in.columns.size() && !r.full(); ++i) {
            Label label = in.columns[i];
            Span value = trimmed(r.text, cells[i]);
            if (value.end - value.begin >= 2 && r.text[value.begin] == '"' &&
                r.text[value.end - 1] == '"') {
                value = {value.begin + 1, value.end - 1};
            }
            if (value.empty() || (label.word.empty() && label.roles.empty())) continue;
            label.value = value;
            add_labelled(r, label, value);
        }
    }
    in.columns.clear();
}

/// A line that names the fly: short, without marks, before anything else.
bool take_title(Lines& in, Span content) {
    Reader& r = in.r;
    if (r.named || r.opened) return false;
    const Span trim = trimmed(r.text, content);
    const std::string_view line = trim.of(r.text);
    if (line.size() > 80 || line.find_first_of(",;:|\t") != std::string_view::npos) {
        return false;
    }
    const std::vector<Token> tokens = tokens_of(r.text, trim);
    if (tokens.empty() || tokens.size() > 8) return false;
    if (begins_part(r, trim) && tokens.size() > 1) return false;
    // A letter that begins with a sentence has no title.
    const std::string_view whole = content.of(r.text);
    const std::size_t last = whole.find_last_not_of(" \t");
    if (last != std::string_view::npos && whole[last] == '.' && tokens.size() > 4) return false;
    const Line line_of_title = in.peek();
    in.next();
    const bool more = !in.done();
    Piece piece;
    piece.kind = PieceKind::name;
    piece.span = piece.value = {tokens.front().span.begin, trim.end};
    piece.sure = more && line_of_title.whole.end < in.end;
    const int at = r.add(std::move(piece));
    r.named = true;
    if (read_sizes(r, at, trim, false)) {
        const Piece sizes = r.out.pieces.back();
        if (sizes.span.begin > r.piece(at).value.begin) {
            r.piece(at).value = trimmed(r.text, {r.piece(at).value.begin, sizes.span.begin});
        }
    }
    return true;
}

/// Sentences of a stretch, each a step.
void read_sentences(Reader& r, Span within) {
    std::size_t from = within.begin;
    for (std::size_t i = within.begin; i < within.end && !r.full(); ++i) {
        const bool stop = (r.text[i] == '.' || r.text[i] == ';' || r.text[i] == '!') &&
                          (i + 1 == within.end || blanks_at(r.text, i + 1) > 0);
        if (!stop && i + 1 < within.end) continue;
        const Span span = trimmed(r.text, {from, i + 1});
        from = i + 1;
        const std::vector<Token> tokens = tokens_of(r.text, span);
        if (tokens.empty()) continue;
        read_step(r, span, span, begins_step(r, tokens, 0, tokens.size()));
    }
}

/// Reads lines that belong together and bear no label.
void read_block(Lines& in, Bullet bullet) {
    Reader& r = in.r;
    Span block = in.peek().content;
    const std::size_t number = block.begin + blanks_at(block.of(r.text), 0);
    block.begin += bullet.bytes;
    in.next();
    while (!in.done() && !begins_anew(in, in.peek().content)) {
        block.end = in.peek().content.end;
        in.next();
    }
    block = trimmed(r.text, block);
    if (block.empty()) return;
    const std::vector<Token> tokens =
        tokens_of(r.text, {block.begin, std::min(block.end, block.begin + 100)});
    if (tokens.empty()) return;
    const bool verb = begins_step(r, tokens, 0, tokens.size());
    if (bullet.numbered && (verb || r.in_steps)) {
        read_step(r, {number, block.end}, block, verb);
    } else if (r.in_steps) {
        read_sentences(r, block);
    } else {
        read_prose(r, block);
    }
    r.opened = true;
}

void read_line(Lines& in) {
    Reader& r = in.r;
    const Line line = in.peek();
    Span content = line.content;
    if (is_blank(content.of(r.text))) return in.next();
    in.columns = columns_of(r, content);
    if (!in.columns.empty()) {
        Piece heads;
        heads.kind = PieceKind::heading;
        heads.span = heads.value = trimmed(r.text, content);
        heads.word = "table";
        heads.sure = true;
        r.add(std::move(heads));
        in.next();
        return read_rows(in);
    }
    const Bullet bullet = bullet_of(content.of(r.text));
    content.begin += bullet.bytes;
    if (auto label = label_of(r, content)) {
        const std::vector<Token> tokens = tokens_of(r.text, label->value);
        const bool step = r.in_steps && label->kind == PieceKind::part &&
                          begins_step(r, tokens, 0, tokens.size());
        if (!step) return read_label(in, std::move(*label), label->label.begin);
    }
    if (!bullet.numbered && take_title(in, content)) return;
    read_block(in, bullet);
}

/// The pieces in order, with what lies between them.
std::vector<Piece> covered(std::string_view text, std::vector<Piece> pieces) {
    std::vector<std::vector<int>> inner(pieces.size());
    std::vector<int> outer;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const int in = pieces[i].in;
        if (in < 0) outer.push_back(static_cast<int>(i));
        if (in >= 0) inner[static_cast<std::size_t>(in)].push_back(static_cast<int>(i));
    }
    const auto by_place = [&](int a, int b) {
        const Span x = pieces[static_cast<std::size_t>(a)].span;
        const Span y = pieces[static_cast<std::size_t>(b)].span;
        return x.begin != y.begin ? x.begin < y.begin : x.end != y.end ? x.end > y.end : a < b;
    };
    std::sort(outer.begin(), outer.end(), by_place);
    std::vector<Piece> all;
    all.reserve(pieces.size() * 2);
    int fly = 0;
    const auto fill = [&](std::size_t from, std::size_t to) {
        if (from >= to) return;
        Piece piece;
        piece.span = piece.value = {from, to};
        piece.kind = tokens_of(text, piece.span).empty() ? PieceKind::gap : PieceKind::text;
        piece.fly = fly;
        all.push_back(std::move(piece));
    };
    const auto put = [&](const auto& self, int at, int in) -> void {
        std::vector<int>& below = inner[static_cast<std::size_t>(at)];
        std::sort(below.begin(), below.end(), by_place);
        const int here = static_cast<int>(all.size());
        all.push_back(std::move(pieces[static_cast<std::size_t>(at)]));
        all.back().in = in;
        for (const int child : below) self(self, child, here);
    };
    std::size_t at = 0;
    for (const int i : outer) {
        const Piece& piece = pieces[static_cast<std::size_t>(i)];
        WW_ASSERT(piece.span.begin >= at && piece.span.end >= piece.span.begin);
        fill(at, piece.span.begin);
        fly = piece.fly;
        at = piece.span.end;
        put(put, i, -1);
    }
    fill(at, text.size());
    return all;
}

} // namespace

std::string_view name(PieceKind kind) { return kind_names[static_cast<std::size_t>(kind)]; }

LooseText read_loose(std::string_view text, const TradeWords& words) {
    LooseText out;
    std::vector<std::string> roles;
    for (const auto& [phrase, meanings] : words.phrases) {
        for (const WordMeaning& m : meanings) {
            if (m.kind == WordKind::role) roles.push_back(m.word);
        }
    }
    std::sort(roles.begin(), roles.end());
    roles.erase(std::unique(roles.begin(), roles.end()), roles.end());
    Lines in{Reader{text, words, out, roles}, 0, std::min(text.size(), most_loose_bytes)};
    if (text.starts_with("\xef\xbb\xbf")) in.at = 3; // the mark of UTF-8
    while (!in.done()) read_line(in);
    if (in.end < text.size()) {
        out.notes.emplace_back("only the first 512 KiB were read; the rest stays as text");
    } else if (in.r.full()) {
        out.notes.emplace_back("more than 20,000 pieces: what follows stays as text");
    }
    constexpr std::size_t most_notes = 20;
    if (out.notes.size() > most_notes) {
        out.notes.resize(most_notes);
        out.notes.emplace_back("and more of the same");
    }
    out.flies = in.r.opened || in.r.named ? in.r.fly + 1 : in.r.fly;
    out.pieces = covered(text, std::move(out.pieces));
    return out;
}

std::vector<bool> accept_all(const LooseText& loose) {
    std::vector<bool> accepted;
    accepted.reserve(loose.pieces.size());
    for (const Piece& p : loose.pieces) {
        accepted.push_back(p.kind != PieceKind::text && p.kind != PieceKind::gap);
    }
    return accepted;
}

std::vector<bool> accept_sure(const LooseText& loose) {
    std::vector<bool> accepted = accept_all(loose);
    for (std::size_t i = 0; i < accepted.size(); ++i) {
        const Piece& p = loose.pieces[i];
        const bool inside = p.in < 0 || accepted[static_cast<std::size_t>(p.in)];
        accepted[i] = accepted[i] && p.sure && inside;
    }
    return accepted;
}

} // namespace wrapwright
