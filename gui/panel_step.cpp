#include "core/units/number_words.h"
#include "gui/icons.h"
#include "gui/panels.h"
#include "gui/step_words.h"
#include "gui/touch.h"
#include "gui/widgets.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace wrapwright {

namespace {

constexpr float no_end = 1e5F; ///< room for any words
constexpr const char* again_words = "once more, after the break";

/// A place in a box that text goes down in.
struct Column {
    Ui& ui;
    Box left; ///< what is still free

    bool cut = false; ///< something found no room

    void text(ImFont* font, Colour colour, std::string_view words, float gap = 0.5F * grid) {
        if (words.empty()) return;
        const float high = write(ui, font, colour, left, words);
        cut = cut || !ui.texts.back().whole;
        if (high > 0.0F) take(high + gap);
    }
    void with_icon(Icon icon, ImFont* font, Colour colour, std::string_view words) {
        const float side = 0.9F * font->FontSize;
        if (left.height < font->FontSize) return text(font, colour, words);
        draw_icon(*ImGui::GetWindowDrawList(), icon,
                  {left.x, left.y + 0.05F * font->FontSize, side, side}, im(colour));
        const Box whole = left;
        left.x += side + grid;
        left.width -= side + grid;
        text(font, colour, words);
        left = {whole.x, left.y, whole.width, left.height};
    }
    void take(float high) {
        left.y += high;
        left.height = std::max(0.0F, left.height - high);
    }
};

/// How far through the steps: a mark for each, full when it is done.
void progress(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const int steps = static_cast<int>(m.fly->pattern.recipe.steps.size());
    if (steps == 0) return;
    const int moment = moment_of(m);
    const int step = !at_work(m) ? (m.events.empty() ? -1 : steps)
                                 : m.fly->tied.moments[static_cast<std::size_t>(moment)].step;
    const float gap = 3.0F;
    const float wide =
        (box.width - gap * static_cast<float>(steps - 1)) / static_cast<float>(steps);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (int i = 0; i < steps; ++i) {
        const float x = box.x + static_cast<float>(i) * (wide + gap);
        const ImVec2 from{x, box.y};
        const ImVec2 to{x + wide, box.bottom()};
        if (i < step) {
            list.AddRectFilled(from, to, im(ui.colours.accent));
        } else if (i == step) {
            list.AddRectFilled(from, {x + 0.5F * wide, box.bottom()}, im(ui.colours.accent));
            list.AddRect(from, to, im(ui.colours.accent), 0.0F, 0, 2.0F);
        } else {
            list.AddRect(from, to, im(ui.colours.soft));
        }
    }
}

/// The digits of the counter with the target beside them; how high they are.
float counter(Ui& ui, const Box& box, const std::string& spacing) {
    const Model& m = ui.model;
    const double all = std::round(counted_at(*m.fly, moment_of(m)).turns);
    const std::string digits = turn_words(m.state.turns);
    ImFont* font = ui.fonts.huge;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float high = font->FontSize;
    const float wide = font->CalcTextSizeA(high, FLT_MAX, 0.0F, digits.c_str()).x;
    list.AddText(font, high, corner(box), im(ui.colours.ink), digits.c_str());
    ui.texts.push_back({digits, high, wide <= box.width});
    const float line = ui.fonts.small->FontSize;
    const double left = std::max(0.0, all - m.state.turns);
    std::string words = "of " + turn_words(all) + " turns";
    if (!spacing.empty()) words += ", " + spacing;
    words += '\n';
    words += left > 0.0 ? turn_words(left) + " left" : "all counted";
    if (m.counting) words += ", by itself";
    const float room = box.width - wide - 2.0F * grid;
    const float tall = height_of(ui.fonts.small, words, room);
    write(ui, ui.fonts.small, ui.colours.ink,
          {box.x + wide + 2.0F * grid, box.y + std::max(0.0F, 0.5F * (high - tall)), room,
           std::max(2.5F * line, high)},
          words);
    return high;
}

float countdown(Ui& ui, const Box& box, Duration wait) {
    const Model& m = ui.model;
    const Duration left = wait - (m.now - m.stop_since);
    const std::string digits = time_words(left);
    ImFont* font = ui.fonts.huge;
    const float high = font->FontSize;
    ImGui::GetWindowDrawList()->AddText(font, high, corner(box), im(ui.colours.ink),
                                        digits.c_str());
    const float wide = font->CalcTextSizeA(high, FLT_MAX, 0.0F, digits.c_str()).x;
    ui.texts.push_back({digits, high, wide <= box.width});
    const float line = ui.fonts.small->FontSize;
    write(ui, ui.fonts.small, ui.colours.ink,
          {box.x + wide + 2.0F * grid, box.y + 0.5F * high - 0.5F * line,
           box.width - wide - 2.0F * grid, 2.5F * line},
          left.si > 0.0 ? "until it is hard" : "it should be hard");
    return high;
}

void counter_or_countdown(Column& column, const std::string& spacing) {
    const Model& m = column.ui.model;
    if (!at_work(m)) return;
    const Duration wait = wait_at(*m.fly, moment_of(m));
    if (wait.si > 0.0) {
        column.take(countdown(column.ui, column.left, wait) + 0.5F * grid);
    } else if (m.settings.count_turns &&
               std::round(counted_at(*m.fly, moment_of(m)).turns) >= 1.0) {
        column.take(counter(column.ui, column.left, spacing) + 0.5F * grid);
    }
}

void cautions(Column& column, const StepWords& words) {
    for (const std::string& caution : words.cautions) {
        column.with_icon(Icon::warning, column.ui.fonts.small, column.ui.colours.warn, caution);
    }
}

float high_in(ImFont* font, const std::string& text, float width) {
    return text.empty() ? 0.0F : height_of(font, text, width) + 0.5F * grid;
}

std::string place_of(const StepWords& words) {
    std::string place = words.place;
    for (const std::string& more : {words.fly, words.time}) {
        if (!place.empty() && !more.empty()) place += " · ";
        place += more;
    }
    return place;
}

/// How much room the action takes with its cautions and its count: what is to be read at any rate.
float least_height(Ui& ui, const StepWords& words, float width) {
    ImFont* small = ui.fonts.small;
    float sum = 4.0F * grid + high_in(small, place_of(words), width) +
                high_in(ui.fonts.main, words.what, width);
    const float icon = 0.9F * small->FontSize + grid;
    if (words.again) sum += high_in(small, again_words, width - icon);
    for (const std::string& caution : words.cautions) sum += high_in(small, caution, width - icon);
    if (!at_work(ui.model)) return sum;
    const int moment = moment_of(ui.model);
    const bool counts =
        ui.model.settings.count_turns && std::round(counted_at(*ui.model.fly, moment).turns) >= 1.0;
    if (counts || wait_at(*ui.model.fly, moment).si > 0.0) {
        sum += ui.fonts.huge->FontSize + 0.5F * grid;
    }
    return sum;
}

/// The same with the facts that usually stand before the cautions.
float facts_height(Ui& ui, const StepWords& words, float width) {
    ImFont* small = ui.fonts.small;
    float sum = least_height(ui, words, width);
    for (const std::string& fact : words.facts) sum += high_in(small, fact, width);
    if (words.restore_point) sum += small->FontSize + 0.5F * grid;
    return sum;
}

void notes(Column& column, const StepWords& words) {
    Ui& ui = column.ui;
    const Palette& c = ui.colours;
    ImFont* small = ui.fonts.small;
    for (const std::string& finding : words.findings) {
        column.with_icon(Icon::finding, small, c.warn, finding);
    }
    column.text(small, c.ink, words.step);
    if (!words.landmark.empty()) column.text(small, c.soft, "Look for: " + words.landmark);
    if (ui.model.more_words) {
        if (!words.tip.empty()) column.text(small, c.ink, "Tip: " + words.tip);
        if (!words.original.empty()) column.text(small, c.ink, "As written: " + words.original);
    }
}

} // namespace

bool step_holds_cautions(Ui& ui, const Box& box) {
    const StepWords words = step_words(ui.model);
    const Box in = box.inside(2.0F * grid);
    const float foot = ui.fonts.small->FontSize + grid;
    return words.cautions.empty() || least_height(ui, words, in.width) + foot <= in.height;
}

void panel_step(Ui& ui, const Box& box) {
    sheet(ui, box);
    if (!ui.model.fly) return;
    const StepWords words = step_words(ui.model);
    const Palette& c = ui.colours;
    Column column{ui, box.inside(2.0F * grid)};
    ImFont* small = ui.fonts.small;
    // What comes next stands at the foot, and its room is kept free.
    std::string next = words.next.empty() ? std::string() : "Then: " + words.next;
    Box foot{};
    const bool all = ui.model.more_words && column.left.height > 2.0F * small->FontSize;
    if (!next.empty() && !all) {
        const float line = small->FontSize;
        const float free = column.left.height - grid - least_height(ui, words, column.left.width);
        const bool two = height_of(small, next, column.left.width) > line && free >= 2.0F * line;
        const float high = two ? 2.0F * line : line;
        foot = {column.left.x, column.left.bottom() - high, column.left.width, high};
        if (high > free) {
            next.clear(); // it is the first to give way
            column.cut = true;
        } else {
            column.left.height -= high + grid;
        }
    }
    // All the words have all the room that they need, and are pushed up by a finger.
    Box on = box;
    std::optional<Scroll> scroll;
    if (all) {
        on = column.left;
        scroll.emplace(ui, "all words", on);
        if (ImGui::IsWindowAppearing()) ImGui::SetScrollY(0.0F); // of another step
        column.left = scroll->row(no_end);
    }
    // What can hurt is read first where not all can be read at once.
    const float room = scroll ? on.height : column.left.height;
    const bool first = facts_height(ui, words, column.left.width) > room;
    const float top = column.left.y;
    progress(ui, {column.left.x, column.left.y, column.left.width, grid});
    column.take(2.0F * grid);
    column.text(small, c.soft, place_of(words));
    if (words.again) column.with_icon(Icon::broken, small, c.warn, again_words);
    column.text(ui.fonts.main, c.ink, words.what, grid);
    if (first) cautions(column, words);
    counter_or_countdown(column, words.spacing);
    for (const std::string& fact : words.facts) column.text(small, c.ink, fact);
    if (words.restore_point) {
        column.with_icon(Icon::anchor, small, c.good, "a broken thread falls back to here");
    }
    column.take(grid);
    if (!first) cautions(column, words);
    notes(column, words);
    if (scroll) column.text(small, c.soft, std::exchange(next, {}));
    const float used = std::max(column.left.y - top, on.height);
    ImGui::SetCursorScreenPos({on.x, scroll ? top : on.y});
    const bool pressed =
        meant(ui, "on", ImGui::InvisibleButton("on", {on.width, scroll ? used : on.height}));
    if (stayed()) ui.want(Command::more_words);
    if (pressed && !was_long()) ui.want(Command::press);
    note_control(ui, "on", on);
    if (scroll) scroll->end_at(top + used - 1.0F); // and its last dot
    scroll.reset();
    if (!column.cut) {
        if (!next.empty()) write(ui, small, c.soft, foot, next);
        return;
    }
    // Nothing is left out in silence.
    const std::string_view more = by_finger() ? "more: hold" : "more: m";
    const float wide =
        small->CalcTextSizeA(small->FontSize, FLT_MAX, 0.0F, more.data(), more.data() + more.size())
            .x;
    const Box inner = box.inside(2.0F * grid);
    foot.width -= wide + 2.0F * grid;
    if (!next.empty()) write(ui, small, c.soft, foot, next);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 at{inner.right() - wide, inner.bottom() - small->FontSize};
    list.AddRectFilled({at.x - grid, at.y}, far_corner(inner), im(c.sheet));
    list.AddText(small, small->FontSize, at, im(c.accent), more.data(), more.data() + more.size());
    ui.texts.push_back({std::string(more), small->FontSize, true});
}

} // namespace wrapwright
