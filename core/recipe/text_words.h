#pragma once
// The words that stand for enumerators in the text forms: one row for each enumeration.

#include "core/recipe/recipe.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::detail {

/// How many enumerators there are from 0 on, and what one is called in messages.
template <class E>
struct Words;

template <>
struct Words<Op> {
    static constexpr int count = op_count;
    static constexpr std::string_view what = "operation";
};
template <>
struct Words<Sense> {
    static constexpr int count = 2;
    static constexpr std::string_view what = "sense";
};
template <>
struct Words<Spacing> {
    static constexpr int count = 4;
    static constexpr std::string_view what = "spacing";
};
template <>
struct Words<BatchStage> {
    static constexpr int count = 3;
    static constexpr std::string_view what = "batch stage";
};
template <>
struct Words<HookFamily> {
    static constexpr int count = 6;
    static constexpr std::string_view what = "hook family";
};
template <>
struct Words<HookShape> {
    static constexpr int count = 3;
    static constexpr std::string_view what = "hook shape";
};
template <>
struct Words<MaterialKind> {
    static constexpr int count = static_cast<int>(MaterialKind::other) + 1;
    static constexpr std::string_view what = "kind of material";
};
template <>
struct Words<Substance> {
    static constexpr int count = static_cast<int>(Substance::epoxy) + 1;
    static constexpr std::string_view what = "substance";
};
template <>
struct Words<CoatKind> {
    static constexpr int count = 6;
    static constexpr std::string_view what = "coat";
};
template <>
struct Words<BeadHole> {
    static constexpr int count = 3;
    static constexpr std::string_view what = "hole";
};
template <>
struct Words<Origin> {
    static constexpr int count = 4;
    static constexpr std::string_view what = "origin";
};

std::string_view word_of(Op op);
std::string_view word_of(Sense sense);
std::string_view word_of(Spacing spacing);
std::string_view word_of(BatchStage stage);
std::string_view word_of(HookFamily family);
std::string_view word_of(HookShape shape);
std::string_view word_of(MaterialKind kind);
std::string_view word_of(Substance substance);
std::string_view word_of(CoatKind coat);
std::string_view word_of(BeadHole hole);
std::string_view word_of(Origin origin);

template <class E>
std::vector<std::string_view> words_of() {
    std::vector<std::string_view> words;
    words.reserve(static_cast<std::size_t>(Words<E>::count));
    for (int i = 0; i < Words<E>::count; ++i) words.push_back(word_of(static_cast<E>(i)));
    return words;
}

/// The place of a word in a list, in any case and with '_' or '-' for a blank.
[[nodiscard]] std::optional<std::size_t> find_word(std::string_view word,
                                                   const std::vector<std::string_view>& list);

/// The word of the list that takes the fewest changes of a letter, if that is few enough to guess.
[[nodiscard]] std::optional<std::string_view> nearest(std::string_view word,
                                                      const std::vector<std::string_view>& list);

/// The refusal of a word, with the nearest that was perhaps meant or else the whole list.
[[nodiscard]] Error unknown_word(std::string_view word, std::string_view what,
                                 const std::vector<std::string_view>& list);

} // namespace wrapwright::detail
