// Fuzz target: loose texts of any bytes; nothing of them is lost, and what is made of them is a recipe
// that its own reader takes.

#include "core/assert.h"
#include "core/loose/loose.h"
#include "core/recipe/pattern.h"
#include "core/recipe/text.h"

#include <cstddef>
#include <cstdint>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

using namespace wrapwright;

namespace {

const TradeWords& words() {
    static const TradeWords list = [] {
        std::ifstream file(WW_SOURCE_DIR "/assets/words/trade.txt");
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        Result<TradeWords> read = read_trade_words(text);
        WW_ASSERT(read.ok());
        return std::move(read).value();
    }();
    return list;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const LooseText loose = read_loose(text, words());
    std::size_t at = 0;
    for (const Piece& p : loose.pieces) {
        WW_ASSERT(p.value.begin >= p.span.begin && p.value.end <= p.span.end);
        if (p.in >= 0) continue;
        WW_ASSERT(p.span.begin == at && p.span.end >= at);
        at = p.span.end;
    }
    WW_ASSERT(at == text.size());
    const Result<Recipe> recipe = make_recipe(text, loose, accept_all(loose));
    if (!recipe.ok()) {
        WW_ASSERT(!is_utf8(text));
        return 0;
    }
    WW_ASSERT(recipe.value().verbatim == text);
    const std::string once = write_recipe(recipe.value());
    const Result<Recipe> back = read_recipe(once);
    WW_ASSERT(back.ok() && write_recipe(back.value()) == once);
    WW_ASSERT(link(recipe.value()).ok());
    return 0;
}
