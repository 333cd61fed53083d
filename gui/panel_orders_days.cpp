// Which flies on which day, as bars against each day's room, and lines against their due days.

#include "gui/panel_orders_parts.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 7> weekdays{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

std::string hours(Duration time) { return write_rounded(time.si / 3600.0, 1).append(" h"); }

std::string line_ready(const PlanLine& plan, const OrderLine& line) {
    std::string out = line_words(line);
    out.append(": ").append(hours(plan.time));
    if (plan.ready == Day{}) return out.append("; no day has time for it");
    out.append(", ready ").append(write_day(plan.ready));
    if (plan.due != Day{}) out.append(", due ").append(write_day(plan.due));
    if (!plan.met) out.append(": cannot be met, ").append(hours(plan.late)).append(" too late");
    return out;
}

std::string day_words(const Model& m, const PlanDay& day) {
    std::string out(weekdays[static_cast<std::size_t>(weekday_of(day.day))]);
    out.append(1, ' ').append(write_day(day.day)).append(": ");
    bool first = true;
    for (const PlanPiece& piece : day.pieces) {
        const OrderLine* line = line_of(*m.book.book, piece.line);
        if (!first) out.append("; ");
        first = false;
        out.append(piece.flies > 0 ? std::to_string(piece.flies) : std::string("go on with"));
        out.append(1, ' ').append(line != nullptr ? line->name : std::string("?"));
        if (line != nullptr && !line->size.empty()) out.append(" #").append(line->size);
    }
    return out;
}

/// A day's time against its room.
void day_bar(Ui& ui, const Box& box, const PlanDay& day, double most) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto x = [&](Duration t) {
        return box.x + box.width * static_cast<float>(t.si / std::max(most, 1.0));
    };
    list.AddRectFilled({box.x, box.y}, {x(day.used), box.bottom()}, im(ui.colours.accent));
    list.AddRect({box.x, box.y}, {x(day.room), box.bottom()}, im(ui.colours.soft), 0.0F, 0, 2.0F);
}

} // namespace

void days_view(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const BookSettings& s = m.settings.book;
    if (!m.book.work) return;
    const DayPlan& plan = m.book.work->plan;
    Box in = box;
    const float high = control_height(ui);
    const auto next_row = [&] {
        in.y += high + grid;
        in.height -= high + grid;
    };
    std::string room;
    for (const double minutes : s.minutes) {
        room.append(room.empty() ? "" : " ").append(write_number(minutes));
    }
    setting_field(ui, {in.x, in.y, in.width, high}, "minutes a day, Monday to Sunday",
                  "minutes a day", room);
    next_row();
    const float curve = std::min(9.5F * ui.sizes.small, 0.4F * in.width);
    setting_field(ui, {in.x, in.y, in.width - curve - grid, high}, "learning rate; 1 is none",
                  "learning rate", write_number(s.learning), true);
    if (button(ui, s.wright ? "by Wright" : "by Crawford",
               {in.right() - curve, in.y, curve, high})) {
        Wish w = wish(WishKind::set, 0, s.wright ? "Crawford" : "Wright");
        w.key = "learning curve";
        ui.want(std::move(w));
    }
    next_row();
    Scroll scroll(ui, "days", in);
    const float line = ui.fonts.small->FontSize;
    const auto say = [&](Colour colour, std::string_view words) {
        const float tall = height_of(ui.fonts.small, words, in.width - 3.0F * grid) + 0.5F * grid;
        write(ui, ui.fonts.small, colour, scroll.row(tall), words);
    };
    if (plan.lines.empty() && m.book.work->no_time.empty()) {
        say(ui.colours.soft, "No order is open.");
    }
    for (const std::int64_t id : m.book.work->no_time) {
        const OrderLine* of = line_of(*m.book.book, id);
        if (of == nullptr) continue;
        say(ui.colours.warn, line_words(*of) + ": no time is known. Tie one at the bench, or "
                                               "write minutes for one fly in its line.");
    }
    for (const PlanLine& of : plan.lines) {
        const OrderLine* order = line_of(*m.book.book, of.line);
        if (order == nullptr) continue;
        say(of.met ? ui.colours.ink : ui.colours.warn, line_ready(of, *order));
    }
    (void)scroll.row(grid);
    double most = 0.0;
    for (const PlanDay& day : plan.days) most = std::max({most, day.room.si, day.used.si});
    for (const PlanDay& day : plan.days) {
        bool due = false;
        for (const PlanLine& of : plan.lines) due = due || of.due == day.day;
        const Box head = scroll.row(1.3F * line);
        write(ui, ui.fonts.small, due ? ui.colours.ink : ui.colours.soft, head,
              day_words(m, day) + (due ? "  (something is due)" : ""));
        const Box strip = scroll.row(2.5F * grid);
        day_bar(ui, {strip.x, strip.y, strip.width, 1.5F * grid}, day, most);
    }
}

} // namespace wrapwright
