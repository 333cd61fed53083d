#pragma once
// What clear water leaves of daylight, by colour: why a red tag goes dark and a green one does not.

#include "core/units/quantity.h"

#include <array>

namespace wrapwright {

/// Absorption of pure water at a wavelength.
/// Units   nm; 1/m
/// Valid   400 <= nm <= 700; linear between the table's rows
/// Source  Pope & Fry 1997, table 3, every 20 nm (from memory, to three digits)
[[nodiscard]] double water_absorption(double nm);

/// What is left of red, green and blue light after a way through clear water, 1 for none.
///
/// The way is the depth: light from above, the fly near the eye.
/// Error   natural water holds more back, the blue first: this is the most that is left
/// Valid   depth >= 0
/// Source  Beer and Lambert: exp(-a d), averaged over each band: red 580 to 680 nm, green 500 to
///         580 nm, blue 420 to 500 nm (bands: an estimate, derived)
[[nodiscard]] std::array<double, 3> light_left(Length depth);

} // namespace wrapwright
