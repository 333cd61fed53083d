#include "core/material/material.h"

namespace wrapwright {

namespace {

struct WireWord {
    std::string_view word;
    double mm, low, high;
};

// Spread seen between sellers; 0.10 mm published for the finest, the rest from memory, consistent
// with one weighed body of brassie wire.
constexpr WireWord wire_words[] = {
    {"ultra fine", 0.095, 0.09, 0.10}, {"extra small", 0.095, 0.09, 0.10},
    {"extra fine", 0.095, 0.09, 0.10}, {"small", 0.13, 0.12, 0.14},
    {"fine", 0.13, 0.12, 0.14},        {"brassie", 0.185, 0.17, 0.20},
    {"medium", 0.245, 0.23, 0.26},     {"large", 0.34, 0.32, 0.36},
};

constexpr std::string_view hole_words[] = {"drilled", "countersunk", "slotted"};

} // namespace

std::optional<Estimate<Length>> wire_diameter_word(std::string_view word) {
    for (const WireWord& w : wire_words) {
        if (w.word == word) {
            return Estimate<Length>{millimetres(w.mm), millimetres(w.low), millimetres(w.high),
                                    Origin::typical};
        }
    }
    return std::nullopt;
}

std::string_view name(BeadHole hole) { return hole_words[static_cast<int>(hole)]; }

} // namespace wrapwright
