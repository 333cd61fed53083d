#include "core/loose/lines.h"
#include "core/units/scan.h"

#include <algorithm>
#include <initializer_list>

namespace wrapwright::detail {

namespace {

constexpr std::size_t longest_label = 80; ///< bytes that are looked at for one

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> list) {
    return std::find(list.begin(), list.end(), key) != list.end();
}

/// How many bytes of what stands between a label and its value are there; 0: it is no label.
std::size_t separator(std::string_view rest) {
    std::size_t at = blanks_at(rest, 0);
    const bool wide = at >= 2 || (at == 1 && rest.front() == '\t');
    const std::string_view mark = rest.substr(at);
    if (mark.starts_with("...") || mark.starts_with("\u2026")) {
        while (at < rest.size() && (rest[at] == '.' || rest.substr(at).starts_with("\u2026"))) {
            at += rest[at] == '.' ? 1 : 3;
        }
        return at + blanks_at(rest, at);
    }
    for (const std::string_view m :
         {":", "=", "|", "->", "--", "- ", "\u2014", "\u2013", "\u2192", "\uff1a"}) {
        if (mark.starts_with(m)) return at + m.size() + blanks_at(rest, at + m.size());
    }
    return wide ? at : 0;
}

bool name_what(const Match& m, Label& label) {
    if (const std::string* role = m.as(WordKind::role)) {
        label.kind = PieceKind::part;
        label.word = *role;
        label.roles = {*role};
    } else if (const std::string* base = m.as(WordKind::base)) {
        label.kind = PieceKind::base;
        label.word = *base;
    } else if (const std::string* field = m.as(WordKind::field)) {
        label.kind = PieceKind::field;
        label.word = *field;
    } else if (const std::string* heading = m.as(WordKind::heading)) {
        label.kind = PieceKind::heading;
        label.word = *heading;
    } else {
        return false;
    }
    return true;
}

/// Takes what is in brackets after a label: "(optional)", "(large sizes)".
void take_brackets(const Reader& r, const std::vector<Token>& tokens, std::size_t& at,
                   Label& label) {
    if (at == 0 || at >= tokens.size()) return;
    if (between(r.text, tokens[at - 1], tokens[at]).find('(') == std::string_view::npos) return;
    std::size_t end = at + 1;
    while (end < tokens.size() && end < at + 6 &&
           between(r.text, tokens[end - 1], tokens[end]).find(')') == std::string_view::npos) {
        ++end;
    }
    const Match m = match_at(r.text, tokens, at, end, r.words);
    const std::string* say = m.as(WordKind::say);
    label.optional = say != nullptr && *say == "optional";
    at = end;
}

} // namespace

Line line_from(std::string_view text, std::size_t at, std::size_t end) {
    Line line;
    std::size_t stop = at;
    while (stop < end && text[stop] != '\n' && text[stop] != '\r') ++stop;
    line.content = {at, stop};
    if (stop < end && text[stop] == '\r') ++stop;
    if (stop < end && text[stop] == '\n') ++stop;
    line.whole = {at, stop};
    return line;
}

std::optional<Label> label_of(const Reader& r, Span content) {
    const Span head{content.begin, std::min(content.end, content.begin + longest_label)};
    const std::vector<Token> tokens = tokens_of(r.text, head);
    if (tokens.empty()) return std::nullopt;
    Label label;
    const Match m = match_at(r.text, tokens, 0, tokens.size(), r.words);
    if (!name_what(m, label)) return std::nullopt;
    auto at = static_cast<std::size_t>(m.words);
    label.label = {tokens[0].span.begin, tokens[at - 1].span.end};
    // "Hackle and tail", "Hackle & tail", "Tail/hackle"
    std::size_t next = at;
    if (next < tokens.size() && is_one_of(tokens[next].key, {"and"})) ++next;
    const bool joined =
        next > at ||
        (next < tokens.size() &&
         between(r.text, tokens[at - 1], tokens[at]).find_first_of("&/+") != std::string::npos);
    if (joined && label.kind == PieceKind::part) {
        const Match second = match_at(r.text, tokens, next, tokens.size(), r.words);
        if (const std::string* role = second.as(WordKind::role)) {
            label.roles.push_back(*role);
            at = next + static_cast<std::size_t>(second.words);
        }
    }
    const bool counted =
        at < tokens.size() && tokens[at].key.size() == 1 &&
        (is_digit(tokens[at].key[0]) || tokens[at].key == "a" || tokens[at].key == "b") &&
        separator(r.text.substr(tokens[at].span.end, content.end - tokens[at].span.end)) > 0;
    if (counted) ++at; // "Hackle 2:"
    const std::size_t before = at;
    take_brackets(r, tokens, at, label);
    label.label.end = tokens[at - 1].span.end;
    if (at > before && label.label.end < content.end && r.text[label.label.end] == ')') {
        ++label.label.end;
    }
    const std::string_view rest = r.text.substr(label.label.end, content.end - label.label.end);
    const bool alone = blanks_at(rest, 0) == rest.size();
    const std::size_t bytes = separator(rest);
    if (alone && label.kind != PieceKind::heading) return std::nullopt;
    if (!alone && bytes == 0) return std::nullopt;
    label.label.end += alone ? 0 : bytes;
    label.value = trimmed(r.text, {label.label.end, content.end});
    if (label.value.empty()) label.value = {label.label.end, label.label.end};
    return label;
}

Bullet bullet_of(std::string_view line) {
    std::size_t at = blanks_at(line, 0);
    const std::size_t start = at;
    while (at < line.size() && at < start + 3 && is_digit(line[at])) ++at;
    if (at > start && at < line.size() && (line[at] == '.' || line[at] == ')') &&
        blanks_at(line, at + 1) > 0) {
        return {at + 1, true};
    }
    const std::string_view rest = line.substr(start);
    for (const std::string_view mark : {"- ", "* ", "\u2022", "\u2013 ", "+ ", "o "}) {
        if (rest.starts_with(mark)) return {start + mark.size(), false};
    }
    return {};
}

std::vector<Span> cells_of(std::string_view text, Span content) {
    const std::string_view line = content.of(text);
    char mark = '\0';
    for (const char m : {'|', '\t', ';', ','}) {
        if (mark == '\0' && std::count(line.begin(), line.end(), m) >= 2) mark = m;
    }
    std::vector<Span> cells;
    std::size_t from = content.begin;
    if (mark == '|' && blanks_at(line, 0) < line.size() && line[blanks_at(line, 0)] == '|') {
        from += blanks_at(line, 0) + 1;
    }
    bool quoted = false;
    for (std::size_t i = from; i <= content.end; ++i) {
        if (i < content.end && text[i] == '"' && mark != '|') quoted = !quoted;
        if (i < content.end && (mark == '\0' || quoted || text[i] != mark)) continue;
        if (i == content.end && mark == '|' && from == i) break;
        cells.push_back({from, i});
        from = i + 1;
    }
    return cells;
}

std::vector<Label> columns_of(const Reader& r, Span content) {
    std::vector<Label> columns;
    if (content.end - content.begin > 1000) return columns;
    for (const Span cell : cells_of(r.text, content)) {
        const std::vector<Token> tokens = tokens_of(r.text, cell);
        Label label;
        if (!tokens.empty()) {
            const Match m = match_at(r.text, tokens, 0, tokens.size(), r.words);
            if (static_cast<std::size_t>(m.words) != tokens.size() || !name_what(m, label)) {
                return {};
            }
            label.label = {tokens.front().span.begin, tokens.back().span.end};
        }
        columns.push_back(std::move(label));
    }
    const auto named = std::count_if(columns.begin(), columns.end(),
                                     [](const Label& label) { return !label.word.empty(); });
    if (named < 3) columns.clear();
    return columns;
}

} // namespace wrapwright::detail
