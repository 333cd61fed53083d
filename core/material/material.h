#pragma once
// One material as numbers: what a strand, bead, fibre or coat is, ready to be wound.

#include "core/material/bead.h"
#include "core/material/substance.h"
#include "core/result.h"

#include <optional>
#include <string_view>

namespace wrapwright {

enum class MaterialKind : unsigned char {
    thread,
    ballast,
    wire,
    tinsel,
    oval,
    floss,
    yarn,
    chenille,
    herl,
    quill,
    biot,
    fibres,
    hackle,
    soft_hackle,
    marabou,
    cdc,
    hair,
    slip,
    dubbing,
    foam,
    film,
    legs,
    flash,
    bead,
    cone,
    dumbbell,
    tube,
    coat,
    eyes,
    other,
};

std::string_view name(MaterialKind kind);

/// How a coat hardens, which decides what may follow it and which caution is due.
enum class CoatKind : unsigned char { none, varnish, quick_glue, light_cured, epoxy, wax };

std::string_view name(CoatKind kind);

/// The diameter that a trade word for ribbing wire stands for: extra small, small, brassie, medium,
/// large. Sellers differ by the interval.
[[nodiscard]] std::optional<Estimate<Length>> wire_diameter_word(std::string_view word);

/// One material in numbers. A value of 0 means "does not apply to this kind".
///
/// Units   SI; the origin of each number travels with it
struct Stuff {
    MaterialKind kind = MaterialKind::other;
    Substance substance = Substance::unknown;
    CoatKind coat = CoatKind::none;
    Estimate<Density> density;       ///< of the solid
    Estimate<Length> width;          ///< of a strand as it lies on the hook; round: its diameter
    Estimate<Length> height;         ///< of a strand, radially; round: its diameter
    Estimate<LinearDensity> linear;  ///< mass per length of the strand
    Estimate<Area> solid_area;       ///< linear / density: what volume conservation works with
    double packing = 1.0;            ///< solid share of the wound build-up (physics: phi_b)
    Estimate<Force> strength;        ///< breaking load of the strand
    Estimate<Length> usable_length;  ///< of one fibre, feather, herl or quill
    Estimate<Length> fibre_diameter; ///< of a single fibre, hair or barb; flat: of equal area
    Estimate<Length> barb_length;    ///< of a hackle's barbs, of a herl's flue
    double barbs_per_mm = 0.0;       ///< of a feather's stem, both sides together
    Estimate<Density> wound_density; ///< of dubbing once wound
    Estimate<Mass> item_mass;        ///< of one piece (bead, drop of a coat, feather); weighed wins
    Bead bead;                       ///< for bead and cone
    Duration cure;                   ///< of a coat, until it may be wound over
    bool springy = false;            ///< hard wire: a cut end left standing cuts thread
    bool toxic = false;              ///< lead
};

/// What the recipe says of a material, in numbers where it says any; the rest is filled in.
struct MaterialFacts {
    MaterialKind kind = MaterialKind::other;
    Substance substance = Substance::unknown;
    CoatKind coat = CoatKind::none;
    std::string_view size_word{};     ///< what the size says where it is no number: "brassie"
    std::optional<Length> diameter{}; ///< round strand, bead, hackle stem
    std::optional<Length> width{};
    std::optional<Length> thickness{};
    std::optional<LinearDensity> linear{};
    std::optional<Length> usable_length{};
    std::optional<Length> barb_length{};
    std::optional<Length> fibre_diameter{};
    std::optional<Mass> weighed{}; ///< one piece, by the person's scale
    std::optional<Density> density{};
    std::optional<Length> bore{};
    std::optional<BeadHole> hole{};
    std::optional<Length> slot{};
    std::optional<Duration> cure{};
    bool flat = false; ///< thread spun open
    Origin origin = Origin::stated;
};

/// The material in numbers: what is known kept, the rest from typical values with their spread.
///
/// `gape` scales the typical values that go by the hook (barb length, bead, wing slip width). The
/// mass of a piece is as weighed, else by volume. Hair from 0.18 mm on is taken as hollow.
/// Valid   gape > 0
/// Fails   out_of_range, naming the value, for a number that such a material cannot have
/// Source  usual.cpp, row by row; substance.cpp for densities and strengths
[[nodiscard]] Result<Stuff> complete_material(const MaterialFacts& facts, Length gape);

} // namespace wrapwright
