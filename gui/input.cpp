#include "gui/input.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

struct KeyRow {
    ImGuiKey key;
    std::string_view word;
};

constexpr std::array<KeyRow, 27> rows{{
    {ImGuiKey_Space, "space"},
    {ImGuiKey_Enter, "enter"},
    {ImGuiKey_KeypadEnter, "enter"},
    {ImGuiKey_LeftArrow, "left"},
    {ImGuiKey_RightArrow, "right"},
    {ImGuiKey_UpArrow, "up"},
    {ImGuiKey_DownArrow, "down"},
    {ImGuiKey_PageUp, "page up"},
    {ImGuiKey_PageDown, "page down"},
    {ImGuiKey_Backspace, "backspace"},
    {ImGuiKey_Delete, "delete"},
    {ImGuiKey_Escape, "escape"},
    {ImGuiKey_Tab, "tab"},
    {ImGuiKey_Home, "home"},
    {ImGuiKey_End, "end"},
    {ImGuiKey_Equal, "+"},
    {ImGuiKey_KeypadAdd, "+"},
    {ImGuiKey_Minus, "-"},
    {ImGuiKey_KeypadSubtract, "-"},
    {ImGuiKey_GamepadFaceDown, "pad down"},
    {ImGuiKey_GamepadFaceRight, "pad right"},
    {ImGuiKey_GamepadFaceLeft, "pad left"},
    {ImGuiKey_GamepadFaceUp, "pad up"},
    {ImGuiKey_GamepadL1, "pad left shoulder"},
    {ImGuiKey_GamepadR1, "pad right shoulder"},
    {ImGuiKey_GamepadDpadLeft, "pad cross left"},
    {ImGuiKey_GamepadDpadRight, "pad cross right"},
}};

/// Commands that work on every screen.
bool everywhere(Command command) {
    switch (command) {
    case Command::lay_out:
    case Command::library:
    case Command::settings:
    case Command::keys:
    case Command::hand:
    case Command::theme:
    case Command::voice:
    case Command::units:
    case Command::facing:
    case Command::water:
    case Command::film:
    case Command::what_if:
    case Command::in_water:
    case Command::check:
    case Command::write:
    case Command::orders:
    case Command::turn_fly:
    case Command::next_view:
    case Command::overlays:
    case Command::close: return true;
    default: return false;
    }
}

bool asks_for_words(Sheet sheet) {
    return sheet == Sheet::otherwise || sheet == Sheet::spoilt || sheet == Sheet::caliper;
}

} // namespace

bool keys_move_about(const Model& model) {
    const bool lists = model.screen == Screen::settings || model.screen == Screen::keys ||
                       model.screen == Screen::what_if || model.screen == Screen::water ||
                       model.screen == Screen::check ||
                       (model.screen == Screen::orders && model.book.view != OrdersView::lines &&
                        model.book.view != OrdersView::stock) ||
                       model.screen == Screen::edit;
    return lists || asks_for_words(model.sheet) || model.sheet == Sheet::restore;
}

std::string key_word(ImGuiKey key, bool ctrl) {
    std::string word;
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const KeyRow& r) { return r.key == key; });
    if (row != rows.end()) {
        word = row->word;
    } else if (key >= ImGuiKey_A && key <= ImGuiKey_Z) {
        word = static_cast<char>('a' + (key - ImGuiKey_A));
    } else if (key >= ImGuiKey_0 && key <= ImGuiKey_9) {
        word = static_cast<char>('0' + (key - ImGuiKey_0));
    } else if (key >= ImGuiKey_F1 && key <= ImGuiKey_F12) {
        word = std::to_string(key - ImGuiKey_F1 + 1);
        word.insert(0, 1, 'f');
    }
    if (!ctrl || word.empty()) return word;
    return std::string("ctrl ").append(word);
}

void take_keys(const Model& model, Typing& typing, Wishes& wishes) {
    const ImGuiIO& io = ImGui::GetIO();
    for (int k = ImGuiKey_NamedKey_BEGIN; k < ImGuiKey_NamedKey_END; ++k) {
        const auto key = static_cast<ImGuiKey>(k);
        if (!ImGui::IsKeyPressed(key, false)) continue;
        const std::string word = key_word(key, io.KeyCtrl);
        if (word.empty()) continue;
        if (typing.key_for >= 0) {
            Wish w = wish(WishKind::set_key, typing.key_for, word);
            typing.key_for = -1;
            if (word != "escape") wishes.push_back(std::move(w));
            continue;
        }
        // A table takes the letters and its own keys.
        const bool box = model.screen == Screen::library && model.library.ask.box;
        if ((box || model.screen == Screen::orders) && model.sheet == Sheet::closed) {
            if (typing.grid.editing || io.WantTextInput) continue;
            if (word == "escape") wishes.push_back(wish(Command::close));
            if (box) continue;
            if (word == "ctrl z") wishes.push_back(wish(WishKind::book_undo));
            if (word == "ctrl y") wishes.push_back(wish(WishKind::book_redo));
            continue;
        }
        const auto command = command_of(model.settings.keys, word);
        if (!command) continue;
        // While a recipe is written, escape leaves the field first and the screen then.
        const bool closes = *command == Command::close && model.screen != Screen::edit;
        if (io.WantTextInput && !closes) continue;
        if (keys_move_about(model) && !everywhere(*command)) continue;
        if (asks_for_words(model.sheet) && *command != Command::close) continue;
        wishes.push_back(wish(*command));
    }
}

} // namespace wrapwright
