// How the fly hangs from its eye, rides on a tight line and sinks, drawn from its record.

#include "core/water/water_words.h"
#include "gui/fly_drawing.h"
#include "gui/panel_water_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

glm::vec2 in_mm(const glm::dvec2& m) {
    return {static_cast<float>(m.x * 1e3), static_cast<float>(m.y * 1e3)};
}

/// Where the weight acts: a disc with a cross, the sign for a centre of mass on drawings.
void draw_weight(ImDrawList& list, const ImVec2& at, const Palette& c) {
    constexpr float r = 6.0F;
    list.AddCircleFilled(at, r, im(c.sheet));
    list.AddCircle(at, r, im(c.warn), 0, 2.0F);
    list.AddLine({at.x - r, at.y}, {at.x + r, at.y}, im(c.warn), 2.0F);
    list.AddLine({at.x, at.y - r}, {at.x, at.y + r}, im(c.warn), 2.0F);
}

void dashed(ImDrawList& list, const ImVec2& a, const ImVec2& b, ImU32 colour) {
    const float length = std::hypot(b.x - a.x, b.y - a.y);
    for (float t = 0.0F; t < length; t += 10.0F) {
        const float u = t / length, v = std::min(1.0F, (t + 6.0F) / length);
        list.AddLine({a.x + u * (b.x - a.x), a.y + u * (b.y - a.y)},
                     {a.x + v * (b.x - a.x), a.y + v * (b.y - a.y)}, colour, 1.5F);
    }
}

/// The box of one drawing and its caption.
struct Cell {
    Box picture;

    Cell(Ui& ui, const Box& box, const std::string& words) : picture(box) {
        const float line = ui.fonts.small->FontSize;
        const float most = std::max(line, std::floor(0.45F * box.height / line) * line);
        const float high = std::min(height_of(ui.fonts.small, words, box.width), most);
        write(ui, ui.fonts.small, ui.colours.ink, {box.x, box.bottom() - high, box.width, high},
              words);
        picture.height -= high + grid;
    }
};

void hanging(Ui& ui, const Box& box, const FlyOutline& fly) {
    const InWater& w = *ui.model.dipped;
    const Cell cell(ui, box, hang_words(w));
    if (cell.picture.height < 4.0F * grid) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    FlyPose pose;
    pose.pivot = in_mm(w.body.eye);
    pose.mirrored = ui.model.settings.left_handed;
    const glm::vec2 down = in_mm(w.centres.of_weight) - pose.pivot;
    pose.turn = -0.5F * pi - std::atan2(down.y, down.x);
    Box room = cell.picture;
    room.y += 0.18F * room.height; // for the tippet
    room.height *= 0.82F;
    fit(pose, fly, room);
    const ImVec2 eye = pose.on(pose.pivot);
    list.AddLine({eye.x, cell.picture.y}, eye, im(ui.colours.soft), 1.5F);
    dashed(list, eye, {eye.x, room.bottom()}, im(ui.colours.warn));
    draw_fly(list, fly, pose, ui.colours);
    draw_weight(list, pose.on(in_mm(w.centres.of_weight)), ui.colours);
}

void riding(Ui& ui, const Box& box, const FlyOutline& fly) {
    const InWater& w = *ui.model.dipped;
    const Cell cell(ui, box, ride_words(w));
    if (cell.picture.height < 4.0F * grid) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    FlyPose pose;
    pose.pivot = in_mm(w.body.eye);
    pose.mirrored = ui.model.settings.left_handed;
    pose.rolled = w.ride.verdict == Ride::point_up;
    Box room = cell.picture;
    room.x += 0.15F * room.width;
    room.width *= 0.85F;
    if (pose.mirrored) room.x = cell.picture.x;
    fit(pose, fly, room);
    const ImVec2 eye = pose.on(pose.pivot);
    const float far = pose.mirrored ? cell.picture.right() : cell.picture.x;
    const float behind = pose.mirrored ? cell.picture.x : cell.picture.right();
    list.AddLine({far, eye.y}, eye, im(ui.colours.soft), 1.5F);
    dashed(list, eye, {behind, eye.y}, im(ui.colours.warn)); // what it can roll about
    draw_fly(list, fly, pose, ui.colours);
    draw_weight(list, pose.on(in_mm(w.centres.of_weight)), ui.colours);
    if (w.ride.verdict == Ride::undecided) {
        write(ui, ui.fonts.small, ui.colours.warn,
              {cell.picture.x, cell.picture.y, cell.picture.width, ui.fonts.small->FontSize},
              "This way up, or rolled over");
    }
}

void sinking(Ui& ui, const Box& box, const FlyOutline& fly) {
    const InWater& w = *ui.model.dipped;
    const glm::vec2 weight = in_mm(w.centres.of_weight);
    const glm::vec2 up = in_mm(w.drag_at) - weight;
    const float apart = std::hypot(up.x, up.y);
    const bool known = apart > 1.0F; // mm; the centres are no better known than that
    const float angle = static_cast<float>(in_degrees(w.attitude));
    const Cell cell(ui, box,
                    !known           ? "Free of the line it may tumble"
                    : angle < 60.0F  ? "Free of the line it sinks head first"
                    : angle > 120.0F ? "Free of the line it sinks bend first"
                                     : "Free of the line it sinks level");
    if (cell.picture.height < 4.0F * grid || !known) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    FlyPose pose;
    pose.pivot = weight;
    pose.mirrored = ui.model.settings.left_handed;
    pose.turn = 0.5F * pi - std::atan2(up.y, up.x);
    fit(pose, fly, cell.picture);
    draw_fly(list, fly, pose, ui.colours);
    draw_weight(list, pose.on(weight), ui.colours);
}

} // namespace

void water_poses(Ui& ui, const Box& box) {
    sheet(ui, box);
    if (!ui.model.fly) return;
    const FlyOutline fly =
        outline_of(ui.model.fly->pattern, ui.model.fly->resolved, ui.model.fly->tied);
    const Box in = box.inside(1.5F * grid);
    const bool three = in.width >= 30.0F * ui.fonts.small->FontSize;
    const float parts = three ? 3.0F : 2.0F;
    const float wide = (in.width - (parts - 1.0F) * 2.0F * grid) / parts;
    const auto part = [&](float i) {
        return Box{in.x + i * (wide + 2.0F * grid), in.y, wide, in.height};
    };
    hanging(ui, part(0.0F), fly);
    riding(ui, part(1.0F), fly);
    if (three) sinking(ui, part(2.0F), fly);
}

} // namespace wrapwright
