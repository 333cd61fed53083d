#pragma once
// The word list that comes along, and short ways to read a text by it.

#include "core/loose/loose.h"

#include <doctest/doctest.h>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::test {

inline const TradeWords& trade_words() {
    static const TradeWords words = [] {
        std::ifstream file(WW_SOURCE_DIR "/assets/words/trade.txt");
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        Result<TradeWords> read = read_trade_words(text);
        REQUIRE(read.ok());
        return std::move(read).value();
    }();
    return words;
}

inline LooseText loose(std::string_view text) { return read_loose(text, trade_words()); }

/// The text put together again from its pieces; each lies where the one before ends.
inline std::string together(std::string_view text, const LooseText& loose) {
    std::string all;
    for (const Piece& p : loose.pieces) {
        if (p.in >= 0) continue;
        REQUIRE(p.span.begin == all.size());
        all += p.span.of(text);
    }
    return all;
}

/// The value of the first piece of that kind and word; "(none)" where the text says so.
inline std::string value_of(std::string_view text, const LooseText& loose, PieceKind kind,
                            std::string_view word = {}) {
    for (const Piece& p : loose.pieces) {
        if (p.kind != kind || (!word.empty() && p.word != word)) continue;
        return p.none ? "(none)" : std::string(p.value.of(text));
    }
    return "(missing)";
}

inline std::string part_of(std::string_view text, const LooseText& loose, std::string_view role) {
    return value_of(text, loose, PieceKind::part, role);
}

/// All values of that kind.
inline std::vector<std::string> all_of(std::string_view text, const LooseText& loose,
                                       PieceKind kind) {
    std::vector<std::string> values;
    for (const Piece& p : loose.pieces) {
        if (p.kind == kind) values.emplace_back(p.value.of(text));
    }
    return values;
}

} // namespace wrapwright::test
