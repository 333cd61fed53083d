#include "core/tying/finding_text.h"
#include "core/tying/words.h"
#include "core/units/number_words.h"
#include "gui/panels.h"
#include "gui/widgets.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, trial_count> trial_names{
    "Turns", "From turn to turn", "Strand, across", "Starts, behind the eye",
    "Stops, behind the eye"};

std::string value_words(std::size_t what, double value, bool inches) {
    return what == static_cast<std::size_t>(Trial::turns) ? turn_words(value)
                                                          : length_words({value}, inches);
}

/// What the tried winding came to, in a line each.
std::string outcome(const OpenFly& tried, const OpenFly& fly, int moment, bool inches) {
    const Counted own = counted_at(tried, moment);
    std::string text;
    for (int i = own.first; i < own.last; ++i) {
        const Winding& w = tried.tied.windings[static_cast<std::size_t>(i)];
        text += counted(w.turns, "turn", "turns") + ", " + length_words(w.pitch, inches) +
                " apart; " + length_words(w.length, inches) + " of strand, " + mass_words(w.mass) +
                '\n';
    }
    text += "The fly: " + mass_words(tried.tied.mass.value) + ", was " +
            mass_words(fly.tied.mass.value);
    return text;
}

/// The picture of what is tried, or three of them, each with its turns.
void draw_pictures(Ui& ui, const Box& box, bool stacked, int moment) {
    if (!ui.model.beside || !ui.model.fewer || !ui.model.more) {
        panel_wraps(ui, box);
        return;
    }
    const float line = ui.fonts.small->FontSize;
    constexpr std::array<Picture, 3> order{Picture::fewer, Picture::own, Picture::more};
    for (std::size_t i = 0; i < order.size(); ++i) {
        const auto k = static_cast<float>(i);
        Box one = box;
        if (stacked) {
            one.height = (box.height - 2.0F * grid) / 3.0F;
            one.y += k * (one.height + grid);
        } else {
            one.width = (box.width - 2.0F * grid) / 3.0F;
            one.x += k * (one.width + grid);
        }
        panel_wraps(ui, one, order[i]);
        const OpenFly& fly = *pictured(ui.model, order[i]).fly;
        const Counted own = counted_at(fly, moment);
        const double turns = fly.tied.windings[static_cast<std::size_t>(own.first)].turns;
        const std::string words = counted(std::round(10.0 * turns) / 10.0, "turn", "turns");
        const float wide = ui.fonts.small->CalcTextSizeA(line, FLT_MAX, 0.0F, words.c_str()).x;
        const Box plate{one.x + grid, one.bottom() - line - grid, wide + grid, line};
        ImGui::GetWindowDrawList()->AddRectFilled(corner(plate), far_corner(plate),
                                                  im(ui.colours.sheet), 4.0F);
        write(ui, ui.fonts.small, ui.colours.ink,
              {plate.x + 0.5F * grid, plate.y, wide + 1.0F, line}, words);
    }
}

/// The sliders and what they come to.
void trials(Ui& ui, const std::array<TrialRange, trial_count>& ranges, int moment, const Box& in) {
    const float line = ui.fonts.small->FontSize;
    Scroll scroll(ui, "what if", in);
    const bool inches = ui.model.settings.inches;
    const Box title = scroll.row(ui.fonts.main->FontSize + grid);
    write(ui, ui.fonts.main, ui.colours.ink, title, "What if");
    for (std::size_t i = 0; i < trial_count; ++i) {
        const TrialRange& range = ranges[i];
        const double value = ui.model.trials[i].value_or(range.now);
        const Box words = scroll.row(line + 2.0F);
        std::string text(trial_names[i]);
        text += ": " + value_words(i, value, inches);
        if (ui.model.trials[i]) text += ", was " + value_words(i, range.now, inches);
        write(ui, ui.fonts.small, ui.model.trials[i] ? ui.colours.ink : ui.colours.soft, words,
              text);
        Box track = scroll.row(least_control + 0.5F * grid);
        track.height = least_control;
        const auto moved =
            slider(ui, trial_names[i], static_cast<float>(value), static_cast<float>(range.least),
                   static_cast<float>(range.most), track);
        if (moved) {
            Wish w = wish(WishKind::what_set, static_cast<int>(i));
            w.x = *moved;
            ui.want(std::move(w));
        }
    }
    const OpenFly& tried = *ui.model.tried;
    const float room = in.width - 4.0F * grid;
    const auto say = [&](Colour colour, const std::string& text) {
        const Box row = scroll.row(height_of(ui.fonts.small, text, room) + 0.5F * grid);
        write(ui, ui.fonts.small, colour, {row.x, row.y, room, row.height}, text);
    };
    say(ui.colours.ink, outcome(tried, *ui.model.fly, moment, inches));
    const int step = tried.tied.moments[static_cast<std::size_t>(moment)].step;
    for (const Finding& finding : tried.tied.findings) {
        if (finding.step != step || finding.level == Level::note) continue;
        const FindingText text = describe(tried.pattern, finding);
        say(ui.colours.warn, text.message + "; " + text.remedy);
    }
}

} // namespace

void panel_what_if(Ui& ui, const Box& box) {
    const int moment = moment_of(ui.model);
    const auto ranges = ui.model.fly ? trial_ranges(*ui.model.fly, moment) : std::nullopt;
    if (!ranges || !ui.model.tried) {
        sheet(ui, box);
        write(ui, ui.fonts.small, ui.colours.soft, box.inside(2.0F * grid),
              "Nothing is wound in this action.");
        return;
    }
    const bool wide = box.width >= box.height;
    Box strip = box;
    Box pictures = box;
    if (wide) {
        pictures.width = 0.5F * (box.width - grid);
        strip = {pictures.right() + grid, box.y, pictures.width, box.height};
    } else {
        pictures.height = 0.4F * box.height;
        strip = {box.x, pictures.bottom() + grid, box.width, 0.6F * box.height - grid};
    }
    draw_pictures(ui, pictures, wide, moment);
    sheet(ui, strip);
    Box in = strip.inside(2.0F * grid);
    const float high = control_height(ui);
    const Box foot{in.x, in.bottom() - high, in.width, high};
    in.height -= high + grid;
    trials(ui, *ranges, moment, in);
    const float part = (foot.width - 2.0F * grid) / 3.0F;
    if (button(ui, "Keep it", {foot.x, foot.y, part, high}, true)) {
        ui.want(wish(WishKind::what_keep));
    }
    if (button(ui, "Drop it", {foot.x + part + grid, foot.y, part, high})) {
        ui.want(wish(WishKind::show, static_cast<int>(Screen::bench)));
    }
    if (button(ui, ui.model.beside ? "One alone" : "Side by side",
               {foot.x + 2.0F * (part + grid), foot.y, part, high})) {
        ui.want(wish(WishKind::what_beside));
    }
}

} // namespace wrapwright
