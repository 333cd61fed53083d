#include "core/check/rules.h"

#include "core/units/number_text.h"

#include <array>
#include <cmath>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 11> names{
    "beads",  "bead size",       "cones", "hooks", "hook length",
    "barb",   "ballast covered", "lead",  "mass",  "flies on the leader",
    "spacing"};

std::string in_unit(RuleKind kind, double v) {
    const auto say = [](double x, int decimals, std::string_view unit) {
        return write_rounded(x, decimals).append(unit);
    };
    switch (kind) {
    case RuleKind::bead_size:
    case RuleKind::hook_length:
    case RuleKind::barb: return say(v * 1e3, 2, " mm");
    case RuleKind::cover: return say(v * 100.0, 0, " %");
    case RuleKind::mass: return say(v * 1e6, 0, " mg");
    case RuleKind::spacing: return say(v * 100.0, 0, " cm");
    default: return say(v, 0, "");
    }
}

} // namespace

std::string rule_words(const RuleRow& row) {
    std::string words{names[static_cast<std::size_t>(row.kind)]};
    words.append(": ");
    const bool least = row.kind == RuleKind::cover || row.kind == RuleKind::spacing;
    const std::string limit =
        std::string(least ? "at least " : "at most ").append(in_unit(row.kind, row.limit));
    if (!row.has_number) return words.append("not told by a fly; ").append(limit);
    words.append(in_unit(row.kind, row.value));
    if (row.high - row.low > 1e-9) {
        words.append(" (").append(in_unit(row.kind, row.low)).append(" to ");
        words.append(in_unit(row.kind, row.high)).append(")");
    }
    words.append(", ").append(limit).append(", ");
    words.append(in_unit(row.kind, std::abs(row.margin)));
    return words.append(row.margin < 0.0 ? " beyond" : " to spare");
}

std::string rule_remedy(const RuleRow& row) {
    if (row.verdict == RuleVerdict::pass) return {};
    const bool fails = row.verdict == RuleVerdict::fail;
    switch (row.kind) {
    case RuleKind::bead_count: return "leave a bead off";
    case RuleKind::bead_size: return fails ? "take a smaller bead" : "measure the bead";
    case RuleKind::cones: return "take a bead instead of the cone";
    case RuleKind::hook_count: return "tie it on one hook";
    case RuleKind::hook_length: return fails ? "take a shorter hook" : "measure the hook";
    case RuleKind::barb: return "press the barb flat, or measure the hook as barbless";
    case RuleKind::cover:
        return fails ? "dress the body over all of the ballast" : "look whether any ballast shows";
    case RuleKind::lead: return "take lead-free ballast";
    case RuleKind::mass: return fails ? "take a lighter bead or less ballast" : "weigh the fly";
    case RuleKind::fly_count:
    case RuleKind::spacing: return "measure it on the leader";
    }
    return {};
}

} // namespace wrapwright
