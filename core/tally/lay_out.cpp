#include "core/tally/lay_out.h"

#include "core/tally/tally.h"
#include "core/tying/words.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"
#include "core/units/number_words.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

/// An operation and the tool that it asks for (common practice, no source).
struct ToolRow {
    Op op;
    const char* tool;
};

constexpr ToolRow tool_rows[] = {
    {Op::clamp, "vise"},
    {Op::flatten_barb, "flat pliers, for the barb"},
    {Op::start_thread, "bobbin holder"},
    {Op::trim, "fine scissors"},
    {Op::cut_thread, "fine scissors"},
    {Op::shape, "fine scissors"},
    {Op::collar, "hackle pliers"},
    {Op::palmer, "hackle pliers"},
    {Op::wind_post, "hackle pliers"},
    {Op::stack_hair, "hair stacker"},
    {Op::dubbing_loop, "loop twister"},
    {Op::whip_finish, "whip finisher, or your fingers"},
    {Op::coat, "needle"},
    {Op::clear_eye, "needle"},
};

bool has(const Resolved& resolved, Op op) {
    return std::any_of(resolved.acts.begin(), resolved.acts.end(),
                       [&](const Act& act) { return act.op == op; });
}

void add_tools(const Resolved& resolved, std::vector<LayOutItem>& list) {
    for (const ToolRow& row : tool_rows) {
        const bool listed = std::any_of(list.begin(), list.end(), [&](const LayOutItem& item) {
            return item.tool && item.what == row.tool;
        });
        if (!listed && has(resolved, row.op)) list.push_back({row.tool, {}, {}, true});
    }
}

bool needs_lamp(const Resolved& resolved) {
    return std::any_of(resolved.acts.begin(), resolved.acts.end(), [&](const Act& act) {
        return act.op == Op::coat && act.material != none &&
               resolved.materials[static_cast<std::size_t>(act.material)].coat ==
                   CoatKind::light_cured;
    });
}

std::string amount_of(const Resolved& resolved, const Draw& draw, bool inches) {
    const auto whole = [](double n) { return write_rounded(std::ceil(n - 1e-9), 0); };
    if (draw.material == none) return whole(draw.count);
    const Stuff& stuff = resolved.materials[static_cast<std::size_t>(draw.material)];
    if (comes_by_length(stuff.kind)) return length_words(draw.length, inches);
    if (stuff.kind == MaterialKind::coat)
        return whole(draw.count) + (draw.count > 1.0 ? " drops" : " drop");
    if (draw.count <= 0.0) return mass_words(draw.mass.value);
    std::string words = whole(draw.count);
    if (draw.length.si > 0.0) words += ", " + length_words(draw.length, inches) + " long";
    return words;
}

std::string name_of(const Pattern& pattern, const Draw& draw, bool inches) {
    const Recipe& recipe = pattern.recipe;
    if (draw.material == none) {
        return base_words(recipe, draw.base) + " #" + write_hook_size(draw.hook);
    }
    std::string words = material_words(recipe, draw.material);
    if (draw.measure.si > 0.0) words += " (" + length_words(draw.measure, inches) + ")";
    return words;
}

} // namespace

std::vector<LayOutItem> lay_out_list(const Pattern& pattern, const Resolved& resolved,
                                     const Tied& tied, int flies, bool inches) {
    std::vector<LayOutItem> list;
    if (tied.moments.empty()) return list;
    for (const Draw& draw : tally_batch({{&resolved, &tied, flies}})) {
        LayOutItem item{
            name_of(pattern, draw, inches), amount_of(resolved, draw, inches), {}, false};
        if (draw.material != none) {
            item.instead =
                pattern.recipe.materials[static_cast<std::size_t>(draw.material)].instead;
        }
        list.push_back(std::move(item));
    }
    add_tools(resolved, list);
    if (needs_lamp(resolved))
        list.push_back({"curing lamp, and glasses against its light", {}, {}, true});
    return list;
}

} // namespace wrapwright
