// Twelve flies, or twenty-four: are they twins.

#include "gui/panel_check_parts.h"

#include "core/units/number_text.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 7> parts{"tail",   "body", "thorax", "wing",
                                                "hackle", "rib",  "mass"};

/// The newest reading of each fly of one part, by fly.
std::vector<const FlyReading*> newest(const Model& model, std::string_view part) {
    std::vector<const FlyReading*> out;
    for (const FlyReading& r : model.check.readings) {
        if (r.part != part) continue;
        const auto it = std::find_if(out.begin(), out.end(),
                                     [&](const FlyReading* o) { return o->fly == r.fly; });
        if (it == out.end()) {
            out.push_back(&r);
        } else {
            *it = &r;
        }
    }
    std::sort(out.begin(), out.end(),
              [](const FlyReading* a, const FlyReading* b) { return a->fly < b->fly; });
    return out;
}

void chart(Ui& ui, const Box& box, const std::vector<const FlyReading*>& flies,
           const BatchSpread& spread, double limit, const PartTarget* target) {
    double low = std::min(spread.low, (1.0 - limit) * spread.mean);
    double high = std::max(spread.high, (1.0 + limit) * spread.mean);
    if (target != nullptr) {
        low = std::min(low, target->length.low.si);
        high = std::max(high, target->length.high.si);
    }
    const double room = std::max(1e-9, high - low);
    low -= 0.1 * room;
    high += 0.1 * room;
    const auto y = [&](double v) {
        return box.bottom() - box.height * static_cast<float>((v - low) / (high - low));
    };
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.field), 4.0F);
    if (target != nullptr) {
        list.AddRectFilled({box.x, y(target->length.high.si)},
                           {box.right(), y(target->length.low.si)}, im(ui.colours.good, 0.22F));
    }
    for (const double edge : {1.0 - limit, 1.0 + limit}) {
        const float at = y(edge * spread.mean);
        for (float x = box.x; x < box.right(); x += 10.0F) {
            list.AddLine({x, at}, {std::min(x + 6.0F, box.right()), at}, im(ui.colours.soft), 1.5F);
        }
    }
    list.AddLine({box.x, y(spread.mean)}, {box.right(), y(spread.mean)}, im(ui.colours.soft), 1.5F);
    const float step = box.width / static_cast<float>(flies.size() + 1);
    for (std::size_t i = 0; i < flies.size(); ++i) {
        const FlyReading& r = *flies[i];
        const float x = box.x + step * static_cast<float>(i + 1);
        const bool worst = static_cast<int>(i) == spread.worst;
        const Colour c = worst && !spread.twins ? ui.colours.warn : ui.colours.accent;
        list.AddLine({x, y(r.low)}, {x, y(r.high)}, im(c), 2.0F);
        if (worst) {
            list.AddRectFilled({x - 6.0F, y(r.value) - 6.0F}, {x + 6.0F, y(r.value) + 6.0F}, im(c));
        } else {
            list.AddCircleFilled({x, y(r.value)}, 6.0F, im(c));
        }
    }
}

void part_rows(Ui& ui, Scroll& scroll, float room, std::string_view part) {
    const Model& m = ui.model;
    const auto flies = newest(m, part);
    if (flies.empty()) return;
    std::vector<double> values;
    for (const FlyReading* r : flies) values.push_back(r->value);
    const double limit = m.settings.twin_limit;
    const BatchSpread s = batch_spread(values, limit);
    const bool mass = part == "mass";
    const auto number = [&](double v) {
        return write_rounded(v * (mass ? 1e6 : 1e3), mass ? 0 : 2);
    };
    std::string words(part);
    words.append(": ")
        .append(std::to_string(flies.size()))
        .append(flies.size() == 1 ? " fly" : " flies");
    words.append(", mean ").append(number(s.mean)).append(mass ? " mg" : " mm");
    if (flies.size() > 1) {
        words.append(", deviation ").append(number(s.sd));
        words.append(", ").append(number(s.low)).append(" to ").append(number(s.high));
        words.append(" (range ").append(number(s.high - s.low)).append(")");
    }
    check_say(ui, scroll, room, ui.colours.ink, words);
    if (flies.size() > 1) {
        std::string verdict = s.twins ? "twins, within " : "not twins by ";
        verdict.append(write_rounded(100.0 * limit, 0)).append(" %; farthest is fly ");
        verdict.append(std::to_string(flies[static_cast<std::size_t>(s.worst)]->fly)).append(", ");
        verdict.append(write_rounded(100.0 * std::abs(s.worst_off), 0)).append(" % ");
        verdict.append(s.worst_off > 0.0 ? "over" : "under").append(" the mean");
        check_say(ui, scroll, room, s.twins ? ui.colours.good : ui.colours.warn, verdict);
    }
    const auto measured = measured_part(part);
    const Box row = scroll.row(5.0F * ui.sizes.small + 2.0F * grid);
    chart(ui, {row.x, row.y, room, 5.0F * ui.sizes.small}, flies, s, limit,
          measured ? target_for(m, *measured) : nullptr);
}

} // namespace

void check_batch(Ui& ui, const Box& box) {
    sheet(ui, box);
    const Model& m = ui.model;
    const Box in = box.inside(1.5F * grid);
    const float high = control_height(ui);
    Scroll scroll(ui, "batch", in);
    Box row = scroll.row(high + grid);
    const float room = row.width;
    row.height = high;
    int pressed = stepper(ui, "Fly", std::to_string(m.check.fly), row);
    if (pressed != 0) ui.want(wish(WishKind::check_fly, m.check.fly + pressed));
    row = scroll.row(high + grid);
    caliper_line(ui, {row.x, row.y, room, high});
    row = scroll.row(high + grid);
    row.height = high;
    pressed = stepper(ui, "Twins are within, of their mean##twins",
                      write_rounded(100.0 * m.settings.twin_limit, 0) + " %", row);
    if (pressed != 0) {
        const double next = std::clamp(m.settings.twin_limit + 0.01 * pressed, 0.01, 0.5);
        ui.want({WishKind::set, 0, 0.0F, 0.0F, "twin limit", write_rounded(next, 2)});
    }
    if (m.check.readings.empty()) {
        check_say(ui, scroll, room, ui.colours.soft,
                  "Nothing is measured yet. Type a part with its millimetres, or mass with its "
                  "milligrams, for fly 1, 2, 3; or keep the lengths of a photo of each.");
        return;
    }
    for (const std::string_view part : parts) part_rows(ui, scroll, room, part);
    heading(ui, scroll.row(ui.fonts.small->FontSize + grid), "Each reading");
    for (std::size_t i = m.check.readings.size(); i-- > 0;) {
        const FlyReading& r = m.check.readings[i];
        const bool mass = r.part == "mass";
        std::string words = "fly ";
        words.append(std::to_string(r.fly)).append(": ").append(r.part).append(" ");
        words.append(write_rounded(r.value * (mass ? 1e6 : 1e3), mass ? 0 : 2));
        words.append(mass ? " mg" : " mm").append(r.by_photo ? ", by photo" : "");
        const float wide = std::min(6.0F * ui.sizes.small, 0.35F * room);
        const Box at = scroll.row(high + 0.5F * grid);
        const float text = height_of(ui.fonts.small, words, room - wide - grid);
        write(ui, ui.fonts.small, ui.colours.ink,
              {at.x, at.y + std::max(0.0F, 0.5F * (high - text)), room - wide - grid, text + 0.5F},
              words);
        std::string label = "Forget##reading ";
        label.append(std::to_string(i));
        if (button(ui, label, {at.x + room - wide, at.y, wide, high})) {
            ui.want(wish(WishKind::drop_reading, static_cast<int>(i)));
        }
    }
}

} // namespace wrapwright
