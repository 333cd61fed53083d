#include "gui/apply.h"

#include "core/tally/lay_out.h"
#include "gui/answer.h"

#include <algorithm>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float least_zoom = 0.5F;
constexpr float most_zoom = 30.0F;

/// Whether the number of a wish names one of what its kind counts.
bool names_something(const Wish& wish) {
    const auto within = [&](int count) { return wish.number >= 0 && wish.number < count; };
    switch (wish.kind) {
    case WishKind::command:
    case WishKind::set_key: return within(command_count);
    case WishKind::show: return within(static_cast<int>(Screen::orders) + 1);
    case WishKind::sheet: return within(static_cast<int>(Sheet::caliper) + 1);
    case WishKind::view: return within(static_cast<int>(PictureView::eye) + 1);
    case WishKind::tick_off: return wish.number >= 0;
    case WishKind::edit_view: return within(static_cast<int>(EditView::versions) + 1);
    case WishKind::help_view: return within(static_cast<int>(HelpView::tour) + 1);
    case WishKind::check_view: return within(static_cast<int>(CheckView::batch) + 1);
    case WishKind::orders_view: return within(static_cast<int>(OrdersView::paper) + 1);
    case WishKind::page: return within(static_cast<int>(Paper::swap_tags) + 1);
    case WishKind::mark:
    case WishKind::unmark: return within(static_cast<int>(photo_spots));
    case WishKind::scale_by: return within(static_cast<int>(ScaleBy::gape) + 1);
    case WishKind::rib_choice: return within(static_cast<int>(RibChoice::by_shift) + 1);
    default: return true;
    }
}

} // namespace

namespace detail {

Applied Answer::take(const Wish& wish) {
    Model& m = model();
    switch (wish.kind) {
    case WishKind::command: command(static_cast<Command>(wish.number)); break;
    case WishKind::begin: begin(wish.number); break;
    case WishKind::go_to:
        if (at_work(m) && may_write()) happen(EventKind::go_to, wish.number);
        break;
    case WishKind::broke:
        if (at_work(m) && may_write()) happen(EventKind::thread_broke);
        break;
    case WishKind::otherwise:
        if (at_work(m) && may_write() && !wish.text.empty()) {
            happen(EventKind::done_otherwise, 0, wish.text);
            say("Noted for this fly");
        }
        break;
    case WishKind::spoilt:
        if (at_work(m) && may_write()) happen(EventKind::fly_spoilt, 0, wish.text);
        break;
    case WishKind::strip:
        if (at_work(m) && may_write()) happen(EventKind::strip);
        break;
    case WishKind::tick_off: {
        const auto i = static_cast<std::size_t>(wish.number);
        if (i < m.laid_out.size()) m.laid_out[i] = !m.laid_out[i];
        break;
    }
    case WishKind::tick_next: tick_next(); break;
    case WishKind::show: show(static_cast<Screen>(wish.number)); break;
    case WishKind::sheet: m.sheet = static_cast<Sheet>(wish.number); break;
    case WishKind::open_recipe: effect(EffectKind::open_recipe, wish.text); break;
    case WishKind::open_size: effect(EffectKind::open_size, wish.text); break;
    case WishKind::duplicate:
        if (may_write()) effect(EffectKind::duplicate, wish.text);
        break;
    case WishKind::favourite:
        if (may_write()) effect(EffectKind::favourite, wish.text).number = wish.number;
        break;
    case WishKind::search:
        m.search = wish.text;
        effect(EffectKind::search, wish.text);
        break;
    case WishKind::set: set(wish.key, wish.text); break;
    case WishKind::set_key:
        set("key map",
            text_of(with_key(m.settings.keys, static_cast<Command>(wish.number), wish.text)));
        break;
    case WishKind::flies: set_flies(wish.number); break;
    case WishKind::roll:
        m.wraps.turn = std::remainder(m.wraps.turn + wish.x, 2.0F * std::numbers::pi_v<float>);
        break;
    case WishKind::orbit:
        m.wraps.yaw = std::remainder(m.wraps.yaw + wish.x, 2.0F * std::numbers::pi_v<float>);
        m.wraps.elevation = std::clamp(m.wraps.elevation + wish.y, -1.5F, 1.5F);
        break;
    case WishKind::zoom:
        m.wraps.zoom = std::clamp(m.wraps.zoom * wish.x, least_zoom, most_zoom);
        break;
    case WishKind::shift:
        m.wraps.shift_x = std::clamp(m.wraps.shift_x + wish.x, -2.0F, 2.0F);
        m.wraps.shift_y = std::clamp(m.wraps.shift_y + wish.y, -2.0F, 2.0F);
        break;
    case WishKind::view: m.wraps = {static_cast<PictureView>(wish.number), m.wraps.turn}; break;
    case WishKind::whole_fly: m.wraps = {}; break;
    case WishKind::film_go: film_go(wish.number); break;
    case WishKind::film_play: film_play(); break;
    case WishKind::what_set: what_set(wish.number, static_cast<double>(wish.x)); break;
    case WishKind::what_beside:
        m.beside = !m.beside;
        try_neighbours();
        break;
    case WishKind::what_keep: what_keep(); break;
    case WishKind::time_fall: time_fall(wish.key, wish.text); break;
    case WishKind::drop_fall: drop_fall(wish.number); break;
    case WishKind::weigh: weigh(wish.text); break;
    case WishKind::reach_for: reach_for(wish.number, static_cast<double>(wish.x)); break;
    case WishKind::lead_free:
        m.ask.lead_free = !m.ask.lead_free;
        look_for_ways();
        break;
    case WishKind::take_way: take_way(wish.number); break;
    case WishKind::next_rules: next_rules(); break;
    case WishKind::pick_file: effect(EffectKind::pick_file).number = wish.number; break;
    case WishKind::give_recipe: effect(EffectKind::give_recipe, wish.text); break;
    case WishKind::save_frame: effect(EffectKind::save_frame).number = pictured(m).moment; break;
    case WishKind::save_steps: effect(EffectKind::save_steps); break;
    case WishKind::put_away: m.trouble.clear(); break;
    case WishKind::back_up: effect(EffectKind::back_up, wish.text); break;
    case WishKind::look_into: effect(EffectKind::look_into, wish.text); break;
    case WishKind::restore:
        if (may_write()) effect(EffectKind::restore);
        m.sheet = Sheet::closed;
        break;
    case WishKind::tick_clock: pass_time(); break;
    case WishKind::quit: effect(EffectKind::quit); break;
    case WishKind::edit_view:
    case WishKind::edit_row:
    case WishKind::edit_set:
    case WishKind::edit_add:
    case WishKind::edit_pick:
    case WishKind::edit_op:
    case WishKind::edit_drop:
    case WishKind::edit_move:
    case WishKind::edit_undo:
    case WishKind::edit_redo:
    case WishKind::edit_size:
    case WishKind::edit_save:
    case WishKind::edit_sized:
    case WishKind::edit_loose:
    case WishKind::edit_version:
    case WishKind::edit_back:
    case WishKind::edit_new: edit(wish); break;
    case WishKind::open_file: effect(EffectKind::open_file, wish.text); break;
    case WishKind::open_text: open_text(wish.text); break;
    case WishKind::library_ask: ask_library(wish.key, wish.text); break;
    case WishKind::box_cell: box_cell(wish.key, wish.number, wish.text); break;
    case WishKind::help_view: m.help_view = static_cast<HelpView>(wish.number); break;
    case WishKind::tour: take_tour(wish.number); break;
    default: check(wish); break;
    }
    return std::move(m_);
}

} // namespace detail

Applied apply(const Model& model, const Wish& wish, Duration now) {
    return names_something(wish) ? detail::Answer(model, now).take(wish) : Applied{model, {}};
}

Model with_fly(Model model, std::shared_ptr<const OpenFly> fly, std::vector<Event> events) {
    model.fly = std::move(fly);
    model.events = std::move(events);
    model.course.clear();
    model.state = {};
    model.sheet = Sheet::closed;
    model.counting = false;
    model.more_words = false;
    model.wraps = {};
    model.stop_since = model.now;
    const std::size_t items =
        lay_out_list(model.fly->pattern, model.fly->resolved, model.fly->tied, 1, false).size();
    model.laid_out.assign(items, !model.events.empty());
    model.falls.clear(); // whoever keeps them puts those of this fly here
    model.weighed = {};
    model.dipped.reset();
    model.check.readings.clear(); // and these
    model.check.photos.clear();
    model.check.photo = {};
    model.check.fly = 1;
    if (model.events.empty()) model.book.tying = 0; // whoever ties for an order says so after
    check_again(model);
    model.reached.reset();
    model.ask.mg = 0.0;
    if (!model.events.empty()) {
        model.state = fold(model.fly->pattern, model.fly->tied, model.events);
        model.flies = model.state.flies;
        model.course = course_of(model.fly->pattern, model.fly->tied, model.flies);
    }
    return model;
}

} // namespace wrapwright
