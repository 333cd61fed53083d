#pragma once
// One wish at work on the next model: the parts of apply(), for gui/apply*.cpp alone.

#include "gui/apply.h"

#include <cmath>

namespace wrapwright::detail {

/// One wish at work on the next model.
class Answer {
  public:
    Answer(const Model& before, Duration now) : m_{before, {}} {
        m_.model.now = now;
        if (!model().notice.empty() && now >= model().notice_until) model().notice.clear();
    }
    Applied take(const Wish& wish);

  private:
    Model& model() { return m_.model; }
    Effect& effect(EffectKind kind, std::string text = {}) {
        Effect& e = m_.effects.emplace_back();
        e.kind = kind;
        e.text = std::move(text);
        return e;
    }
    void say(std::string words) { wrapwright::say(model(), std::move(words)); }
    /// Whether what happens can be kept; says so where it cannot.
    bool may_write() {
        if (model().read_only) say("Another window keeps the library; this one only looks on");
        return !model().read_only;
    }
    void happen(EventKind kind, int number = 0, std::string text = {});
    void command(Command command);
    void press(bool skip);
    void press_in_lay_out();
    void begin(int flies);
    void back();
    void undo();
    void ask(Sheet sheet);
    void count();
    void pass_time();
    void set(const std::string& key, const std::string& text);
    void toggle(const std::string& key, bool now) { set(key, now ? "off" : "on"); }
    void show(Screen screen) {
        model().screen = screen;
        model().sheet = Sheet::closed;
        if (screen == Screen::library) effect(EffectKind::search, model().search);
        if (screen == Screen::water) {
            dip(model());
            effect(EffectKind::rank);
        }
        if (screen == Screen::check) check_again(model());
        if (screen == Screen::edit) write();
        if (screen == Screen::orders) effect(EffectKind::load_book);
    }
    [[nodiscard]] Duration pace() {
        const double said = model().settings.pace_s;
        return seconds(said > 0.0 ? said : 1.0);
    }
    void tick_next();
    void set_flies(int flies);
    void next_size();
    void next_water();
    void all_overlays();
    void film_go(int moment);
    void film_play();
    void open_what_if();
    void what_set(int which, double value);
    void try_neighbours();
    void what_keep();
    void time_fall(const std::string& height, const std::string& time);
    void drop_fall(int index);
    void weigh(const std::string& mg);
    void reach_for(int aim, double value);
    void look_for_ways();
    void take_way(int index);
    void next_rules();
    void check(const Wish& wish);
    void check_photo(const Wish& wish);
    void book(const Wish& wish);
    void book_cell(std::int64_t row, const std::string& key, const std::string& text);
    void stock_cell(std::int64_t row, const std::string& column, const std::string& text);
    void order_cell(std::int64_t row, const std::string& column, const std::string& text);
    void remove_row(std::int64_t row, bool stock);
    void people(const std::string& key, double value);
    void class_clock(int what);
    void keep_book(BookChange change, int what = 0);
    void next_standard();
    void caliper(int fly, const std::string& text);
    void keep_lengths();
    void take_mark(int spot, float x, float y);
    void changed_marks();
    void write();
    void take_tour(int stop);
    void ask_library(const std::string& key, const std::string& text);
    void box_cell(const std::string& recipe, int column, const std::string& text);
    void edit(const Wish& wish);
    void edit_all(const std::vector<Edit>& edits, std::string_view joins, std::string row);
    void edit_changed();
    void edit_add(const std::string& list, const std::string& line);
    void edit_pick(const std::string& list);
    void edit_op(int index, const std::string& said);
    void edit_drop(const std::string& row);
    void edit_move(const std::string& row, int to);
    void edit_size(int by);
    void edit_sized(const Wish& wish);
    void edit_loose(const Wish& wish);
    void edit_version(const Wish& wish);
    void open_text(const std::string& text);
    /// Turns that a press still counts at this stop.
    [[nodiscard]] double turns_left() {
        if (!at_work(model())) return 0.0;
        const double all = counted_at(*model().fly, moment_of(model())).turns;
        return std::max(0.0, std::round(all) - model().state.turns);
    }

    Applied m_;
};

} // namespace wrapwright::detail
