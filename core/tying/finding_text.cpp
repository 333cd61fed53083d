#include "core/tying/finding_text.h"

#include "core/tying/step_text.h"
#include "core/tying/words.h"
#include "core/units/number_text.h"

#include <array>

// In messages and remedies {part}, {base}, {at} and {where} stand for the finding's own part, base,
// place and limit, {0} to {3} for its evidence with units. A row names the evidence in the order of
// core/tying/finding.h; a number without a name is not shown.

namespace wrapwright {

namespace {

struct Row {
    Rule rule;
    std::string_view word;
    std::string_view message;
    std::string_view remedy;
    std::array<std::string_view, 4> names{};
    Caution caution = Caution::quiet;
};

constexpr std::array<Row, rule_count> rows{{
    {Rule::bead_after_thread, "bead-after-thread",
     "the {part} goes on when something is already on the {base}",
     "slide it on first of all, before ballast and thread"},
    {Rule::bead_will_not_pass,
     "bead-will-not-pass",
     "the {part} will not pass the {where}: it needs {0} and has {1}",
     "", // by where it sticks, below
     {"needed", "has", "margin"},
     Caution::point},
    {Rule::bead_tight,
     "bead-tight",
     "the {part} passes the {where} with only {2} to spare",
     "try one bead on one hook before you buy or load a batch",
     {"needed", "has", "margin"}},
    {Rule::bead_falls_off,
     "bead-falls-off",
     "the {part} slips over the eye: the eye is {0} across, the hole {1}",
     "take a bead with a smaller hole, or hold it with a few turns of thread in front",
     {"eye", "hole"}},
    {Rule::gape_left_small,
     "gape-left-small",
     "the {part} leaves only {0} of gape, {1} of what the bare hook has",
     "take a smaller bead or a hook with a wider gape",
     {"gape left", "share left", "least share"}},
    {Rule::ballast_does_not_fit,
     "ballast-does-not-fit",
     "the {part} is {0} long and has {1} of room",
     "take fewer turns or thinner wire, or start it further forward",
     {"span", "room", "over"}},
    {Rule::ballast_crowds_eye,
     "ballast-crowds-eye",
     "the {part} starts {0} behind the eye and leaves no room for a head",
     "start it {1} behind the eye",
     {"clear", "wanted"}},
    {Rule::ballast_not_locked,
     "ballast-not-locked",
     "nothing keeps the ballast from turning and sliding",
     "cross it with thread and build a ramp at its ends",
     {"turns", "span"}},
    {Rule::ballast_after_thread, "ballast-after-thread", "the {part} goes on over thread",
     "wind it on the bare shank, where it grips, and start the thread behind it"},
    {Rule::step_too_steep,
     "step-too-steep",
     "turns of the {part} cross a step of {3} at {at}, where they may slide off",
     "ramp the step with thread first, so that it rises less steeply",
     {"slope", "holds below", "slides above", "step"}},
    {Rule::never_tied_off,
     "never-tied-off",
     "the {part} is wound and never tied off",
     "hold its end with three firm turns of thread",
     {"turns wound"}},
    {Rule::never_wound, "never-wound", "the {part} is tied in and never wound",
     "wind it, or leave it out"},
    {Rule::never_tied_in, "never-tied-in", "the {part} is worked with and was never tied in",
     "tie it in first"},
    {Rule::trimmed_too_soon,
     "trimmed-too-soon",
     "the {part} is trimmed before it is tied off, and springs loose",
     "tie it off, then trim it",
     {},
     Caution::blade},
    {Rule::tied_off_too_few,
     "tied-off-too-few",
     "the {part} is tied off with {0}; it takes {1} to hold it",
     "take {1} over its end",
     {"turns", "least turns"}},
    {Rule::rib_before_body, "rib-before-body",
     "the {part} is wound before the body that it should cross",
     "tie the rib in, wind the body, and only then wind the rib over it"},
    {Rule::rib_locks_nothing,
     "rib-locks-nothing",
     "the {part} runs the body's own way and locks none of its turns",
     "wind one of the two the other way",
     {"rib turns", "crossings"}},
    {Rule::rib_hard_to_catch, "rib-hard-to-catch",
     "the {part} comes round against the thread, so that its end is hard to catch",
     "keep it tight with the other hand until three turns hold it"},
    {Rule::hard_end_standing,
     "hard-end-standing",
     "a hard end of the {part} stands where thread will pass: {0}",
     "break it off close or press it down before the thread passes",
     {"thread turns past it"},
     Caution::blade},
    {Rule::butt_bump,
     "butt-bump",
     "the butts at {at} do not meet the ballast and show as a bump of {0}",
     "trim the butts so that they end where the ballast begins",
     {"bump", "share of the diameter", "gap to the ballast"}},
    {Rule::fibre_too_short,
     "fibre-too-short",
     "the {part} is too short: {2} take {0} and it has {1}",
     "take a longer one or a second piece, or stop after {3}",
     {"needed", "has", "turns asked", "turns reached"}},
    {Rule::hackle_too_large,
     "hackle-too-large",
     "the barbs of the {part} are {0} long; {1} suits this hook",
     "choose a feather with shorter barbs",
     {"barbs", "target", "ratio", "limit"}},
    {Rule::hackle_too_small,
     "hackle-too-small",
     "the barbs of the {part} are {0} long; {1} suits this hook",
     "choose a feather with longer barbs",
     {"barbs", "target", "ratio", "limit"}},
    {Rule::head_used_up,
     "head-used-up",
     "only {0} is left behind the eye, and the head needs {1}",
     "end the work further back, {1} behind the eye",
     {"left", "head zone"}},
    {Rule::head_crowded,
     "head-crowded",
     "thread comes within {0} of the eye; the head zone is {1}",
     "keep the last turns further back, so that the eye stays free",
     {"left", "head zone"}},
    {Rule::thread_near_breaking,
     "thread-near-breaking",
     "the thread is pulled with {0} and holds {1}",
     "take a stronger thread, or pull in two gentle stages",
     {"pull", "strength", "margin", "least margin"}},
    {Rule::not_finished,
     "not-finished",
     "the {base} leaves the vise with its thread unfinished",
     "whip finish and cut the thread first",
     {"turns since the last knot"}},
    {Rule::cut_unfinished,
     "cut-unfinished",
     "the thread is cut without a finish: {0} can unwind",
     "whip finish before you cut",
     {"turns since the last knot"},
     Caution::blade},
    {Rule::finish_too_few,
     "finish-too-few",
     "the finish has {0}; it takes {1} to hold",
     "take {1} or more",
     {"turns", "least turns"}},
    {Rule::wound_over_wet,
     "wound-over-wet",
     "this goes over a coat that still needs {0}",
     "let it harden first; where wet is meant, say so with \"over_wet\": true",
     {"needs"},
     Caution::solvent},
    {Rule::thread_beyond_need,
     "thread-beyond-need",
     "{0} of thread where {1} hold: the rest is bulk",
     "stop at {1}",
     {"turns", "turns that hold"}},
    {Rule::no_thread, "no-thread", "there is no thread on the {base}",
     "start the thread before this"},
    {Rule::thread_already_on, "thread-already-on", "thread is on the {base} already",
     "leave this out, or finish and cut the first thread before it"},
    {Rule::hook_not_clamped, "hook-not-clamped", "the {base} is not in the vise", "clamp it first"},
    {Rule::barb_after_dressing,
     "barb-after-dressing",
     "the barb is pressed when the fly is begun: if the point snaps, the fly is lost",
     "press the barb first of all",
     {},
     Caution::eyes},
    {Rule::case_after_thorax, "case-after-thorax",
     "the {part} is tied in after the thorax that it should cover",
     "tie it in behind the thorax before that is wound"},
    {Rule::spun_on_thread_base,
     "spun-on-thread-base",
     "the {part} is spun over {0} of thread, where hair stays put instead of turning",
     "leave the shank bare where hair is spun",
     {"thread below"}},
    {Rule::part_never_used, "part-never-used", "no action uses the {part}",
     "add its actions, or mark it as optional"},
    {Rule::amount_is_a_word,
     "amount-is-a-word",
     "an amount is only a word here, and {0} was taken for it",
     "write your own number beside the word, under \"is\"",
     {"taken"}},
    {Rule::off_the_wire,
     "off-the-wire",
     "a place {0} behind the eye is off the stretch that can be dressed, which ends at {1}",
     "choose a place between the bend and the eye or bead",
     {"asked", "last place"}},
    {Rule::eye_coated,
     "eye-coated",
     "the coat comes within {0} of the eye and may close it",
     "keep it behind the head, and clear the eye while it is wet",
     {"front of the coat"},
     Caution::point},
}};

constexpr bool rows_in_order() {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (static_cast<std::size_t>(rows[i].rule) != i || rows[i].word.empty()) return false;
    }
    return true;
}
static_assert(rows_in_order());

const Row& row(Rule rule) { return rows[static_cast<std::size_t>(rule)]; }

/// The four limits that a bead has to pass, by the number in the evidence.
struct Limit {
    std::string_view where;
    std::string_view remedy;
};
constexpr std::array<Limit, 4> bead_limits{{
    {"wire", "take a bead with a wider hole or a hook of finer wire"},
    {"barb", "press the barb flat first, or take a bead with a wider hole"},
    {"bend", "start with the small hole, or take a countersunk or smaller bead"},
    {"jig bend", "take a slotted bead, or a straight hook"},
}};

const Limit& bead_limit(const Finding& finding) {
    const double where = finding.evidence[3].si;
    const auto i = where >= 0.0 && where < 4.0 ? static_cast<std::size_t>(where) : 0;
    return bead_limits[i];
}

EvidenceText evidence_text(std::string_view what, const Evidence& evidence) {
    switch (evidence.kind) {
    case Kind::length: return {what, evidence.si * 1e3, "mm"};
    case Kind::turns: return {what, evidence.si, "turns"};
    case Kind::force: return {what, evidence.si, "N"};
    case Kind::angle: return {what, in_degrees(Angle{evidence.si}), "deg"};
    case Kind::time: return {what, evidence.si, "s"};
    case Kind::mass: return {what, evidence.si * 1e6, "mg"};
    case Kind::unused:
    case Kind::count:
    case Kind::ratio: break;
    }
    return {what, evidence.si, ""};
}

std::string number_words(const Evidence& evidence) {
    if (evidence.kind == Kind::turns) return counted(evidence.si, "turn", "turns");
    if (evidence.kind == Kind::time && evidence.si >= 120.0) {
        return write_rounded(evidence.si / 60.0, 0) + " minutes";
    }
    const EvidenceText text = evidence_text({}, evidence);
    std::string words = write_rounded(text.value, 2);
    if (!text.unit.empty()) words += ' ' + std::string(text.unit);
    return words;
}

/// What a {name} of a row stands for.
std::string filling(std::string_view name, const Pattern& pattern, const Finding& finding) {
    if (name == "part") {
        if (finding.part != none) return part_words(pattern.recipe, finding.part);
        if (finding.material != none) return material_words(pattern.recipe, finding.material);
        return "work";
    }
    if (name == "base") return base_words(pattern.recipe, finding.base);
    if (name == "at") return mm_words(finding.at);
    if (name == "where") return std::string(bead_limit(finding).where);
    return number_words(finding.evidence[static_cast<std::size_t>(name.front() - '0')]);
}

std::string filled(std::string_view text, const Pattern& pattern, const Finding& finding) {
    std::string out;
    while (!text.empty()) {
        const auto open = text.find('{');
        out += text.substr(0, open);
        if (open == std::string_view::npos) break;
        const auto close = text.find('}', open);
        out += filling(text.substr(open + 1, close - open - 1), pattern, finding);
        text.remove_prefix(close + 1);
    }
    return out;
}

} // namespace

std::string_view name(Level level) {
    constexpr std::array<std::string_view, 3> names{"stops", "likely", "note"};
    return names[static_cast<std::size_t>(level)];
}

std::string_view name(Rule rule) { return row(rule).word; }

std::optional<Rule> rule(std::string_view word) {
    for (const Row& r : rows) {
        if (r.word == word) return r.rule;
    }
    return std::nullopt;
}

FindingText describe(const Pattern& pattern, const Finding& finding) {
    const Row& of = row(finding.rule);
    FindingText text;
    text.message = filled(of.message, pattern, finding);
    text.remedy = finding.rule == Rule::bead_will_not_pass ? std::string(bead_limit(finding).remedy)
                                                           : filled(of.remedy, pattern, finding);
    for (std::size_t i = 0; i < of.names.size(); ++i) {
        const Evidence& evidence = finding.evidence[i];
        if (of.names[i].empty() || evidence.kind == Kind::unused) continue;
        text.evidence.push_back(evidence_text(of.names[i], evidence));
    }
    if (of.caution != Caution::quiet) text.caution = caution_text(of.caution);
    return text;
}

std::string evidence_words(const std::vector<EvidenceText>& evidence) {
    std::string out;
    for (const EvidenceText& one : evidence) {
        if (!out.empty()) out += ", ";
        out += std::string(one.what) + ' ' + write_rounded(one.value, 2);
        if (!one.unit.empty() && one.unit != "turns") out += ' ' + std::string(one.unit);
    }
    return out;
}

} // namespace wrapwright
