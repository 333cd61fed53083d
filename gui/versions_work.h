#pragma once
// The revisions of the recipe that is written, one of them held against what is written now.

#include "core/share/compare.h"
#include "gui/open_fly.h"

#include <memory>
#include <string>
#include <vector>

namespace wrapwright {

/// What is asked of the revisions, and of the recipe as a whole.
enum class VersionAsk : unsigned char {
    pick,    ///< revision `x` to hold against what is written
    name,    ///< revision `x`: text is its name
    back,    ///< write on from revision `x`
    fork,    ///< a recipe of its own from what is written
    sitting, ///< what was done differently in this sitting, as a revision
    copy,    ///< as a text for a letter, to the clipboard
    file,    ///< as a file of its own
    bundle,  ///< as a file with all its photos
};

struct VersionsWork {
    struct Row {
        int number = 0;
        std::string note{}, made{}; ///< made: the day, as 2026-11-29
    };
    std::vector<Row> rows{}; ///< newest first
    int picked = 0;          ///< number; 0: none
    std::shared_ptr<const Recipe> recipe{};
    std::shared_ptr<const OpenFly>
        fly{};                     ///< of the one that is picked; nothing where it is not run
    std::vector<Change> changes{}; ///< from it to what is written now
};

} // namespace wrapwright
