#pragma once
// The parts of the screen for a fly in the water; placed by panel_water.cpp alone.

#include "gui/ui.h"
#include "gui/widgets.h"

namespace wrapwright {

/// The water from the side: current, bed, and the fly's way as a band.
void water_drift(Ui& ui, const Box& box);

/// How the fly hangs, rides and sinks, drawn from its record.
void water_poses(Ui& ui, const Box& box);

/// Weight, sink rate, sliders, what is measured, rules and exact numbers, in a part that scrolls; the
/// rule set's name, date and verdicts stay below it. With the drawings among them where they have no
/// room of their own.
void water_rows(Ui& ui, const Box& box, bool drawings);

/// The way back: what the fly should come to, and the beads and ballast that bring it there.
void water_reach(Ui& ui, Scroll& scroll, float room);

/// Falls that were timed and the whole fly on a scale: what is there, and a line to add to it.
void water_measured(Ui& ui, Scroll& scroll, float room);

/// The fly against the rule set that is picked, its name and date above it.
void water_rules(Ui& ui, Scroll& scroll, float room);

/// "Slate Weir Open, as of 2026-03-01: 7 pass, 2 cannot tell"; empty without rules.
struct RulesLine {
    std::string words;
    bool fails = false;
};
[[nodiscard]] RulesLine water_rules_line(const Model& model);

/// Exact numbers, each with its interval.
void water_table(Ui& ui, Scroll& scroll, float room);

/// A line of words, as high as it needs to be.
void water_say(Ui& ui, Scroll& scroll, float room, Colour colour, std::string_view text);

} // namespace wrapwright
