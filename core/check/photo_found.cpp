#include "core/check/photo_found.h"

#include "core/units/number_text.h"

#include <cmath>

namespace wrapwright {

namespace {

std::string said(const Error& error) {
    std::string words = error.message;
    return words.append("; ").append(error.remedy);
}

} // namespace

PhotoFound find_on_photo(const GreyView& photo, const PhotoMarks& marks,
                         const std::vector<PartTarget>& targets, const Pattern& pattern,
                         const Tied& tied, PhotoDoubt doubt) {
    PhotoFound out;
    if (tied.bases.empty()) {
        out.no_scale = "this recipe has no hook";
        return out;
    }
    const BaseRun& base = tied.bases.front();
    const Result<PhotoScale> scale = scale_of(marks, base);
    if (!scale.ok()) {
        out.no_scale = said(scale.error());
        return out;
    }
    out.scale = scale.value();
    doubt.scale_share = std::hypot(doubt.scale_share, scale_share(marks.scale_by, base));
    out.lengths = lengths_of(marks, scale.value(), doubt);
    SeenOnFly seen;
    for (std::size_t i = 0; i < seen.parts.size(); ++i) {
        if (out.lengths.parts[i]) seen.parts[i] = out.lengths.parts[i]->value;
    }
    seen.bare_head = out.lengths.along[static_cast<std::size_t>(PhotoSpot::body_start)];
    const auto &from = marks[PhotoSpot::line_start], &to = marks[PhotoSpot::line_end];
    if (from && to) {
        Result<RibMeasure> ribs = measure_ribs(photo, scale.value(), *from, *to, 5, doubt);
        if (ribs.ok()) {
            out.ribs = std::move(ribs).value();
            const RibMeasure& r = *out.ribs;
            if (r.agree) out.rib_spacing = r.period.value;
            if (!r.agree && marks.choice == RibChoice::by_spectrum) out.rib_spacing = r.by_spectrum;
            if (!r.agree && marks.choice == RibChoice::by_shift) out.rib_spacing = r.by_shift;
            if (out.rib_spacing.si > 0.0) seen.rib_spacing = out.rib_spacing;
            if (r.agree) seen.rib_unevenness = r.unevenness;
        } else {
            out.no_ribs = said(ribs.error());
        }
    }
    out.faults = faults_of(seen, targets, pattern, tied);
    return out;
}

std::vector<PartTarget> only(const std::vector<PartTarget>& targets, std::string_view standard) {
    std::vector<PartTarget> out;
    for (const PartTarget& t : targets) {
        if (t.standard == standard) out.push_back(t);
    }
    return out;
}

std::string length_text(const Estimate<Length>& e, int decimals) {
    const auto mm = [&](Length x) { return write_rounded(in_millimetres(x), decimals); };
    std::string words = mm(e.value);
    words.append(" mm (").append(mm(e.low)).append(" to ").append(mm(e.high));
    return words.append(")");
}

} // namespace wrapwright
