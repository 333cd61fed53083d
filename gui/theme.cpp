#include "gui/theme.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

// Undyed paper and ink; slate for the hours at the vise; and a bench at night. The accents are the
// green of a waxed jacket and, in the dark, brass.
constexpr std::array<Palette, 3> palettes{{
    {.ground = {238, 235, 227},
     .sheet = {250, 248, 243},
     .field = {255, 255, 255},
     .line = {198, 191, 177},
     .ink = {26, 25, 21},
     .soft = {84, 79, 68},
     .accent = {38, 74, 62},
     .accent_ink = {250, 248, 243},
     .good = {40, 88, 52},
     .warn = {138, 46, 14},
     .near = {122, 82, 0}},
    {.ground = {180, 178, 171},
     .sheet = {194, 192, 185},
     .field = {208, 206, 200},
     .line = {140, 137, 128},
     .ink = {16, 15, 12},
     .soft = {48, 45, 38},
     .accent = {30, 58, 49},
     .accent_ink = {240, 237, 229},
     .good = {18, 62, 32},
     .warn = {96, 24, 4},
     .near = {84, 54, 0}},
    {.ground = {20, 22, 24},
     .sheet = {30, 33, 36},
     .field = {40, 44, 48},
     .line = {72, 77, 82},
     .ink = {240, 236, 226},
     .soft = {184, 178, 164},
     .accent = {214, 162, 88},
     .accent_ink = {26, 20, 12},
     .good = {150, 208, 164},
     .warn = {255, 166, 132},
     .near = {236, 206, 110}},
}};

double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

} // namespace

const Palette& palette(Theme theme) { return palettes[static_cast<std::size_t>(theme)]; }

double luminance(Colour c) {
    return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

double contrast(Colour a, Colour b) {
    const double la = luminance(a);
    const double lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

} // namespace wrapwright
