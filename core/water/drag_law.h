#pragma once
// Drag coefficients of simple bodies over the Reynolds numbers of a sinking fly.

namespace wrapwright {

/// Drag coefficient of a sphere, on its disc.
///
/// Valid   0 < re < 2e5
/// Error   within 7.1 % of the standard drag curve over 0.1 to 1e5: 3.5 % in speed
/// Source  Brown & Lawler 2003
[[nodiscard]] double sphere_drag(double re);

/// Drag coefficient of a long cylinder across the flow, on its diameter times its length.
///
/// Valid   0 < re < 2e5; continuous to 0.2 % at 0.1, exactly elsewhere
/// Error   0.4 % of computed steady flow up to 40; about 5 % of measurements above
/// Source  below 0.1 Lamb and Kaplun; 0.1 to 40 a fit to own solutions of the Navier-Stokes
///         equations (independent computation); from 100 Cheng 2013; a straight line in the
///         logarithms between
[[nodiscard]] double cylinder_drag(double re);

/// Drag coefficient of a body that is not round, on the disc of the sphere of its volume.
///
/// `sphericity` is the surface of that sphere over the body's own. At 1 it lies 4 to 5 % above
/// sphere_drag.
/// Valid   0 < re < 2.5e4, 0.1 < sphericity <= 1
/// Source  Haider & Levenspiel 1989
[[nodiscard]] double irregular_drag(double re, double sphericity);

/// Friction coefficient of a smooth surface along the flow, on the wetted area.
///
/// Valid   re of the length along the flow, 0 < re < 5e5
/// Source  Blasius: 1.328 / sqrt(re)
[[nodiscard]] double skin_drag(double re);

} // namespace wrapwright
