#pragma once
// What a person sets once, and its form as texts for the store.

#include "gui/book_settings.h"
#include "gui/key_map.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wrapwright {

enum class Theme : unsigned char { light, paper, dark };

/// What is drawn over the wraps.
enum class Overlay : unsigned char {
    ruler,     ///< along the shank, in mm
    spacing,   ///< a tick for each turn, and the pitch
    ends,      ///< where the winding starts and stops
    no_go,     ///< the zone behind the eye
    sense,     ///< an arrow that runs the winding's way
    rib_angle, ///< the rib's angle to the shank
    crossings, ///< where the rib crosses the body
    ghost,     ///< the turn that comes next
    targets,   ///< where each part should end, by the picked standard
    count_,
};
inline constexpr std::size_t overlay_count = static_cast<std::size_t>(Overlay::count_);

/// The word for an overlay, for screens and for the store.
[[nodiscard]] std::string_view name(Overlay overlay);
[[nodiscard]] std::string_view name(Theme theme);

struct Settings {
    Theme theme = Theme::paper;
    bool left_handed = false;
    double reading_m = 0.8;   ///< from the eyes to the screen, 0.4 to 4
    double dots_per_mm = 0.0; ///< measured by the person; 0: what the screen tells
    bool inches = false;      ///< beside millimetres
    bool count_turns = true;  ///< a press in a winding counts a turn
    double pace_s = 0.0;  ///< seconds for each turn when counting runs by itself, 0.3 to 10; 0: off
    bool tick = false;    ///< a tick with each turn counted
    bool voice = false;   ///< each step is read aloud
    bool facing = false;  ///< the class looks from the other side: pictures mirror
    double depth_m = 0.0; ///< of clear water between daylight and the fly, 0 to 10
    // How the person fishes: what a fly is dipped into.
    double river_c = 10.0;     ///< temperature, 0 to 30
    double river_m_s = 0.9;    ///< current at the surface, 0.05 to 3
    double river_deep_m = 1.2; ///< 0.1 to 6
    double tippet_mm = 0.15;   ///< 0.05 to 0.5
    double tippet_m = 1.0;     ///< of it in the water, 0 to 6
    std::vector<std::pair<std::string, double>>
        screens{};                         ///< dots per mm of each that was measured
    std::string standard{};                ///< of proportions; empty: the first
    double twin_limit = 0.1;               ///< share of the mean, 0.01 to 0.5
    std::string rules = "slate-weir-open"; ///< the rule set that flies are held against
    bool overlays[overlay_count] = {false, true, true, true, true, false, false, true};
    BookSettings book{};
    KeyMap keys = usual_keys();
    friend bool operator==(const Settings&, const Settings&) = default;
};

/// The key of a screen's dots per mm; of any screen where it has no name.
[[nodiscard]] std::string dots_key(std::string_view screen_name);

/// All settings as texts, each under its key.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> texts_of(const Settings& settings);

/// Takes one setting from its text; whether there is such a key and the text can be meant.
[[nodiscard]] bool take_setting(Settings& settings, std::string_view key, std::string_view text);

} // namespace wrapwright
