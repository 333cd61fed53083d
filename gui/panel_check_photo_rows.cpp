// What is marked on the photo, what is still to be marked, and what follows from it.

#include "gui/panel_check_parts.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

void kept_rows(Ui& ui, Scroll& scroll, float high) {
    const auto& kept = ui.model.check.photos;
    for (std::size_t i = 0; i < kept.size() && i < 12; ++i) {
        if (kept[i].id == ui.model.check.photo.id) continue;
        std::string label = kept[i].name;
        label.append("##kept ").append(std::to_string(i));
        std::string aside = "fly ";
        aside.append(std::to_string(kept[i].fly));
        if (row_button(ui, label, aside, false, scroll.row(high))) {
            ui.want(wish(WishKind::recall_photo, static_cast<int>(i)));
        }
    }
}

void open_rows(Ui& ui, Scroll& scroll, float room) {
    const float high = control_height(ui);
    if (ui.model.check.photo.id != 0) {
        const Box save = scroll.row(high + grid);
        if (button(ui, "Save this photo as a file", {save.x, save.y, room, high})) {
            ui.want(wish(WishKind::give_photo));
        }
    }
    const Box row = scroll.row(high + grid);
    if (ui.model.picks_files) {
        const float half = 0.5F * (room - grid);
        const bool first = !ui.model.check.photo.picture;
        if (button(ui, "Choose a photo", {row.x, row.y, half, high}, first)) {
            ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::photo)));
        }
        if (ui.model.has_camera &&
            button(ui, "Take a photo", {row.x + half + grid, row.y, half, high}, first)) {
            ui.want(wish(WishKind::pick_file, static_cast<int>(FileKind::camera)));
        }
        return kept_rows(ui, scroll, high);
    }
    const float wide = std::min(6.0F * ui.sizes.small, 0.35F * room);
    const bool ended = line_edit(ui, "##photo file", "file of a photo", ui.typing.photo_file,
                                 {row.x, row.y, room - wide - grid, high});
    const bool open =
        button(ui, "Open", {row.x + room - wide, row.y, wide, high}, !ui.model.check.photo.picture);
    if ((ended || open) && !ui.typing.photo_file.empty()) {
        ui.want(wish(WishKind::open_photo, 0, ui.typing.photo_file));
        ui.typing.photo_file.clear();
    }
    kept_rows(ui, scroll, high);
}

void scale_rows(Ui& ui, Scroll& scroll, float room) {
    constexpr std::array<std::string_view, 4> ways{"Card", "Two points", "Shank", "Gape"};
    const PhotoMarks& marks = ui.model.check.photo.marks;
    const float high = control_height(ui);
    heading(ui, scroll.row(ui.fonts.small->FontSize + grid), "Scale by");
    for (std::size_t i = 0; i < ways.size(); i += 2) {
        const Box row = scroll.row(high + 0.5F * grid);
        const float half = 0.5F * (room - grid);
        for (std::size_t k = i; k < i + 2; ++k) {
            const bool on = static_cast<std::size_t>(marks.scale_by) == k;
            const float x = row.x + static_cast<float>(k - i) * (half + grid);
            if (button(ui, ways[k], {x, row.y, half, high}, on)) {
                ui.want(wish(WishKind::scale_by, static_cast<int>(k)));
                ui.typing.photo_spot = k == static_cast<std::size_t>(ScaleBy::shank) ? 4 : 0;
            }
        }
    }
    if (marks.scale_by == ScaleBy::card) {
        const Box row = scroll.row(high + grid);
        if (button(ui, "Corners by the card's edges", {row.x, row.y, room, high})) {
            ui.want(wish(WishKind::card_edges));
        }
    }
    if (marks.scale_by == ScaleBy::points) {
        const Box row = scroll.row(high + grid);
        std::string hint = "mm between the two points";
        if (marks.known.si > 0.0) {
            hint = write_rounded(in_millimetres(marks.known), 2);
            hint.append(" mm between them");
        }
        if (line_edit(ui, "##known", hint.c_str(), ui.typing.photo_known,
                      {row.x, row.y, room, high}, true) &&
            !ui.typing.photo_known.empty()) {
            ui.want(wish(WishKind::known, 0, ui.typing.photo_known));
            ui.typing.photo_known.clear();
        }
    }
}

void spot_rows(Ui& ui, Scroll& scroll, float room) {
    const PhotoMarks& marks = ui.model.check.photo.marks;
    const PhotoFound& found = ui.model.check.photo.found;
    const float high = control_height(ui);
    heading(ui, scroll.row(ui.fonts.small->FontSize + grid), "Press on the photo for");
    for (std::size_t i = 0; i < photo_spots; ++i) {
        if (i >= scale_points(marks.scale_by) && i < 4) continue;
        std::string label(name(static_cast<PhotoSpot>(i)));
        label.append("##spot");
        std::string aside = marks.at[i] ? "set" : "";
        if (found.lengths.along[i] && i > 4) {
            aside = write_rounded(in_millimetres(*found.lengths.along[i]), 1);
            aside.append(" mm along");
        }
        Box row = scroll.row(high);
        row.width = room;
        const bool picked = ui.typing.photo_spot == static_cast<int>(i);
        if (row_button(ui, label, aside, picked, row)) ui.typing.photo_spot = static_cast<int>(i);
    }
    const auto spot = static_cast<std::size_t>(ui.typing.photo_spot);
    Box row = scroll.row(high + grid);
    const float half = 0.5F * (room - grid);
    if (button(ui, "Take it away", {row.x, row.y, half, high}) && marks.at[spot]) {
        ui.want(wish(WishKind::unmark, ui.typing.photo_spot));
    }
    if (button(ui, "Point up / down", {row.x + half + grid, row.y, half, high})) {
        ui.want(wish(WishKind::flip_fly));
    }
    row = scroll.row(high + grid);
    if (toggle(ui, "Snap to edges", ui.typing.photo_snap, {row.x, row.y, room, high})) {
        ui.typing.photo_snap = !ui.typing.photo_snap;
    }
}

void rib_rows(Ui& ui, Scroll& scroll, float room) {
    const PhotoFound& found = ui.model.check.photo.found;
    check_say(ui, scroll, room, ui.colours.soft, found.no_ribs);
    if (!found.ribs) return;
    const RibMeasure& r = *found.ribs;
    const float high = control_height(ui);
    if (r.agree) {
        std::string words = "ribs ";
        words.append(length_text(r.period, 2)).append(" apart, ");
        words.append(write_rounded(r.turns, 1)).append(" turns on the line, uneven by ");
        words.append(write_rounded(100.0 * r.unevenness, 0)).append(" %");
        const auto own = own_rib(ui.model.fly->pattern, ui.model.fly->tied);
        if (own) {
            words.append("; the recipe: ");
            words.append(write_rounded(in_millimetres(own->length), 2)).append(" mm");
        }
        check_say(ui, scroll, room, ui.colours.ink, words);
        return;
    }
    check_say(ui, scroll, room, ui.colours.near,
              "Two ways to find the ribs do not agree. Count them, and pick the one that fits:");
    const RibChoice now = ui.model.check.photo.marks.choice;
    const auto pick = [&](RibChoice choice, Length spacing, std::string_view how) {
        std::string label = write_rounded(in_millimetres(spacing), 2);
        label.append(" mm ").append(how);
        const Box row = scroll.row(high + 0.5F * grid);
        if (button(ui, label, {row.x, row.y, room, high}, now == choice)) {
            ui.want(wish(WishKind::rib_choice, static_cast<int>(choice)));
        }
    };
    pick(RibChoice::by_spectrum, r.by_spectrum, "by the spectrum");
    pick(RibChoice::by_shift, r.by_shift, "by shifting");
}

void result_rows(Ui& ui, Scroll& scroll, float room) {
    const Model& m = ui.model;
    const PhotoFound& found = m.check.photo.found;
    const float high = control_height(ui);
    const float line = ui.fonts.small->FontSize;
    heading(ui, scroll.row(line + grid), "It says");
    if (!found.scale) {
        check_say(ui, scroll, room, ui.colours.soft, found.no_scale);
        return;
    }
    const std::string standard = standard_of(m);
    if (!standard.empty()) {
        const Box row = scroll.row(high + grid);
        if (button(ui, "By \"" + standard + "\"##photo standard", {row.x, row.y, room, high})) {
            ui.want(wish(WishKind::standard));
        }
    }
    if (found.lengths.shank) {
        std::string words = "eye to bend: ";
        words.append(length_text(*found.lengths.shank));
        check_say(ui, scroll, room, ui.colours.ink, words);
    }
    for (std::size_t i = 0; i < found.lengths.parts.size(); ++i) {
        const auto& e = found.lengths.parts[i];
        if (!e) continue;
        const auto part = static_cast<Measured>(i);
        std::string words(name(part));
        words.append(": ").append(length_text(*e));
        const PartTarget* target = target_for(m, part);
        Colour colour = ui.colours.ink;
        float in = 0.0F;
        if (target != nullptr) {
            const FitCheck fit = fit_of(target->length, e->value);
            words.append(", ").append(advice(m, *target, fit));
            colour = colour_of(ui.colours, fit.fit);
            in = 1.6F * line;
            const float tall = height_of(ui.fonts.small, words, room - in);
            const Box row = scroll.row(std::max(1.4F * line, tall) + 0.5F * grid);
            fit_sign(ui, fit.fit, {row.x, row.y, 1.4F * line, 1.4F * line});
            write(ui, ui.fonts.small, colour, {row.x + in, row.y, room - in, tall + 0.5F}, words);
            continue;
        }
        check_say(ui, scroll, room, colour, words);
    }
    rib_rows(ui, scroll, room);
    for (const FaultSeen& fault : found.faults) {
        if (fault.kind < FaultKind::eye_crowded) continue; // lengths are told above
        const FaultWords& w = words_of(fault.kind);
        std::string words(w.sign);
        words.append("; ").append(mend_words(fault.step, fault.until)).append(". Usually ");
        words.append(w.cause).append(": ").append(w.cure).append(".");
        check_say(ui, scroll, room, ui.colours.warn, words);
    }
    const int pressed = stepper(ui, "As fly", std::to_string(m.check.fly), [&] {
        Box row = scroll.row(high + grid);
        row.height = high;
        row.width = room;
        return row;
    }());
    if (pressed != 0) ui.want(wish(WishKind::check_fly, m.check.fly + pressed));
    const Box row = scroll.row(high + grid);
    if (button(ui, "Keep these lengths", {row.x, row.y, room, high}, true)) {
        ui.want(wish(WishKind::keep_lengths));
    }
}

} // namespace

void photo_rows(Ui& ui, const Box& box) {
    sheet(ui, box);
    const Box in = box.inside(1.5F * grid);
    Scroll scroll(ui, "photo rows", in);
    const float room = scroll.row(0.0F).width;
    if (ui.model.check.photo.picture) {
        result_rows(ui, scroll, room);
        scale_rows(ui, scroll, room);
        spot_rows(ui, scroll, room);
    }
    open_rows(ui, scroll, room);
    check_say(
        ui, scroll, room, ui.colours.soft,
        "The intervals hold for marks set to a pixel and a fly in the plane of its scale. One "
        "5 mm above it reads 2 % long at 250 mm; a lens bends the picture's edges by 1 to 3 %.");
}

} // namespace wrapwright
