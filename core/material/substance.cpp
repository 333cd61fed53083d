#include "core/material/substance.h"

#include "core/assert.h"

#include <array>

namespace wrapwright {

namespace {

constexpr std::string_view morton = "Morton & Hearle, Physical Properties of Textile Fibres, "
                                    "tables 5.1 and 5.2";
constexpr std::string_view rope_yarns = "table of rope yarns; tying thread as published: 5 to 6.5 "
                                        "gf/den nylon, 4 to 6.5 polyester, 36 gel-spun, 19 aramid";
constexpr std::string_view memory = "from memory, not confirmed";

constexpr Estimate<Density> rho(double value, double low, double high) {
    return {grams_per_cm3(value), grams_per_cm3(low), grams_per_cm3(high), Origin::typical};
}

constexpr Estimate<Tenacity> pull(double value, double low, double high) {
    return {newtons_per_tex(value), newtons_per_tex(low), newtons_per_tex(high), Origin::typical};
}

constexpr Estimate<Tenacity> no_yarn{};

// In the order of the enumeration.
constexpr std::array<SubstanceRow, 27> table{{
    {Substance::unknown, "", {}, no_yarn, "", "", false},
    {Substance::lead, "lead", rho(11.34, 11.30, 11.35), no_yarn,
     "lists of densities; 11.35 by lattice constant", "", true},
    {Substance::tin, "tin", rho(7.29, 7.20, 7.40), no_yarn,
     "7.29 by lists and by lattice constant; with a little antimony, copper or bismuth", "", false},
    {Substance::bismuth, "bismuth", rho(9.79, 9.75, 9.81), no_yarn,
     "lists of densities; 9.81 by lattice constant", "", false},
    // What beads are made of, not the element (19.3): sintered with nickel, iron or copper.
    {Substance::tungsten, "tungsten", rho(18.0, 17.0, 18.9), no_yarn,
     "ASTM B777-15, table 1: classes 1 to 4, 17.0 to 18.5; one batch of beads measured 18.85", "",
     false},
    {Substance::brass, "brass", rho(8.49, 8.40, 8.70), no_yarn,
     "C36000, data sheets after ASTM B16: 0.307 lb/in3", "", false},
    {Substance::copper, "copper", rho(8.96, 8.90, 8.97), no_yarn,
     "lists of densities; 8.97 by lattice constant", "", false},
    {Substance::steel, "steel", rho(7.85, 7.75, 8.00), no_yarn,
     "carbon-steel wire, Morton & Hearle, table 5.2; stainless 8.00 from memory", "", false},
    {Substance::aluminium, "aluminium", rho(2.70, 2.65, 2.80), no_yarn, memory, "", false},
    {Substance::glass, "glass", rho(2.50, 2.23, 2.60), no_yarn,
     "2.5 for soda-lime, Morton & Hearle, table 5.1; borosilicate 2.23 from memory", "", false},
    {Substance::nylon, "nylon", rho(1.14, 1.13, 1.15), pull(0.53, 0.44, 0.84), morton, rope_yarns,
     false},
    {Substance::polyester, "polyester", rho(1.39, 1.38, 1.40), pull(0.53, 0.35, 0.84), morton,
     rope_yarns, false},
    {Substance::gel_spun, "gel_spun", rho(0.97, 0.94, 0.98), pull(2.82, 2.65, 3.20), morton,
     rope_yarns, false},
    {Substance::aramid, "aramid", rho(1.44, 1.43, 1.45), pull(1.90, 1.65, 2.00), morton, rope_yarns,
     false},
    {Substance::silk, "silk", rho(1.34, 1.25, 1.36), pull(0.38, 0.30, 0.45), morton, memory, false},
    {Substance::cotton, "cotton", rho(1.55, 1.52, 1.56), pull(0.25, 0.20, 0.30), morton, memory,
     false},
    {Substance::rayon, "rayon", rho(1.52, 1.49, 1.53), pull(0.20, 0.15, 0.25), morton, memory,
     false},
    {Substance::keratin, "keratin", rho(1.31, 1.30, 1.32), pull(0.12, 0.08, 0.16),
     "wool, Morton & Hearle, table 5.1: 1.30 dry, 1.31 at 65 % humidity", memory, false},
    {Substance::polypropylene, "polypropylene", rho(0.91, 0.90, 0.92), pull(0.45, 0.30, 0.60),
     morton, memory, false},
    {Substance::acrylic, "acrylic", rho(1.19, 1.17, 1.20), pull(0.22, 0.18, 0.30), morton, memory,
     false},
    {Substance::vinyl, "vinyl", rho(1.40, 1.20, 1.45), no_yarn,
     "1.40, Morton & Hearle, table 5.1; softened down to 1.2 from memory", "", false},
    {Substance::foam, "foam", rho(0.12, 0.03, 0.25), no_yarn,
     "closed-cell sheet in patents and papers: 0.02 to 0.40, craft sheet 0.09 to 0.18", "", false},
    {Substance::rubber, "rubber", rho(1.10, 0.93, 1.25), no_yarn, memory, "", false},
    {Substance::lacquer, "lacquer", rho(1.15, 1.10, 1.25), no_yarn, memory, "", false},
    {Substance::quick_glue, "quick_glue", rho(1.20, 1.10, 1.25), no_yarn, memory, "", false},
    {Substance::light_cured, "light_cured", rho(1.15, 1.10, 1.25), no_yarn, memory, "", false},
    {Substance::epoxy, "epoxy", rho(1.18, 1.15, 1.30), no_yarn,
     "1.3 in Budinski 1999; 1.15 to 1.2 unfilled, from memory", "", false},
}};

constexpr bool is_in_order() {
    for (std::size_t i = 0; i < table.size(); ++i) {
        if (static_cast<std::size_t>(table[i].substance) != i) return false;
    }
    return true;
}
static_assert(is_in_order());

} // namespace

const SubstanceRow& substance_row(Substance substance) {
    const auto i = static_cast<std::size_t>(substance);
    WW_ASSERT(i < table.size());
    return table[i];
}

} // namespace wrapwright
