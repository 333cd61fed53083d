#include "core/recipe/text_words.h"

#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright::detail {

namespace {

constexpr std::string_view batch_names[] = {"each", "all first", "all last"};

constexpr std::size_t longest_guess = 24; ///< longer words are no slips of the finger

std::string plain(std::string_view word) {
    std::string low = lowered(trimmed(word));
    for (char& c : low) {
        if (c == '_' || c == '-') c = ' ';
    }
    return low;
}

/// Insertions, deletions, replacements and swaps of neighbours that make b of a.
///
/// Source  optimal string alignment: the recurrence of Wagner & Fischer 1974 and one for swaps
std::size_t changes(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t other = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + other});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], before[j - 2] + 1);
            }
        }
        before.swap(last);
        last.swap(row);
    }
    return last[b.size()];
}

} // namespace

std::string_view word_of(Op op) { return name(op); }
std::string_view word_of(Sense sense) { return name(sense); }
std::string_view word_of(Spacing spacing) { return name(spacing); }
std::string_view word_of(BatchStage stage) { return batch_names[static_cast<int>(stage)]; }
std::string_view word_of(HookFamily family) { return name(family); }
std::string_view word_of(HookShape shape) { return name(shape); }
std::string_view word_of(MaterialKind kind) { return name(kind); }
std::string_view word_of(Substance substance) { return substance_row(substance).word; }
std::string_view word_of(CoatKind coat) { return name(coat); }
std::string_view word_of(BeadHole hole) { return name(hole); }
std::string_view word_of(Origin origin) { return name(origin); }

std::optional<std::size_t> find_word(std::string_view word,
                                     const std::vector<std::string_view>& list) {
    const std::string meant = plain(word);
    const auto it = std::find_if(list.begin(), list.end(),
                                 [&](std::string_view known) { return plain(known) == meant; });
    if (it == list.end()) return std::nullopt;
    return static_cast<std::size_t>(it - list.begin());
}

std::optional<std::string_view> nearest(std::string_view word,
                                        const std::vector<std::string_view>& list) {
    if (word.size() > longest_guess) return std::nullopt;
    const std::string meant = plain(word);
    std::optional<std::string_view> best;
    std::size_t fewest = meant.size() / 3 + 2;
    for (const std::string_view known : list) {
        const std::size_t n = changes(meant, plain(known));
        if (n < fewest) {
            fewest = n;
            best = known;
        }
    }
    return best;
}

Error unknown_word(std::string_view word, std::string_view what,
                   const std::vector<std::string_view>& list) {
    std::string remedy;
    if (const auto guess = nearest(word, list)) {
        remedy = "did you mean " + quoted(*guess) + "?";
    } else {
        remedy = "write one of: ";
        for (const std::string_view known : list) {
            if (known != list.front()) remedy += ", ";
            remedy += known;
        }
    }
    return {ErrorCode::unknown_word, "no " + std::string(what) + " is called " + quoted(word),
            std::move(remedy)};
}

} // namespace wrapwright::detail
