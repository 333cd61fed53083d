#include "core/hook/typical.h"

#include <cmath>
#include <span>
#include <string>

namespace wrapwright {

namespace {

/// One number of a family, in mm.
struct Row {
    int number;
    double shank, gape, wire;
};

// Nothing here is standardised: no international standard of hook size exists. Published anchors:
// a size 12 dry hook with a gape of 5 mm and a shank of 10 mm; a standard shank of twice the gape
// (plus one eye width); wire of 0.60 mm called medium at 10 and heavy at 12; a size 8 jig hook of
// 60 degrees measured at 0.610 mm. The rest is common practice fitted between them, no source.
// The ladder's step is about 1.16 per even number, as a plate of 1940 drawn at actual size shows.

// Shank and gape of a standard hook; fine wire ("1X fine").
constexpr Row dry_rows[] = {
    {4, 18.0, 9.3, 0.66}, {6, 15.2, 8.0, 0.61}, {8, 13.0, 6.8, 0.56}, {10, 11.2, 5.8, 0.51},
    {12, 9.7, 5.0, 0.47}, {14, 8.4, 4.3, 0.42}, {16, 7.2, 3.7, 0.38}, {18, 6.1, 3.1, 0.34},
    {20, 5.2, 2.7, 0.30}, {22, 4.4, 2.3, 0.27}, {24, 3.7, 2.0, 0.25},
};

// The same shank and gape in standard wire.
constexpr Row wet_rows[] = {
    {4, 18.0, 9.3, 0.76}, {6, 15.2, 8.0, 0.70}, {8, 13.0, 6.8, 0.64}, {10, 11.2, 5.8, 0.58},
    {12, 9.7, 5.0, 0.53}, {14, 8.4, 4.3, 0.49}, {16, 7.2, 3.7, 0.45}, {18, 6.1, 3.1, 0.40},
    {20, 5.2, 2.7, 0.36}, {22, 4.4, 2.3, 0.32}, {24, 3.7, 2.0, 0.29},
};

// 2X long: the shank of a standard hook two numbers larger, its own gape, heavier wire.
constexpr Row long_rows[] = {
    {4, 21.5, 9.3, 0.80},  {6, 18.0, 8.0, 0.74},  {8, 15.2, 6.8, 0.66},
    {10, 13.0, 5.8, 0.61}, {12, 11.2, 5.0, 0.55}, {14, 9.7, 4.3, 0.50},
    {16, 8.4, 3.7, 0.45},  {18, 7.2, 3.1, 0.40},  {20, 6.1, 2.7, 0.35},
};

// 4X long by the same rule (four numbers larger); wire of the 2X long column.
constexpr Row streamer_rows[] = {
    {4, 25.0, 9.3, 0.80},  {6, 21.5, 8.0, 0.74},  {8, 18.0, 6.8, 0.66},
    {10, 15.2, 5.8, 0.61}, {12, 13.0, 5.0, 0.55}, {14, 11.2, 4.3, 0.50},
};

// Curved shank: the chord from the eye to the place above the barb; wire of the wet column.
constexpr Row curved_rows[] = {
    {4, 16.5, 10.5, 0.76}, {6, 14.5, 9.0, 0.70}, {8, 12.5, 7.8, 0.64}, {10, 10.6, 6.7, 0.58},
    {12, 9.1, 5.8, 0.53},  {14, 7.8, 5.0, 0.49}, {16, 6.6, 4.3, 0.45}, {18, 5.6, 3.6, 0.40},
    {20, 4.7, 3.1, 0.36},  {22, 4.0, 2.6, 0.32}, {24, 3.4, 2.2, 0.29},
};

// Jig: the shank behind the jig bend.
constexpr Row jig_rows[] = {
    {6, 14.5, 8.8, 0.66}, {8, 12.5, 7.5, 0.61}, {10, 10.6, 6.4, 0.58}, {12, 9.2, 5.5, 0.54},
    {14, 8.0, 4.7, 0.50}, {16, 6.8, 4.0, 0.46}, {18, 5.8, 3.4, 0.41},  {20, 5.0, 3.0, 0.38},
};

/// A curved shank's arc over its chord, where it turns by 60 degrees from eye to bend.
constexpr double curved_arc_over_chord = std::numbers::pi / 3.0;

std::span<const Row> rows(HookFamily family) {
    switch (family) {
    case HookFamily::dry: return dry_rows;
    case HookFamily::wet: return wet_rows;
    case HookFamily::long_shank: return long_rows;
    case HookFamily::streamer: return streamer_rows;
    case HookFamily::curved: return curved_rows;
    case HookFamily::jig: return jig_rows;
    }
    WW_ASSERT(false);
}

double cell(HookFamily family, const Row& row, HookColumn column) {
    switch (column) {
    case HookColumn::shank:
        return family == HookFamily::curved ? row.shank * curved_arc_over_chord : row.shank;
    case HookColumn::gape: return row.gape;
    case HookColumn::wire: return row.wire;
    }
    WW_ASSERT(false);
}

} // namespace

HookRange typical_range(HookFamily family) {
    const std::span<const Row> table = rows(family);
    return {{table.front().number}, {table.back().number}};
}

Length typical_value(HookFamily family, HookColumn column, double number) {
    const std::span<const Row> table = rows(family);
    std::size_t i = 0;
    while (i + 2 < table.size() && number >= table[i + 1].number) ++i;
    const double a = cell(family, table[i], column);
    const double b = cell(family, table[i + 1], column);
    const double t =
        (number - table[i].number) / static_cast<double>(table[i + 1].number - table[i].number);
    return millimetres(a * std::pow(b / a, t));
}

double typical_number(HookFamily family, HookColumn column, Length value) {
    const std::span<const Row> table = rows(family);
    const double v = in_millimetres(value);
    std::size_t i = 0;
    while (i + 2 < table.size() && v <= cell(family, table[i + 1], column)) ++i;
    const double a = cell(family, table[i], column);
    const double b = cell(family, table[i + 1], column);
    return table[i].number + std::log(v / a) / std::log(b / a) *
                                 static_cast<double>(table[i + 1].number - table[i].number);
}

double typical_spread(HookFamily family, HookColumn column) {
    // Makers differ by about one number either way, for jig and curved hooks by two or three.
    if (family == HookFamily::jig || family == HookFamily::curved) return 0.20;
    return column == HookColumn::wire ? 0.10 : 0.12;
}

Result<Hook> typical_hook(HookFamily family, HookSize size) {
    const HookRange range = typical_range(family);
    if (size < range.largest || range.smallest < size) {
        const std::string from = std::to_string(range.largest.number);
        const std::string to = std::to_string(range.smallest.number);
        return Error{ErrorCode::out_of_range,
                     "no typical " + std::string(name(family)) + " hook of that size is known",
                     "take a size from " + from + " to " + to + ", or measure shank, gape and wire",
                     {0, "size"}};
    }
    Hook hook;
    hook.label = '#';
    hook.label.append(std::to_string(size.number)).append(" ").append(name(family));
    hook.size = size;
    hook.family = family;
    return complete_hook(std::move(hook));
}

} // namespace wrapwright
