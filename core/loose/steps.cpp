#include "core/loose/reader.h"
#include "core/recipe/amount_scan.h"
#include "core/units/scan.h"

#include <algorithm>
#include <optional>

namespace wrapwright::detail {

namespace {

/// The first amount among the words of an action: "four turns".
void add_amount(Reader& r, int action, const std::vector<Token>& tokens, std::size_t from,
                std::size_t end) {
    for (std::size_t i = from; i < end; ++i) {
        const std::size_t begin = tokens[i].span.begin;
        const std::size_t bytes = std::min<std::size_t>(tokens[end - 1].span.end - begin, 60);
        std::string_view rest = r.text.substr(begin, bytes);
        const std::size_t whole = rest.size();
        const Result<std::optional<Reading>> taken = take_amount(rest, r.roles);
        if (!taken.ok() || !taken.value() || taken.value()->bare) continue;
        Piece piece;
        piece.kind = PieceKind::amount;
        piece.span = trimmed(r.text, {begin, begin + (whole - rest.size())});
        piece.value = piece.span;
        piece.in = action;
        piece.reading = *taken.value();
        r.add(std::move(piece));
        return;
    }
}

} // namespace

bool begins_step(const Reader& r, const std::vector<Token>& tokens, std::size_t at,
                 std::size_t end) {
    return match_as(r.text, tokens, at, end, r.words, WordKind::verb).words > 0;
}

void read_step(Reader& r, Span span, Span value, bool sure) {
    Piece step;
    step.kind = PieceKind::step;
    step.span = span;
    step.value = value;
    step.sure = sure;
    const int of = r.add(std::move(step));
    const std::vector<Token> tokens = tokens_of(r.text, value);
    int action = -1;
    std::size_t from = 0;
    const auto close = [&](std::size_t end) {
        if (action < 0) return;
        r.piece(action).span.end = r.piece(action).value.end = tokens[end - 1].span.end;
        add_amount(r, action, tokens, from, end);
    };
    for (std::size_t i = 0; i < tokens.size() && !r.full();) {
        const Match verb = match_as(r.text, tokens, i, tokens.size(), r.words, WordKind::verb);
        const Match any = match_at(r.text, tokens, i, tokens.size(), r.words);
        // A verb begins the step or follows a mark, "and" or "then": "hackle" elsewhere is a thing.
        const bool placed =
            i == 0 || tokens[i - 1].key == "and" || tokens[i - 1].key == "then" ||
            between(r.text, tokens[i - 1], tokens[i]).find_first_of(".,;:") != std::string::npos;
        if (verb.words > 0 && placed) {
            close(i);
            Piece piece;
            piece.kind = PieceKind::action;
            piece.span = piece.value = tokens[i].span;
            piece.in = of;
            piece.word = *verb.as(WordKind::verb);
            action = r.add(std::move(piece));
            const std::size_t end = i + static_cast<std::size_t>(verb.words);
            from = end;
            for (++i; i < end; ++i) { // "wind the body", "start thread"
                const Match inner = match_as(r.text, tokens, i, end, r.words, WordKind::role);
                if (const std::string* role = inner.as(WordKind::role)) {
                    r.piece(action).roles = {*role};
                }
            }
            continue;
        }
        if (const std::string* role = any.as(WordKind::role)) {
            if (action >= 0 && r.piece(action).roles.empty()) r.piece(action).roles = {*role};
        }
        i += std::max<std::size_t>(1, static_cast<std::size_t>(any.words));
    }
    if (!tokens.empty()) close(tokens.size());
}

} // namespace wrapwright::detail
