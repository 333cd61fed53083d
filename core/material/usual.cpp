#include "core/material/usual.h"

#include "core/assert.h"

#include <array>

namespace wrapwright {

namespace {

using K = MaterialKind;
using S = Substance;

// In the order of the enumeration. Nothing of this is standardised; where a row says no more it is
// common practice from memory, no source, and its spread is meant to be wide enough.
constexpr std::array<UsualKind, 30> kinds{{
    // 70 den is the thread that most trout recipes name; its size follows from denier and density.
    // Packing of the build-up 0.6 loose, 0.7, 0.8 tight: the whole doubt of a thread build-up.
    {.kind = K::thread, .word = "thread", .substance = S::nylon, .section = Section::spun},
    // "Start near the hook's own wire diameter", a magazine article; sold .010 to .035 in.
    {.kind = K::ballast,
     .word = "ballast",
     .substance = S::tin,
     .section = Section::round,
     .width = {0.0, 0.090, 0.20}},
    // Small on 14-18, brassie on 12-16, medium on 8-12: 0.13 mm, 0.18 mm and 0.25 mm.
    {.kind = K::wire,
     .word = "wire",
     .substance = S::copper,
     .section = Section::round,
     .width = {0.0, 0.034, 0.25},
     .springy = true},
    // Flat: 0.3-0.4 mm on 16-18, 0.7-0.8 on 14, 1.0-1.2 on 12, 1.5 on 10; 0.012-0.03 mm thick.
    {.kind = K::tinsel,
     .word = "tinsel",
     .substance = S::polyester,
     .section = Section::flat,
     .width = {0.0, 0.20, 0.40},
     .height = {0.02, 0.0, 0.40}},
    // A core with film wound round it; 0.3 mm extra small to 1.2 mm large.
    {.kind = K::oval,
     .word = "oval",
     .substance = S::polyester,
     .section = Section::round,
     .width = {0.0, 0.10, 0.30},
     .height = {0.0, 0.07, 0.30},
     .solid = 0.6,
     .solid_spread = 0.3,
     .springy = true},
    // One strand of 200 to 450 den, untwisted.
    {.kind = K::floss,
     .word = "floss",
     .substance = S::rayon,
     .section = Section::spun,
     .packing = 0.6},
    {.kind = K::yarn,
     .word = "yarn",
     .substance = S::acrylic,
     .section = Section::round,
     .width = {2.0, 0.0, 0.35},
     .solid = 0.22,
     .solid_spread = 0.35,
     .packing = 0.3},
    // Micro 1.3-2 mm, small 2.5-3, medium 4-5. The pile gives way below: two thirds of it stand.
    {.kind = K::chenille,
     .word = "chenille",
     .substance = S::rayon,
     .section = Section::round,
     .width = {0.0, 0.42, 0.35},
     .height = {0.0, 0.28, 0.40},
     .solid = 0.15,
     .solid_spread = 0.40,
     .packing = 0.2},
    // Stem 0.3-0.6 mm, half as thick as wide, flue 2-5 mm; the flue weighs about half the stem.
    {.kind = K::herl,
     .word = "herl",
     .substance = S::keratin,
     .section = Section::flat,
     .width = {0.40, 0.0, 0.40},
     .height = {0.20, 0.0, 0.40},
     .usable_length = {100.0, 0.0, 0.50},
     .barb_length = {3.0, 0.0, 0.50},
     .solid = 1.0,
     .solid_spread = 0.40,
     .plumage = true},
    // Stripped: 0.4-0.8 mm wide, 60-120 mm long.
    {.kind = K::quill,
     .word = "quill",
     .substance = S::keratin,
     .section = Section::flat,
     .width = {0.60, 0.0, 0.30},
     .height = {0.12, 0.0, 0.35},
     .usable_length = {90.0, 0.0, 0.35},
     .plumage = true},
    // Goose 1.5-2.5 mm wide at the base and 25-35 mm long; it runs out to a point.
    {.kind = K::biot,
     .word = "biot",
     .substance = S::keratin,
     .section = Section::flat,
     .width = {2.0, 0.0, 0.30},
     .height = {0.15, 0.0, 0.40},
     .usable_length = {32.0, 0.0, 0.30},
     .solid = 0.5,
     .solid_spread = 0.30,
     .plumage = true,
     .pieces = true},
    // Stiff barbs for tails: 0.06-0.12 mm, 20-45 mm long.
    {.kind = K::fibres,
     .word = "fibres",
     .substance = S::keratin,
     .section = Section::round,
     .width = {0.09, 0.0, 0.35},
     .usable_length = {32.0, 0.0, 0.40},
     .plumage = true,
     .pieces = true},
    // Barb 1.5 gapes, four sources agree; barb 0.03-0.08 mm; stem 0.2-0.5 mm with a pith; usable
    // 25 mm of a cape feather to 250 mm of a saddle; barbs per mm of stem from memory.
    {.kind = K::hackle,
     .word = "hackle",
     .substance = S::keratin,
     .section = Section::round,
     .width = {0.30, 0.0, 0.40},
     .usable_length = {90.0, 0.0, 0.70},
     .fibre_diameter = {0.05, 0.0, 0.45},
     .barb_length = {0.0, 1.5, 0.15},
     .barbs_per_mm = 4.0,
     .solid = 0.8,
     .solid_spread = 0.25,
     .plumage = true},
    // To the point or the bend, and softer: barb 8-25 mm, 0.02-0.06 mm.
    {.kind = K::soft_hackle,
     .word = "soft_hackle",
     .substance = S::keratin,
     .section = Section::round,
     .width = {0.25, 0.0, 0.40},
     .usable_length = {30.0, 0.0, 0.50},
     .fibre_diameter = {0.04, 0.0, 0.50},
     .barb_length = {0.0, 1.8, 0.30},
     .barbs_per_mm = 3.0,
     .solid = 0.8,
     .solid_spread = 0.25,
     .plumage = true},
    // Barbs 40-100 mm; a barb with its own fluff counts as a thicker smooth one.
    {.kind = K::marabou,
     .word = "marabou",
     .substance = S::keratin,
     .section = Section::round,
     .width = {0.35, 0.0, 0.40},
     .usable_length = {70.0, 0.0, 0.40},
     .fibre_diameter = {0.08, 0.0, 0.50},
     .barb_length = {60.0, 0.0, 0.40},
     .barbs_per_mm = 3.0,
     .solid = 0.8,
     .solid_spread = 0.25,
     .plumage = true},
    // Feather 20-55 mm, barbs 10-22 mm and 0.02 mm before their own fluff.
    {.kind = K::cdc,
     .word = "cdc",
     .substance = S::keratin,
     .section = Section::round,
     .width = {0.25, 0.0, 0.40},
     .usable_length = {35.0, 0.0, 0.45},
     .fibre_diameter = {0.04, 0.0, 0.50},
     .barb_length = {16.0, 0.0, 0.35},
     .barbs_per_mm = 3.0,
     .solid = 0.8,
     .solid_spread = 0.25,
     .plumage = true},
    // Deer: 28-53 mm long and 0.20-0.38 mm thick, hair-identification manuals.
    {.kind = K::hair,
     .word = "hair",
     .substance = S::keratin,
     .section = Section::round,
     .width = {0.25, 0.0, 0.35},
     .usable_length = {40.0, 0.0, 0.40},
     .pieces = true},
    // 0.7-1 gape wide, a 1940 manual; 30-60 mm long; barbs side by side with air between.
    {.kind = K::slip,
     .word = "slip",
     .substance = S::keratin,
     .section = Section::flat,
     .width = {0.0, 0.85, 0.18},
     .height = {0.10, 0.0, 0.40},
     .usable_length = {45.0, 0.0, 0.35},
     .solid = 0.6,
     .solid_spread = 0.40,
     .plumage = true,
     .pieces = true},
    {.kind = K::dubbing,
     .word = "dubbing",
     .substance = S::keratin,
     .usable_length = {20.0, 0.0, 0.60},
     .fibre_diameter = {0.025, 0.0, 0.50},
     .packing = 0.13},
    // Sheet of 2 mm usually, a strip as wide as the gape: magazine articles on foam flies.
    {.kind = K::foam,
     .word = "foam",
     .substance = S::foam,
     .section = Section::flat,
     .width = {0.0, 1.0, 0.20},
     .height = {2.0, 0.0, 0.50}},
    // 0.05-0.15 mm thick, a strip of 0.6-0.8 gape.
    {.kind = K::film,
     .word = "film",
     .substance = S::vinyl,
     .section = Section::flat,
     .width = {0.0, 0.70, 0.20},
     .height = {0.10, 0.0, 0.50}},
    {.kind = K::legs,
     .word = "legs",
     .substance = S::rubber,
     .section = Section::round,
     .width = {0.60, 0.0, 0.50},
     .usable_length = {100.0, 0.0, 0.50},
     .pieces = true},
    {.kind = K::flash,
     .word = "flash",
     .substance = S::polyester,
     .section = Section::flat,
     .width = {0.60, 0.0, 0.50},
     .height = {0.02, 0.0, 0.40},
     .usable_length = {200.0, 0.0, 0.40},
     .pieces = true},
    // 0.45-0.70 gape; charts of two sellers: 2.0 on 18, 2.4 on 16, 2.8 on 14, 3.3 on 12, 3.8 on 10.
    {.kind = K::bead, .word = "bead", .substance = S::brass, .width = {0.0, 0.65, 0.15}},
    {.kind = K::cone, .word = "cone", .substance = S::brass, .width = {0.0, 0.75, 0.20}},
    // Two balls on a bar; the width is over both, the height that of a ball.
    {.kind = K::dumbbell,
     .word = "dumbbell",
     .substance = S::brass,
     .width = {0.0, 1.3, 0.25},
     .height = {0.0, 0.5, 0.25}},
    {.kind = K::tube,
     .word = "tube",
     .substance = S::polypropylene,
     .section = Section::round,
     .width = {1.8, 0.0, 0.40},
     .usable_length = {25.0, 0.0, 0.60},
     .solid = 0.64,
     .solid_spread = 0.25},
    {.kind = K::coat, .word = "coat", .substance = S::lacquer},
    {.kind = K::eyes,
     .word = "eyes",
     .substance = S::acrylic,
     .width = {0.0, 1.0, 0.30},
     .height = {0.0, 0.4, 0.30}},
    {.kind = K::other,
     .word = "other",
     .substance = S::nylon,
     .section = Section::round,
     .width = {0.50, 0.0, 0.90},
     .solid = 0.5,
     .solid_spread = 0.60},
}};

constexpr Estimate<Mass> drop(double mg, double low, double high) {
    return {milligrams(mg), milligrams(low), milligrams(high), Origin::typical};
}

// A drop is 2-10 mg when it is put on; of a lacquer about a third stays. From memory, as are the
// times: solvent 10-60 min, quick glue seconds, a lamp 5-20 s, epoxy 5-30 min.
constexpr std::array<UsualCoat, 6> coats{{
    {CoatKind::none, "none", Substance::unknown, {}, {}},
    {CoatKind::varnish, "varnish", Substance::lacquer, drop(1.5, 0.5, 4.0), minutes(20.0)},
    {CoatKind::quick_glue, "quick_glue", Substance::quick_glue, drop(3.0, 1.0, 8.0), seconds(20.0)},
    {CoatKind::light_cured, "light_cured", Substance::light_cured, drop(5.0, 2.0, 10.0),
     seconds(10.0)},
    {CoatKind::epoxy, "epoxy", Substance::epoxy, drop(5.0, 2.0, 10.0), minutes(15.0)},
    {CoatKind::wax, "wax", Substance::unknown, drop(0.5, 0.1, 2.0), {}},
}};

constexpr bool is_in_order() {
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        if (static_cast<std::size_t>(kinds[i].kind) != i) return false;
    }
    for (std::size_t i = 0; i < coats.size(); ++i) {
        if (static_cast<std::size_t>(coats[i].coat) != i) return false;
    }
    return true;
}
static_assert(is_in_order());

} // namespace

const UsualKind& usual(MaterialKind kind) {
    const auto i = static_cast<std::size_t>(kind);
    WW_ASSERT(i < kinds.size());
    return kinds[i];
}

const UsualCoat& usual(CoatKind coat) {
    const auto i = static_cast<std::size_t>(coat);
    WW_ASSERT(i < coats.size());
    return coats[i];
}

std::string_view name(MaterialKind kind) { return usual(kind).word; }
std::string_view name(CoatKind coat) { return usual(coat).word; }

} // namespace wrapwright
