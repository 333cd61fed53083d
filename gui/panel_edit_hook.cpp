// The hook with its landmarks: press a place, and its words go into the field that was used last.

#include "gui/panel_edit_parts.h"

#include "core/units/number_text.h"
#include "gui/fly_drawing.h"
#include "gui/touch.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr float snap = 16.0F; ///< dots within which a press means the landmark

/// A place on the wire that has words of its own.
struct Named {
    std::string words;
    Length at{};
    bool low = false; ///< its label stands below the hook
};

/// Landmarks, and the ends of what is on the hook by then; a part is not placed by its own ends.
std::vector<Named> named_places(const OpenFly& fly, int moment, int base) {
    const BaseRun& run = fly.tied.bases[static_cast<std::size_t>(base)];
    const Stations& s = run.line.stations();
    std::vector<Named> places;
    if (run.bead != none) {
        places.push_back({"behind bead", run.bead_rear, false});
    } else {
        places.push_back({"eye", s.eye, false});
        places.push_back({"head", run.no_go, true});
    }
    places.push_back({"middle", s.middle, false});
    places.push_back({"point", s.point, true});
    places.push_back({"barb", s.barb, false});
    places.push_back({"bend", s.bend, true});
    const int act = fly.tied.moments[static_cast<std::size_t>(moment)].act;
    const int own = fly.resolved.acts[static_cast<std::size_t>(act)].part;
    for (int i = 0; i < fly.tied.moments[static_cast<std::size_t>(moment)].windings; ++i) {
        const Winding& w = fly.tied.windings[static_cast<std::size_t>(i)];
        if (w.part == none || w.part == own || w.base != base) continue;
        const std::string& id = fly.pattern.recipe.parts[static_cast<std::size_t>(w.part)].id;
        const auto known = std::any_of(places.begin(), places.end(),
                                       [&](const Named& n) { return n.words == "front of " + id; });
        const Extent& e = fly.tied.extents[static_cast<std::size_t>(w.part)];
        if (known || !e.set) continue;
        places.push_back({"front of " + id, e.front, false});
        places.push_back({"rear of " + id, e.rear, false});
    }
    return places;
}

/// Where a place that is written lies, as the record has it; nothing where it was not run.
std::optional<Length> at_of(const OpenFly& fly, int act_index, bool from) {
    for (const Winding& w : fly.tied.windings) {
        if (w.act == act_index) return from ? w.from : w.to;
    }
    return std::nullopt;
}

} // namespace

void edit_hook(Ui& ui, const Box& box, const std::vector<Field>& fields) {
    const EditWork& work = ui.model.edit;
    const int moment = moment_of(work);
    if (moment == none) return;
    const OpenFly& fly = *work.fly;
    const auto spot = std::find_if(fields.begin(), fields.end(), [&](const Field& f) {
        return f.kind == FieldKind::spot && f.path == ui.typing.edit_spot;
    });
    const auto first = std::find_if(fields.begin(), fields.end(),
                                    [](const Field& f) { return f.kind == FieldKind::spot; });
    const Field& target = spot != fields.end() ? *spot : *first;

    ImGui::SetCursorScreenPos(corner(box));
    const bool pressed =
        meant(ui, "place on the hook",
              ImGui::InvisibleButton("place on the hook", {box.width, box.height}));
    note_control(ui, "place on the hook", box);
    const bool over = ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner(box), far_corner(box), im(ui.colours.ground), 6.0F);
    if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible) {
        list.AddRect(corner(box), far_corner(box), im(ui.colours.ink), 6.0F, 0, 3.0F);
    }
    const FlyOutline outline = outline_of(fly.pattern, fly.resolved, fly.tied, moment);
    FlyPose pose;
    // The eye is where the picture above has it.
    pose.mirrored = ui.model.settings.left_handed == ui.model.settings.facing;
    const float line = reach_size(ui);
    fit(pose, outline,
        {box.x + grid, box.y + line + 2.0F, box.width - 2.0F * grid,
         box.height - 2.0F * line - 4.0F});
    list.PushClipRect(corner(box), far_corner(box), true);
    draw_fly(list, outline, pose, ui.colours);

    const int base = fly.tied.moments[static_cast<std::size_t>(moment)].base;
    const Centreline& wire = fly.tied.bases[static_cast<std::size_t>(base)].line;
    const auto on = [&](Length at) {
        const glm::dvec2 p = 1e3 * wire.position(at);
        return pose.on({static_cast<float>(p.x), static_cast<float>(p.y)});
    };
    const std::vector<Named> places = named_places(fly, moment, base);
    std::array<float, 2> taken{-1e9F, -1e9F}; // right ends of the labels above and below
    std::vector<const Named*> by_x;
    by_x.reserve(places.size());
    for (const Named& n : places) by_x.push_back(&n);
    std::sort(by_x.begin(), by_x.end(),
              [&](const Named* a, const Named* b) { return on(a->at).x < on(b->at).x; });
    for (const Named* n : by_x) {
        const ImVec2 p = on(n->at);
        list.AddCircleFilled(p, 4.0F, im(ui.colours.accent));
        if (n->words.find(" of ") != std::string::npos) continue; // too many to name all
        const float wide = ui.fonts.small->CalcTextSizeA(line, FLT_MAX, 0.0F, n->words.c_str()).x;
        const float x = std::clamp(p.x - 0.5F * wide, box.x, box.right() - wide);
        float& end = taken[n->low ? 1 : 0];
        if (x < end + 4.0F) continue;
        end = x + wide;
        list.AddText(ui.fonts.small, line, {x, n->low ? box.bottom() - line : box.y},
                     im(ui.colours.soft), n->words.c_str());
    }
    const int act = fly.tied.moments[static_cast<std::size_t>(moment)].act;
    if (const auto here = at_of(fly, act, target.path.ends_with(".from"))) {
        list.AddCircle(on(*here), 8.0F, im(ui.colours.warn), 0, 3.0F);
    }

    // The place below the pointer, in words.
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    std::string words;
    float nearest = snap;
    for (const Named& n : places) {
        const ImVec2 p = on(n.at);
        // Landmarks are hit first; ends of parts need to be met well.
        const float away = std::hypot(p.x - mouse.x, 0.5F * (p.y - mouse.y)) *
                           (n.words.find(" of ") != std::string::npos ? 2.0F : 1.0F);
        if (away < nearest) {
            nearest = away;
            words = n.words;
        }
    }
    const Stations& s = wire.stations();
    if (words.empty()) {
        constexpr int samples = 200;
        float best = FLT_MAX;
        double share = 0.0;
        for (int i = 0; i <= samples; ++i) {
            const double k = static_cast<double>(i) / samples;
            const ImVec2 p = on(s.front + k * (s.bend - s.front));
            const float away = std::abs(p.x - mouse.x);
            if (away < best) {
                best = away;
                share = k;
            }
        }
        words = write_rounded(share, 2) + " shank";
    }
    if (over) {
        const float wide = ui.fonts.small->CalcTextSizeA(line, FLT_MAX, 0.0F, words.c_str()).x;
        const float x = std::clamp(mouse.x - 0.5F * wide, box.x + 4.0F, box.right() - wide - 4.0F);
        const float y = box.y + 0.5F * box.height + 1.2F * line;
        list.AddRectFilled({x - 4.0F, y}, {x + wide + 4.0F, y + line}, im(ui.colours.accent), 4.0F);
        list.AddText(ui.fonts.small, line, {x, y}, im(ui.colours.accent_ink), words.c_str());
    }
    list.PopClipRect();
    if (!pressed) return;
    Wish w = wish(WishKind::edit_set, 0, words);
    w.key = target.path;
    ui.want(std::move(w));
}

} // namespace wrapwright
