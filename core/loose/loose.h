#pragma once
// A recipe in loose text, as people write one on a card or in a letter: what it says, piece by piece.
//
// A reader by rules: a small grammar (lines.cpp, clauses.cpp, value.cpp) and a list of words. It
// proposes; a person accepts. What it does not understand stays as text in its place.

#include "core/loose/words.h"
#include "core/recipe/recipe.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// A stretch of the text, in bytes.
struct Span {
    std::size_t begin = 0, end = 0;

    [[nodiscard]] bool empty() const { return end <= begin; }
    [[nodiscard]] std::string_view of(std::string_view text) const {
        return text.substr(begin, end - begin);
    }
    friend bool operator==(const Span&, const Span&) = default;
};

enum class PieceKind : unsigned char {
    gap,     ///< blanks and marks between pieces
    text,    ///< not understood
    heading, ///< "Materials:", needed no more once read
    name,
    field, ///< something of the recipe that is no part; `word` says what
    base,  ///< what the fly is tied on; `word` says what
    part,
    step,
    // The rest lie within one of these.
    sizes,
    material,
    colour,
    amount,
    manner, ///< how the part goes on; `word` is the operation
    place,
    condition, ///< "on large hooks"
    action,    ///< of a step; `word` is the operation
};

[[nodiscard]] std::string_view name(PieceKind kind);

/// One thing that the text says.
struct Piece {
    PieceKind kind = PieceKind::text;
    Span span{};  ///< all of it, label included
    Span value{}; ///< what it says of itself; within span
    bool sure = false;
    int in = -1;                      ///< the piece that it belongs to; -1: it stands by itself
    int fly = 0;                      ///< a text may hold several
    int choice = 0;                   ///< of a material: which of several that are joined by "or"
    std::string word{};               ///< in the list's words: "tail", "soft hackle", "tie in"
    std::vector<std::string> roles{}; ///< of a part: one, or several that share a line
    Reading reading{};                ///< of an amount
    bool none = false;                ///< of a part: the text says that there is none
    bool optional = false;
};

/// A text taken apart.
///
/// Shape   the pieces with in == -1 follow each other without a gap and cover the whole text; after
///         each come those that belong to it
struct LooseText {
    std::vector<Piece> pieces{};
    int flies = 0;                    ///< recipes in the text
    std::vector<std::string> notes{}; ///< for the person: what was not read, and why
};

inline constexpr std::size_t most_loose_bytes = std::size_t{1} << 19; ///< the rest stays text
inline constexpr std::size_t most_loose_pieces = 20'000;

/// Takes a text apart; any bytes at all.
///
/// Cost    a fixed time for each word, at most for most_loose_bytes; at most most_loose_pieces
[[nodiscard]] LooseText read_loose(std::string_view text, const TradeWords& words);

/// Which pieces a person accepts: all, or those that are sure; never text and gaps.
[[nodiscard]] std::vector<bool> accept_all(const LooseText& loose);
[[nodiscard]] std::vector<bool> accept_sure(const LooseText& loose);

/// The recipe of the accepted pieces of one fly, with the whole text kept word for word.
///
/// A piece counts only where the one that it belongs to is accepted too. The ids come from the words.
/// Valid   accepted has one entry for each piece, of a reading of this text
/// Fails   too_large over 2 MiB of text, which no recipe file could hold; malformed where it is no
///         UTF-8
[[nodiscard]] Result<Recipe> make_recipe(std::string_view text, const LooseText& loose,
                                         const std::vector<bool>& accepted, int fly = 0);

/// Whether the text is UTF-8, and where not the same text taken as Windows-1252, as old letters are.
[[nodiscard]] bool is_utf8(std::string_view text);
[[nodiscard]] std::string from_windows_1252(std::string_view text);

} // namespace wrapwright
