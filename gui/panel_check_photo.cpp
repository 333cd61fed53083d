// The photo that is open: looked at, marked, and the recipe's own fly laid over it.

#include "gui/panel_check_parts.h"
#include "gui/panels.h"

#include "core/geometry/fly/base_shifts.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

constexpr float handle = 22.0F; ///< how near a press must be to take hold of a mark

/// Where the photo's pixels come to in the box.
struct PhotoView {
    Box box{};
    double width = 1.0, height = 1.0;
    double scale = 1.0; ///< dots per pixel
    double x = 0.0, y = 0.0;

    PhotoView(const Ui& ui, const Box& b) : box(b) {
        const GreyPicture& p = *ui.model.check.photo.picture;
        width = p.width;
        height = p.height;
        const double fit =
            std::min(static_cast<double>(b.width) / width, static_cast<double>(b.height) / height);
        scale = fit * static_cast<double>(ui.typing.photo_zoom);
        x = static_cast<double>(b.x + 0.5F * b.width) -
            static_cast<double>(ui.typing.photo_x) * width * scale;
        y = static_cast<double>(b.y + 0.5F * b.height) -
            static_cast<double>(ui.typing.photo_y) * height * scale;
    }
    [[nodiscard]] ImVec2 on(const glm::dvec2& p) const {
        return {static_cast<float>(x + (p.x + 0.5) * scale),
                static_cast<float>(y + (p.y + 0.5) * scale)};
    }
    [[nodiscard]] glm::dvec2 pixel(const ImVec2& at) const {
        return {(static_cast<double>(at.x) - x) / scale - 0.5,
                (static_cast<double>(at.y) - y) / scale - 0.5};
    }
};

void draw_overlay(Ui& ui, const PhotoView& view) {
    const Model& m = ui.model;
    const PhotoOpen& photo = m.check.photo;
    if (!photo.found.scale) return;
    const OpenFly& fly = *m.fly;
    const auto on = FlyOnPhoto::make(photo.marks, *photo.found.scale, fly.tied.bases.front());
    if (!on) return;
    const FlyOutline outline = outline_of(fly.pattern, fly.resolved, fly.tied);
    const double shift = base_shifts(fly.pattern, fly.tied)[0].si;
    const auto at = [&](const glm::vec2& mm) {
        return view.on(on->pixel(
            {static_cast<double>(mm.x) * 1e-3 - shift, static_cast<double>(mm.y) * 1e-3}));
    };
    ImDrawList& list = *ImGui::GetWindowDrawList();
    constexpr ImU32 line = IM_COL32(255, 214, 64, 220), thin = IM_COL32(255, 214, 64, 130);
    for (const auto& s : outline.wires) {
        for (const glm::vec2& p : s.points) list.PathLineTo(at(p));
        list.PathStroke(line, 0, 1.5F);
    }
    for (const auto& s : outline.fibres) list.AddLine(at(s.points[0]), at(s.points[1]), thin, 1.0F);
    for (const auto& q : outline.body) {
        list.AddLine(at(q[0]), at(q[1]), line, 1.5F);
        list.AddLine(at(q[2]), at(q[3]), line, 1.5F);
    }
    for (const auto& r : outline.ribs) list.AddLine(at(r.points[0]), at(r.points[1]), line, 2.0F);
    for (const auto& d : outline.discs) {
        const ImVec2 c = at(d.centre), e = at(d.centre + glm::vec2{d.radius, 0.0F});
        list.AddCircle(c, std::hypot(e.x - c.x, e.y - c.y), line, 0, 1.5F);
    }
}

ImU32 mark_colour(std::size_t spot) {
    if (spot < 4) return IM_COL32(64, 200, 255, 255);
    if (spot >= static_cast<std::size_t>(PhotoSpot::line_start))
        return IM_COL32(255, 120, 220, 255);
    return IM_COL32(120, 255, 120, 255);
}

void draw_marks(Ui& ui, const PhotoView& view) {
    const PhotoMarks& marks = ui.model.check.photo.marks;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto place = [&](std::size_t i) -> std::optional<ImVec2> {
        if (static_cast<int>(i) == ui.typing.photo_drag) {
            return view.on(
                {static_cast<double>(ui.typing.drag_x), static_cast<double>(ui.typing.drag_y)});
        }
        if (!marks.at[i]) return std::nullopt;
        return view.on(*marks.at[i]);
    };
    const std::size_t scale = scale_points(marks.scale_by);
    for (std::size_t i = 0; i < scale && scale > 1; ++i) {
        const auto a = place(i), b = place((i + 1) % scale);
        if (a && b) list.AddLine(*a, *b, mark_colour(0), 1.5F);
    }
    const auto from = place(static_cast<std::size_t>(PhotoSpot::line_start));
    const auto to = place(static_cast<std::size_t>(PhotoSpot::line_end));
    if (from && to) list.AddLine(*from, *to, mark_colour(photo_spots - 1), 1.5F);
    const auto& ribs = ui.model.check.photo.found.ribs;
    if (ribs) {
        for (const glm::dvec2& p : ribs->marks) {
            list.AddCircle(view.on(p), 5.0F, mark_colour(photo_spots - 1), 0, 2.0F);
        }
    }
    for (std::size_t i = 0; i < photo_spots; ++i) {
        if (i >= scale && i < 4) continue;
        const auto p = place(i);
        if (!p) continue;
        const bool picked = static_cast<int>(i) == ui.typing.photo_spot;
        // A gap in the middle leaves the place itself to be seen.
        const float far = picked ? 14.0F : 10.0F;
        for (const ImVec2 way : {ImVec2{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            const ImVec2 a{p->x + 3.0F * way.x, p->y + 3.0F * way.y};
            const ImVec2 b{p->x + far * way.x, p->y + far * way.y};
            list.AddLine(a, b, IM_COL32(0, 0, 0, 200), 4.0F);
            list.AddLine(a, b, mark_colour(i), 2.0F);
        }
        const std::string_view word = name(static_cast<PhotoSpot>(i));
        const float size = std::max(13.0F, 0.7F * reach_size(ui));
        const ImVec2 at{p->x + 8.0F, p->y + 6.0F};
        list.AddText(ui.fonts.small, size, {at.x + 1.0F, at.y + 1.0F}, IM_COL32(0, 0, 0, 255),
                     word.data(), word.data() + word.size());
        list.AddText(ui.fonts.small, size, at, mark_colour(i), word.data(),
                     word.data() + word.size());
    }
}

/// Four times as large in a corner, while a mark is dragged under a finger.
void draw_loupe(Ui& ui, const PhotoView& view) {
    const Box& b = view.box;
    const float side = std::min(0.3F * std::min(b.width, b.height), 200.0F);
    const ImVec2 at =
        view.on({static_cast<double>(ui.typing.drag_x), static_cast<double>(ui.typing.drag_y)});
    const bool left = at.x > b.x + 0.5F * b.width;
    const Box loupe{left ? b.x : b.right() - side, b.y, side, side};
    const double half = static_cast<double>(side) / (8.0 * view.scale);
    const auto u = [&](double px, double all) { return static_cast<float>((px + 0.5) / all); };
    const auto cx = static_cast<double>(ui.typing.drag_x),
               cy = static_cast<double>(ui.typing.drag_y);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(loupe), far_corner(loupe), im(ui.colours.ground));
    list.AddImage(reinterpret_cast<ImTextureID>(photo_image), corner(loupe), far_corner(loupe),
                  {u(cx - half, view.width), u(cy - half, view.height)},
                  {u(cx + half, view.width), u(cy + half, view.height)});
    list.AddRect(corner(loupe), far_corner(loupe), im(ui.colours.ink), 0.0F, 0, 2.0F);
    const ImVec2 m{loupe.x + 0.5F * side, loupe.y + 0.5F * side};
    list.AddLine({m.x - 12.0F, m.y}, {m.x + 12.0F, m.y}, IM_COL32(255, 80, 80, 255), 1.5F);
    list.AddLine({m.x, m.y - 12.0F}, {m.x, m.y + 12.0F}, IM_COL32(255, 80, 80, 255), 1.5F);
}

/// The spot to be set after that one: the next that is not set and is asked for.
int next_spot(const PhotoMarks& marks, int from) {
    const auto count = static_cast<int>(photo_spots);
    for (int k = 1; k <= count; ++k) {
        const int i = (from + k) % count;
        if (i >= static_cast<int>(scale_points(marks.scale_by)) && i < 4) continue;
        if (!marks.at[static_cast<std::size_t>(i)]) return i;
    }
    return from;
}

void set_spot(Ui& ui, int spot, const glm::dvec2& at) {
    Wish w = wish(WishKind::mark, spot);
    // A corner of a card is no edge by itself: its edges are found together.
    const bool snap = ui.typing.photo_snap && spot >= 4;
    const GreyView view = ui.model.check.photo.picture->view();
    const double radius = std::clamp(0.006 * view.width, 4.0, 24.0);
    const glm::dvec2 to = snap ? snap_to_edge(view, at, radius) : at;
    w.x = static_cast<float>(to.x);
    w.y = static_cast<float>(to.y);
    ui.want(std::move(w));
}

void take_pointer(Ui& ui, const PhotoView& view) {
    Typing& t = ui.typing;
    const PhotoMarks& marks = ui.model.check.photo.marks;
    ImGui::SetCursorScreenPos(corner(view.box));
    ImGui::InvisibleButton("photo", {view.box.width, view.box.height});
    note_control(ui, "photo", view.box);
    const ImGuiIO& io = ImGui::GetIO();
    const glm::dvec2 here = view.pixel(io.MousePos);
    if (ImGui::IsItemHovered() && io.MouseWheel != 0.0F) {
        const float zoom = std::clamp(t.photo_zoom * std::pow(1.2F, io.MouseWheel), 1.0F, 40.0F);
        // The place under the pointer stays there.
        const double k = static_cast<double>(t.photo_zoom / zoom);
        t.photo_x +=
            static_cast<float>((here.x / view.width - static_cast<double>(t.photo_x)) * (1.0 - k));
        t.photo_y +=
            static_cast<float>((here.y / view.height - static_cast<double>(t.photo_y)) * (1.0 - k));
        t.photo_zoom = zoom;
    }
    if (ImGui::IsItemActivated()) {
        t.photo_drag = -1;
        float nearest = handle;
        for (std::size_t i = 0; i < photo_spots; ++i) {
            if (!marks.at[i] || (i >= scale_points(marks.scale_by) && i < 4)) continue;
            const ImVec2 p = view.on(*marks.at[i]);
            const float far = std::hypot(p.x - io.MousePos.x, p.y - io.MousePos.y);
            if (far >= nearest) continue;
            nearest = far;
            t.photo_drag = static_cast<int>(i);
        }
        if (t.photo_drag >= 0) {
            const glm::dvec2 p = *marks.at[static_cast<std::size_t>(t.photo_drag)];
            t.drag_x = static_cast<float>(p.x);
            t.drag_y = static_cast<float>(p.y);
        }
    }
    if (ImGui::IsItemActive()) {
        if (t.photo_drag >= 0) {
            t.drag_x += io.MouseDelta.x / static_cast<float>(view.scale);
            t.drag_y += io.MouseDelta.y / static_cast<float>(view.scale);
        } else {
            t.photo_x -= io.MouseDelta.x / static_cast<float>(view.width * view.scale);
            t.photo_y -= io.MouseDelta.y / static_cast<float>(view.height * view.scale);
            t.photo_x = std::clamp(t.photo_x, 0.0F, 1.0F);
            t.photo_y = std::clamp(t.photo_y, 0.0F, 1.0F);
        }
    }
    if (!ImGui::IsItemDeactivated()) return;
    if (!ImGui::IsMousePosValid()) { // a second finger came, or a palm: no press
        t.photo_drag = -1;
        return;
    }
    const ImVec2 way = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0F);
    const bool moved = std::hypot(way.x, way.y) > 6.0F;
    if (t.photo_drag >= 0 && moved) {
        t.photo_spot = t.photo_drag;
        set_spot(ui, t.photo_drag, {static_cast<double>(t.drag_x), static_cast<double>(t.drag_y)});
    } else if (!moved) { // a press alone sets what is picked, however near to another
        set_spot(ui, t.photo_spot, here);
        PhotoMarks then = marks;
        then.at[static_cast<std::size_t>(t.photo_spot)] = here;
        t.photo_spot = next_spot(then, t.photo_spot);
    }
    t.photo_drag = -1;
}

void picture(Ui& ui, const Box& box) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.field), 6.0F);
    if (!ui.model.check.photo.picture) {
        write(ui, ui.fonts.small, ui.colours.soft, box.inside(2.0F * grid),
              std::string(ui.model.picks_files
                              ? "Take a photo or choose one, PNG or JPEG. "
                              : "Drop a photo here, PNG or JPEG, or write its file beside. ") +
                  "Hold an identity card or a "
                  "ruler at the height of the hook, the camera square above it, the fly in the "
                  "middle "
                  "third of the picture.");
        return;
    }
    const PhotoView view(ui, box);
    take_pointer(ui, view);
    list.PushClipRect(corner(box), far_corner(box), true);
    list.AddImage(reinterpret_cast<ImTextureID>(photo_image), view.on({-0.5, -0.5}),
                  view.on({view.width - 0.5, view.height - 0.5}));
    draw_overlay(ui, view);
    draw_marks(ui, view);
    if (ui.typing.photo_drag >= 0) draw_loupe(ui, view);
    list.PopClipRect();
}

/// Nearer to the mark that is picked, else to the fly; and back.
void closer(Ui& ui, const Box& box) {
    Typing& t = ui.typing;
    const PhotoOpen& photo = ui.model.check.photo;
    const float half = 0.5F * (box.width - grid);
    if (button(ui, "Closer", {box.x, box.y, half, box.height})) {
        t.photo_zoom = std::min(40.0F, 2.0F * t.photo_zoom);
        const auto& picked = photo.marks.at[static_cast<std::size_t>(t.photo_spot)];
        const auto& place = picked ? picked : photo.marks[PhotoSpot::eye];
        if (place) {
            t.photo_x = static_cast<float>(place->x / photo.picture->width);
            t.photo_y = static_cast<float>(place->y / photo.picture->height);
        }
    }
    if (button(ui, "Whole photo", {box.x + half + grid, box.y, half, box.height})) {
        t.photo_zoom = 1.0F;
        t.photo_x = t.photo_y = 0.5F;
    }
}

} // namespace

void check_photo(Ui& ui, const Box& box) {
    Box left = box, right = box;
    if (box.width >= box.height) {
        left.width = std::max(0.5F * box.width, box.width - 26.0F * ui.sizes.small);
        right.x = left.right() + grid;
        right.width = box.right() - right.x;
    } else {
        left.height = 0.48F * box.height;
        right.y = left.bottom() + grid;
        right.height = box.bottom() - right.y;
    }
    if (ui.model.check.photo.picture) {
        const float high = control_height(ui);
        left.height -= high + grid;
        closer(ui, {left.x, left.bottom() + grid, left.width, high});
    }
    picture(ui, left);
    photo_rows(ui, right);
}

} // namespace wrapwright
