// What each key and button of the map does.

#include "gui/answer.h"

#include "core/units/hook_size.h"

#include <algorithm>
#include <numbers>

namespace wrapwright::detail {

void Answer::command(Command command) {
    Model& m = model();
    switch (command) {
    case Command::press: press(false); break;
    case Command::skip: press(true); break;
    case Command::back: back(); break;
    case Command::undo: undo(); break;
    case Command::thread_broke: ask(Sheet::thread_broke); break;
    case Command::otherwise: ask(Sheet::otherwise); break;
    case Command::spoilt: ask(Sheet::spoilt); break;
    case Command::strip: ask(Sheet::strip); break;
    case Command::more_words: m.more_words = !m.more_words; break;
    case Command::count_by_itself:
        if (turns_left() <= 0.0) break;
        m.counting = !m.counting && may_write();
        m.next_turn = m.now + pace();
        break;
    case Command::turn_fly: {
        constexpr float quarter = std::numbers::pi_v<float> / 2.0F;
        m.wraps.turn = std::remainder(m.wraps.turn + quarter, 4.0F * quarter);
        break;
    }
    case Command::next_view: {
        const auto next = (static_cast<int>(m.wraps.view) + 1) % 4;
        m.wraps = {static_cast<PictureView>(next), m.wraps.turn};
        break;
    }
    case Command::overlays: all_overlays(); break;
    case Command::voice: toggle("voice", m.settings.voice); break;
    case Command::units: toggle("inches", m.settings.inches); break;
    case Command::facing: toggle("facing the class", m.settings.facing); break;
    case Command::water: next_water(); break;
    case Command::film:
        m.film_at = std::max(0, moment_of(m));
        m.film_playing = false;
        show(m.screen == Screen::film ? Screen::bench : Screen::film);
        break;
    case Command::what_if: open_what_if(); break;
    case Command::in_water: show(m.screen == Screen::water ? Screen::bench : Screen::water); break;
    case Command::check: show(m.screen == Screen::check ? Screen::bench : Screen::check); break;
    case Command::write: show(m.screen == Screen::edit ? Screen::bench : Screen::edit); break;
    case Command::caliper:
        if (!m.fly || m.fly->tied.moments.empty()) break;
        check_again(m);
        if (at_work(m)) m.check.fly = m.course[static_cast<std::size_t>(m.state.at)].fly + 1;
        m.sheet = Sheet::caliper;
        break;
    case Command::orders: show(m.screen == Screen::orders ? Screen::bench : Screen::orders); break;
    case Command::lay_out:
        show(m.screen == Screen::lay_out ? Screen::bench : Screen::lay_out);
        break;
    case Command::library:
        show(m.screen == Screen::library ? Screen::bench : Screen::library);
        break;
    case Command::settings:
        show(m.screen == Screen::settings ? Screen::bench : Screen::settings);
        break;
    case Command::keys: show(m.screen == Screen::keys ? Screen::bench : Screen::keys); break;
    case Command::hand: toggle("left hand", m.settings.left_handed); break;
    case Command::theme: {
        const auto next = (static_cast<int>(m.settings.theme) + 1) % 3;
        set("theme", std::string(name(static_cast<Theme>(next))));
        break;
    }
    case Command::more_flies: set_flies(m.flies + 1); break;
    case Command::fewer_flies: set_flies(m.flies - 1); break;
    case Command::next_size: next_size(); break;
    case Command::close:
        if (m.screen == Screen::edit && m.edit.picking && m.sheet == Sheet::closed) {
            edit_pick({});
        } else if (m.sheet != Sheet::closed) {
            m.sheet = Sheet::closed;
        } else {
            show(Screen::bench);
        }
        break;
    case Command::count_: break;
    }
}

} // namespace wrapwright::detail
