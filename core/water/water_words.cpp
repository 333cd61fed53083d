#include "core/water/water_words.h"

#include "core/tying/words.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

/// The value with so many decimals, zeros kept.
std::string fixed(double v, int decimals) {
    std::string text = write_rounded(v, decimals);
    if (decimals == 0) return text;
    std::size_t point = text.find('.');
    if (point == std::string::npos) {
        point = text.size();
        text.push_back('.');
    }
    text.resize(point + 1 + static_cast<std::size_t>(decimals), '0');
    return text;
}

/// Two digits that count, three from 100 on.
std::string digits(double v) {
    const double size = std::abs(v);
    return fixed(v, size < 0.0995 ? 3 : size < 0.995 ? 2 : size < 9.95 ? 1 : 0);
}

/// VALUE UNIT (LOW to HIGH).
std::string spread(double value, double low, double high, std::string_view unit) {
    const double size = std::abs(value);
    const int decimals = size < 0.0995 ? 3 : size < 0.995 ? 2 : size < 9.95 ? 1 : 0;
    std::string out = fixed(value, decimals);
    out.append(" ").append(unit);
    const std::string from = fixed(low, decimals), to = fixed(high, decimals);
    if (from == to) return out;
    return out.append(" (").append(from).append(" to ").append(to).append(")");
}

std::string ended(std::string words, const InWater& w) {
    if (w.timed) {
        const std::size_t n = w.fit.each.size();
        words.append(n == 1 ? ", by one timed fall" : ", by timed falls");
    } else {
        words.append(", ").append(until_timed);
    }
    return words;
}

} // namespace

std::string speed_words(const Estimate<Speed>& s) {
    return spread(s.value.si, s.low.si, s.high.si, "m/s");
}

std::string weight_words(const Estimate<Mass>& m) {
    const double k = m.value.si < 1e-3 ? 1e6 : 1e3;
    return spread(k * m.value.si, k * m.low.si, k * m.high.si, k > 1e5 ? "mg" : "g");
}

std::string depth_words(const Estimate<Length>& d) {
    return spread(d.value.si, d.low.si, d.high.si, "m");
}

std::string sink_words(const InWater& w) {
    if (w.nearly_neutral) {
        return "Nearly neutral: whether it sinks or rises is within the doubt";
    }
    const bool rises = w.sink.value.si < 0.0;
    Estimate<Speed> s = w.sink;
    if (rises) s = {-s.value, -s.high, -s.low, s.origin};
    std::string words = rises ? "Rises " : "Sinks ";
    words.append(speed_words(s));
    return ended(std::move(words), w);
}

std::string drift_words(const InWater& w, Length along) {
    const auto it = std::min_element(
        w.drift.begin(), w.drift.end(), [&](const DriftPlace& a, const DriftPlace& b) {
            return std::abs((a.along - along).si) < std::abs((b.along - along).si);
        });
    std::string words = depth_words(it->depth);
    words.append(" deep after ").append(digits(it->along.si)).append(" m");
    return ended(std::move(words), w);
}

std::string film_words(const InWater& w) {
    switch (w.film.verdict) {
    case Floating::floats: return "Floats: it is lighter than the water it displaces";
    case Floating::sinks_when_wet: {
        std::string words = "Sinks when wet: dry and laid down flat, the film could hold up to ";
        return words.append(digits(w.film.margin)).append(" times its weight in water");
    }
    case Floating::sinks: break;
    }
    std::string words = "Sinks: the film could hold ";
    return words.append(digits(w.film.margin)).append(" of its weight in water at most");
}

std::string ride_words(const InWater& w) {
    const RideCheck& r = w.ride;
    std::string words;
    const std::string by = digits(std::abs(r.delta.si) * 1e3), doubt = digits(r.doubt.si * 1e3);
    switch (r.verdict) {
    case Ride::point_up: words = "Rides point up, likely: "; break;
    case Ride::point_down: words = "Rides point down, likely: "; break;
    case Ride::undecided: words = "May ride either way: "; break;
    }
    words.append("its weight lies ").append(by).append(" mm (+-").append(doubt);
    words.append(r.delta.si < 0.0 ? ") away from the point" : ") towards the point");
    return words;
}

std::vector<std::string> turn_over_words(const InWater& w) {
    std::vector<std::string> lines;
    if (w.ride.verdict == Ride::point_up) return lines;
    if (w.ride.up.bead_out) {
        std::string line = "Bead ";
        line.append(digits(w.ride.up.bead_out->si * 1e3));
        lines.push_back(line.append(" mm further from the point"));
    }
    if (w.ride.up.ballast) {
        std::string line = digits(w.ride.up.ballast->si * 1e6);
        lines.push_back(line.append(" mg of lead along the back, opposite the point"));
    }
    if (lines.empty()) lines.emplace_back("No weight on this hook turns it over");
    return lines;
}

std::string hang_words(const InWater& w) {
    return "Hangs " + write_rounded(in_degrees(w.hang), 0).append(" degrees from straight down");
}

std::vector<std::string> ground_words(const Pattern& pattern, const InWater& w) {
    std::string sure, typical;
    for (const Portion& p : w.body.portions) {
        const double share = w.mass.value.si > 0.0 ? p.mass.value / w.mass.value : 0.0;
        if (share < 0.01) continue;
        const bool is_sure = p.mass.origin <= Origin::stated;
        std::string& list = is_sure ? sure : typical;
        if (!list.empty()) list.append(", ");
        if (p.material == none) {
            list.append(base_words(pattern.recipe, p.base));
        } else if (p.part == none) {
            list.append("joint");
        } else {
            list.append(part_words(pattern.recipe, p.part));
        }
    }
    std::vector<std::string> lines;
    if (w.body.weighed_whole) lines.emplace_back("Weighed: the whole fly");
    if (!sure.empty()) lines.push_back("Measured or stated: " + sure);
    if (!typical.empty()) lines.push_back("Typical for its kind: " + typical);
    lines.emplace_back(w.timed ? "Timed: how the fly falls"
                               : "Guessed: how the fly falls, +-25 to 30 %");
    lines.emplace_back("Guessed: how the tippet follows, how the river mixes");
    return lines;
}

} // namespace wrapwright
