#pragma once
// The bench in words alone: what is read aloud, and what a screen reader finds where eyes see a picture.

#include "gui/screen.h"

namespace wrapwright {

/// What a voice reads of the stop where the person stands: the action, its facts, cautions, findings.
/// Empty away from the bench.
[[nodiscard]] std::string spoken(const Model& model);

enum class OutlineKind : unsigned char {
    title,   ///< of the page
    heading, ///< of a part
    text,
    live,    ///< text that is read when it changes
    control, ///< can be pressed: `control` is its index among Shown::controls
};

struct OutlineRow {
    OutlineKind kind = OutlineKind::text;
    std::string text{};
    int control = -1;
    friend bool operator==(const OutlineRow&, const OutlineRow&) = default;
};

/// The screen as a document, in the order in which it is read: at the bench the step, the count, what
/// was found, the tally, what can be done; elsewhere every text that is drawn.
[[nodiscard]] std::vector<OutlineRow> outline(const Model& model, const Shown& shown);

} // namespace wrapwright
