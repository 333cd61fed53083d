#include "gui/key_map.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

struct CommandRow {
    Command command;
    std::string_view name;
    std::string_view words;
};

constexpr std::array<CommandRow, command_count> rows{{
    {Command::press, "on", "On: next action, or one more turn"},
    {Command::skip, "skip", "On to the next action, counted or not"},
    {Command::back, "back", "Back to the action before"},
    {Command::undo, "undo", "Take back what was done last"},
    {Command::thread_broke, "broke", "The thread broke"},
    {Command::otherwise, "otherwise", "I did it differently"},
    {Command::spoilt, "spoilt", "This fly is spoilt"},
    {Command::strip, "strip", "Strip the hook and start this fly again"},
    {Command::more_words, "words", "Landmark, tip, caution, original words"},
    {Command::count_by_itself, "count", "Let the turns count by themselves, or stop"},
    {Command::turn_fly, "turn", "Turn the fly a quarter about its shank"},
    {Command::next_view, "view", "Next view: side, three-quarter, top, eye"},
    {Command::overlays, "marks", "Ruler and marks on the fly, on or off"},
    {Command::voice, "voice", "Read each step aloud, or no more"},
    {Command::units, "units", "Inches beside millimetres, on or off"},
    {Command::facing, "facing", "As a class sees it from the other side"},
    {Command::water, "water", "Colours under clear water: 1, 2, 4 m, and out"},
    {Command::film, "film", "The whole tying as a film"},
    {Command::what_if, "whatif", "What if: other turns, spacing, strand"},
    {Command::in_water, "inwater", "In the water: weight, sinking, depth, ride"},
    {Command::check, "check", "Is it in proportion: targets, photo, true size, batch"},
    {Command::caliper, "caliper", "Type what you measured on this fly"},
    {Command::write, "write", "Write the recipe: parts, steps, materials, sizes"},
    {Command::orders, "orders", "Orders and stock: what they need, days, cost, classes"},
    {Command::lay_out, "layout", "What to lay out"},
    {Command::library, "library", "All recipes"},
    {Command::settings, "settings", "Settings"},
    {Command::keys, "keys", "Keys"},
    {Command::hand, "hand", "Left hand or right hand"},
    {Command::theme, "theme", "Light, paper or dark"},
    {Command::more_flies, "more", "One fly more in this sitting"},
    {Command::fewer_flies, "fewer", "One fly fewer"},
    {Command::next_size, "size", "The next of the recipe's hook sizes"},
    {Command::close, "close", "Close this, back to the bench"},
}};

constexpr bool rows_in_order() {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (static_cast<std::size_t>(rows[i].command) != i) return false;
    }
    return true;
}
static_assert(rows_in_order());

const CommandRow& row(Command command) { return rows[static_cast<std::size_t>(command)]; }

} // namespace

std::string_view name(Command command) { return row(command).name; }

std::string_view words(Command command) { return row(command).words; }

KeyMap usual_keys() {
    return {
        {Command::press, "space"},
        {Command::press, "enter"},
        {Command::press, "right"},
        {Command::press, "page down"},
        {Command::press, "pad down"},
        {Command::press, "pad right shoulder"},
        {Command::skip, "tab"},
        {Command::skip, "pad up"},
        {Command::back, "left"},
        {Command::back, "page up"},
        {Command::back, "backspace"},
        {Command::back, "pad right"},
        {Command::back, "pad left shoulder"},
        {Command::undo, "u"},
        {Command::undo, "ctrl z"},
        {Command::thread_broke, "b"},
        {Command::thread_broke, "pad left"},
        {Command::otherwise, "d"},
        {Command::spoilt, "x"},
        {Command::strip, "delete"},
        {Command::more_words, "m"},
        {Command::count_by_itself, "c"},
        {Command::turn_fly, "r"},
        {Command::next_view, "v"},
        {Command::overlays, "o"},
        {Command::units, "i"},
        {Command::voice, "y"},
        {Command::facing, "g"},
        {Command::water, "w"},
        {Command::film, "p"},
        {Command::what_if, "q"},
        {Command::in_water, "n"},
        {Command::check, "a"},
        {Command::caliper, "e"},
        {Command::write, "j"},
        {Command::write, "f2"},
        {Command::orders, "f3"},
        {Command::lay_out, "l"},
        {Command::library, "f"},
        {Command::settings, "s"},
        {Command::keys, "k"},
        {Command::keys, "f1"},
        {Command::hand, "h"},
        {Command::theme, "t"},
        {Command::more_flies, "+"},
        {Command::fewer_flies, "-"},
        {Command::next_size, "z"},
        {Command::close, "escape"},
    };
}

std::optional<Command> command_of(const KeyMap& map, std::string_view key) {
    const auto it =
        std::find_if(map.begin(), map.end(), [&](const KeyUse& use) { return use.key == key; });
    if (it == map.end()) return std::nullopt;
    return it->command;
}

KeyMap with_key(KeyMap map, Command command, const std::string& key) {
    const auto had = command_of(map, key);
    if (had == command) return map;
    const auto of_press = std::count_if(
        map.begin(), map.end(), [](const KeyUse& use) { return use.command == Command::press; });
    if (had == Command::press && of_press == 1) return map;
    std::erase_if(map, [&](const KeyUse& use) { return use.key == key; });
    map.push_back({command, key});
    return map;
}

std::string text_of(const KeyMap& map) {
    std::string text;
    for (const KeyUse& use : map) {
        if (!text.empty()) text += ';';
        text += std::string(name(use.command)) + '=' + use.key;
    }
    return text;
}

KeyMap key_map_of(std::string_view text) {
    KeyMap map;
    while (!text.empty()) {
        const std::string_view one = text.substr(0, text.find(';'));
        text.remove_prefix(std::min(text.size(), one.size() + 1));
        const std::size_t equals = one.find('=');
        if (equals == std::string_view::npos || equals + 1 == one.size()) continue;
        const auto known = std::find_if(rows.begin(), rows.end(), [&](const CommandRow& r) {
            return r.name == one.substr(0, equals);
        });
        if (known == rows.end()) continue;
        map.push_back({known->command, std::string(one.substr(equals + 1))});
    }
    const bool can_go_on = std::any_of(
        map.begin(), map.end(), [](const KeyUse& use) { return use.command == Command::press; });
    return can_go_on ? map : usual_keys();
}

} // namespace wrapwright
