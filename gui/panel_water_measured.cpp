// What was timed and weighed, the rules, and the exact numbers.

#include "core/check/rules.h"
#include "core/units/number_text.h"
#include "core/water/water_words.h"
#include "gui/panel_water_parts.h"

#include <algorithm>

namespace wrapwright {

namespace {

void fall_rows(Ui& ui, Scroll& scroll, float room) {
    const Model& m = ui.model;
    const float high = control_height(ui);
    for (std::size_t i = 0; i < m.falls.size(); ++i) {
        const Fall& f = m.falls[i];
        std::string words = write_rounded(f.height.si, 2);
        words.append(" m in ").append(write_rounded(f.time.si, 2)).append(" s, water of ");
        words.append(write_rounded(in_celsius(f.temperature), 1)).append(" °C: ");
        words.append(write_rounded((f.height / f.time).si, 2)).append(" m/s");
        const float wide = 6.0F * ui.sizes.small;
        const float text = height_of(ui.fonts.small, words, room - wide - grid);
        const Box row = scroll.row(std::max(high, text) + 0.5F * grid);
        write(ui, ui.fonts.small, ui.colours.ink, {row.x, row.y, room - wide - grid, row.height},
              words);
        std::string label = "Forget##fall ";
        label.append(std::to_string(i + 1));
        if (button(ui, label, {row.x + room - wide, row.y, wide, high})) {
            ui.want(wish(WishKind::drop_fall, static_cast<int>(i)));
        }
    }
    if (m.dipped->fit.each.size() > 1) {
        std::string words = "The falls scatter by ";
        words.append(write_rounded(100.0 * m.dipped->fit.scatter, 0)).append(" % in speed");
        water_say(ui, scroll, room, ui.colours.soft, words);
    }
    if (m.dipped->fit.too_short) {
        water_say(ui, scroll, room, ui.colours.soft,
                  "Let it fall 0.3 m before the clock starts, where the jar is tall enough");
    }
}

} // namespace

void water_measured(Ui& ui, Scroll& scroll, float room) {
    const float high = control_height(ui);
    heading(ui, scroll.row(ui.fonts.small->FontSize + grid), "Time one, weigh one");
    water_say(ui, scroll, room, ui.colours.soft,
              "In a jar 20 beads wide, without a tippet, all air wetted out: how far, how long.");
    fall_rows(ui, scroll, room);
    const Box row = scroll.row(high + grid);
    const float part = (room - 2.0F * grid) / 3.0F;
    Typing& t = ui.typing;
    bool ended =
        line_edit(ui, "##fall metres", "metres", t.fall_metres, {row.x, row.y, part, high}, true);
    ended |= line_edit(ui, "##fall seconds", "seconds", t.fall_seconds,
                       {row.x + part + grid, row.y, part, high}, true);
    const bool keep =
        button(ui, "Keep the fall", {row.x + 2.0F * (part + grid), row.y, part, high}, true);
    if ((keep || ended) && !t.fall_metres.empty() && !t.fall_seconds.empty()) {
        ui.want({WishKind::time_fall, 0, 0.0F, 0.0F, t.fall_metres, t.fall_seconds});
        t.fall_metres.clear();
        t.fall_seconds.clear();
    }
    const Box weigh = scroll.row(high + grid);
    const bool weighed = ui.model.weighed.value.si > 0.0;
    const bool done = line_edit(
        ui, "##weighed", weighed ? weight_words(ui.model.weighed).c_str() : "mg of the whole fly",
        t.weighed_mg, {weigh.x, weigh.y, 2.0F * part + grid, high}, true);
    const char* label = weighed && t.weighed_mg.empty() ? "Forget it" : "Keep the weight";
    if (button(ui, label, {weigh.x + 2.0F * (part + grid), weigh.y, part, high}) || done) {
        if (weighed || !t.weighed_mg.empty()) ui.want(wish(WishKind::weigh, 0, t.weighed_mg));
        t.weighed_mg.clear();
    }
}

RulesLine water_rules_line(const Model& model) {
    const RuleSet* rules = rules_of(model);
    if (rules == nullptr || !model.fly) return {};
    int count[3] = {0, 0, 0};
    const OpenFly& fly = *model.fly;
    for (const RuleRow& row : check_rules(*rules, fly.pattern, fly.resolved, fly.tied)) {
        ++count[static_cast<int>(row.verdict)];
    }
    RulesLine out;
    out.words = rules->name;
    out.words.append(", as of ").append(rules->date);
    char sign = ':';
    for (const RuleVerdict v : {RuleVerdict::fail, RuleVerdict::pass, RuleVerdict::cannot_tell}) {
        const int n = count[static_cast<int>(v)];
        if (n == 0) continue;
        out.words.push_back(sign);
        sign = ',';
        out.words.append(" ").append(std::to_string(n)).append(" ").append(name(v));
    }
    out.fails = count[static_cast<int>(RuleVerdict::fail)] > 0;
    return out;
}

void water_rules(Ui& ui, Scroll& scroll, float room) {
    const RuleSet* rules = rules_of(ui.model);
    if (rules == nullptr || !ui.model.fly) return;
    const float high = control_height(ui);
    const float wide = std::min(8.0F * ui.sizes.small, 0.4F * room);
    std::string words = rules->name;
    words.append(", as of ").append(rules->date);
    const float text = height_of(ui.fonts.small, words, room - wide - grid);
    const Box head = scroll.row(std::max(high, text) + grid);
    write(ui, ui.fonts.small, ui.colours.ink, {head.x, head.y, room - wide - grid, head.height},
          words);
    if (button(ui, "Other rules", {head.x + room - wide, head.y, wide, high})) {
        ui.want(wish(WishKind::next_rules));
    }
    const OpenFly& fly = *ui.model.fly;
    for (const RuleRow& row : check_rules(*rules, fly.pattern, fly.resolved, fly.tied)) {
        std::string line(name(row.verdict));
        line.append(": ").append(rule_words(row));
        if (const std::string remedy = rule_remedy(row); !remedy.empty()) {
            line.append("; ").append(remedy);
        }
        water_say(ui, scroll, room,
                  row.verdict == RuleVerdict::fail   ? ui.colours.warn
                  : row.verdict == RuleVerdict::pass ? ui.colours.good
                                                     : ui.colours.soft,
                  line);
    }
    water_say(ui, scroll, room, ui.colours.soft, rules->note);
}

void water_table(Ui& ui, Scroll& scroll, float room) {
    const InWater& w = *ui.model.dipped;
    heading(ui, scroll.row(ui.fonts.small->FontSize + grid), "In numbers");
    const float line = ui.fonts.small->FontSize;
    const float first = 0.40F * room, rest = (room - first) / 3.0F;
    const auto row = [&](Colour colour, std::string_view what, const std::string& a,
                         const std::string& b, const std::string& c) {
        const float tall = std::max(line, height_of(ui.fonts.small, what, first - grid));
        const Box at = scroll.row(tall + 0.5F * grid);
        write(ui, ui.fonts.small, colour, {at.x, at.y, first - grid, tall}, what);
        const std::string* cells[] = {&a, &b, &c};
        for (int i = 0; i < 3; ++i) {
            write(ui, ui.fonts.small, colour,
                  {at.x + first + static_cast<float>(i) * rest, at.y, rest - 4.0F, line},
                  *cells[i]);
        }
    };
    row(ui.colours.soft, w.timed ? "timed" : until_timed, "likely", "from", "to");
    const auto numbers = [&](std::string_view what, double unit, int decimals, const auto& e) {
        row(ui.colours.ink, what, write_rounded(unit * e.value.si, decimals),
            write_rounded(unit * e.low.si, decimals), write_rounded(unit * e.high.si, decimals));
    };
    numbers("mass, mg", 1e6, 1, w.mass);
    numbers("volume, mm3", 1e9, 1, w.volume);
    numbers("weight in water, mN", 1e3, 2, w.weight);
    numbers("sinks on the tippet, m/s", 1.0, 3, w.sink);
    numbers("sinks without, m/s", 1.0, 3, w.sink_free);
    const auto one = [&](std::string_view what, double value, int decimals) {
        row(ui.colours.ink, what, write_rounded(value, decimals), "", "");
    };
    one("tippet drawn along, m/s", w.drawn.si, 3);
    one("tippet bowed, m/s", w.bowed.si, 3);
    numbers("to the bed after, m", 1.0, 2, w.to_bed);
    for (std::size_t i = 6; i < drift_places; i += 6) {
        std::string what = "deep after ";
        what.append(write_rounded(w.drift[i].along.si, 1)).append(" m, m");
        numbers(what, 1.0, 2, w.drift[i].depth);
    }
    one("hangs, degrees from down", in_degrees(w.hang), 0);
    one("weight off the line, mm", w.ride.delta.si * 1e3, 2);
    one("its doubt, mm", w.ride.doubt.si * 1e3, 2);
    one("95 % of its speed after, s", w.start.time.si, 2);
    one("and after, mm", w.start.way.si * 1e3, 0);
}

} // namespace wrapwright
