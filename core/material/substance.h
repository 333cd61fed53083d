#pragma once
// What things are made of: densities and strengths by substance, each with its source.

#include "core/units/estimate.h"

#include <string_view>

namespace wrapwright {

enum class Substance : unsigned char {
    unknown,
    lead,
    tin,
    bismuth,
    tungsten,
    brass,
    copper,
    steel,
    aluminium,
    glass,
    nylon,
    polyester,
    gel_spun,
    aramid,
    silk,
    cotton,
    rayon,
    keratin, ///< feather, hair, fur, wool
    polypropylene,
    acrylic,
    vinyl,
    foam,
    rubber,
    lacquer,
    quick_glue,
    light_cured,
    epoxy,
};

/// The numbers of a substance and where they are published.
struct SubstanceRow {
    Substance substance;
    std::string_view word; ///< as recipes write it
    Estimate<Density> density;
    Estimate<Tenacity> tenacity; ///< of a yarn of it; 0 where it is no yarn
    std::string_view density_source;
    std::string_view tenacity_source;
    bool toxic = false; ///< lead: the caution about it is due
};

[[nodiscard]] const SubstanceRow& substance_row(Substance substance);

} // namespace wrapwright
