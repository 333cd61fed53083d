#pragma once
// Lengths, masses and thread weights as people write them: 7/64 in, .015", 2.8 mm, 1/80 oz, 70 den,
// AWG 34. The words stay; what was understood stands beside them.

#include "core/result.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>

namespace wrapwright {

/// Units a length is written in; awg is the American wire gauge, a number and no multiple.
enum class LengthUnit : unsigned char {
    millimetre,
    centimetre,
    metre,
    inch,
    thou,
    foot,
    yard,
    awg
};
enum class MassUnit : unsigned char { milligram, gram, grain, ounce, pound };
enum class LinearDensityUnit : unsigned char { tex, decitex, denier };

/// A quantity as written, and what was understood of it.
template <class Q, class U>
struct Written {
    std::string text;    ///< verbatim
    double number = 0.0; ///< in `unit`, so that going to other units and back never drifts
    U unit{};
    Q quantity{};
};
using WrittenLength = Written<Length, LengthUnit>;
using WrittenMass = Written<Mass, MassUnit>;
using WrittenLinearDensity = Written<LinearDensity, LinearDensityUnit>;

/// A length with its unit, such as "7/64 in", ".015\"", "2.8mm", "15 thou", "AWG 34", "34 AWG".
///
/// A bare number is refused unless `bare` says what it is in.
/// Fails   malformed without a number or with a decimal comma; unknown_unit for a missing or
///         foreign unit; out_of_range below 0, over 1e9 units, under 1e-12, or outside AWG 0 to 56
[[nodiscard]] Result<WrittenLength> parse_length(std::string_view text,
                                                 std::optional<LengthUnit> bare = std::nullopt);

/// A mass with its unit: "250 mg", "0.25 g", "3.9 gr", "3.9 grains", "1/80 oz". "gr" is the grain.
[[nodiscard]] Result<WrittenMass> parse_mass(std::string_view text,
                                             std::optional<MassUnit> bare = std::nullopt);

/// A thread's mass per length with its unit: "70 den", "70d", "7.8 tex", "78 dtex".
[[nodiscard]] Result<WrittenLinearDensity>
parse_linear_density(std::string_view text, std::optional<LinearDensityUnit> bare = std::nullopt);

/// The unit that a word names, in any case and with or without a full stop.
[[nodiscard]] std::optional<LengthUnit> length_unit(std::string_view word);
[[nodiscard]] std::optional<MassUnit> mass_unit(std::string_view word);
[[nodiscard]] std::optional<LinearDensityUnit> linear_density_unit(std::string_view word);

/// The unit's short word, which the parsers read back: "mm", "in", "AWG", "gr", "dtex".
[[nodiscard]] std::string_view symbol(LengthUnit unit);
[[nodiscard]] std::string_view symbol(MassUnit unit);
[[nodiscard]] std::string_view symbol(LinearDensityUnit unit);

/// So many of the unit as a quantity.
///
/// Error   two roundings of a double; AWG as wire_gauge_diameter
[[nodiscard]] Length quantity(double number, LengthUnit unit);
[[nodiscard]] Mass quantity(double number, MassUnit unit);
[[nodiscard]] LinearDensity quantity(double number, LinearDensityUnit unit);

/// The number in unit `to` of what is `number` in unit `from`.
///
/// Error   two roundings, by whole-number ratios of the exact definitions: 7/64 in gives 2.778125 mm
/// Source  inch 25.4 mm, grain 64.79891 mg, ounce 28.349523125 g, pound 453.59237 g, all exact:
///         international yard and pound agreement 1959; tex and denier: ISO 1144
[[nodiscard]] double convert(double number, LengthUnit from, LengthUnit to);
[[nodiscard]] double convert(double number, MassUnit from, MassUnit to);
[[nodiscard]] double convert(double number, LinearDensityUnit from, LinearDensityUnit to);

/// "2.8 mm": the shortest text from which the parser gives the same number and unit.
[[nodiscard]] std::string write_size(double number, LengthUnit unit);
[[nodiscard]] std::string write_size(double number, MassUnit unit);
[[nodiscard]] std::string write_size(double number, LinearDensityUnit unit);

/// The diameter of bare wire of that American gauge.
///
/// Valid   0 <= gauge <= 56
/// Error   as std::pow: some units in the last place, not the same ones on every system
/// Source  ASTM B258: 0.005 in x 92^((36 - n) / 39)
[[nodiscard]] Length wire_gauge_diameter(double gauge);

/// The American gauge, with decimals, of bare wire of that diameter; for a diameter > 0.
[[nodiscard]] double wire_gauge(Length diameter);

} // namespace wrapwright
