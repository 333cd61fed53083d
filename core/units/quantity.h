#pragma once
// Kinds of quantity. Inside the core every number is in the coherent SI unit of its kind; a unit
// is named only by the makers and readers below, at the edges.

#include <compare>
#include <numbers>

namespace wrapwright {

/// One physical quantity: a double in the coherent SI unit of its kind, and nothing else.
///
/// The type names the kind (Length), never the unit.
template <class Kind>
struct Quantity {
    double si = 0.0;

    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return {a.si + b.si}; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return {a.si - b.si}; }
    friend constexpr Quantity operator-(Quantity a) { return {-a.si}; }
    friend constexpr Quantity operator*(double k, Quantity a) { return {k * a.si}; }
    friend constexpr Quantity operator*(Quantity a, double k) { return {a.si * k}; }
    friend constexpr Quantity operator/(Quantity a, double k) { return {a.si / k}; }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.si / b.si; }
    constexpr Quantity& operator+=(Quantity b) {
        si += b.si;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity b) {
        si -= b.si;
        return *this;
    }
};

using Length = Quantity<struct LengthKind>;               // m
using Area = Quantity<struct AreaKind>;                   // m2
using Volume = Quantity<struct VolumeKind>;               // m3
using Mass = Quantity<struct MassKind>;                   // kg
using Density = Quantity<struct DensityKind>;             // kg/m3
using LinearDensity = Quantity<struct LinearDensityKind>; // kg/m
using Force = Quantity<struct ForceKind>;                 // N
using Tenacity = Quantity<struct TenacityKind>;           // N m/kg: breaking force over kg/m
using Angle = Quantity<struct AngleKind>;                 // rad
using Duration = Quantity<struct DurationKind>;           // s
using Speed = Quantity<struct SpeedKind>;                 // m/s
using Viscosity = Quantity<struct ViscosityKind>;         // Pa s
using SurfaceTension = Quantity<struct TensionKind>;      // N/m
using Temperature = Quantity<struct TemperatureKind>;     // K

constexpr Area operator*(Length a, Length b) { return {a.si * b.si}; }
constexpr Volume operator*(Area a, Length b) { return {a.si * b.si}; }
constexpr Volume operator*(Length a, Area b) { return {a.si * b.si}; }
constexpr Length operator/(Area a, Length b) { return {a.si / b.si}; }
constexpr Length operator/(Volume a, Area b) { return {a.si / b.si}; }
constexpr Area operator/(Volume a, Length b) { return {a.si / b.si}; }
constexpr Mass operator*(Volume a, Density b) { return {a.si * b.si}; }
constexpr Mass operator*(Density a, Volume b) { return {a.si * b.si}; }
constexpr Mass operator*(LinearDensity a, Length b) { return {a.si * b.si}; }
constexpr Mass operator*(Length a, LinearDensity b) { return {a.si * b.si}; }
constexpr Density operator/(Mass a, Volume b) { return {a.si / b.si}; }
constexpr Volume operator/(Mass a, Density b) { return {a.si / b.si}; }
constexpr LinearDensity operator/(Mass a, Length b) { return {a.si / b.si}; }
constexpr Length operator/(Mass a, LinearDensity b) { return {a.si / b.si}; }
constexpr Area operator/(LinearDensity a, Density b) { return {a.si / b.si}; }
constexpr Force operator*(Tenacity a, LinearDensity b) { return {a.si * b.si}; }
constexpr Speed operator/(Length a, Duration b) { return {a.si / b.si}; }
constexpr Length operator*(Speed a, Duration b) { return {a.si * b.si}; }
constexpr Duration operator/(Length a, Speed b) { return {a.si / b.si}; }

/// The area of a disc of that diameter.
constexpr Area disc_area(Length diameter) {
    return {std::numbers::pi / 4.0 * diameter.si * diameter.si};
}

// Makers. A division by a power of ten rounds once, a multiplication by its inverse twice.
constexpr Length metres(double v) { return {v}; }
constexpr Length millimetres(double v) { return {v / 1e3}; }
constexpr Length micrometres(double v) { return {v / 1e6}; }
constexpr Length inches(double v) { return {v * 254.0 / 1e4}; } // 25.4 mm exactly
constexpr Area square_millimetres(double v) { return {v / 1e6}; }
constexpr Volume cubic_millimetres(double v) { return {v / 1e9}; }
constexpr Mass grams(double v) { return {v / 1e3}; }
constexpr Mass milligrams(double v) { return {v / 1e6}; }
constexpr Mass grains(double v) { return {v * 64.79891 / 1e6}; }
constexpr Mass ounces(double v) { return {v * 28.349523125 / 1e3}; }
constexpr Density grams_per_cm3(double v) { return {v * 1e3}; }
constexpr LinearDensity tex(double v) { return {v / 1e6}; }
constexpr LinearDensity denier(double v) { return {v / 9e6}; } // g per 9,000 m, ISO 1144
constexpr Force newtons(double v) { return {v}; }
constexpr Tenacity newtons_per_tex(double v) { return {v * 1e6}; }
constexpr Angle radians(double v) { return {v}; }
constexpr Angle degrees(double v) { return {v * std::numbers::pi / 180.0}; }
constexpr Duration seconds(double v) { return {v}; }
constexpr Duration minutes(double v) { return {v * 60.0}; }
constexpr Speed metres_per_second(double v) { return {v}; }
constexpr Viscosity pascal_seconds(double v) { return {v}; }
constexpr SurfaceTension newtons_per_metre(double v) { return {v}; }
constexpr Temperature celsius(double v) { return {v + 273.15}; }

// Readers.
constexpr double in_millimetres(Length x) { return x.si * 1e3; }
constexpr double in_inches(Length x) { return x.si * 1e4 / 254.0; }
constexpr double in_cubic_millimetres(Volume x) { return x.si * 1e9; }
constexpr double in_milligrams(Mass x) { return x.si * 1e6; }
constexpr double in_grams(Mass x) { return x.si * 1e3; }
constexpr double in_grains(Mass x) { return x.si * 1e6 / 64.79891; }
constexpr double in_ounces(Mass x) { return x.si * 1e3 / 28.349523125; }
constexpr double in_grams_per_cm3(Density x) { return x.si / 1e3; }
constexpr double in_tex(LinearDensity x) { return x.si * 1e6; }
constexpr double in_denier(LinearDensity x) { return x.si * 9e6; }
constexpr double in_newtons(Force x) { return x.si; }
constexpr double in_newtons_per_tex(Tenacity x) { return x.si / 1e6; }
constexpr double in_degrees(Angle x) { return x.si * 180.0 / std::numbers::pi; }
constexpr double in_seconds(Duration x) { return x.si; }
constexpr double in_metres(Length x) { return x.si; }
constexpr double in_metres_per_second(Speed x) { return x.si; }
constexpr double in_celsius(Temperature x) { return x.si - 273.15; }

} // namespace wrapwright
