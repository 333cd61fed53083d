#include "platform/cli/json.h"

#include "core/tying/finding_text.h"
#include "core/tying/step_text.h"
#include "core/tying/words.h"
#include "core/water/in_water.h"
#include "platform/cli/water_json.h"

#include <fmt/core.h>

#include <cmath>

namespace wrapwright::cli {

namespace {

double tidy_mm(Length length) { return tidy(in_millimetres(length)); }

Json value_json(const Estimate<Length>& length) {
    return {{"value", tidy_mm(length.value)},
            {"low", tidy_mm(length.low)},
            {"high", tidy_mm(length.high)},
            {"origin", name(length.origin)}};
}

/// The least sure of the numbers that a hook is computed from.
Origin origin_of(const Hook& hook) {
    return std::max({hook.shank.origin, hook.gape.origin, hook.wire.origin});
}

Json hook_json(const Hook& hook) {
    Json json{{"label", hook.label},
              {"shape", name(hook.shape)},
              {"family", name(hook.family)},
              {"shank_mm", tidy_mm(hook.shank.value)},
              {"gape_mm", tidy_mm(hook.gape.value)},
              {"wire_mm", tidy_mm(hook.wire.value)},
              {"eye_mm", tidy_mm(hook.eye_length.value)},
              {"barb_mm", tidy_mm(hook.barb_height.value)},
              {"origin", name(origin_of(hook))},
              {"shank", value_json(hook.shank)},
              {"gape", value_json(hook.gape)},
              {"wire", value_json(hook.wire)}};
    return json;
}

Json profile_json(const Profile& profile) {
    Json list = Json::array();
    for (int i = 0; i < profile_cells; ++i) {
        list.push_back(
            {{"at_mm", tidy_mm(profile.at(i))},
             {"diameter_mm", tidy(profile.diameter[static_cast<std::size_t>(i)] * 1e3)}});
    }
    return list;
}

std::string_view batch_word(BatchStage stage) {
    switch (stage) {
    case BatchStage::all_first: return "all first";
    case BatchStage::all_last: return "all last";
    case BatchStage::each: break;
    }
    return "each";
}

Json step_json(const Pattern& pattern, const Fly& fly, int step) {
    const Step& said = pattern.recipe.steps[static_cast<std::size_t>(step)];
    Json due = Json::array();
    if (!said.caution.empty()) due.push_back(said.caution);
    for (const Caution one : each_of(step_cautions(pattern, fly.resolved, step))) {
        due.push_back(caution_text(one));
    }
    Json actions = Json::array();
    for (std::size_t m = 0; m < fly.tied.moments.size(); ++m) {
        if (fly.tied.moments[m].step != step) continue;
        actions.push_back(
            {{"do", name(fly.resolved.acts[m].op)},
             {"text", action_text(pattern, fly.resolved, fly.tied, static_cast<int>(m))}});
    }
    return {{"number", step + 1},
            {"text", said.text},
            {"landmark", said.landmark},
            {"tip", said.tip},
            {"batch", batch_word(said.batch)},
            {"restore_point", said.restore_point},
            {"cautions", std::move(due)},
            {"actions", std::move(actions)}};
}

Json winding_json(const Pattern& pattern, const Winding& winding) {
    const Recipe& recipe = pattern.recipe;
    return {{"step", winding.step + 1},
            {"base", recipe.bases[static_cast<std::size_t>(winding.base)].id},
            {"part",
             winding.part == none ? "" : recipe.parts[static_cast<std::size_t>(winding.part)].id},
            {"material", winding.material == none
                             ? ""
                             : recipe.materials[static_cast<std::size_t>(winding.material)].id},
            {"from_mm", tidy_mm(winding.from)},
            {"to_mm", tidy_mm(winding.to)},
            {"turns", tidy(winding.turns)},
            {"pitch_mm", tidy_mm(winding.pitch)},
            {"strand_mm", tidy_mm(winding.width)},
            {"strand_height_mm", tidy_mm(winding.height)},
            {"core_mm", tidy_mm(winding.core)},
            {"length_mm", tidy_mm(winding.length)},
            {"mass_mg", tidy(in_milligrams(winding.mass))},
            {"spacing", name(winding.spacing)},
            {"layer", winding.layer},
            {"sense", name(winding.sense)},
            {"against_thread", winding.against_thread}};
}

Json parts_json(const Pattern& pattern, const Fly& fly) {
    Json list = Json::array();
    for (const TallyLine& line : tally_by_part(fly.resolved, fly.tied)) {
        list.push_back(tally_line_json(pattern, line));
    }
    return list;
}

Json findings_json(const Pattern& pattern, const Tied& tied) {
    Json list = Json::array();
    for (const Finding& finding : tied.findings) list.push_back(finding_json(pattern, finding));
    return list;
}

} // namespace

double tidy(double value) { return std::round(value * 1e6) / 1e6; }

Json mass_json(const Estimate<Mass>& mass) {
    return {{"value", tidy(in_milligrams(mass.value))},
            {"low", tidy(in_milligrams(mass.low))},
            {"high", tidy(in_milligrams(mass.high))},
            {"origin", name(mass.origin)}};
}

Json finding_json(const Pattern& pattern, const Finding& finding) {
    const FindingText text = describe(pattern, finding);
    Json evidence = Json::array();
    for (const EvidenceText& one : text.evidence) {
        evidence.push_back({{"what", one.what}, {"value", tidy(one.value)}, {"unit", one.unit}});
    }
    Json json{{"level", name(finding.level)},
              {"rule", name(finding.rule)},
              {"step", finding.step == none ? Json() : Json(finding.step + 1)},
              {"message", text.message},
              {"evidence", std::move(evidence)},
              {"remedy", text.remedy}};
    if (finding.part != none) {
        json["part"] = pattern.recipe.parts[static_cast<std::size_t>(finding.part)].id;
    }
    if (!text.caution.empty()) json["caution"] = text.caution;
    return json;
}

Json tally_line_json(const Pattern& pattern, const TallyLine& line) {
    const Recipe& recipe = pattern.recipe;
    const bool is_hook = line.material == none;
    Json json;
    if (is_hook) {
        json["id"] = recipe.bases[static_cast<std::size_t>(line.base)].id;
        json["role"] = recipe.bases[static_cast<std::size_t>(line.base)].kind;
    } else if (line.part == none) {
        json["id"] = recipe.materials[static_cast<std::size_t>(line.material)].id;
        json["role"] = "joint";
    } else {
        json["id"] = recipe.parts[static_cast<std::size_t>(line.part)].id;
        json["role"] = recipe.parts[static_cast<std::size_t>(line.part)].role;
    }
    if (!is_hook) {
        json["material"] = recipe.materials[static_cast<std::size_t>(line.material)].id;
    }
    json["count"] = tidy(line.count);
    json["turns"] = tidy(line.turns);
    json["length_mm"] = tidy_mm(line.length);
    json["mass_mg"] = tidy(in_milligrams(line.mass.value));
    return json;
}

Json plan_json(const Loaded& loaded, const Fly& fly) {
    const Pattern& pattern = loaded.pattern;
    const Recipe& recipe = pattern.recipe;
    Json bases = Json::array();
    for (std::size_t b = 0; b < fly.tied.bases.size(); ++b) {
        Json base = hook_json(fly.tied.bases[b].hook);
        base["id"] = recipe.bases[b].id;
        base["profile"] = profile_json(fly.tied.profile(static_cast<int>(b)));
        bases.push_back(std::move(base));
    }
    Json steps = Json::array();
    for (std::size_t s = 0; s < recipe.steps.size(); ++s) {
        steps.push_back(step_json(pattern, fly, static_cast<int>(s)));
    }
    Json windings = Json::array();
    for (const Winding& winding : fly.tied.windings) {
        windings.push_back(winding_json(pattern, winding));
    }
    const Result<InWater> water = in_water(pattern, fly.resolved, fly.tied, {});
    return {{"recipe", recipe.id},
            {"name", recipe.name},
            {"size", size_words(fly.tied.size).substr(1)},
            {"verbatim", recipe.verbatim},
            {"hook", hook_json(fly.tied.bases.front().hook)},
            {"bases", std::move(bases)},
            {"steps", std::move(steps)},
            {"windings", std::move(windings)},
            {"parts", parts_json(pattern, fly)},
            {"mass_mg", mass_json(fly.tied.mass)},
            {"water", water.ok() ? water_json(pattern, water.value()) : Json()},
            {"profile", profile_json(fly.tied.profile(0))},
            {"findings", findings_json(pattern, fly.tied)}};
}

void print(const Json& json) {
    fmt::print("{}\n", json.dump(2, ' ', false, Json::error_handler_t::replace));
}

} // namespace wrapwright::cli
