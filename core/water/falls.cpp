#include "core/water/falls.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

namespace wrapwright {

namespace {

// In the factor, whose half is in the speed: what a repeat does not tell, and how well one hand times
// a fall, worth four repeats until there are some (estimates; +-5 % in speed from one fall).
constexpr double model_doubt = 0.08, usual_scatter = 0.03, usual_weight = 4.0;
constexpr Length run_in = metres(0.3);

Error bad_fall(std::size_t i, std::string_view message, std::string remedy) {
    std::string what = "fall " + std::to_string(i + 1);
    what.append(": ").append(message);
    return {ErrorCode::out_of_range, std::move(what), std::move(remedy), {0, "timed"}};
}

/// The factor of one fall; the run-up of a fall from rest depends on it and is found by repeating.
double factor_of(WetShape shape, const FlyBody& body, const Fall& fall, const Water& water) {
    const double weight = fly_weight(body, water).value.si;
    double wall = 1.0;
    if (fall.jar.si > 0.0 && shape.bead.si > 0.0) {
        wall = 1.0 - std::pow(std::min(0.9, shape.bead / fall.jar), 1.5);
    }
    const auto at = [&](double speed) {
        shape.factor = 1.0;
        return weight / drag(shape, Speed{speed / wall}, water).si;
    };
    double factor = at((fall.height / fall.time).si);
    if (!fall.from_rest) return factor;
    for (int i = 0; i < 12; ++i) {
        shape.factor = factor;
        const Length behind = start_up(shape, body.mass.value, body.volume.value, water).behind;
        factor = at(((fall.height + behind) / fall.time).si);
    }
    return factor;
}

} // namespace

Result<FallFit> fit_falls(const WetShape& shape, const FlyBody& body,
                          const std::vector<Fall>& falls) {
    FallFit fit;
    double sum = 0.0;
    for (std::size_t i = 0; i < falls.size(); ++i) {
        const Fall& fall = falls[i];
        const Result<Water> water = water_at(fall.temperature, fall.kind);
        if (!water.ok()) return bad_fall(i, water.error().message, water.error().remedy);
        const double speed = (fall.height / fall.time).si;
        if (!(fall.height.si >= 0.02 && fall.height.si <= 20.0 && fall.time.si > 0.0 &&
              speed >= 1e-3 && speed <= 5.0)) {
            return bad_fall(i, "no fly falls like that",
                            "give height and seconds, such as 0.5m:1.3s");
        }
        if (!(fall.jar.si == 0.0 || (fall.jar.si >= 0.01 && fall.jar.si > 1.2 * shape.bead.si))) {
            return bad_fall(i, "the fly does not go into that jar",
                            "give the jar's inside diameter");
        }
        if (fly_weight(body, water.value()).value.si <= 0.0) {
            return bad_fall(i, "as reckoned, this fly does not sink",
                            "weigh the fly first, or check the recipe's materials");
        }
        const double factor = factor_of(shape, body, fall, water.value());
        fit.each.push_back({factor});
        sum += std::log(factor);
        fit.wall_near = fit.wall_near || (fall.jar.si > 0.0 && fall.jar < 20.0 * shape.bead);
        fit.too_short = fit.too_short || fall.height < run_in;
    }
    if (falls.empty()) return fit;
    const auto n = static_cast<double>(falls.size());
    const double mean = sum / n;
    double squares = 0.0;
    for (const Factor& f : fit.each) {
        squares += (std::log(f.si) - mean) * (std::log(f.si) - mean);
    }
    const double scatter = n > 1.0 ? std::sqrt(squares / (n - 1.0)) : 0.0;
    const double pooled = std::sqrt((usual_weight * usual_scatter * usual_scatter + squares) /
                                    (usual_weight + n - 1.0));
    const double half = std::hypot(model_doubt, 2.0 * pooled / std::sqrt(n));
    fit.scatter = 0.5 * scatter; // drag goes by about the square of the speed
    fit.factor = {
        {std::exp(mean)}, {std::exp(mean - half)}, {std::exp(mean + half)}, Origin::measured};
    return fit;
}

} // namespace wrapwright
