#include "core/water/floating.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace wrapwright {

using std::numbers::pi;

Length capillary_length(const Water& water) {
    return {std::sqrt(water.tension.si / (water.density.si * free_fall))};
}

double film_hold(const Water& water, Angle contact) {
    return 2.0 * water.tension.si * std::sin(std::min(contact.si, 0.5 * pi));
}

Force tip_hold(const Water& water, Length diameter, Angle contact) {
    return {std::max(0.0, -pi * diameter.si * water.tension.si * std::cos(contact.si))};
}

std::string_view name(Floating verdict) {
    constexpr std::array<std::string_view, 3> words{"floats", "sinks when wet", "sinks"};
    return words[static_cast<std::size_t>(verdict)];
}

namespace {

/// One side of the weight: stretches as distances from it, nearest first.
struct Side {
    struct Piece {
        double near, far, hold;
    };
    std::vector<Piece> pieces{};

    void add(double a, double b, double hold) {
        if (hold > 0.0) pieces.push_back({std::min(a, b), std::max(a, b), hold});
    }
    [[nodiscard]] double force() const {
        double sum = 0.0;
        for (const Piece& p : pieces) sum += p.hold;
        return sum;
    }
    [[nodiscard]] double moment() const {
        double sum = 0.0;
        for (const Piece& p : pieces) sum += 0.5 * (p.near + p.far) * p.hold;
        return sum;
    }
    /// The most force whose moment is no more than that, nearest pieces first.
    [[nodiscard]] double force_within(double moment) {
        std::sort(pieces.begin(), pieces.end(),
                  [](const Piece& a, const Piece& b) { return a.near + a.far < b.near + b.far; });
        double sum = 0.0;
        for (const Piece& p : pieces) {
            const double arm = 0.5 * (p.near + p.far);
            const double whole = arm * p.hold;
            if (whole <= moment) {
                sum += p.hold;
                moment -= whole;
                continue;
            }
            // Part of it, from its near end: hold t, moment hold t (near + t (far - near) / 2).
            const double a = 0.5 * p.hold * (p.far - p.near), b = p.hold * p.near;
            const double root = std::sqrt(b * b + 4.0 * a * moment);
            const double t = root + b > 0.0 ? 2.0 * moment / (b + root) : 0.0;
            return sum + p.hold * std::clamp(t, 0.0, 1.0);
        }
        return sum;
    }
};

} // namespace

FloatingCheck floating(Force weight, Length centre, const std::vector<Lying>& lying) {
    FloatingCheck out;
    out.weight = weight;
    if (weight.si <= 0.0) {
        out.verdict = Floating::floats;
        return out;
    }
    Side front, rear;
    for (const Lying& l : lying) {
        const double a = (l.from - centre).si, b = (l.to - centre).si, whole = b - a;
        const double split = std::clamp(0.0, a, b);
        if (!(whole > 0.0)) {
            (a < 0.0 ? front : rear).add(std::abs(a), std::abs(a), l.hold.si);
            continue;
        }
        front.add(-a, -split, l.hold.si * (split - a) / whole);
        rear.add(split, b, l.hold.si * (b - split) / whole);
    }
    const double m = std::min(front.moment(), rear.moment());
    out.film = {front.force_within(m) + rear.force_within(m)};
    out.margin = out.film / weight;
    out.verdict = out.margin >= 1.0 ? Floating::sinks_when_wet : Floating::sinks;
    return out;
}

} // namespace wrapwright
