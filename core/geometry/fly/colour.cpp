#include "core/geometry/fly/colour.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

struct Named {
    std::string_view word;
    unsigned srgb;
};

// Words as recipes use them; the values are by eye, for recognition (common practice, no source).
// Longer phrases that mean more than their words stand here as a whole.
constexpr Named named[] = {
    {"black nickel", 0x3A3B40}, {"gunmetal", 0x4A4D52},      {"peacock herl", 0x3E5A32},
    {"peacock", 0x3E5A32},      {"pheasant tail", 0x7A4424}, {"golden pheasant", 0xC98A1E},
    {"pheasant", 0x85502B},     {"hare's ear", 0x9A7D58},    {"hare", 0x9A7D58},
    {"hares", 0x9A7D58},        {"deer", 0xA98B66},          {"elk", 0xC8A873},
    {"moose", 0x3B2E26},        {"partridge", 0x8C7355},     {"grouse", 0x5F4630},
    {"starling", 0x27282E},     {"mallard", 0xB3AC9C},       {"teal", 0x8D8F8C},
    {"grizzly", 0x8E8E8A},      {"badger", 0xB9B2A2},        {"furnace", 0x7A3E1A},
    {"squirrel", 0x8A6B4B},     {"muskrat", 0x6F7072},       {"mole", 0x4C4B4C},
    {"rabbit", 0x9C8A74},       {"cdc", 0xA7A196},           {"black", 0x141416},
    {"white", 0xF2F0EA},        {"grey", 0x8A8C8E},          {"gray", 0x8A8C8E},
    {"slate", 0x5A646E},        {"charcoal", 0x3A3C40},      {"blue dun", 0x7D858C},
    {"dun", 0x86857F},          {"smoke", 0x77777A},         {"pearl", 0xDDE4E8},
    {"silver", 0xC9CCD0},       {"gold", 0xD9A93C},          {"golden", 0xD0982F},
    {"copper", 0xB5652F},       {"bronze", 0x8A6A33},        {"brass", 0xC9A04A},
    {"nickel", 0xB4B3AE},       {"lead", 0x74777C},          {"chrome", 0xD5D8DB},
    {"pewter", 0x8C8F90},       {"olive", 0x6E6B35},         {"brown", 0x69452A},
    {"tan", 0xBE9C6E},          {"fawn", 0xB79872},          {"sand", 0xCDB58A},
    {"cream", 0xEBDDB8},        {"ivory", 0xEFE6CC},         {"straw", 0xD9C078},
    {"primrose", 0xEFE07A},     {"yellow", 0xEACB2E},        {"amber", 0xD08A22},
    {"honey", 0xC98F3C},        {"ginger", 0xB4763A},        {"cinnamon", 0x94592F},
    {"rust", 0x9A4A22},         {"rusty", 0x9A4A22},         {"mahogany", 0x5B2A1E},
    {"chestnut", 0x74401F},     {"claret", 0x5E1626},        {"wine", 0x5E1B2C},
    {"maroon", 0x541A20},       {"crimson", 0xA3162A},       {"scarlet", 0xC9231C},
    {"red", 0xB8241E},          {"orange", 0xE0701C},        {"peach", 0xEFAE86},
    {"salmon", 0xE58A72},       {"pink", 0xE58AA6},          {"magenta", 0xB82A78},
    {"purple", 0x5A2F78},       {"violet", 0x6A48A0},        {"lilac", 0xAE92C6},
    {"blue", 0x2E5AA0},         {"navy", 0x1F2C50},          {"turquoise", 0x2E9A9C},
    {"kingfisher", 0x2272A8},   {"green", 0x3D7A34},         {"chartreuse", 0xB4D32A},
    {"insect green", 0x6E8F3A}, {"moss", 0x5A6A30},          {"emerald", 0x1F8A54},
    {"lime", 0xA2C83A},         {"natural", 0x9C8566},       {"clear", 0xE8EAE6},
};

/// Words that change the colour they stand with: by what, and how far towards its pure hue.
struct Modifier {
    std::string_view word;
    float by;
    float purer;
};
constexpr Modifier modifiers[] = {
    {"dark", 0.50F, 0.0F},    {"deep", 0.60F, 0.1F},       {"medium", 0.90F, 0.0F},
    {"light", 1.55F, 0.0F},   {"pale", 1.80F, -0.2F},      {"dirty", 0.70F, -0.2F},
    {"bright", 1.25F, 0.25F}, {"fluorescent", 1.5F, 0.5F}, {"fluoro", 1.5F, 0.5F},
    {"hot", 1.25F, 0.45F},    {"fl", 1.5F, 0.5F},
};

constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
constexpr bool is_letter(char c) {
    c = lower(c);
    return (c >= 'a' && c <= 'z') || c == '\'';
}

/// Whether the text has that word from a place on, whole, whatever its case.
bool word_at(std::string_view text, std::size_t at, std::string_view word) {
    if (text.size() - at < word.size()) return false;
    for (std::size_t i = 0; i < word.size(); ++i) {
        const char c = text[at + i] == '-' ? ' ' : lower(text[at + i]);
        if (c != word[i]) return false;
    }
    const std::size_t end = at + word.size();
    return end == text.size() || !is_letter(text[end]);
}

std::optional<Colour> hex_colour(std::string_view text) {
    if (text.size() != 7 || text[0] != '#') return std::nullopt;
    unsigned value = 0;
    for (const char raw : text.substr(1)) {
        const char c = lower(raw);
        unsigned digit = 0;
        if (c >= '0' && c <= '9') {
            digit = static_cast<unsigned>(c - '0');
        } else if (c >= 'a' && c <= 'f') {
            digit = static_cast<unsigned>(c - 'a') + 10U;
        } else {
            return std::nullopt;
        }
        value = value * 16U + digit;
    }
    return linear_colour(value);
}

Colour modified(const Colour& colour, const Modifier& how) {
    const float grey = (colour[0] + colour[1] + colour[2]) / 3.0F;
    Colour out{};
    for (std::size_t i = 0; i < 3; ++i) {
        const float purer = colour[i] + how.purer * (colour[i] - grey);
        out[i] = std::clamp(purer * how.by, 0.0F, 0.95F);
    }
    return out;
}

} // namespace

Colour linear_colour(unsigned srgb) {
    const auto channel = [srgb](unsigned shift) {
        const float c = static_cast<float>((srgb >> shift) & 0xFFU) / 255.0F;
        return c <= 0.04045F ? c / 12.92F : std::pow((c + 0.055F) / 1.055F, 2.4F);
    };
    return {channel(16), channel(8), channel(0)};
}

std::optional<Colour> colour_of_words(std::string_view text) {
    if (const auto hex = hex_colour(text)) return hex;
    std::optional<Colour> found;
    const Modifier* pending = nullptr;
    for (std::size_t at = 0; at < text.size();) {
        if (!is_letter(text[at])) {
            ++at;
            continue;
        }
        const Named* best = nullptr;
        for (const Named& n : named) {
            if (word_at(text, at, n.word) && (!best || n.word.size() > best->word.size())) {
                best = &n;
            }
        }
        if (best) {
            Colour colour = linear_colour(best->srgb);
            if (pending) colour = modified(colour, *pending);
            pending = nullptr;
            found = found ? mix(*found, colour, 0.6F) : colour;
            at += best->word.size();
            continue;
        }
        for (const Modifier& m : modifiers) {
            if (word_at(text, at, m.word)) pending = &m;
        }
        while (at < text.size() && is_letter(text[at])) ++at;
    }
    return found;
}

Colour shade(const Colour& colour, float by) {
    Colour out{};
    for (std::size_t i = 0; i < 3; ++i) out[i] = std::clamp(colour[i] * by, 0.0F, 1.0F);
    return out;
}

Colour mix(const Colour& a, const Colour& b, float share) {
    Colour out{};
    for (std::size_t i = 0; i < 3; ++i) out[i] = a[i] + (b[i] - a[i]) * share;
    return out;
}

} // namespace wrapwright
