#include "gui/settings.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 3> themes{"light", "paper", "dark"};
constexpr std::array<std::string_view, overlay_count> overlays{
    "ruler", "spacing", "ends", "no-go", "sense", "rib angle", "crossings", "ghost", "targets"};

constexpr std::string_view screen_key = "dots per mm on ";

std::string on_off(bool on) { return on ? "on" : "off"; }

bool take_flag(bool& flag, std::string_view text) {
    if (text != "on" && text != "off") return false;
    flag = text == "on";
    return true;
}

/// A number between bounds, or 0 where that is a value of its own.
bool take_number(double& number, std::string_view text, double least, double most, bool or_zero) {
    const Result<double> read = read_number(text);
    if (!read.ok()) return false;
    const double value = read.value();
    const bool fits = (value >= least && value <= most) || (or_zero && value == 0.0);
    if (fits) number = value;
    return fits;
}

} // namespace

std::string_view name(Overlay overlay) { return overlays[static_cast<std::size_t>(overlay)]; }

std::string dots_key(std::string_view screen_name) {
    if (screen_name.empty()) return "dots per mm";
    return std::string(screen_key).append(screen_name);
}

std::string_view name(Theme theme) { return themes[static_cast<std::size_t>(theme)]; }

std::vector<std::pair<std::string, std::string>> texts_of(const Settings& settings) {
    std::vector<std::pair<std::string, std::string>> texts{
        {"theme", std::string(name(settings.theme))},
        {"left hand", on_off(settings.left_handed)},
        {"reading distance", write_number(settings.reading_m)},
        {"dots per mm", write_number(settings.dots_per_mm)},
        {"inches", on_off(settings.inches)},
        {"count turns", on_off(settings.count_turns)},
        {"pace", write_number(settings.pace_s)},
        {"tick", on_off(settings.tick)},
        {"voice", on_off(settings.voice)},
        {"facing the class", on_off(settings.facing)},
        {"water", write_number(settings.depth_m)},
        {"river temperature", write_number(settings.river_c)},
        {"river current", write_number(settings.river_m_s)},
        {"river depth", write_number(settings.river_deep_m)},
        {"tippet thickness", write_number(settings.tippet_mm)},
        {"tippet length", write_number(settings.tippet_m)},
        {"standard", settings.standard},
        {"twin limit", write_number(settings.twin_limit)},
        {"rules", settings.rules},
        {"key map", text_of(settings.keys)},
    };
    add_texts(settings.book, texts);
    for (const auto& [screen, dots] : settings.screens) {
        texts.emplace_back(dots_key(screen), write_number(dots));
    }
    for (std::size_t i = 0; i < overlay_count; ++i) {
        texts.emplace_back("show " + std::string(overlays[i]), on_off(settings.overlays[i]));
    }
    return texts;
}

bool take_setting(Settings& settings, std::string_view key, std::string_view text) {
    if (key == "theme") {
        const auto it = std::find(themes.begin(), themes.end(), text);
        if (it == themes.end()) return false;
        settings.theme = static_cast<Theme>(it - themes.begin());
        return true;
    }
    if (key == "left hand") return take_flag(settings.left_handed, text);
    if (key == "reading distance") return take_number(settings.reading_m, text, 0.4, 4.0, false);
    if (key == "dots per mm") return take_number(settings.dots_per_mm, text, 1.0, 40.0, true);
    if (key == "inches") return take_flag(settings.inches, text);
    if (key == "count turns") return take_flag(settings.count_turns, text);
    if (key == "pace") return take_number(settings.pace_s, text, 0.3, 10.0, true);
    if (key == "tick") return take_flag(settings.tick, text);
    if (key == "voice") return take_flag(settings.voice, text);
    if (key == "facing the class") return take_flag(settings.facing, text);
    if (key == "water") return take_number(settings.depth_m, text, 0.0, 10.0, true);
    if (key == "river temperature") return take_number(settings.river_c, text, 0.0, 30.0, true);
    if (key == "river current") return take_number(settings.river_m_s, text, 0.05, 3.0, false);
    if (key == "river depth") return take_number(settings.river_deep_m, text, 0.1, 6.0, false);
    if (key == "tippet thickness") return take_number(settings.tippet_mm, text, 0.05, 0.5, false);
    if (key == "tippet length") return take_number(settings.tippet_m, text, 0.0, 6.0, true);
    if (key == "twin limit") return take_number(settings.twin_limit, text, 0.01, 0.5, false);
    if (key == "standard") {
        settings.standard = text;
        return true;
    }
    if (key.starts_with(screen_key)) {
        double dots = 0.0;
        if (!take_number(dots, text, 1.0, 40.0, false)) return false;
        const std::string screen(key.substr(screen_key.size()));
        std::erase_if(settings.screens, [&](const auto& s) { return s.first == screen; });
        settings.screens.emplace_back(screen, dots);
        return true;
    }
    if (key == "rules") {
        settings.rules = text;
        return !text.empty();
    }
    if (key == "key map") {
        settings.keys = key_map_of(text);
        return true;
    }
    if (take_setting(settings.book, key, text)) return true;
    if (!key.starts_with("show ")) return false;
    const auto it = std::find(overlays.begin(), overlays.end(), key.substr(5));
    if (it == overlays.end()) return false;
    return take_flag(settings.overlays[it - overlays.begin()], text);
}

} // namespace wrapwright
