#pragma once
// What the step view says, as texts: the record's numbers in the trade's words.

#include "gui/model.h"

#include <string>
#include <vector>

namespace wrapwright {

/// Everything about the action where the person stands.
struct StepWords {
    std::string place;                   ///< "Step 8 of 12 · 2 of 4"
    std::string fly;                     ///< "fly 4 of 12, 1 spoilt"; empty for a single fly
    std::string what;                    ///< "Wind the rib across the body"
    std::vector<std::string> facts{};    ///< turns, way, places; one line each
    std::string spacing;                 ///< "touching", "0.68 mm apart": of the one strand wound
    std::string step;                    ///< the step in its author's words
    std::string landmark, tip, original; ///< as written; empty where there is none
    std::vector<std::string> cautions{}; ///< the usual ones and the author's
    std::vector<std::string> findings{}; ///< of this step, with the remedy
    std::string next;                    ///< the action that follows
    std::string time;                    ///< how long the step took before; empty at the first
    bool restore_point = false;          ///< a broken thread falls back to here
    bool again = false;                  ///< done once already, before the thread broke
};
[[nodiscard]] StepWords step_words(const Model& model);

/// What a broken thread means here: what still stands on the hook, and what is done again.
struct BreakWords {
    std::vector<std::string> stands{};
    std::vector<std::string> again{};
    std::string back_to; ///< the action to begin with
};
[[nodiscard]] BreakWords break_words(const Model& model);

} // namespace wrapwright
