#pragma once
// The trade's words that the screens use, each in a sentence, with where it is on a fly.

#include <span>
#include <string_view>

namespace wrapwright {

/// What a small drawing shows on a hook.
enum class Sketched : unsigned char {
    nothing,
    eye,
    shank,
    bend,
    point,
    barb,
    gape,
    head,
    bead,
    ballast,
    tail,
    body,
    rib,
    thorax,
    hackle,
    palmer,
    wing,
    wing_case,
    thread,
    counter_rib,
    butt,
    post,
};

struct GlossaryWord {
    std::string_view word, meaning;
    Sketched sketch = Sketched::nothing;
};

/// In the order of the alphabet.
[[nodiscard]] std::span<const GlossaryWord> glossary();

} // namespace wrapwright
