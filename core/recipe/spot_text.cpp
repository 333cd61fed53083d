#include "core/recipe/amount_scan.h"
#include "core/units/scan.h"

namespace wrapwright {

namespace {

using detail::PartIds;
using detail::quoted;
using detail::take_any;

constexpr std::string_view remedy =
    "write a place: eye, bead, front, middle, point, barb, bend, bend bottom, head, thread, front "
    "of a part, rear of a part; or a way from it: 1 mm behind bead, 0.2 shank ahead of bend, 0.3 "
    "shank; other words go beside it: {\"text\": ..., \"is\": ...}";

struct Mark {
    Landmark landmark = Landmark::none;
    std::string part{};
};

/// Takes the name of a place that a recipe need not define.
Landmark take_named(std::string_view& rest) {
    if (take_any(rest, {"halfway round the bend", "half way round the bend", "halfway round bend",
                        "bottom of the bend", "bottom of bend", "bend bottom"})) {
        return Landmark::bend_bottom;
    }
    if (take_any(rest, {"start of the bend", "start of bend", "end of the shank", "end of shank",
                        "rear of the shank", "rear of shank", "bend"})) {
        return Landmark::bend;
    }
    if (take_any(rest, {"middle of the shank", "middle of shank", "mid shank", "middle"})) {
        return Landmark::middle;
    }
    if (take_any(rest, {"front of the shank", "front of shank", "front"})) return Landmark::front;
    if (take_any(rest, {"hook point", "point"})) return Landmark::point;
    if (take_any(rest, {"barb"})) return Landmark::barb;
    if (take_any(rest, {"back of the eye", "back of eye", "hook eye", "eye"})) return Landmark::eye;
    if (take_any(rest, {"back of the bead", "back of bead", "rear of the bead", "rear of bead",
                        "bead"})) {
        return Landmark::bead;
    }
    if (take_any(rest, {"head"})) return Landmark::head;
    if (take_any(rest, {"where the thread hangs", "thread"})) return Landmark::thread;
    return Landmark::none;
}

/// Takes a landmark or an end of a part.
Mark take_mark(std::string_view& rest, const PartIds& parts) {
    take_any(rest, {"the"});
    for (const bool front : {true, false}) {
        std::string_view after = rest;
        const bool said = front ? take_any(after, {"front of", "front end of"})
                                : take_any(after, {"rear of", "rear end of", "back of", "end of"});
        if (!said) continue;
        take_any(after, {"the"});
        if (auto part = detail::take_part(after, parts)) {
            rest = after;
            return {front ? Landmark::part_front : Landmark::part_rear, std::move(*part)};
        }
    }
    return {take_named(rest), {}};
}

/// Takes "behind" (+1) or "ahead of" (-1).
int take_side(std::string_view& rest) {
    if (take_any(rest, {"behind", "back from", "tailward of"})) return 1;
    if (take_any(rest, {"ahead of", "in front of", "before", "short of", "eyeward of"})) return -1;
    return 0;
}

Reading towards(int side, Reading offset) {
    if (side > 0) return offset;
    return {offset.kind, offset.unit, offset.basis, -offset.high, -offset.value, -offset.low, {}};
}

Error not_a_place(std::string_view text, std::string message) {
    return {ErrorCode::unknown_word, std::move(message) + ", in " + quoted(text),
            std::string(remedy)};
}

/// The end of a part, or the landmark, that a side such as "behind" is told from.
Mark take_far_mark(std::string_view& rest, const PartIds& parts, int side) {
    Mark mark = take_mark(rest, parts);
    if (mark.landmark != Landmark::none) return mark;
    if (auto part = detail::take_part(rest, parts)) {
        return {side < 0 ? Landmark::part_front : Landmark::part_rear, std::move(*part)};
    }
    return mark;
}

} // namespace

Result<Spot> read_spot(std::string_view text, const std::vector<std::string>& parts) {
    const std::string_view whole = detail::trimmed(text);
    Spot spot;
    spot.text = std::string(text);
    if (whole.empty()) return spot;

    std::string_view rest = whole;
    take_any(rest, {"just", "close", "right", "immediately"});
    int side = take_side(rest);
    std::optional<Reading> offset;
    if (side == 0) {
        const Result<std::optional<Reading>> taken = detail::take_amount(rest, parts);
        if (!taken.ok()) {
            Error error = taken.error();
            error.message += ", in " + quoted(whole);
            return error;
        }
        offset = taken.value();
        if (offset && (offset->unit != Unit::length || offset->basis == Basis::part)) {
            return Error{ErrorCode::unknown_unit, "no length to go by in " + quoted(whole),
                         "write a length or a share of the hook, such as 1 mm behind bead, one eye "
                         "behind eye, 0.3 shank"};
        }
        if (offset) {
            // "0.3 shank" is told from the front, and so is "one eye back".
            const bool back = take_any(rest, {"back"});
            if (rest.empty() && (back || offset->basis == Basis::shank)) {
                spot.landmark = Landmark::front;
                spot.offset = *offset;
                return spot;
            }
            if (rest.empty()) return not_a_place(whole, "it is not said from where");
        }
        side = take_side(rest);
        if (offset && side == 0) {
            return not_a_place(whole, "neither behind nor ahead of anything");
        }
        if (!offset) {
            take_any(rest, {"at", "above", "over", "level with", "opposite", "to", "by", "against",
                            "up to", "under"});
        }
    }
    const Mark mark = side == 0 ? take_mark(rest, parts) : take_far_mark(rest, parts, side);
    const bool foremost = mark.landmark == Landmark::eye || mark.landmark == Landmark::bead ||
                          mark.landmark == Landmark::front;
    if (mark.landmark == Landmark::none && side == 0 && detail::take_part(rest, parts)) {
        return not_a_place(whole, "a part has two ends");
    }
    if (mark.landmark == Landmark::none) {
        return not_a_place(whole, quoted(rest.empty() ? whole : rest) + " is no place on a hook");
    }
    if (take_any(rest, {"of the", "of"})) {
        return not_a_place(whole, "no part of this recipe is called " + quoted(rest));
    }
    if (!rest.empty()) return not_a_place(whole, "not understood at " + quoted(rest));
    if (side < 0 && foremost && !offset) return not_a_place(whole, "nothing is tied there");
    spot.landmark = mark.landmark;
    spot.part = mark.part;
    if (offset) spot.offset = towards(side, *offset);
    return spot;
}

} // namespace wrapwright
