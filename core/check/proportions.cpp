#include "core/check/proportions.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 12> kinds{"dry",   "parachute", "wet",      "soft hackle",
                                                 "nymph", "jig nymph", "streamer", "woolly",
                                                 "sedge", "midge",     "scud",     "emerger"};
constexpr std::array<std::string_view, 5> parts{"tail", "body", "thorax", "wing", "hackle"};

/// Words of a class, the more particular ones first.
struct KindWord {
    std::string_view word;
    FlyKind kind;
};
constexpr KindWord kind_words[] = {
    {"parachute", FlyKind::parachute},
    {"emerger", FlyKind::emerger},
    {"jig", FlyKind::jig_nymph},
    {"soft", FlyKind::soft_hackle},
    {"spider", FlyKind::soft_hackle},
    {"sedge", FlyKind::sedge},
    {"caddis", FlyKind::sedge},
    {"marabou", FlyKind::woolly},
    {"woolly", FlyKind::woolly},
    {"leech", FlyKind::woolly},
    {"streamer", FlyKind::streamer},
    {"midge", FlyKind::midge},
    {"buzzer", FlyKind::midge},
    {"scud", FlyKind::scud},
    {"shrimp", FlyKind::scud},
    {"nymph", FlyKind::nymph},
    {"wet", FlyKind::wet},
    {"dry", FlyKind::dry},
};

bool is_role(std::string_view role, Measured part) {
    switch (part) {
    case Measured::tail: return role == "tail" || role == "shuck" || role == "gills";
    case Measured::body: return role == "body" || role == "abdomen";
    case Measured::thorax: return role == "thorax";
    case Measured::wing: return role == "wing" || role == "post";
    case Measured::hackle:
        return role == "hackle" || role == "collar" || role == "legs" || role == "beard";
    }
    return false;
}

} // namespace

std::string_view name(FlyKind kind) { return kinds[static_cast<std::size_t>(kind)]; }
std::string_view name(Measured part) { return parts[static_cast<std::size_t>(part)]; }

std::optional<FlyKind> fly_kind(std::string_view words) {
    for (const KindWord& k : kind_words) {
        if (words.find(k.word) != words.npos) return k.kind;
    }
    return std::nullopt;
}

std::optional<Measured> measured_part(std::string_view word) {
    const auto it = std::find(parts.begin(), parts.end(), word);
    if (it == parts.end()) return std::nullopt;
    return static_cast<Measured>(it - parts.begin());
}

std::vector<std::string_view> standards_for(FlyKind kind) {
    std::vector<std::string_view> names;
    for (const ProportionRow& row : proportion_rows()) {
        if (row.kind != kind) continue;
        if (std::find(names.begin(), names.end(), row.standard) == names.end()) {
            names.push_back(row.standard);
        }
    }
    return names;
}

std::optional<OwnMeasure> own_measure(const Pattern& pattern, const Tied& tied, Measured part) {
    const auto role = [&](int index) {
        return index == none
                   ? std::string_view{}
                   : std::string_view{pattern.recipe.parts[static_cast<std::size_t>(index)].role};
    };
    if (part == Measured::body || part == Measured::thorax) {
        Extent whole;
        OwnMeasure out;
        for (const Winding& w : tied.windings) {
            if (w.base != 0 || !is_role(role(w.part), part)) continue;
            const Length low = std::min(w.from, w.to), high = std::max(w.from, w.to);
            whole.front = whole.set ? std::min(whole.front, low) : low;
            whole.rear = whole.set ? std::max(whole.rear, high) : high;
            whole.set = true;
            out.step = w.step;
        }
        out.length = whole.rear - whole.front;
        return whole.set ? std::optional(out) : std::nullopt;
    }
    std::optional<OwnMeasure> longest;
    for (const Placed& p : tied.placed) {
        const bool stands = p.kind == PlacedKind::bundle || p.kind == PlacedKind::barbs ||
                            p.kind == PlacedKind::post;
        if (!stands || p.base != 0 || !is_role(role(p.part), part)) continue;
        if (!longest || p.reach > longest->length) longest = OwnMeasure{p.reach, p.step};
    }
    return longest;
}

Estimate<Length> target_of(const ProportionRow& row, const Pattern& pattern, const Tied& tied) {
    const Hook& hook = tied.bases.front().hook;
    const auto own = own_measure(pattern, tied, Measured::body);
    const Length body = own ? own->length : (2.0 / 3.0) * hook.shank.value;
    const Length value = row.shanks * hook.shank.value + row.gapes * hook.gape.value +
                         row.bodies * body + row.eyes * hook.eye_length.value;
    return {value, (1.0 - row.less) * value, (1.0 + row.more) * value,
            std::max(hook.shank.origin, hook.gape.origin)};
}

FitCheck fit_of(const Estimate<Length>& target, Length length) {
    FitCheck out;
    out.off = length - target.value;
    const Length room = out.off.si < 0.0 ? target.value - target.low : target.high - target.value;
    const double over = std::abs(out.off.si);
    constexpr double least = 1e-5; // m: nobody sees a hundredth of a millimetre
    if (over > room.si + least) out.fit = over > 2.0 * room.si + least ? Fit::too : Fit::a_little;
    return out;
}

std::string fit_words(const FitCheck& check) {
    if (check.fit == Fit::right) return "right";
    std::string words = check.fit == Fit::a_little ? "a little " : "too ";
    words.append(check.off.si > 0.0 ? "long by " : "short by ");
    return words.append(write_rounded(std::abs(check.off.si) * 1e3, 1)).append(" mm");
}

BatchSpread batch_spread(const std::vector<double>& values, double limit) {
    BatchSpread out;
    if (values.empty()) return out;
    const auto n = static_cast<double>(values.size());
    for (const double v : values) out.mean += v / n;
    out.low = *std::min_element(values.begin(), values.end());
    out.high = *std::max_element(values.begin(), values.end());
    double squares = 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double off = values[i] - out.mean;
        squares += off * off;
        if (out.worst == none || std::abs(off) > std::abs(out.worst_off)) {
            out.worst = static_cast<int>(i);
            out.worst_off = off;
        }
    }
    out.sd = n > 1.0 ? std::sqrt(squares / (n - 1.0)) : 0.0;
    out.worst_off = out.mean > 0.0 ? out.worst_off / out.mean : 0.0;
    out.twins = std::abs(out.worst_off) <= limit;
    return out;
}

} // namespace wrapwright
