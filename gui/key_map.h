#pragma once
// Which key does what. Keys are named by words of our own, so that the map can be stored and shown
// without any toolkit.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// What a key can do at the bench.
enum class Command : unsigned char {
    press, ///< on: the next action, or one more turn
    skip,  ///< on to the next action, whatever was counted
    back,
    undo,
    thread_broke,
    otherwise, ///< I did it differently
    spoilt,
    strip,
    more_words, ///< landmark, tip, caution and original wording of the step
    count_by_itself,
    turn_fly, ///< a quarter turn about the shank
    next_view,
    overlays, ///< all on or all off
    voice,    ///< read aloud, or no more
    units,
    facing, ///< the class's side
    water,  ///< deeper, and out again
    film,   ///< the whole tying, to scrub through
    what_if,
    in_water, ///< weight, sinking, drift, ride, rules
    check,    ///< is it in proportion: targets, photo, true size, batch
    caliper,  ///< type what was measured
    write,    ///< the recipe: parts, steps, materials, sizes
    orders,   ///< stock, orders, what they need, days, cost
    lay_out,
    library,
    settings,
    keys,
    hand,
    theme,
    more_flies,
    fewer_flies,
    next_size, ///< of the recipe's hook sizes
    close,     ///< what is open over the bench
    count_,
};
inline constexpr int command_count = static_cast<int>(Command::count_);

[[nodiscard]] std::string_view name(Command command);  ///< for the store
[[nodiscard]] std::string_view words(Command command); ///< for people

/// One key of one command.
struct KeyUse {
    Command command = Command::press;
    std::string key; ///< "space", "page down", "ctrl z", "pad a"
    friend bool operator==(const KeyUse&, const KeyUse&) = default;
};
using KeyMap = std::vector<KeyUse>;

/// The map as it comes: any presenter pedal and any gamepad moves on and back.
[[nodiscard]] KeyMap usual_keys();

/// What a key does.
[[nodiscard]] std::optional<Command> command_of(const KeyMap& map, std::string_view key);

/// The map with that key taken from whatever had it and given to the command; the last key of
/// `press` is never taken away.
[[nodiscard]] KeyMap with_key(KeyMap map, Command command, const std::string& key);

/// The map as one text, "press=space;press=enter;back=left", and back; unknown commands are left
/// out.
[[nodiscard]] std::string text_of(const KeyMap& map);
[[nodiscard]] KeyMap key_map_of(std::string_view text);

} // namespace wrapwright
