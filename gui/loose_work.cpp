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
    if (work->shared) { // there is nothing to guess
        for (const SharedRecipe& one : work->shared->recipes) {
            work->text += (work->text.empty() ? "" : "\n\n") + recipe_words(one.recipe);
        }
        return work;
    }
    work->text = is_utf8(text) ? std::move(text) : from_windows_1252(text);
    work->loose = read_loose(work->text, words);
    work->accepted = accept_sure(work->loose);
    return work;
}

TakeAs next_choice(MergeKind kind, TakeAs now) {
    if (kind == MergeKind::fresh) return now == TakeAs::left ? TakeAs::taken : TakeAs::left;
    if (kind != MergeKind::differs) return TakeAs::left;
    return static_cast<TakeAs>((static_cast<int>(now) + 1) % 3);
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
    // What nobody would read in a row is in the text beside it: half a letter may be one piece.
    constexpr std::size_t most = 400;
    std::string value(span.of(work.text).substr(0, most));
    if (span.end - span.begin > most) {
        while (!value.empty() && (static_cast<unsigned char>(value.back()) & 0xC0U) == 0x80U) {
            value.pop_back();
        }
        if (!value.empty()) value.pop_back(); // the sign that may have been cut
        value += " ...";
    }
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
