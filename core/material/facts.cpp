#include "core/material/usual.h"

#include <cmath>

namespace wrapwright {

namespace {

/// What a number may be, with the key that recipes know it by.
template <class Q>
struct Bounds {
    std::string_view key;
    Q least, most;
    std::string_view says;
};

template <class Q>
std::optional<Error> check(const std::optional<Q>& said, const Bounds<Q>& bounds) {
    if (!said) return std::nullopt;
    if (std::isfinite(said->si) && bounds.least <= *said && *said <= bounds.most) {
        return std::nullopt;
    }
    return Error{ErrorCode::out_of_range,
                 "no material has such a " + std::string(bounds.key),
                 "write " + std::string(bounds.says) + ", or leave it out",
                 {0, std::string(bounds.key)}};
}

Error too_wide(std::string_view key, std::string_view than) {
    return {ErrorCode::out_of_range,
            std::string(key) + " as wide as its " + std::string(than),
            "write a " + std::string(key) + " smaller than the " + std::string(than),
            {0, std::string(key)}};
}

} // namespace

std::optional<Error> check_facts(const MaterialFacts& f, Length gape) {
    const auto um = [](double v) { return micrometres(v); };
    const auto mm = [](double v) { return millimetres(v); };
    const std::pair<const std::optional<Length>*, Bounds<Length>> lengths[] = {
        {&f.diameter, {"size", um(1.0), mm(50.0), "0.001 to 50 mm"}},
        {&f.width, {"width", um(1.0), mm(100.0), "0.001 to 100 mm"}},
        {&f.thickness, {"thickness", um(1.0), mm(50.0), "0.001 to 50 mm"}},
        {&f.usable_length, {"fibre_length", mm(0.1), mm(2000.0), "0.1 to 2000 mm"}},
        {&f.barb_length, {"barb_length", mm(0.1), mm(500.0), "0.1 to 500 mm"}},
        {&f.fibre_diameter, {"fibre_diameter", um(1.0), mm(5.0), "0.001 to 5 mm"}},
        {&f.bore, {"bore", mm(0.05), mm(20.0), "0.05 to 20 mm"}},
        {&f.slot, {"slot", mm(0.05), mm(20.0), "0.05 to 20 mm"}},
    };
    for (const auto& [said, bounds] : lengths) {
        if (auto error = check(*said, bounds)) return error;
    }
    if (auto error = check(f.linear, Bounds<LinearDensity>{"linear", denier(1.0), denier(1e6),
                                                           "1 to 1,000,000 den"})) {
        return error;
    }
    if (auto error = check(f.weighed, Bounds<Mass>{"weighed", milligrams(0.01), grams(100.0),
                                                   "0.01 mg to 100 g for one piece"})) {
        return error;
    }
    if (auto error = check(f.density, Bounds<Density>{"density", grams_per_cm3(0.005),
                                                      grams_per_cm3(23.0), "0.005 to 23 g/cm3"})) {
        return error;
    }
    if (auto error =
            check(f.cure, Bounds<Duration>{"cure", seconds(0.0), minutes(14.0 * 24.0 * 60.0),
                                           "no time to 14 days"})) {
        return error;
    }
    const Length outside = f.diameter.value_or(usual(f.kind).width.on(gape).value);
    if (f.bore && *f.bore >= outside) return too_wide("bore", "size");
    if (f.slot && *f.slot >= outside) return too_wide("slot", "size");
    return std::nullopt;
}

} // namespace wrapwright
