#include "core/hook/hook.h"

#include "core/hook/centreline.h"
#include "core/hook/typical.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace wrapwright {

namespace {

constexpr std::string_view shape_names[] = {"straight", "curved", "jig"};
constexpr std::string_view family_names[] = {"dry",      "wet",    "long shank",
                                             "streamer", "curved", "jig"};

// Rules for what hooks are rarely measured for: common practice, no source.
constexpr double eye_over_wire = 3.3; ///< outside of the ring, and its length: 3.0 to 3.6
constexpr double eye_spread = 0.12;
constexpr double barb_over_wire = 0.35; ///< of a raised barb: micro about 0.2, large about 0.5
constexpr double barb_spread = 0.40;
constexpr double jig_radius_over_wire = 1.8; ///< of the centreline: as tight as makers bend it
constexpr double jig_radius_spread = 0.25;
constexpr Angle jig_angle_usual = degrees(60.0); ///< most often; 70 and 90 are sold as well
constexpr Angle jig_angle_doubt = degrees(10.0);

/// Carbon-steel wire; Morton & Hearle, Physical Properties of Textile Fibres, table 5.2.
constexpr Density steel_wire = grams_per_cm3(7.85);
constexpr double eye_loop_over_wire = 8.2; ///< wire in the eye: pi (3.6 - 1), ring of 3.6 wires
constexpr double bend_over_gape = std::numbers::pi / 2.0 + 0.7; ///< round bend and spear
constexpr double mass_model_spread = 0.25; ///< forging, eye and point, on a measured hook

template <class Q>
bool is_given(const Estimate<Q>& e) {
    return e.value.si != 0.0 || e.origin == Origin::measured || e.origin == Origin::stated;
}

/// What a number about a hook may be, with its name for the refusal.
template <class Q>
struct Limit {
    std::string_view key;
    Q least, most;
    std::string_view says;
};

template <class Q>
std::optional<Error> check(const Estimate<Q>& e, const Limit<Q>& limit) {
    if (!is_given(e)) return std::nullopt;
    for (const Q q : {e.low, e.value, e.high}) {
        if (std::isfinite(q.si) && limit.least <= q && q <= limit.most) continue;
        return Error{ErrorCode::out_of_range,
                     "no hook has such a " + std::string(limit.key),
                     "write " + std::string(limit.says) + ", or leave it out",
                     {0, std::string(limit.key)}};
    }
    return std::nullopt;
}

std::optional<Error> check_all(const Hook& h) {
    constexpr Length none{};
    const auto mm = [](double v) { return millimetres(v); };
    const std::pair<const Estimate<Length>*, Limit<Length>> lengths[] = {
        {&h.shank, {"shank", mm(0.5), mm(150.0), "0.5 to 150 mm"}},
        {&h.gape, {"gape", mm(0.5), mm(60.0), "0.5 to 60 mm"}},
        {&h.wire, {"wire", mm(0.05), mm(4.0), "a diameter of 0.05 to 4 mm"}},
        {&h.eye_length, {"eye_length", mm(0.1), mm(20.0), "0.1 to 20 mm"}},
        {&h.eye_diameter, {"eye_diameter", mm(0.1), mm(20.0), "0.1 to 20 mm"}},
        {&h.barb_height, {"barb_height", none, mm(3.0), "0 (barbless) to 3 mm"}},
        {&h.jig_leg, {"jig_leg", none, mm(30.0), "0 to 30 mm"}},
        {&h.jig_radius, {"jig_radius", none, mm(20.0), "0 to 20 mm"}},
    };
    for (const auto& [value, limit] : lengths) {
        if (auto error = check(*value, limit)) return error;
    }
    if (auto error = check(h.jig_angle, Limit<Angle>{"jig_angle", degrees(10.0), degrees(120.0),
                                                     "10 to 120 degrees"})) {
        return error;
    }
    return check(exactly(h.eye_angle),
                 Limit<Angle>{"eye_angle", degrees(-60.0), degrees(60.0), "-60 to 60 degrees"});
}

/// The place on the family's ladder that fits what is given best, or nothing given at all.
std::optional<double> ladder_number(const Hook& h) {
    // The gape is the most regular feature from maker to maker; the number keeps a gape where
    // shank or wire is longer or heavier than usual; wire says least.
    if (is_given(h.gape)) return typical_number(h.family, HookColumn::gape, h.gape.value);
    if (h.size) {
        const HookRange range = typical_range(h.family);
        if (range.largest <= *h.size && *h.size <= range.smallest) return h.size->number;
    }
    if (is_given(h.shank)) return typical_number(h.family, HookColumn::shank, h.shank.value);
    if (is_given(h.wire)) return typical_number(h.family, HookColumn::wire, h.wire.value);
    return std::nullopt;
}

void fill(Estimate<Length>& e, Length value, double spread) {
    if (!is_given(e)) e = about(value, spread);
}

void fill_jig(Hook& h) {
    if (h.shape != HookShape::jig) {
        h.jig_leg = h.jig_radius = exactly(Length{}, Origin::derived);
        h.jig_angle = exactly(Angle{}, Origin::derived);
        return;
    }
    if (!is_given(h.jig_angle)) {
        h.jig_angle = {jig_angle_usual, jig_angle_usual - jig_angle_doubt,
                       jig_angle_usual + jig_angle_doubt, Origin::typical};
    }
    fill(h.jig_radius, jig_radius_over_wire * h.wire.value, jig_radius_spread);
    // The corner of leg and shank lies about one eye length behind the eye.
    const Length corner = h.jig_radius.value * std::tan(h.jig_angle.value.si / 2.0);
    fill(h.jig_leg, std::max(h.eye_length.value - corner, 0.3 * h.eye_length.value), 0.30);
}

} // namespace

std::string_view name(HookShape shape) { return shape_names[static_cast<int>(shape)]; }
std::string_view name(HookFamily family) { return family_names[static_cast<int>(family)]; }

Result<Hook> complete_hook(Hook h) {
    if (auto error = check_all(h)) return *error;
    if (h.shape == HookShape::curved) h.family = HookFamily::curved;
    if (h.shape == HookShape::jig) h.family = HookFamily::jig;
    if (h.family == HookFamily::curved) h.shape = HookShape::curved;
    if (h.family == HookFamily::jig) h.shape = HookShape::jig;

    const std::optional<double> number = ladder_number(h);
    if (!number) {
        return Error{ErrorCode::out_of_range,
                     "nothing says how large the hook is",
                     "write its shank, gape or wire in mm, or a size that the table of typical "
                     "hooks has",
                     {0, "shank"}};
    }
    const auto fill_column = [&](Estimate<Length>& e, HookColumn column) {
        fill(e, typical_value(h.family, column, *number), typical_spread(h.family, column));
    };
    fill_column(h.shank, HookColumn::shank);
    fill_column(h.gape, HookColumn::gape);
    fill_column(h.wire, HookColumn::wire);
    fill(h.eye_diameter, eye_over_wire * h.wire.value, eye_spread);
    fill(h.eye_length, h.eye_diameter.value, eye_spread);
    fill(h.barb_height, barb_over_wire * h.wire.value, barb_spread);
    fill_jig(h);
    return h;
}

Estimate<Mass> hook_mass(const Hook& h) {
    const Length wire = h.wire.value;
    const Length developed = Centreline(h).stations().tip + eye_loop_over_wire * wire;
    const double length_spread =
        std::hypot(relative_spread(h.shank) * h.shank.value.si,
                   relative_spread(h.gape) * bend_over_gape * h.gape.value.si) /
        developed.si;
    const double spread =
        std::hypot(mass_model_spread, 2.0 * relative_spread(h.wire), length_spread);
    const Origin origin = std::max({h.shank.origin, h.gape.origin, h.wire.origin, Origin::derived});
    return about(disc_area(wire) * developed * steel_wire, spread, origin);
}

} // namespace wrapwright
