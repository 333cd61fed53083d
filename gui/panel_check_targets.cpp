// How long each part should be by one standard, what the others say, and what was measured.

#include "gui/panel_check_parts.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

std::string mm(Length x) { return write_rounded(in_millimetres(x), 1); }

/// A bar as long as the target is in truth, its tolerance hatched, with marks for the recipe's own
/// length and for what was measured.
void bar(Ui& ui, const Box& box, const PartTarget& target, std::optional<Length> own,
         std::optional<Length> measured) {
    const float dots = static_cast<float>(dots_per_mm(ui.model));
    const double longest =
        std::max({target.length.high.si, own ? own->si : 0.0, measured ? measured->si : 0.0, 1e-4});
    const float scale = std::min(dots, (box.width - 2.0F) / static_cast<float>(longest * 1e3));
    const auto x = [&](Length l) { return box.x + scale * static_cast<float>(in_millimetres(l)); };
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float middle = box.y + 0.5F * box.height;
    const float half = 0.22F * box.height;
    list.AddRectFilled({box.x, middle - half}, {x(target.length.value), middle + half},
                       im(ui.colours.line));
    list.AddRect({x(target.length.low), middle - half}, {x(target.length.high), middle + half},
                 im(ui.colours.soft), 0.0F, 0, 1.5F);
    list.AddLine({x(target.length.value), box.y}, {x(target.length.value), box.bottom()},
                 im(ui.colours.ink), 3.0F);
    if (own) {
        const float at = x(*own);
        list.AddTriangleFilled({at, middle + half}, {at - 6.0F, box.bottom()},
                               {at + 6.0F, box.bottom()}, im(ui.colours.accent));
    }
    if (measured) {
        const float at = x(*measured);
        list.AddTriangleFilled({at, middle - half}, {at - 6.0F, box.y}, {at + 6.0F, box.y},
                               im(ui.colours.warn));
    }
}

void part_rows(Ui& ui, Scroll& scroll, float room, const PartTarget& target) {
    const Model& m = ui.model;
    const OpenFly& fly = *m.fly;
    const auto own = own_measure(fly.pattern, fly.tied, target.part);
    const FlyReading* reading = reading_for(m, m.check.fly, name(target.part));
    std::optional<Length> length;
    if (own) length = own->length;
    if (reading != nullptr) length = Length{reading->value};
    const float line = ui.fonts.small->FontSize;
    std::string words(name(target.part));
    words.append(": ").append(mm(target.length.value)).append(" mm, ").append(target.words);
    words.append(" (").append(mm(target.length.low)).append(" to ");
    words.append(mm(target.length.high)).append(")");
    const float sign = 1.4F * line;
    const float text = height_of(ui.fonts.small, words, room - sign);
    const Box head = scroll.row(std::max(sign, text));
    if (length) fit_sign(ui, fit_of(target.length, *length).fit, {head.x, head.y, sign, sign});
    write(ui, ui.fonts.small, ui.colours.ink, {head.x + sign, head.y, room - sign, text}, words);
    const Box drawn = scroll.row(1.3F * line);
    bar(ui, {drawn.x + sign, drawn.y, room - sign, 1.3F * line}, target,
        own ? std::optional(own->length) : std::nullopt,
        reading != nullptr ? std::optional(Length{reading->value}) : std::nullopt);
    const auto below = [&](Colour colour, std::string_view what) {
        const float high = height_of(ui.fonts.small, what, room - sign);
        const Box row = scroll.row(high);
        write(ui, ui.fonts.small, colour, {row.x + sign, row.y, room - sign, high + 0.5F}, what);
    };
    if (own) {
        std::string said = "the recipe makes it ";
        said.append(mm(own->length)).append(" mm in step ").append(std::to_string(own->step + 1));
        below(ui.colours.soft, said);
    } else {
        below(ui.colours.soft, "not on this fly");
    }
    if (length) {
        const FitCheck fit = fit_of(target.length, *length);
        std::string said =
            reading != nullptr ? "measured " + mm(Length{reading->value}) + " mm: " : "so it is ";
        said.append(reading != nullptr ? advice(m, target, fit) : fit_words(fit));
        below(colour_of(ui.colours, fit.fit), said);
    }
    std::string others;
    for (const PartTarget& other : m.check.targets) {
        if (other.part != target.part || other.standard == target.standard) continue;
        others.append(others.empty() ? "others say: " : ", ").append(other.standard).append(" ");
        others.append(mm(other.length.value)).append(" mm");
    }
    if (!others.empty()) below(ui.colours.soft, others);
    below(ui.colours.soft, "source: " + target.source);
    (void)scroll.row(1.5F * grid);
}

} // namespace

void caliper_line(Ui& ui, const Box& box) {
    const float high = control_height(ui);
    const float keep = std::min(7.0F * ui.sizes.small, 0.3F * box.width);
    const bool ended = line_edit(ui, "##caliper", "tail 4.6", ui.typing.caliper,
                                 {box.x, box.y, box.width - keep - grid, high});
    const bool pressed = button(ui, "Keep it", {box.right() - keep, box.y, keep, high}, true);
    if ((ended || pressed) && !ui.typing.caliper.empty()) {
        ui.want(wish(WishKind::caliper, 0, ui.typing.caliper));
        ui.typing.caliper.clear();
    }
}

void check_targets(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    Box rows = box, drawing{};
    const bool wide = box.width >= box.height;
    if (wide && box.width >= 36.0F * 0.46F * ui.sizes.small * 2.0F) {
        rows.width = 0.56F * box.width;
        drawing = {rows.right() + grid, box.y, box.width - rows.width - grid, box.height};
    } else if (!wide && box.height >= 30.0F * ui.sizes.small) {
        drawing = {box.x, box.y, box.width, 0.3F * box.height};
        rows.y += drawing.height + grid;
        rows.height -= drawing.height + grid;
    }
    if (drawing.width > 0.0F) {
        sheet(ui, drawing);
        draw_checked(ui, drawing.inside(grid), 0.0F);
    }
    sheet(ui, rows);
    const Box in = rows.inside(1.5F * grid);
    const float high = control_height(ui);
    Scroll scroll(ui, "targets", in);
    const std::string standard = standard_of(m);
    Box row = scroll.row(high + grid);
    const float room = row.width;
    if (standard.empty()) {
        check_say(ui, scroll, room, ui.colours.soft,
                  "No standard knows a fly of this class. Write a class such as dry, wet, nymph or "
                  "streamer in the recipe, or targets of its own.");
        return;
    }
    const std::size_t count = standards_of(m.check.targets).size();
    std::string label = "By \"" + standard + "\"";
    if (count > 1) label.append(", one of ").append(std::to_string(count));
    label.append("##standard");
    if (button(ui, label, {row.x, row.y, room, high})) ui.want(wish(WishKind::standard));
    row = scroll.row(high + grid);
    const int pressed = stepper(ui, "Fly that is measured", std::to_string(m.check.fly),
                                {row.x, row.y, room, high});
    if (pressed != 0) ui.want(wish(WishKind::check_fly, m.check.fly + pressed));
    row = scroll.row(high + 1.5F * grid);
    caliper_line(ui, {row.x, row.y, room, high});
    for (const PartTarget& t : m.check.targets) {
        if (t.standard == standard) part_rows(ui, scroll, room, t);
    }
    check_say(
        ui, scroll, room, ui.colours.soft,
        "Bars are as long as on the fly where they have room. Charts contradict each other: the "
        "standard is yours to pick. Points down: measured; points up: the recipe.");
}

} // namespace wrapwright
