#include "core/water/water.h"

#include <cmath>

namespace wrapwright {

namespace {

/// Tanaka et al. 2001, the formula recommended for metrology; t in Celsius.
double fresh_density(double t) {
    const double off = t - 3.983035;
    return 999.974950 * (1.0 - off * off * (t + 301.797) / (522528.9 * (t + 69.34881)));
}

/// Patek et al. 2009, 0.1 MPa.
double fresh_viscosity(double t) {
    const double u = (t + 273.15) / 300.0;
    return 1e-6 * (280.68 * std::pow(u, -1.9) + 511.45 * std::pow(u, -7.7) +
                   61.131 * std::pow(u, -19.6) + 0.45903 * std::pow(u, -40.0));
}

/// IAPWS R1-76.
double fresh_tension(double t) {
    const double x = 1.0 - (t + 273.15) / 647.096;
    return 0.2358 * std::pow(x, 1.256) * (1.0 - 0.625 * x);
}

/// What salt adds to the density: Millero & Poisson 1981 at one atmosphere, in practical salinity.
double salt_density(double t) {
    constexpr double s = 35.0 * 35.0 / 35.16504; // of 35 g/kg; reference composition
    const double a =
        0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
    const double b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
    return a * s + b * s * std::sqrt(s) + 4.8314e-4 * s * s;
}

/// How many times as viscous as fresh water: Sharqawy et al. 2010, 0.035 kg/kg.
double salt_viscosity(double t) {
    constexpr double s = 0.035;
    const double a = 1.541 + t * (1.998e-2 - t * 9.52e-5);
    const double b = 7.974 + t * (-7.561e-2 + t * 4.724e-4);
    return 1.0 + a * s + b * s * s;
}

} // namespace

Result<Water> water_at(Temperature temperature, WaterKind kind) {
    const double t = in_celsius(temperature);
    if (!(t > -1e-9 && t < 30.0 + 1e-9)) { // true for a NaN too
        return Error{ErrorCode::out_of_range,
                     "no water that a fly is fished in is that cold or warm",
                     "give a temperature from 0 to 30 degrees Celsius",
                     {0, "temp"}};
    }
    Water water;
    water.temperature = temperature;
    water.density = {fresh_density(t)};
    water.viscosity = {fresh_viscosity(t)};
    water.tension = {fresh_tension(t)};
    if (kind == WaterKind::sea) {
        water.density.si += salt_density(t);
        water.viscosity.si *= salt_viscosity(t);
        water.tension.si *= 1.014;
    }
    return water;
}

} // namespace wrapwright
