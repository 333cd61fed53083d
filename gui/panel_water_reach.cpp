// The way back, on the screen.

#include "core/units/number_text.h"
#include "core/water/water_words.h"
#include "gui/apply.h"
#include "gui/panel_water_parts.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

struct AimRow {
    Aim aim;
    const char* label;
    double value, step;
    std::string words;
};

AimRow aim_row(const Model& m) {
    const ReachAsk& ask = m.ask;
    switch (ask.aim) {
    case Aim::sink:
        return {ask.aim, "a sink rate", ask.m_s, 0.02, write_rounded(ask.m_s, 2) + " m/s"};
    case Aim::depth: {
        const double deep = std::min(ask.deep_m, m.settings.river_deep_m);
        return {ask.aim, "a depth after 4 m", deep, 0.1, write_rounded(deep, 2) + " m"};
    }
    case Aim::mass: break;
    }
    const double mg =
        ask.mg > 0.0 ? ask.mg : 10.0 * std::round(0.1 * in_milligrams(m.dipped->mass.value));
    return {ask.aim, "a mass", mg, 10.0, write_rounded(mg, 0) + " mg"};
}

void want(Ui& ui, Aim aim, double value) {
    Wish w = wish(WishKind::reach_for, static_cast<int>(aim));
    w.x = static_cast<float>(value);
    ui.want(std::move(w));
}

void way_rows(Ui& ui, Scroll& scroll, float room) {
    const ReachFound& found = *ui.model.reached;
    if (!found.has_bead && !found.has_ballast) {
        water_say(ui, scroll, room, ui.colours.soft,
                  "This recipe has neither bead nor ballast: there is nothing to change.");
        return;
    }
    if (found.ways.empty()) {
        water_say(ui, scroll, room, ui.colours.warn,
                  "Nothing in this set reaches it without stopping the fly.");
    }
    const float line = ui.fonts.small->FontSize;
    for (std::size_t i = 0; i < found.ways.size(); ++i) {
        const ReachWay& way = found.ways[i];
        std::string label = way_words(ui.model.stock, way);
        if (way.has_lead) label.append(" (lead)");
        std::string aside = weight_words(way.mass);
        aside.append("; ").append(speed_words(way.sink));
        if (ui.model.ask.aim == Aim::depth) {
            aside.append("; ").append(write_rounded(way.depth.si, 2)).append(" m deep");
        }
        aside.append("; ").append(name(way.ride.verdict));
        if (way.troubles > 0) aside.append("; more findings");
        const float words = std::max(height_of(ui.fonts.small, label, 0.38F * room),
                                     height_of(ui.fonts.small, aside, 0.5F * room));
        Box row = scroll.row(std::max(control_height(ui), words + line));
        row.width = room;
        label.append("##way ").append(std::to_string(i + 1));
        if (row_button(ui, label, aside, false, row)) {
            ui.want(wish(WishKind::take_way, static_cast<int>(i)));
        }
    }
    water_say(ui, scroll, room, ui.colours.soft,
              std::string("Press one to tie it so. Sink rates and depths: ").append(until_timed));
}

} // namespace

void water_reach(Ui& ui, Scroll& scroll, float room) {
    const Model& m = ui.model;
    if (m.stock.beads.empty() && m.stock.strands.empty()) return;
    const float high = control_height(ui);
    heading(ui, scroll.row(ui.fonts.small->FontSize + grid), "Bring it to");
    const AimRow aim = aim_row(m);
    const Box row = scroll.row(high + grid);
    const float part = 0.4F * room;
    if (button(ui, std::string(aim.label) + "##aim", {row.x, row.y, part, high})) {
        const auto next = static_cast<Aim>((static_cast<int>(aim.aim) + 1) % 3);
        Model then = m;
        then.ask.aim = next;
        want(ui, next, aim_row(then).value);
    }
    const float x = row.x + part + grid, rest = room - part - grid;
    if (button(ui, "-##reach", {x, row.y, high, high})) want(ui, aim.aim, aim.value - aim.step);
    if (button(ui, "+##reach", {x + rest - high, row.y, high, high})) {
        want(ui, aim.aim, aim.value + aim.step);
    }
    if (button(ui, aim.words + "##find",
               {x + high + grid, row.y, rest - 2.0F * (high + grid), high}, true)) {
        want(ui, aim.aim, aim.value);
    }
    Box free = scroll.row(high + grid);
    free.height = high;
    free.width = room;
    if (toggle(ui, "Lead-free ways first", m.ask.lead_free, free)) {
        ui.want(wish(WishKind::lead_free));
    }
    if (m.reached) way_rows(ui, scroll, room);
}

} // namespace wrapwright
