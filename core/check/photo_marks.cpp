#include "core/check/photo_marks.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, photo_spots> spot_names{
    "scale 1",  "scale 2",    "scale 3",  "scale 4",    "eye",        "bend",
    "tail end", "body start", "body end", "hackle tip", "line start", "line end"};
constexpr std::array<std::string_view, 4> scale_names{"card", "points", "shank", "gape"};

Error unset(std::string message, std::string remedy) {
    return {ErrorCode::not_found, std::move(message), std::move(remedy), {0, "scale"}};
}

/// From the back of the eye straight to the end of the shank.
double chord(const BaseRun& base) {
    const Centreline& line = base.line;
    return glm::length(line.position(line.stations().bend) - line.position(Length{}));
}

double share_of(const Estimate<Length>& e) {
    constexpr double sure = 1.959964;
    return e.value.si > 0.0 ? (e.high - e.low).si / (2.0 * sure * e.value.si) : 0.0;
}

} // namespace

std::string_view name(PhotoSpot spot) { return spot_names[static_cast<std::size_t>(spot)]; }

std::optional<PhotoSpot> photo_spot(std::string_view word) {
    const auto it = std::find(spot_names.begin(), spot_names.end(), word);
    if (it == spot_names.end()) return std::nullopt;
    return static_cast<PhotoSpot>(it - spot_names.begin());
}

std::size_t scale_points(ScaleBy by) {
    switch (by) {
    case ScaleBy::card: return 4;
    case ScaleBy::points:
    case ScaleBy::gape: return 2;
    case ScaleBy::shank: return 0;
    }
    return 0;
}

double scale_share(ScaleBy by, const BaseRun& base) {
    if (by == ScaleBy::shank) return share_of(base.hook.shank);
    if (by == ScaleBy::gape) return share_of(base.hook.gape);
    return 0.0;
}

Result<PhotoScale> scale_of(const PhotoMarks& marks, const BaseRun& base) {
    for (std::size_t i = 0; i < scale_points(marks.scale_by); ++i) {
        if (!marks.at[i]) {
            return unset("the scale is not set yet", marks.scale_by == ScaleBy::card
                                                         ? "mark the four corners of the card"
                                                         : "mark both points of the scale");
        }
    }
    const auto& at = marks.at;
    switch (marks.scale_by) {
    case ScaleBy::card: return PhotoScale::card({*at[0], *at[1], *at[2], *at[3]});
    case ScaleBy::points: return PhotoScale::two_points(*at[0], *at[1], marks.known);
    case ScaleBy::gape: return PhotoScale::two_points(*at[0], *at[1], base.hook.gape.value);
    case ScaleBy::shank: break;
    }
    if (!marks[PhotoSpot::eye] || !marks[PhotoSpot::bend]) {
        return unset("the scale is not set yet", "mark the eye and the bend");
    }
    return PhotoScale::two_points(*marks[PhotoSpot::eye], *marks[PhotoSpot::bend],
                                  Length{chord(base)});
}

PhotoLengths lengths_of(const PhotoMarks& marks, const PhotoScale& scale, const PhotoDoubt& doubt) {
    PhotoLengths out;
    const auto seen = [&](PhotoSpot s) -> std::optional<glm::dvec2> {
        return marks[s] && scale.reaches(*marks[s]) ? marks[s] : std::nullopt;
    };
    const auto between = [&](const std::optional<glm::dvec2>& a,
                             const std::optional<glm::dvec2>& b) {
        return a && b ? std::optional(scale.distance(*a, *b, doubt)) : std::nullopt;
    };
    const auto part = [&](Measured m) -> auto& { return out.parts[static_cast<std::size_t>(m)]; };
    const auto eye = seen(PhotoSpot::eye), bend = seen(PhotoSpot::bend);
    const auto start = seen(PhotoSpot::body_start), end = seen(PhotoSpot::body_end);
    out.shank = between(eye, bend);
    part(Measured::tail) = between(end ? end : bend, seen(PhotoSpot::tail_end));
    part(Measured::body) = between(start, end);
    const auto tip = seen(PhotoSpot::hackle_tip);
    if (tip && (eye || start)) {
        const glm::dvec2 a = scale.to_plane(eye ? *eye : *start);
        const glm::dvec2 b = scale.to_plane(start ? *start : *eye);
        const glm::dvec2 t = scale.to_plane(*tip);
        const double square = glm::dot(b - a, b - a);
        const double along =
            square > 0.0 ? std::clamp(glm::dot(t - a, b - a) / square, 0.0, 1.0) : 0.0;
        part(Measured::hackle) = between(scale.to_pixel(a + along * (b - a)), tip);
    }
    if (!eye || !bend || *eye == *bend) return out;
    const glm::dvec2 from = scale.to_plane(*eye);
    const glm::dvec2 way = glm::normalize(scale.to_plane(*bend) - from);
    for (std::size_t i = static_cast<std::size_t>(PhotoSpot::eye); i < photo_spots; ++i) {
        const auto place = seen(static_cast<PhotoSpot>(i));
        if (place) out.along[i] = Length{glm::dot(scale.to_plane(*place) - from, way)};
    }
    return out;
}

std::optional<FlyOnPhoto> FlyOnPhoto::make(const PhotoMarks& marks, const PhotoScale& scale,
                                           const BaseRun& base) {
    const auto &eye = marks[PhotoSpot::eye], &bend = marks[PhotoSpot::bend];
    if (!eye || !bend || !scale.reaches(*eye) || !scale.reaches(*bend)) return std::nullopt;
    FlyOnPhoto out(scale);
    const Centreline& line = base.line;
    out.from_ = line.position(Length{});
    const glm::dvec2 own = line.position(line.stations().bend) - out.from_;
    out.origin_ = scale.to_plane(*eye);
    const glm::dvec2 seen = scale.to_plane(*bend) - out.origin_;
    const double square = glm::dot(own, own);
    if (!(square > 0.0) || !(glm::dot(seen, seen) > 0.0)) return std::nullopt;
    // The two ways to lay a flat hook on two points; the one with its point on the side that is said.
    for (const double side : {1.0, -1.0}) {
        const glm::dvec2 o{own.x, side * own.y};
        const double c = glm::dot(o, seen) / square, s = (o.x * seen.y - o.y * seen.x) / square;
        out.along_ = {c, s};
        out.up_ = side * glm::dvec2{-s, c};
        const glm::dvec2 top = scale.to_pixel(out.origin_ + 1e-3 * out.up_);
        const bool upward = top.y < eye->y;
        if (upward != marks.flipped) break;
    }
    return out;
}

glm::dvec2 FlyOnPhoto::pixel(const glm::dvec2& on_hook) const {
    const glm::dvec2 p = on_hook - from_;
    return scale_.to_pixel(origin_ + p.x * along_ + p.y * up_);
}

std::string text_of(const PhotoMarks& marks) {
    std::string out("scale=");
    out.append(scale_names[static_cast<std::size_t>(marks.scale_by)]);
    out.append(";known=").append(write_number(marks.known.si));
    out.append(";flipped=").append(marks.flipped ? "1" : "0");
    out.append(";choice=").append(std::to_string(static_cast<int>(marks.choice)));
    for (std::size_t i = 0; i < photo_spots; ++i) {
        if (!marks.at[i]) continue;
        out.append(";").append(spot_names[i]).append("=").append(write_number(marks.at[i]->x));
        out.append(",").append(write_number(marks.at[i]->y));
    }
    return out;
}

PhotoMarks photo_marks_of(std::string_view text) {
    PhotoMarks out;
    while (!text.empty()) {
        const auto end = text.find(';');
        const std::string_view piece = text.substr(0, end);
        text = end == text.npos ? std::string_view{} : text.substr(end + 1);
        const auto equals = piece.find('=');
        if (equals == piece.npos) continue;
        const std::string_view key = piece.substr(0, equals), value = piece.substr(equals + 1);
        if (key == "scale") {
            const auto it = std::find(scale_names.begin(), scale_names.end(), value);
            if (it != scale_names.end()) {
                out.scale_by = static_cast<ScaleBy>(it - scale_names.begin());
            }
            continue;
        }
        const auto comma = value.find(',');
        const Result<double> x = read_number(value.substr(0, comma));
        if (!x.ok() || !std::isfinite(x.value())) continue;
        if (key == "known") out.known = Length{x.value()};
        if (key == "flipped") out.flipped = x.value() != 0.0;
        if (key == "choice" && x.value() >= 0.0 && x.value() <= 2.0) {
            out.choice = static_cast<RibChoice>(static_cast<int>(x.value()));
        }
        const auto spot = photo_spot(key);
        if (!spot || comma == value.npos) continue;
        const Result<double> y = read_number(value.substr(comma + 1));
        if (y.ok() && std::isfinite(y.value())) out[*spot] = {x.value(), y.value()};
    }
    return out;
}

} // namespace wrapwright
