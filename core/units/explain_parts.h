#pragma once
// The meanings that explain_size.cpp puts together. Each function adds to an explanation.

#include "core/units/explain_size.h"
#include "core/units/hook_size.h"
#include "core/units/size_text.h"

namespace wrapwright::detail {

/// `what` names the meaning: "length", "length, if inches are meant".
void explain(SizeExplanation& out, std::string what, double number, LengthUnit unit);
void explain(SizeExplanation& out, std::string what, double number, MassUnit unit);
void explain(SizeExplanation& out, std::string what, double number, LinearDensityUnit unit);

void explain_hooks(SizeExplanation& out, const WrittenHookSizes& hooks);

/// An aught label such as "8/0" or "00": a thread, and a glass bead where one is sold by it.
void explain_aught(SizeExplanation& out, int aughts);

/// The old small hooks 0, 00, 000.
void explain_old_hook(SizeExplanation& out, std::string_view zeros);

/// The number in at most seven digits.
[[nodiscard]] std::string shown(double number);

} // namespace wrapwright::detail
