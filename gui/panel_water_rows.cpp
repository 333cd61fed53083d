// Weight, sink rate and the sliders for how the fly is fished.

#include "core/tying/words.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"
#include "core/units/number_words.h"
#include "core/water/water_words.h"
#include "gui/panel_water_parts.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

void water_say(Ui& ui, Scroll& scroll, float room, Colour colour, std::string_view text) {
    const Box row = scroll.row(height_of(ui.fonts.small, text, room) + 0.5F * grid);
    write(ui, ui.fonts.small, colour, {row.x, row.y, room, row.height}, text);
}

namespace {

/// The most that the rail of sink rates shows: a little more than the fastest.
float rail_end(const Model& m) {
    double most = std::max(m.dipped->sink_free.high.si, m.dipped->sink.high.si);
    for (const Sinker& s : m.sinkers) most = std::max(most, s.sink.si);
    return static_cast<float>(std::max(0.05, 1.05 * most));
}

/// A rail from 0 up: the band of this fly on its tippet, its value, and a tick for each other fly.
void draw_rail(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const Palette& c = ui.colours;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float end = rail_end(m), y = box.y + 0.6F * box.height;
    const auto x = [&](double speed) {
        return box.x + box.width * std::clamp(static_cast<float>(speed) / end, 0.0F, 1.0F);
    };
    list.AddLine({box.x, y}, {box.right(), y}, im(c.line), 3.0F);
    const auto band = [&](const Estimate<Speed>& s, float thick, bool filled) {
        const ImVec2 a{x(s.low.si), y - thick}, b{x(s.high.si), y + thick};
        if (filled) {
            list.AddRectFilled(a, b, im(c.accent, 0.30F), 3.0F);
        } else {
            list.AddRect(a, b, im(c.accent), 3.0F, 0, 1.5F);
        }
    };
    band(m.dipped->sink, 0.32F * box.height, m.dipped->timed);
    for (const Sinker& s : m.sinkers) {
        if (m.fly && s.id == m.fly->id) continue;
        list.AddLine({x(s.sink.si), y}, {x(s.sink.si), y + 0.35F * box.height}, im(c.soft), 2.0F);
    }
    const float at = x(m.dipped->sink.value.si);
    list.AddLine({at, box.y}, {at, box.bottom()}, im(c.accent), 4.0F);
}

std::string rank_words(const Model& m) {
    if (!m.fly || m.sinkers.size() < 2) return {};
    const Speed own = m.dipped->sink_free.value;
    std::size_t slower = 0, others = 0;
    std::string next, before;
    for (const Sinker& s : m.sinkers) { // slowest first
        if (s.id == m.fly->id) continue;
        ++others;
        if (s.sink <= own) {
            ++slower;
            before = s.name;
        } else if (next.empty()) {
            next = s.name;
        }
    }
    std::string words = "Of your recipes ";
    words.append(std::to_string(slower)).append(" sink slower and ");
    words.append(std::to_string(others - slower)).append(" faster, without a tippet");
    if (!before.empty()) words.append("; next below: ").append(before);
    if (!next.empty()) words.append("; next above: ").append(next);
    return words;
}

std::string portion_words(const Pattern& pattern, const Portion& p) {
    if (p.material == none) return base_words(pattern.recipe, p.base);
    return p.part == none ? "joint" : part_words(pattern.recipe, p.part);
}

bool is_known(const Portion& p) { return p.mass.origin <= Origin::stated; }

/// One bar of all parts: filled where measured or stated, hollow where typical. The whole's interval
/// is the line over its end.
void draw_mass_bar(Ui& ui, const Box& box) {
    const InWater& w = *ui.model.dipped;
    const Palette& c = ui.colours;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto most = static_cast<float>(w.mass.high.si);
    const auto x = [&](double kg) {
        return box.x + box.width * static_cast<float>(kg) / std::max(1e-9F, most);
    };
    double from = 0.0;
    int number = 0;
    const float bar = 0.7F * box.height, line = ui.fonts.small->FontSize;
    for (const Portion& p : w.body.portions) {
        ++number;
        const double to = from + p.mass.value.si;
        const ImVec2 a{x(from), box.y}, b{x(to), box.y + bar};
        const bool known = is_known(p) || w.body.weighed_whole;
        if (known) list.AddRectFilled(a, b, im(c.accent, number % 2 == 0 ? 0.55F : 0.85F));
        list.AddRect(a, b, im(c.ink), 0.0F, 0, 1.5F);
        const std::string digit = std::to_string(number);
        const float wide = ui.fonts.small->CalcTextSizeA(line, FLT_MAX, 0.0F, digit.c_str()).x;
        if (b.x - a.x > wide + 4.0F) {
            list.AddText(ui.fonts.small, line,
                         {0.5F * (a.x + b.x - wide), box.y + 0.5F * (bar - line)},
                         im(known ? c.accent_ink : c.ink), digit.c_str());
        }
        from = to;
    }
    const float y = box.y + bar + 0.5F * (box.height - bar);
    list.AddLine({x(w.mass.low.si), y}, {x(w.mass.high.si), y}, im(c.warn), 2.0F);
    for (const double end : {w.mass.low.si, w.mass.high.si}) {
        list.AddLine({x(end), y - 4.0F}, {x(end), y + 4.0F}, im(c.warn), 2.0F);
    }
}

void mass_rows(Ui& ui, Scroll& scroll, float room) {
    const InWater& w = *ui.model.dipped;
    const Pattern& pattern = ui.model.fly->pattern;
    water_say(ui, scroll, room, ui.colours.ink, "Weighs " + weight_words(w.mass));
    Box bar = scroll.row(2.2F * ui.fonts.small->FontSize + grid);
    bar.width = room;
    bar.height -= grid;
    draw_mass_bar(ui, bar);
    int number = 0;
    for (const Portion& p : w.body.portions) {
        ++number;
        if (p.mass.value.si < 0.005 * w.mass.value.si) continue;
        std::string words = std::to_string(number);
        words.append("  ").append(portion_words(pattern, p)).append(": ");
        words.append(weight_words(p.mass));
        words.append(is_known(p) ? ", " : ", typical");
        if (is_known(p)) words.append(name(p.mass.origin));
        water_say(ui, scroll, room, ui.colours.soft, words);
    }
    water_say(ui, scroll, room, ui.colours.soft,
              "Filled: measured or stated. Hollow: typical for its kind.");
}

struct Knob {
    const char* label; ///< of the control
    const char* words;
    const char* key;
    double Settings::* value;
    double least, most, step;
    const char* unit;
};

constexpr Knob knobs[] = {
    {"current", "Current at the surface", "river current", &Settings::river_m_s, 0.1, 2.5, 0.05,
     " m/s"},
    {"depth", "Depth of the water", "river depth", &Settings::river_deep_m, 0.2, 4.0, 0.05, " m"},
    {"temperature", "Its temperature", "river temperature", &Settings::river_c, 0.0, 25.0, 0.5,
     " °C"},
    {"length", "Tippet in the water", "tippet length", &Settings::tippet_m, 0.0, 4.0, 0.05, " m"},
    {"thickness", "Tippet, across", "tippet thickness", &Settings::tippet_mm, 0.08, 0.35, 0.005,
     " mm"},
};

void slider_rows(Ui& ui, Scroll& scroll, float room) {
    const float line = ui.fonts.small->FontSize;
    for (const Knob& k : knobs) {
        const double value = ui.model.settings.*k.value;
        std::string text = k.words;
        text.append(": ").append(write_rounded(value, 3)).append(k.unit);
        const Box words = scroll.row(line + 2.0F);
        write(ui, ui.fonts.small, ui.colours.ink, {words.x, words.y, room, line}, text);
        Box track = scroll.row(least_control + 0.5F * grid);
        track.height = least_control;
        track.width = room;
        const auto moved = slider(ui, k.label, static_cast<float>(value),
                                  static_cast<float>(k.least), static_cast<float>(k.most), track);
        if (!moved) continue;
        const double to = k.step * std::round(static_cast<double>(*moved) / k.step);
        if (std::abs(to - value) < 0.5 * k.step) continue;
        ui.want({WishKind::set, 0, 0.0F, 0.0F, k.key, write_rounded(to, 3)});
    }
}

} // namespace

void water_rows(Ui& ui, const Box& box, bool drawings) {
    sheet(ui, box);
    const InWater& w = *ui.model.dipped;
    const Palette& c = ui.colours;
    Box in = box.inside(2.0F * grid);
    const float line = ui.fonts.small->FontSize;
    if (const RulesLine rules = water_rules_line(ui.model); !rules.words.empty()) {
        const float high = std::min(height_of(ui.fonts.small, rules.words, in.width), 2.0F * line);
        write(ui, ui.fonts.small, rules.fails ? c.warn : c.soft,
              {in.x, in.bottom() - high, in.width, high}, rules.words);
        in.height -= high + grid;
        ImGui::GetWindowDrawList()->AddLine({in.x, in.bottom() + 0.5F * grid},
                                            {in.right(), in.bottom() + 0.5F * grid}, im(c.line));
    }
    Scroll scroll(ui, "in water", in);
    const float room = in.width - 4.0F * grid;
    const std::string sink = sink_words(w);
    const Box head = scroll.row(height_of(ui.fonts.small, sink, room) + grid);
    write(ui, ui.fonts.small, w.nearly_neutral ? c.warn : c.ink,
          {head.x, head.y, room, head.height}, sink);
    Box rail = scroll.row(1.6F * line + grid);
    rail.width = room;
    rail.height -= grid;
    draw_rail(ui, rail);
    if (const std::string rank = rank_words(ui.model); !rank.empty()) {
        water_say(ui, scroll, room, c.soft, rank);
    }
    const auto drawing = [&](void (*draw)(Ui&, const Box&)) {
        Box row = scroll.row(std::max(0.8F * in.height, 12.0F * line) + grid);
        row.height -= grid;
        row.width = room;
        draw(ui, row);
    };
    if (drawings) drawing(water_drift);
    slider_rows(ui, scroll, room);
    if (drawings) drawing(water_poses);
    (void)scroll.row(grid);
    mass_rows(ui, scroll, room);
    (void)scroll.row(grid);
    water_say(ui, scroll, room, c.ink, film_words(w));
    water_say(ui, scroll, room, c.ink, ride_words(w));
    for (const std::string& l : turn_over_words(w)) {
        water_say(ui, scroll, room, c.soft, "To turn it: " + l);
    }
    for (const std::string& l : ground_words(ui.model.fly->pattern, w)) {
        water_say(ui, scroll, room, c.soft, l);
    }
    (void)scroll.row(grid);
    water_reach(ui, scroll, room);
    (void)scroll.row(grid);
    water_measured(ui, scroll, room);
    (void)scroll.row(grid);
    water_rules(ui, scroll, room);
    (void)scroll.row(grid);
    water_table(ui, scroll, room);
}

} // namespace wrapwright
