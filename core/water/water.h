#pragma once
// The water that a fly sinks in: density, viscosity and surface tension by temperature.

#include "core/result.h"
#include "core/units/quantity.h"

namespace wrapwright {

/// Standard acceleration of free fall, m/s2. Source  CGPM 1901.
inline constexpr double free_fall = 9.80665;

enum class WaterKind : unsigned char {
    fresh,
    sea, ///< 35 g of salt in a kilogram
};

/// Water in numbers.
struct Water {
    Temperature temperature{};
    Density density{};
    Viscosity viscosity{};
    SurfaceTension tension{};
};

/// Water of that temperature at one atmosphere.
///
/// Error   fresh: density 1e-6, viscosity 4e-5, tension 1e-4 of IAPWS-95, R12-08 and R1-76 over the
///         valid range; what a river carries changes density by less than 0.05 %. Sea: density 1e-4,
///         viscosity about 1 %
/// Valid   0 to 30 degrees Celsius
/// Fails   out_of_range for any other temperature
/// Source  fresh: Tanaka et al. 2001; Patek et al. 2009; IAPWS R1-76. Sea: Millero & Poisson 1981;
///         Sharqawy et al. 2010; its tension 1.4 % higher (from memory, as are the sea's formulas)
[[nodiscard]] Result<Water> water_at(Temperature temperature, WaterKind kind = WaterKind::fresh);

} // namespace wrapwright
