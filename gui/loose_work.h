#pragma once
// Loose text that was pasted, what was read in it, and which of it the person takes.

#include "core/loose/loose.h"
#include "core/share/merge.h"

#include <memory>
#include <string>
#include <vector>

namespace wrapwright {

/// What is asked while loose text is read.
enum class LooseAsk : unsigned char {
    text,   ///< another text
    take,   ///< piece `x` is accepted, or no more
    sure,   ///< accept what is sure
    all,    ///< accept all that was read
    fly,    ///< piece by piece of another fly in the text: `x` of them on or back
    recipe, ///< make a recipe of what is accepted
    merge,  ///< take in the recipes that came whole
    choose, ///< what becomes of recipe `x` that came whole: the next choice
    away,   ///< no text any more
};

/// What becomes of a recipe that came whole.
enum class TakeAs : unsigned char {
    left,
    taken,  ///< as new, or as the newest revision of the one that is here
    beside, ///< under an id of its own
};

struct LooseWork {
    std::string text{}; ///< as it was pasted; of recipes that came whole, their words
    LooseText loose{};
    std::vector<bool> accepted{};
    int fly = 0;
    std::string trouble{}; ///< why no recipe can be made of it
    /// Recipes that the text holds whole, as a letter, a file or a bundle does; nothing for loose text.
    std::shared_ptr<const Shared> shared{};
    std::vector<MergeRow> rows{}; ///< what taking each of them in would change here
    std::vector<TakeAs> takes{};  ///< what becomes of each
};

/// A text taken apart, what is sure accepted already.
[[nodiscard]] std::shared_ptr<const LooseWork> read_pasted(std::string text,
                                                           const TradeWords& words);

/// The next choice for a recipe that came whole; one of a newer program, or the same as here, is left.
[[nodiscard]] TakeAs next_choice(MergeKind kind, TakeAs now);

/// What a piece says of itself, in a line: "tail, ginger cock fibres".
[[nodiscard]] std::string piece_words(const LooseWork& work, const Piece& piece);

} // namespace wrapwright
