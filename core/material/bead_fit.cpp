#include "core/hook/centreline.h"
#include "core/material/bead.h"

#include "core/assert.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

// Whether a bead passes. Notation, in m and rad: d wire, R radius of the bend's centreline, f half
// of the bend's angle, r_i = R - d/2 and r_o = R + d/2 its edges, O the bend's centre at the
// origin with the bend's top at +y, so that both legs fall away. A round wire in a round bore
// touches it in the plane of the bend, so the plane is enough.
//
// Straight bore of length h. Sliding through, it is tightest where the bend sits in the bore's
// middle: the wire's outer edge touches one wall at r_o, its inner edge the other wall's ends,
//     on the arc (r_i sin f >= h / 2)   b = r_o - sqrt(r_i^2 - h^2 / 4)
//     on the legs                       b = r_o - r_i / cos f + (h / 2) tan f
// Countersunk: the same with the straight part alone, and besides with the ends A (the front rim)
// and C (the mouth's rim) of one wall on the inner edge while the outer edge touches the other.
// Turning the bead about O does not change where an arc about O meets a wall, so at each position
// the best tilt is the one at which A and C touch together: what is left is one search along the
// wire. Slotted: behind the slot's start there is no inner wall, so the bore ends there.

namespace wrapwright {

namespace {

/// The inner edge of a bend, by length from its top: an arc, then a straight leg on either side.
struct InnerEdge {
    double radius, half_angle; // r_i, f

    [[nodiscard]] glm::dvec2 leg() const { return {std::cos(half_angle), -std::sin(half_angle)}; }
    [[nodiscard]] glm::dvec2 arc_end() const {
        return radius * glm::dvec2{std::sin(half_angle), std::cos(half_angle)};
    }
    [[nodiscard]] glm::dvec2 at(double s) const {
        const double arc = radius * half_angle;
        if (s > arc) return arc_end() + (s - arc) * leg();
        const double turn = radius > 0.0 ? s / radius : 0.0;
        return radius * glm::dvec2{std::sin(turn), std::cos(turn)};
    }
    /// The point of the right half that is `distance` away from a point of the left half.
    [[nodiscard]] glm::dvec2 across(glm::dvec2 from, double distance) const {
        const glm::dvec2 u = leg(), gap = arc_end() - from;
        const double along = glm::dot(u, gap);
        const double root = along * along - glm::dot(gap, gap) + distance * distance;
        const double s = root < 0.0 ? -1.0 : std::sqrt(root) - along;
        if (s >= 0.0) return arc_end() + s * u;
        const double r = glm::length(from);
        const double cosine = (r * r + radius * radius - distance * distance) / (2.0 * r * radius);
        const double turn = std::atan2(from.x, from.y) + std::acos(std::clamp(cosine, -1.0, 1.0));
        return radius * glm::dvec2{std::sin(turn), std::cos(turn)};
    }
};

/// A countersunk bore in the plane: straight from 0 to h, then opening by a slope up to its rim.
struct SunkBore {
    double bore, straight, depth, mouth; // b, h, L, c

    /// The bore that it would take with A and C on the inner edge, A at s to the left of the top.
    [[nodiscard]] double needed(const InnerEdge& edge, double outer, double s) const {
        const double rise = (mouth - bore) / 2.0;
        const double span = std::hypot(straight + depth, rise);
        const glm::dvec2 right = edge.at(s);
        const glm::dvec2 a{-right.x, right.y};
        const glm::dvec2 chord = (edge.across(a, span) - a) / span;
        // The bore's axis climbs against the chord from A to C, which follows the mouth down.
        const double c = (straight + depth) / span, t = rise / span;
        const glm::dvec2 axis{c * chord.x - t * chord.y, t * chord.x + c * chord.y};
        const double x = -glm::dot(a, axis);
        const double y = a.x * axis.y - a.y * axis.x; // of O above A, square to the axis
        if (x <= straight) return outer + y;
        const double slope = rise / depth, secant = std::hypot(1.0, slope);
        if (x - outer * slope / secant >= straight) {
            return outer * secant + y - (x - straight) * slope;
        }
        return y + std::sqrt(outer * outer - (x - straight) * (x - straight));
    }

    /// The largest that is needed at any position along the wire.
    [[nodiscard]] double worst(const InnerEdge& edge, double outer) const {
        const double span = std::hypot(straight + depth, (mouth - bore) / 2.0);
        const glm::dvec2 end = edge.across({0.0, edge.radius}, span); // of C, with A at the top
        const double past = glm::dot(end - edge.arc_end(), edge.leg());
        double low = 0.0, high = edge.radius * std::atan2(end.x, end.y);
        if (past > 0.0) high = edge.radius * edge.half_angle + past;
        constexpr double golden = 0.6180339887498949;
        double a = high - golden * (high - low), b = low + golden * (high - low);
        double at_a = needed(edge, outer, a), at_b = needed(edge, outer, b);
        for (int i = 0; i < 16; ++i) { // to 0.001 of the bead, where the top is flat to 1e-6 of it
            if (at_a > at_b) {
                high = b, b = a, at_b = at_a;
                a = high - golden * (high - low);
                at_a = needed(edge, outer, a);
            } else {
                low = a, a = b, at_a = at_b;
                b = low + golden * (high - low);
                at_b = needed(edge, outer, b);
            }
        }
        return std::max(at_a, at_b);
    }
};

/// `doubt` is how far a negative margin may still be wrong.
PassageCheck judge(Length needed, Length has, Length clearance, Length doubt) {
    PassageCheck check{Passage::passes, needed, has};
    if (check.margin() < -doubt) {
        check.verdict = Passage::sticks;
    } else if (check.margin() < clearance) {
        check.verdict = Passage::tight;
    }
    return check;
}

} // namespace

Length bore_needed(Length wire, Length radius, Angle angle, Length bore_length) {
    WW_ASSERT(wire.si > 0.0 && 2.0 * radius.si >= wire.si && bore_length.si >= 0.0);
    WW_ASSERT(angle.si >= 0.0 && angle.si <= std::numbers::pi);
    const double inner = radius.si - wire.si / 2.0, outer = radius.si + wire.si / 2.0;
    const double half = bore_length.si / 2.0, f = angle.si / 2.0;
    if (inner * std::sin(f) >= half) return {outer - std::sqrt(inner * inner - half * half)};
    const double on_legs = outer + (half * std::sin(f) - inner) / std::cos(f);
    // Round a hairpin no bead goes that is longer than its inside: a bore as long as the bead.
    return {std::min(on_legs, wire.si + bore_length.si)};
}

Length bead_bore_needed(const Bead& bead, Length wire, Length radius, Angle angle) {
    const Length rims = bore_length(bead);
    if (bead.hole == BeadHole::slotted && bead.slot_width.value >= wire + slot_clearance) {
        const Length unslotted = 0.5 * rims + bead.slot_from;
        return bore_needed(wire, radius, angle, std::clamp(unslotted, Length{}, rims));
    }
    const Length depth = countersink_depth(bead);
    const Length straight = rims - depth;
    const Length plain = bore_needed(wire, radius, angle, std::max(Length{}, straight));
    if (depth.si <= 0.0 || angle.si <= 0.0) return plain;
    const SunkBore sunk{bead.bore.value.si, std::max(0.0, straight.si), depth.si,
                        bead.mouth.value.si};
    const InnerEdge edge{radius.si - wire.si / 2.0, angle.si / 2.0};
    return std::max(plain, Length{sunk.worst(edge, radius.si + wire.si / 2.0)});
}

BeadFit bead_fit(const Bead& bead, const Hook& hook, Length clearance) {
    const Length bore = bead.bore.value, wire = hook.wire.value, gape = hook.gape.value;
    const WirePiece bend = Centreline(hook).bend();
    const auto over = [&](Length radius, double angle) {
        const Angle turn{std::clamp(angle, 0.0, std::numbers::pi)};
        const Length needed = bead_bore_needed(bead, wire, std::max(radius, 0.5 * wire), turn);
        return judge(needed, bore, clearance, clearance);
    };
    BeadFit fit;
    fit.wire = judge(wire, bore, clearance, {});
    fit.barb = judge(wire + hook.barb_height.value, bore, clearance, {});
    fit.bend = over(Length{-1.0 / bend.curvature}, -bend.curvature * bend.length.si);
    fit.jig_bend = {Passage::passes, wire, bore};
    if (hook.shape == HookShape::jig) {
        fit.jig_bend = over(hook.jig_radius.value, hook.jig_angle.value.si);
    }
    fit.eye = judge(bore, hook.eye_diameter.value, clearance, {});
    fit.gape_left = gape - 0.5 * (bead.diameter.value - wire);
    fit.gape_share = fit.gape_left / gape;
    return fit;
}

} // namespace wrapwright
