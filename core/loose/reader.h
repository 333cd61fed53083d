#pragma once
// What the readers of this room hand to each other while a text is taken apart.

#include "core/loose/loose.h"
#include "core/loose/scan.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wrapwright::detail {

/// A text on its way into pieces.
struct Reader {
    std::string_view text;
    const TradeWords& words;
    LooseText& out;
    const std::vector<std::string>& roles; ///< what amounts may be relative to
    int fly = 0;
    bool named = false;    ///< the fly has its name
    bool in_steps = false; ///< a heading said so
    bool opened = false;   ///< something of this fly was read
    int last_part = -1;    ///< what a loose end may go on with

    [[nodiscard]] bool full() const { return out.pieces.size() >= most_loose_pieces; }
    int add(Piece piece) {
        piece.fly = fly;
        out.pieces.push_back(std::move(piece));
        return static_cast<int>(out.pieces.size()) - 1;
    }
    Piece& piece(int at) { return out.pieces[static_cast<std::size_t>(at)]; }
};

/// Adds what lies in the value of a part or a base: materials, amounts, sizes, conditions.
void read_value(Reader& reader, int of);

/// Adds the hook sizes of a stretch; whether any were found.
bool read_sizes(Reader& reader, int of, Span within, bool bare);

/// Reads a stretch of prose: clauses with parts, and sentences that are steps.
void read_prose(Reader& reader, Span within);

/// Adds a step and the actions that its words name.
void read_step(Reader& reader, Span span, Span value, bool sure);

/// Whether the words begin with one that a step begins with.
[[nodiscard]] bool begins_step(const Reader& reader, const std::vector<Token>& tokens,
                               std::size_t at, std::size_t end);

} // namespace wrapwright::detail
