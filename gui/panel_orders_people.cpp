// A class and a swap: bags with spares, the room's clock, and how many flies everybody ties.

#include "gui/panel_orders_parts.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

void count_row(Ui& ui, const Box& box, std::string_view words, const char* key, int value) {
    const Box row{box.x, box.y, std::min(box.width, 30.0F * ui.sizes.small), control_height(ui)};
    const int pressed = stepper(ui, words, std::to_string(value), row);
    if (pressed == 0) return;
    Wish w = wish(WishKind::people);
    w.key = key;
    w.x = static_cast<float>(value + pressed);
    ui.want(std::move(w));
}

std::string amount(double value, StockUnit unit) {
    std::string out = write_rounded(value, unit == StockUnit::pieces ? 0 : 2);
    if (unit == StockUnit::metres) out.append(" m");
    if (unit == StockUnit::grams) out.append(" g");
    return out;
}

std::string clock_words(double seconds) {
    const int whole = std::max(0, static_cast<int>(seconds));
    std::string out = std::to_string(whole / 60);
    out.append(1, ':').append(whole % 60 < 10 ? "0" : "").append(std::to_string(whole % 60));
    return out;
}

/// The minutes of each step of the open fly as they were timed; one where none was.
std::vector<double> step_minutes(const Model& m) {
    const std::size_t steps = m.fly->pattern.recipe.steps.size();
    std::vector<double> out(steps, 0.0);
    for (std::size_t s = 0; s < steps && s < m.state.step_seconds.size(); ++s) {
        out[s] = median_of(m.state.step_seconds[s]) / 60.0;
    }
    for (double& minutes : out) minutes = minutes > 0.0 ? minutes : 1.0;
    return out;
}

void want_roster(Ui& ui, const std::vector<Sender>& roster) {
    Wish w = wish(WishKind::set, 0, text_of(roster));
    w.key = "swap roster";
    ui.want(std::move(w));
}

/// Who is in the swap and whose flies came: ticked off by a press.
void roster(Ui& ui, Scroll& scroll) {
    const std::vector<Sender>& all = ui.model.settings.book.roster;
    const float high = control_height(ui);
    const auto sent = std::count_if(all.begin(), all.end(), [](const Sender& s) { return s.sent; });
    std::string head("The swap: ");
    head.append(std::to_string(sent)).append(" of ").append(std::to_string(all.size()));
    (void)heading(ui, scroll.row(1.6F * ui.fonts.small->FontSize),
                  head.append(" sent their flies"));
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Box row = scroll.row(high);
        const float away = 6.0F * ui.sizes.small;
        const Icon icon = all[i].sent ? Icon::ticked : Icon::empty;
        if (row_button(ui, all[i].name + "##roster", all[i].sent ? "sent" : "not yet", false,
                       {row.x, row.y, row.width - away - grid, high}, &icon)) {
            std::vector<Sender> next = all;
            next[i].sent = !next[i].sent;
            want_roster(ui, next);
        }
        if (button(ui, "Out##" + all[i].name, {row.right() - away, row.y, away, high})) {
            std::vector<Sender> next = all;
            next.erase(next.begin() + static_cast<std::ptrdiff_t>(i));
            want_roster(ui, next);
        }
    }
    const Box row = scroll.row(high);
    std::string& typed = ui.typing.fields["swap roster"];
    if (line_edit(ui, "##roster", "a name for the swap", typed, row) && !typed.empty()) {
        std::vector<Sender> next = all;
        next.push_back({typed, false});
        want_roster(ui, next);
        typed.clear();
    }
    (void)scroll.row(grid);
}

void room(Ui& ui, Scroll& scroll, float width) {
    const Model& m = ui.model;
    const BookWork& b = m.book;
    const Recipe& recipe = m.fly->pattern.recipe;
    if (recipe.steps.empty()) return;
    const float high = control_height(ui);
    const auto at = static_cast<std::size_t>(
        std::clamp(b.class_step, 0, static_cast<int>(recipe.steps.size()) - 1));
    const std::vector<RoomStep> clock = room_clock(recipe, step_minutes(m), b.stretch);
    const bool runs = b.class_since.si > 0.0;
    std::string words("Step ");
    words.append(std::to_string(at + 1)).append(" of ").append(std::to_string(clock.size()));
    words.append(": ").append(recipe.steps[at].text);
    write(ui, ui.fonts.main, ui.colours.ink,
          scroll.row(height_of(ui.fonts.main, words, width) + grid), words);
    const double gone = runs ? (m.now - b.class_since).si : 0.0;
    std::string time = clock_words(gone);
    time.append(" gone; this step until ").append(clock_words(60.0 * clock[at].to));
    time.append(" of ").append(clock_words(60.0 * clock.back().to)).append("; done: ");
    time.append(std::to_string(b.class_done)).append(" of ").append(std::to_string(b.students));
    const bool behind = runs && gone > 60.0 * clock[at].to;
    if (behind) time.append("; behind the clock");
    for (std::size_t s = at; s < clock.size(); ++s) {
        if (!clock[s].catch_up) continue;
        time.append("; who lags catches up after step ").append(std::to_string(s + 1));
        break;
    }
    write(ui, ui.fonts.small, behind ? ui.colours.warn : ui.colours.soft,
          scroll.row(height_of(ui.fonts.small, time, width) + grid), time);
    const Box row = scroll.row(high);
    const float wide = (row.width - 4.0F * grid) / 5.0F;
    const auto act = [&](int i, std::string_view label, int what, bool primary) {
        const Box box{row.x + static_cast<float>(i) * (wide + grid), row.y, wide, high};
        if (button(ui, label, box, primary)) ui.want(wish(WishKind::class_clock, what));
    };
    act(0, runs ? "Stop" : "Start", 0, !runs);
    act(1, "Back##room", -1, false);
    act(2, "Next##room", 1, runs);
    act(3, "Hand up", 2, false);
    act(4, "Hand down", 3, false);
    (void)scroll.row(grid);
}

} // namespace

void people_view(Ui& ui, const Box& box) {
    const Model& m = ui.model;
    const BookWork& b = m.book;
    const float high = control_height(ui), width = box.width - 3.0F * grid;
    Scroll scroll(ui, "people", box);
    count_row(ui, scroll.row(high + 0.5F * grid), "students", "students", b.students);
    count_row(ui, scroll.row(high + 0.5F * grid), "flies each", "flies each", b.flies_each);
    count_row(ui, scroll.row(high + 0.5F * grid), "people in a swap", "people", b.people);
    count_row(ui, scroll.row(high + grid), "extra for the host", "for the host", b.for_host);
    const SwapCount swap = swap_count(b.people, b.for_host);
    std::string words("A swap: each ties ");
    words.append(std::to_string(swap.each)).append(" and gets ").append(std::to_string(swap.back));
    words.append("; ").append(std::to_string(swap.all));
    words.append(" flies and as many tags pass through the host's hands.");
    write(ui, ui.fonts.small, ui.colours.soft,
          scroll.row(height_of(ui.fonts.small, words, width) + grid), words);
    const bool steps = m.fly && !m.fly->tied.moments.empty();
    if (steps) room(ui, scroll, width);
    if (!steps) {
        write(ui, ui.fonts.small, ui.colours.soft, scroll.row(2.0F * ui.fonts.small->FontSize),
              "For a class, open a recipe with steps.");
        return roster(ui, scroll);
    }
    const std::vector<KitRow> kit = class_kit(
        stock_uses(m.fly->pattern, m.fly->resolved, m.fly->tied), b.students, b.flies_each);
    (void)heading(ui, scroll.row(1.6F * ui.fonts.small->FontSize),
                  "In each bag; spares for the teacher, who loses no bead");
    for (const KitRow& row : kit) {
        std::string aside = amount(row.each, row.unit);
        aside.append(" each, ").append(amount(row.spare, row.unit)).append(" spare, ");
        aside.append(amount(row.total, row.unit)).append(" in all");
        const Box at = scroll.row(1.5F * ui.fonts.small->FontSize);
        const float w = std::min(
            0.55F * at.width,
            ui.fonts.small->CalcTextSizeA(ui.fonts.small->FontSize, FLT_MAX, 0.0F, aside.c_str())
                    .x +
                2.0F);
        write(ui, ui.fonts.small, ui.colours.ink, {at.x, at.y, at.width - w - grid, at.height},
              row.what);
        write(ui, ui.fonts.small, ui.colours.soft, {at.right() - w, at.y, w, at.height}, aside);
    }
    (void)scroll.row(grid);
    roster(ui, scroll);
}

} // namespace wrapwright
