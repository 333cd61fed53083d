// The water from the side: how deep the fly is along its drift, as a band.

#include "core/units/number_text.h"
#include "core/water/water_words.h"
#include "gui/panel_water_parts.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wrapwright {

namespace {

/// Where metres lie in the box.
struct Chart {
    Box plot;
    float along_m, deep_m;

    [[nodiscard]] ImVec2 at(Length along, Length deep) const {
        return {plot.x + static_cast<float>(along.si) / along_m * plot.width,
                plot.y + static_cast<float>(deep.si) / deep_m * plot.height};
    }
};

void draw_bed(ImDrawList& list, const Chart& chart, const Palette& c) {
    const Box& p = chart.plot;
    const float y = p.bottom();
    list.AddLine({p.x, y}, {p.right(), y}, im(c.ink), 2.0F);
    for (float x = p.x; x < p.right(); x += 2.0F * grid) { // stones: short strokes below the bed
        list.AddLine({x, y + 2.0F}, {x + 0.7F * grid, y + 0.7F * grid}, im(c.soft), 1.5F);
    }
}

/// Arrows as long as the current is fast at their depth: it slows towards the bed.
void draw_current(ImDrawList& list, const Chart& chart, const Palette& c) {
    constexpr int arrows = 5;
    for (int i = 0; i < arrows; ++i) {
        const float share = (static_cast<float>(i) + 0.5F) / arrows;
        const float y = chart.plot.y + share * chart.plot.height;
        const float length = 0.13F * chart.plot.width * std::pow(1.0F - share, 1.0F / 7.0F);
        const float x = chart.plot.x + grid;
        list.AddLine({x, y}, {x + length, y}, im(c.line), 2.0F);
        list.AddTriangleFilled({x + length + grid, y}, {x + length, y - 4.0F},
                               {x + length, y + 4.0F}, im(c.line));
    }
}

void draw_band(ImDrawList& list, const Chart& chart, const InWater& w, const Palette& c) {
    for (std::size_t i = 0; i + 1 < drift_places; ++i) {
        const DriftPlace &a = w.drift[i], &b = w.drift[i + 1];
        list.AddQuadFilled(chart.at(a.along, a.depth.low), chart.at(b.along, b.depth.low),
                           chart.at(b.along, b.depth.high), chart.at(a.along, a.depth.high),
                           im(c.accent, 0.22F));
    }
    for (std::size_t i = 0; i + 1 < drift_places; ++i) {
        const DriftPlace &a = w.drift[i], &b = w.drift[i + 1];
        if (i % 2 == 0) { // dashed: nobody has measured these
            list.AddLine(chart.at(a.along, a.depth.low), chart.at(b.along, b.depth.low), im(c.soft),
                         1.5F);
            list.AddLine(chart.at(a.along, a.depth.high), chart.at(b.along, b.depth.high),
                         im(c.soft), 1.5F);
        }
        list.AddLine(chart.at(a.along, a.depth.value), chart.at(b.along, b.depth.value),
                     im(c.accent), 3.0F);
    }
    const DriftPlace& end = w.drift.back();
    list.AddCircleFilled(chart.at(end.along, end.depth.value), 5.0F, im(c.accent));
}

void draw_scales(Ui& ui, const Chart& chart, float line) {
    const Palette& c = ui.colours;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Box& p = chart.plot;
    const auto label = [&](float x, float y, const std::string& text, bool right) {
        const float wide = ui.fonts.small->CalcTextSizeA(line, FLT_MAX, 0.0F, text.c_str()).x;
        write(ui, ui.fonts.small, c.soft, {right ? x - wide : x, y, wide + 1.0F, line}, text);
    };
    constexpr std::array<double, 7> steps{0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0};
    const auto step_for = [&](float span, float pixels, float least) {
        for (const double s : steps) {
            if (static_cast<float>(s) / span * pixels >= least) return s;
        }
        return steps.back();
    };
    const double deep = step_for(chart.deep_m, p.height, 1.4F * line);
    for (double z = 0.0; z < static_cast<double>(chart.deep_m) + 1e-9; z += deep) {
        const float y = chart.at({}, metres(z)).y;
        list.AddLine({p.x - 4.0F, y}, {p.x, y}, im(c.soft), 1.0F);
        if (y + 0.5F * line <= p.bottom() + 0.6F * line) {
            label(p.x - 6.0F, y - 0.5F * line, write_rounded(z, 1), true);
        }
    }
    const double along = step_for(chart.along_m, p.width, 4.0F * line);
    for (double x = along; x < static_cast<double>(chart.along_m) - 1e-9; x += along) {
        const float at = chart.at(metres(x), {}).x;
        list.AddLine({at, p.bottom()}, {at, p.bottom() + 4.0F}, im(c.soft), 1.0F);
        label(at - 0.3F * line, p.bottom() + grid, write_rounded(x, 1) + " m", false);
    }
}

} // namespace

void water_drift(Ui& ui, const Box& box) {
    sheet(ui, box);
    const InWater& w = *ui.model.dipped;
    const Palette& c = ui.colours;
    const float line = ui.fonts.small->FontSize;
    Box in = box.inside(1.5F * grid);
    const std::string words = drift_words(w, w.drift.back().along);
    const float high = std::min(height_of(ui.fonts.small, words, in.width), 2.0F * line);
    write(ui, ui.fonts.small, c.ink, {in.x, in.y, in.width, high}, words);
    in.y += high + grid;
    in.height -= high + grid;
    const float left = 2.0F * line, foot = line + 1.5F * grid;
    if (in.height < foot + 3.0F * line || in.width < left + 8.0F * line) return;
    const Chart chart{
        {in.x + left, in.y + 0.4F * line, in.width - left - grid, in.height - foot - 0.4F * line},
        static_cast<float>(w.drift.back().along.si),
        static_cast<float>(ui.model.settings.river_deep_m)};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRect(corner(box), far_corner(box), true);
    const Box& p = chart.plot;
    list.AddRectFilled(corner(p), far_corner(p), im(c.field), 0.0F);
    draw_current(list, chart, c);
    draw_band(list, chart, w, c);
    list.AddLine({p.x, p.y}, {p.right(), p.y}, im(c.ink), 2.0F); // the surface
    draw_bed(list, chart, c);
    draw_scales(ui, chart, line);
    list.PopClipRect();
}

} // namespace wrapwright
