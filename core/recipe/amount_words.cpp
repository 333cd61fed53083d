#include "core/recipe/amount_words.h"

#include "core/units/number_text.h"

#include <cmath>

namespace wrapwright {

namespace {

struct UnitWords {
    double scale = 1.0; ///< of the SI value
    int decimals = 3;
    std::string_view one{}, many{};
};

UnitWords words_of(Unit unit, double value) {
    switch (unit) {
    case Unit::count: return {};
    case Unit::turns: return {1.0, 2, " turn", " turns"};
    case Unit::length: return {1e3, 3, " mm", " mm"};
    case Unit::mass:
        return value < 1e-3 ? UnitWords{1e6, 3, " mg", " mg"} : UnitWords{1e3, 3, " g", " g"};
    case Unit::linear_density: return {1e6, 3, " tex", " tex"};
    case Unit::angle: return {57.29577951308232, 1, " degrees", " degrees"};
    case Unit::duration:
        return value < 60.0 ? UnitWords{1.0, 0, " s", " s"}
                            : UnitWords{1.0 / 60.0, 1, " min", " min"};
    case Unit::pinch: return {1.0, 1, " pinch", " pinches"};
    }
    return {};
}

std::string_view words_of(Basis basis) {
    switch (basis) {
    case Basis::shank: return "the shank";
    case Basis::gape: return "the gape";
    case Basis::eye: return "the eye";
    case Basis::wire: return "the hook's wire";
    case Basis::hook: return "the whole hook";
    case Basis::bead: return "the bead";
    case Basis::none:
    case Basis::part: break;
    }
    return {};
}

bool near(double a, double b) { return std::abs(a - b) < 1e-6; }

std::string share_words(double share) {
    if (near(share, 1.0)) return {};
    if (near(share, 0.5)) return "half ";
    if (near(share, 0.25)) return "a quarter of ";
    if (near(share, 0.75)) return "three quarters of ";
    if (near(3.0 * share, 1.0)) return "a third of ";
    if (near(3.0 * share, 2.0)) return "two thirds of ";
    if (near(share, 2.0)) return "twice ";
    return write_rounded(share, 3) + " of ";
}

std::string relative(const Reading& r) {
    const std::string of = r.basis == Basis::part ? r.part : std::string(words_of(r.basis));
    if (near(r.low, r.high)) {
        const std::string share = share_words(r.value);
        return share.empty() ? "as " + of : share + of;
    }
    return write_rounded(r.low, 3) + " to " + write_rounded(r.high, 3) + " of " + of;
}

std::string number(double value, const UnitWords& unit) {
    return write_rounded(value * unit.scale, unit.decimals);
}

std::string_view landmark_words(Landmark landmark) {
    switch (landmark) {
    case Landmark::none: return {};
    case Landmark::eye: return "the eye";
    case Landmark::bead: return "the bead";
    case Landmark::front: return "the front of the shank";
    case Landmark::middle: return "the middle of the shank";
    case Landmark::point: return "above the point";
    case Landmark::barb: return "above the barb";
    case Landmark::bend: return "the bend";
    case Landmark::bend_bottom: return "half round the bend";
    case Landmark::head: return "where the head's room ends";
    case Landmark::thread: return "where the thread hangs";
    case Landmark::part_front: return "the front of ";
    case Landmark::part_rear: return "the rear of ";
    }
    return {};
}

} // namespace

std::string understood(const Reading& r) {
    switch (r.kind) {
    case AmountKind::none: return {};
    case AmountKind::word: return "a word, no number";
    case AmountKind::relative: return relative(r);
    case AmountKind::exact:
    case AmountKind::range:
    case AmountKind::about: break;
    }
    const UnitWords unit = words_of(r.unit, r.value);
    const std::string_view word = near(r.value, 1.0) ? unit.one : unit.many;
    std::string value = number(r.value, unit).append(word);
    if (r.kind == AmountKind::exact) return value;
    std::string text = number(r.low, unit) + " to " + number(r.high, unit);
    text.append(unit.many).append(", ").append(number(r.value, unit)).append(" taken");
    return r.kind == AmountKind::about ? "about " + value : text;
}

std::string understood(const Spot& spot) {
    std::string place(landmark_words(spot.landmark));
    if (!spot.part.empty()) place += spot.part;
    const Reading& off = spot.offset;
    if (off.kind == AmountKind::none || off.value == 0.0) return place;
    Reading way = off;
    const bool eyeward = off.value < 0.0;
    way.low = std::abs(off.low);
    way.value = std::abs(off.value);
    way.high = std::abs(off.high);
    if (way.low > way.high) std::swap(way.low, way.high);
    if (place.empty()) place = landmark_words(Landmark::front);
    return understood(way) + (eyeward ? " ahead of " : " behind ") + place;
}

} // namespace wrapwright
