// Is the fly in proportion: targets, what was measured, the photo.

#include "gui/answer.h"

#include "core/units/number_text.h"
#include "core/units/size_text.h"

#include <algorithm>
#include <glm/geometric.hpp>

namespace wrapwright {

void check_again(Model& model) {
    CheckWork& c = model.check;
    c.targets.clear();
    if (!model.fly || model.fly->tied.moments.empty()) return;
    const OpenFly& fly = *model.fly;
    c.targets = targets_of(fly.pattern, fly.tied);
    if (!c.photo.picture) return;
    c.photo.found = find_on_photo(c.photo.picture->view(), c.photo.marks,
                                  only(c.targets, standard_of(model)), fly.pattern, fly.tied);
}

namespace detail {

namespace {

/// A caliper reads to a tenth of a millimetre by hand on fibres.
constexpr Length caliper_doubt = millimetres(0.1);

/// "tail 4.6", "mass 215 mg": a part and its number; 4.6 alone is for the part that is said.
Result<FlyReading> reading_of(const std::string& text) {
    const auto blank = text.find_first_of(" =:");
    const std::string part = text.substr(0, blank);
    const Error unclear{
        ErrorCode::malformed,
        "'" + text + "' names no part with its length",
        "write tail, body, thorax, wing, hackle or rib with millimetres, or mass with "
        "milligrams: tail 4.6",
        {}};
    if (blank == std::string::npos) return unclear;
    const std::string number = text.substr(text.find_first_not_of(" =:", blank));
    FlyReading out;
    out.part = part;
    if (part == "mass") {
        const std::string bare = number.substr(0, number.find(" mg"));
        const Result<double> mg = read_number(bare);
        if (!mg.ok() || !(mg.value() > 0.0 && mg.value() < 1e5)) return unclear;
        out.value = milligrams(mg.value()).si;
        out.low = 0.99 * out.value;
        out.high = 1.01 * out.value;
        return out;
    }
    if (!measured_part(part) && part != "rib") return unclear;
    const Result<WrittenLength> length = parse_length(number, LengthUnit::millimetre);
    if (!length.ok()) return length.error();
    const Length value = length.value().quantity;
    if (!(value.si > 0.0 && value < metres(0.5))) return unclear;
    out.value = value.si;
    out.low = std::max(0.0, (value - caliper_doubt).si);
    out.high = (value + caliper_doubt).si;
    return out;
}

std::string verdict_of(const Model& m, const FlyReading& r) {
    std::string words = r.part;
    const auto part = measured_part(r.part);
    words.append(" ").append(write_rounded(r.value * (r.part == "mass" ? 1e6 : 1e3), 1));
    words.append(r.part == "mass" ? " mg" : " mm");
    const std::string standard = standard_of(m);
    for (const PartTarget& t : m.check.targets) {
        if (!part || t.part != *part || t.standard != standard) continue;
        const FitCheck fit = fit_of(t.length, Length{r.value});
        words.append(": ").append(fit_words(fit));
        const auto own = own_measure(m.fly->pattern, m.fly->tied, *part);
        if (fit.fit == Fit::right || !own) break;
        words.append("; ").append(
            mend_words(own->step, mend_until(m.fly->pattern, m.fly->tied, *part)));
        break;
    }
    return words;
}

} // namespace

void Answer::caliper(int fly, const std::string& text) {
    Model& m = model();
    if (!m.fly || !may_write()) return;
    Result<FlyReading> reading = reading_of(text);
    if (!reading.ok()) return say(reading.error().message + "; " + reading.error().remedy);
    reading.value().fly = fly > 0 ? fly : m.check.fly;
    m.check.readings.push_back(reading.value());
    effect(EffectKind::keep_readings).number = 1;
    say(verdict_of(m, reading.value()));
}

void Answer::next_standard() {
    Model& m = model();
    const std::vector<std::string> all = standards_of(m.check.targets);
    if (all.empty()) return;
    const auto it = std::find(all.begin(), all.end(), standard_of(m));
    const std::size_t next = (static_cast<std::size_t>(it - all.begin()) + 1) % all.size();
    set("standard", all[next]);
    check_again(m);
}

void Answer::changed_marks() {
    check_again(model());
    effect(EffectKind::keep_marks);
}

void Answer::take_mark(int spot, float x, float y) {
    PhotoOpen& photo = model().check.photo;
    if (!photo.picture) return;
    const glm::dvec2 most(photo.picture->width - 1.0, photo.picture->height - 1.0);
    if (!std::isfinite(x) || !std::isfinite(y)) return;
    photo.marks.at[static_cast<std::size_t>(spot)] =
        glm::dvec2(std::clamp<double>(static_cast<double>(x), 0.0, most.x),
                   std::clamp<double>(static_cast<double>(y), 0.0, most.y));
    changed_marks();
}

void Answer::keep_lengths() {
    Model& m = model();
    const PhotoFound& found = m.check.photo.found;
    if (!m.fly || !found.scale || !may_write()) return;
    int kept = 0;
    const auto add = [&](std::string part, const Estimate<Length>& e) {
        FlyReading r;
        r.fly = m.check.fly;
        r.part = std::move(part);
        r.value = e.value.si;
        r.low = e.low.si;
        r.high = e.high.si;
        r.by_photo = true;
        m.check.readings.push_back(std::move(r));
        ++kept;
    };
    for (std::size_t i = 0; i < found.lengths.parts.size(); ++i) {
        const auto& e = found.lengths.parts[i];
        if (e) add(std::string(name(static_cast<Measured>(i))), *e);
    }
    if (found.ribs && found.rib_spacing.si > 0.0) {
        const double share = found.rib_spacing / found.ribs->period.value;
        const Estimate<Length>& p = found.ribs->period;
        add("rib", {share * p.value, share * p.low, share * p.high, Origin::measured});
    }
    if (kept == 0) return say("Mark a part first: the lengths that follow are kept");
    effect(EffectKind::keep_readings).number = kept;
    say("Kept for fly " + std::to_string(m.check.fly));
}

void Answer::check_photo(const Wish& wish) {
    Model& m = model();
    PhotoMarks& marks = m.check.photo.marks;
    switch (wish.kind) {
    case WishKind::unmark: marks.at[static_cast<std::size_t>(wish.number)].reset(); break;
    case WishKind::scale_by: marks.scale_by = static_cast<ScaleBy>(wish.number); break;
    case WishKind::flip_fly: marks.flipped = !marks.flipped; break;
    case WishKind::rib_choice: marks.choice = static_cast<RibChoice>(wish.number); break;
    case WishKind::known: {
        const Result<WrittenLength> length = parse_length(wish.text, LengthUnit::millimetre);
        if (!length.ok()) return say(length.error().message + "; " + length.error().remedy);
        marks.known = length.value().quantity;
        break;
    }
    case WishKind::card_edges: {
        if (!m.check.photo.picture) return;
        for (std::size_t i = 0; i < 4; ++i) {
            if (!marks.at[i]) return say("Mark the four corners first, roughly");
        }
        const std::array<glm::dvec2, 4> rough{*marks.at[0], *marks.at[1], *marks.at[2],
                                              *marks.at[3]};
        const double side = 0.02 * glm::length(rough[1] - rough[0]);
        const auto by_edges =
            card_by_edges(m.check.photo.picture->view(), rough, std::clamp(side, 4.0, 40.0));
        for (std::size_t i = 0; i < 4; ++i) marks.at[i] = by_edges[i];
        say(by_edges == rough ? "The card's edges are not seen well enough: set its corners by hand"
                              : "Corners set where the card's edges meet");
        break;
    }
    default: book(wish); return;
    }
    changed_marks();
}

void Answer::check(const Wish& wish) {
    Model& m = model();
    CheckWork& c = m.check;
    switch (wish.kind) {
    case WishKind::check_view: c.view = static_cast<CheckView>(wish.number); break;
    case WishKind::standard: next_standard(); break;
    case WishKind::caliper: caliper(wish.number, wish.text); break;
    case WishKind::check_fly: c.fly = std::clamp(wish.number, 1, 999); break;
    case WishKind::drop_reading: {
        const auto i = static_cast<std::size_t>(wish.number);
        if (wish.number < 0 || i >= c.readings.size() || !may_write()) break;
        effect(EffectKind::drop_reading).number = static_cast<int>(c.readings[i].id);
        c.readings.erase(c.readings.begin() + wish.number);
        break;
    }
    case WishKind::open_photo:
        if (m.fly && !wish.text.empty()) effect(EffectKind::open_photo, wish.text);
        break;
    case WishKind::recall_photo: {
        const auto i = static_cast<std::size_t>(wish.number);
        if (wish.number < 0 || i >= c.photos.size()) break;
        effect(EffectKind::recall_photo).number = static_cast<int>(c.photos[i].id);
        break;
    }
    case WishKind::give_photo:
        if (c.photo.id != 0) effect(EffectKind::give_photo);
        break;
    case WishKind::mark: take_mark(wish.number, wish.x, wish.y); break;
    case WishKind::keep_lengths: keep_lengths(); break;
    case WishKind::fold: c.fold = std::clamp(wish.number, 1, 20); break;
    case WishKind::calibrate: c.calibrating = !c.calibrating; break;
    case WishKind::calibrated:
        if (wish.x >= 1.0F && wish.x <= 40.0F) {
            set(dots_key(m.screen_name), write_rounded(static_cast<double>(wish.x), 3));
        }
        break;
    default: check_photo(wish); break;
    }
}

} // namespace detail

} // namespace wrapwright
