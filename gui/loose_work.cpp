#include "gui/loose_work.h"

#include "core/recipe/amount_words.h"
#include "core/share/letter.h"

namespace wrapwright {

std::shared_ptr<const LooseWork> read_pasted(std::string text, const TradeWords& words) {
    auto work = std::make_shared<LooseWork>();
    // Letters from older programs are not always in UTF-8; what was meant is kept, not the bytes.
    if (is_letter(text) || is_bundle(text) || text.find("\"wrapwright recipe\"") != text.npos) {
        Result<Shared> shared = open_shared(text);
        if (shared.ok()) {
            work->shared = std::make_shared<const Shared>(std::move(shared).value());
        } else {
            work->trouble = shared.error().message + "; " + shared.error().remedy;
        }
    }
    work->text = is_utf8(text) ? std::move(text) : from_windows_1252(text);
    if (work->shared) return work; // there is nothing to guess
    work->loose = read_loose(work->text, words);
    work->accepted = accept_sure(work->loose);
    return work;
}

std::string piece_words(const LooseWork& work, const Piece& piece) {
    std::string words(name(piece.kind));
    std::string of = piece.word;
    for (const std::string& role : piece.roles) {
        if (role != piece.word) of.append(of.empty() ? "" : " and ").append(role);
    }
    if (!of.empty()) words += " " + of;
    if (piece.none) return words + ": none";
    const Span span = piece.value.empty() ? piece.span : piece.value;
    std::string value(span.of(work.text));
    for (char& c : value) {
        if (c == '\n' || c == '\r' || c == '\t') c = ' ';
    }
    words += ": " + value;
    if (piece.kind == PieceKind::amount) {
        const std::string said = understood(piece.reading);
        if (!said.empty()) words += " (" + said + ")";
    }
    return words;
}

} // namespace wrapwright
