#pragma once
// What a material of each kind usually measures, where nobody says; the parts of
// complete_material.

#include "core/material/material.h"
#include "core/result.h"

#include <string_view>

namespace wrapwright {

/// A usual length: so many millimetres, or so many gapes of the hook, and its spread.
struct Usual {
    double mm = 0.0;
    double gapes = 0.0;
    double spread = 0.0; ///< relative, on both sides

    [[nodiscard]] Estimate<Length> on(Length gape) const {
        return about(millimetres(mm) + gapes * gape, spread);
    }
};

/// How the section of a strand is made.
enum class Section : unsigned char {
    none,  ///< no strand of its own: a bead, a coat, fur
    round, ///< a disc, or an ellipse where it is lower than wide
    flat,  ///< a rectangle
    spun,  ///< fibres without a shape of their own: thread and floss
};

/// What one kind of material usually is.
struct UsualKind {
    MaterialKind kind;
    std::string_view word; ///< as recipes write it
    Substance substance;
    Section section = Section::none;
    Usual width{};
    Usual height{};         ///< none: as the width, for a round strand
    Usual usable_length{};  ///< of one fibre, feather, herl or quill
    Usual fibre_diameter{}; ///< of the barbs of a feather, of fur
    Usual barb_length{};
    double barbs_per_mm = 0.0; ///< of the stem, both sides together
    double solid = 1.0;        ///< share of the section that is solid
    double solid_spread = 0.0; ///< relative
    double packing = 0.7;      ///< solid share of the wound build-up
    bool plumage = false;      ///< hollow keratin: feather
    bool pieces = false;       ///< tied in by the piece: the strand itself is the fibre
    bool springy = false;
};

[[nodiscard]] const UsualKind& usual(MaterialKind kind);

/// How a coat usually is: what stays of one drop, and how long until it may be wound over.
struct UsualCoat {
    CoatKind coat;
    std::string_view word;
    Substance substance;
    Estimate<Mass> drop;
    Duration cure;
};

[[nodiscard]] const UsualCoat& usual(CoatKind coat);

/// The bead of those facts: bore, hole and slot as said, the rest as beads usually are.
[[nodiscard]] Bead usual_bead(const MaterialFacts& facts, Length gape);

/// Width, height, mass per length, solid area and strength of a strand.
void fill_strand(const MaterialFacts& facts, Length gape, Stuff& stuff);

/// Refuses what no material of that kind can have.
[[nodiscard]] std::optional<Error> check_facts(const MaterialFacts& facts, Length gape);

} // namespace wrapwright
