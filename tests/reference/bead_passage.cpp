// Beads over bends against an independent brute force: the bent wire as two sampled edges, the bead
// as a channel, tilt and position searched. No formula of the code under test is used.

#include "core/material/bead.h"
#include "core/material/material.h"
#include "tests/support/bead_builder.h"
#include "tests/support/close.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <vector>

using namespace wrapwright;
using wrapwright::test::countersunk;
using wrapwright::test::drilled;
using wrapwright::test::slotted;
using wrapwright::test::within;

namespace {

struct Point {
    double x, y;
};

/// One edge of a bent wire, mm: an arc about the origin with its top at +y, then two legs.
std::vector<Point> edge(double radius, double half_angle, double leg) {
    std::vector<Point> points;
    const double c = std::cos(half_angle), s = std::sin(half_angle);
    constexpr int legs = 120, arc = 240;
    for (int i = legs; i >= 1; --i) {
        const double t = leg * i / legs;
        points.push_back({-radius * s - t * c, radius * c - t * s});
    }
    for (int i = 0; i <= arc; ++i) {
        const double a = half_angle * (2.0 * i / arc - 1.0);
        points.push_back({radius * std::sin(a), radius * std::cos(a)});
    }
    for (int i = 1; i <= legs; ++i) {
        const double t = leg * i / legs;
        points.push_back({radius * s + t * c, radius * c - t * s});
    }
    return points;
}

/// Half the channel's width along its axis: straight, then opening.
struct Channel {
    double straight, depth, bore, mouth;
    [[nodiscard]] double length() const { return straight + depth; }
    [[nodiscard]] double half(double x) const {
        return x <= straight ? bore / 2.0
                             : bore / 2.0 + (x - straight) / depth * (mouth - bore) / 2.0;
    }
};

/// The furthest that an edge, turned by a tilt with its centre at `place`, passes a wall of the
/// channel; side 1 is the upper wall, -1 the lower one.
///
/// Only the stretch inside the channel counts, from its highest point outwards: on a hairpin the
/// wire comes back outside the bead.
double beyond(const std::vector<Point>& points, const Channel& channel, double place, double tilt,
              double side) {
    const double c = std::cos(tilt), s = std::sin(tilt);
    const auto turned = [&](std::size_t i) {
        return Point{place + points[i].x * c - points[i].y * s, points[i].x * s + points[i].y * c};
    };
    std::size_t top = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (turned(i).y > turned(top).y) top = i;
    }
    if (turned(top).x < 0.0 || turned(top).x > channel.length()) return 1e9; // another position
    double worst = -1e9;
    for (const int way : {-1, 1}) {
        Point last = turned(top);
        for (auto i = static_cast<long>(top); i >= 0 && i < std::ssize(points); i += way) {
            const Point p = turned(static_cast<std::size_t>(i));
            for (const double k : {0.0, channel.straight, channel.length()}) {
                if ((last.x - k) * (p.x - k) >= 0.0) continue;
                const double y = last.y + (p.y - last.y) * (k - last.x) / (p.x - last.x);
                worst = std::max(worst, side * y - channel.half(k));
            }
            if (p.x < 0.0 || p.x > channel.length()) break;
            worst = std::max(worst, side * p.y - channel.half(p.x));
            last = p;
        }
    }
    return worst;
}

/// A bent wire by its two edges, long enough for the channel.
struct Bent {
    std::vector<Point> outer, inner;
    Bent(double wire, double radius, double half_angle, double leg)
        : outer(edge(radius + wire / 2.0, half_angle, leg)),
          inner(edge(radius - wire / 2.0, half_angle, leg)) {}
};

/// What one wall lacks and what the other lacks: the bead may shift from wall to wall.
double lacking(const Bent& bent, const Channel& channel, double place, double tilt) {
    return beyond(bent.outer, channel, place, tilt, 1.0) +
           beyond(bent.inner, channel, place, tilt, -1.0);
}

/// The bore that it takes: best tilt at the worst of all positions of the bend along the channel.
double brute(double wire, double radius, double angle, const Channel& channel) {
    const double f = angle / 2.0;
    const Bent bent(wire, radius, f, 2.0 * channel.length() + radius);
    double worst = -1e9;
    for (int i = 1; i < 24; ++i) {
        const double place = channel.length() * i / 24.0;
        double best = 1e9, at = 0.0;
        for (int k = 0; k <= 12; ++k) {
            const double tilt = f * (k / 6.0 - 1.0);
            if (const double v = lacking(bent, channel, place, tilt); v < best) best = v, at = tilt;
        }
        for (double step = f / 12.0; step > 1e-4; step *= 0.5) {
            for (const double tilt : {at - step, at + step}) {
                if (const double v = lacking(bent, channel, place, tilt); v < best) {
                    best = v, at = tilt;
                }
            }
        }
        worst = std::max(worst, best);
    }
    return channel.bore + worst;
}

/// The bore that it takes half way round a bend that is longer than the channel: there the wire is
/// the same at every tilt, and the bead may lie along the arc as it likes.
double brute_half_way(double wire, double radius, double angle, const Channel& channel) {
    const Bent bent(wire, radius, angle / 2.0, 2.0 * channel.length() + radius);
    double best = 1e9;
    for (int i = 1; i < 2000; ++i) {
        best = std::min(best, lacking(bent, channel, channel.length() * i / 2000.0, 0.0));
    }
    return channel.bore + best;
}

double radians_of(double degrees_) { return degrees(degrees_).si; }

Channel channel_of(const Bead& bead) {
    const double depth = in_millimetres(countersink_depth(bead));
    return {in_millimetres(bore_length(bead)) - depth, depth, in_millimetres(bead.bore.value),
            in_millimetres(bead.mouth.value)};
}

double needed_mm(const Bead& bead, double wire, double radius, double angle) {
    return in_millimetres(
        bead_bore_needed(bead, millimetres(wire), millimetres(radius), degrees(angle)));
}

} // namespace

TEST_CASE("the bore needed over a bend agrees with trying every position and tilt") {
    // Source     the brute force above, and to four decimals a 3-D one run apart from this
    //            code (tube point cloud, Nelder-Mead over tilt and offset)
    // Tolerance  0.003 mm: 24 positions along the bore, edges sampled at 0.01 mm
    struct Row {
        double wire, radius, angle, bore_length, needed;
    };
    const Row rows[] = {
        {0.55, 1.0, 60, 2.0, 1.0152}, {0.55, 1.5, 60, 2.0, 0.9378}, {0.60, 0.6, 60, 2.6, 1.3041},
        {0.45, 2.0, 60, 1.6, 0.6405}, {0.60, 3.0, 60, 2.0, 0.7920}, {0.60, 2.5, 180, 2.5, 0.9896},
        {0.50, 1.0, 45, 2.0, 0.8524}, {0.50, 1.0, 90, 2.0, 1.1893},
    };
    for (const Row& r : rows) {
        CAPTURE(r.wire);
        CAPTURE(r.angle);
        const double mm = in_millimetres(bore_needed(millimetres(r.wire), millimetres(r.radius),
                                                     degrees(r.angle), millimetres(r.bore_length)));
        CHECK(within(mm, r.needed, 5e-5)); // four decimals of the 3-D brute force
        const Channel channel{r.bore_length, 0.0, 0.5, 0.5};
        CHECK(within(mm, brute(r.wire, r.radius, radians_of(r.angle), channel), 3e-3));
    }
}

TEST_CASE("a countersunk bead over a short bend needs what trying every position and tilt says") {
    // Tolerance  0.005 mm: 24 positions, edges sampled at 0.01 to 0.05 mm
    for (const double D : {2.0, 2.8, 3.3, 4.0}) {
        for (const double wire : {0.42, 0.5, 0.61}) {
            for (const double angle : {45.0, 60.0, 90.0}) {
                CAPTURE(D);
                CAPTURE(wire);
                CAPTURE(angle);
                const Bead bead = countersunk(D, 0.25 + 0.25 * D, 0.62 * D, degrees(16.0));
                const double expected =
                    brute(wire, 1.8 * wire, radians_of(angle), channel_of(bead));
                CHECK(within(needed_mm(bead, wire, 1.8 * wire, angle), expected, 5e-3));
            }
        }
    }
}

TEST_CASE("a countersunk bead over a bend longer than itself needs what it needs half way round") {
    // Tolerance  0.002 mm: 2000 positions, edges sampled at 0.02 mm; before and after the bend's
    //            middle part of the wire is straight, which never asks for more
    for (const double D : {2.0, 2.8, 3.3, 4.0}) {
        for (const double wire : {0.42, 0.5, 0.61}) {
            for (const double angle : {150.0, 180.0}) {
                CAPTURE(D);
                CAPTURE(wire);
                CAPTURE(angle);
                const Bead bead = countersunk(D, 0.25 + 0.25 * D, 0.62 * D, degrees(16.0));
                const Channel channel = channel_of(bead);
                const double mm = needed_mm(bead, wire, 0.75 * D, angle);
                CHECK(within(mm, brute_half_way(wire, 0.75 * D, radians_of(angle), channel), 2e-3));
                CHECK(mm > brute(wire, 0.75 * D, radians_of(angle), channel) - 2e-3);
            }
        }
    }
}

TEST_CASE("drilled spheres over a 60-degree jig bend need what a table says") {
    // Source     an independent script (root of b = b_needed(sqrt(D^2 - b^2))), to 0.001 mm
    // Tolerance  0.0005 mm of rounding, and the bore's length follows it by at most 0.3
    const std::array<std::array<double, 2>, 4> wires{
        {{0.45, 0.8}, {0.55, 1.0}, {0.65, 1.2}, {0.75, 1.5}}};
    const std::pair<double, std::array<double, 4>> rows[] = {
        {2.0, {0.880, 0.946, 1.013, 1.065}}, {2.5, {1.020, 1.088, 1.155, 1.208}},
        {2.8, {1.104, 1.172, 1.239, 1.293}}, {3.0, {1.160, 1.228, 1.296, 1.349}},
        {3.3, {1.243, 1.312, 1.380, 1.434}}, {3.8, {1.383, 1.452, 1.520, 1.574}},
        {4.6, {1.605, 1.675, 1.743, 1.798}},
    };
    for (const auto& [D, bores] : rows) {
        for (std::size_t i = 0; i < wires.size(); ++i) {
            CAPTURE(D);
            CAPTURE(wires[i][0]);
            const double mm = needed_mm(drilled(D, bores[i]), wires[i][0], wires[i][1], 60.0);
            CHECK(within(mm, bores[i], 8e-4));
        }
    }
}

TEST_CASE("a bead with bore 0.45 sticks on wire of 0.5, and one of 0.70 on its barb alone") {
    // Source     reference books and shop pages name wire, barb and gape as the three limits;
    //            geometry: gape left 5 - (3 - 0.5) / 2 = 3.75 mm and 5 - (4 - 0.5) / 2 = 3.25 mm
    Hook hook;
    hook.shank = exactly(millimetres(10.0), Origin::measured);
    hook.gape = exactly(millimetres(5.0), Origin::measured);
    hook.wire = exactly(millimetres(0.5), Origin::measured);
    hook.barb_height = exactly(millimetres(0.25), Origin::measured);
    hook = complete_hook(hook).value();
    const auto fit = [&](double D, double bore) {
        return bead_fit(countersunk(D, bore, 0.62 * D, degrees(18.0)), hook, millimetres(0.05));
    };
    CHECK(within(in_millimetres(fit(3.0, 0.7).gape_left), 3.75, 1e-12));
    CHECK(within(fit(3.0, 0.7).gape_share, 0.75, 1e-12));
    CHECK(within(in_millimetres(fit(4.0, 0.7).gape_left), 3.25, 1e-12));
    CHECK(within(fit(4.0, 0.7).gape_share, 0.65, 1e-12));
    CHECK(fit(3.0, 0.45).wire.verdict == Passage::sticks);
    CHECK(fit(3.0, 0.70).wire.verdict == Passage::passes);
    CHECK(fit(3.0, 0.70).barb.verdict == Passage::sticks);
    hook.barb_height = exactly(Length{}, Origin::measured); // pressed flat
    CHECK(fit(3.0, 0.70).barb.verdict == Passage::passes);
    CHECK(fit(3.0, 0.70).bend.verdict != Passage::sticks);
}

TEST_CASE("beads go on the hooks that charts give them, with half of the gape and more left") {
    // Source     common practice, no source; the middles of two sellers' charts
    const std::pair<double, int> rows[] = {{2.0, 18}, {2.4, 16}, {2.8, 14}, {3.3, 12}, {3.8, 10}};
    for (const auto& [D, number] : rows) {
        CAPTURE(D);
        MaterialFacts facts;
        facts.kind = MaterialKind::bead;
        facts.substance = Substance::tungsten;
        facts.diameter = millimetres(D);
        for (const HookFamily family : {HookFamily::wet, HookFamily::jig, HookFamily::curved}) {
            CAPTURE(name(family));
            Hook hook = typical_hook(family, {number}).value();
            hook.barb_height = exactly(Length{}, Origin::measured); // pressed flat, as said there
            facts.hole = family == HookFamily::jig ? BeadHole::slotted : BeadHole::countersunk;
            const Bead bead = complete_material(facts, hook.gape.value).value().bead;
            const BeadFit fit = bead_fit(bead, hook, millimetres(0.05));
            CHECK(fit.wire.verdict == Passage::passes);
            CHECK(fit.barb.verdict == Passage::passes);
            CHECK(fit.bend.verdict == Passage::passes);
            CHECK(fit.jig_bend.verdict == Passage::passes);
            CHECK(fit.eye.verdict == Passage::passes);
            CHECK(fit.gape_share > 0.6);
        }
    }
}

TEST_CASE("a slotted bead passes a 60-degree jig bend where a plain one of that bore does not") {
    // Source     common practice, no source: slotted beads are made for jig hooks
    Hook hook = typical_hook(HookFamily::jig, {14}).value();
    const Length clearance = millimetres(0.05);
    CHECK(bead_fit(slotted(2.8, 0.95, 0.8, -0.28), hook, clearance).jig_bend.verdict ==
          Passage::passes);
    CHECK(bead_fit(drilled(2.8, 0.95), hook, clearance).jig_bend.verdict == Passage::sticks);
}
