#include "platform/cli/text.h"

#include "core/tying/finding_text.h"
#include "core/tying/words.h"
#include "platform/cli/failure.h"

#include <array>

namespace wrapwright::cli {

namespace {

constexpr std::array<Colour, 3> level_colours{Colour::red, Colour::yellow, Colour::cyan};

} // namespace

std::string mass_words(const Estimate<Mass>& mass) {
    return fmt::format("{:.0f} mg ({:.0f} to {:.0f})", in_milligrams(mass.value),
                       in_milligrams(mass.low), in_milligrams(mass.high));
}

std::string findings_count(const Tied& tied) {
    std::array<int, 3> count{};
    for (const Finding& f : tied.findings) ++count[static_cast<std::size_t>(f.level)];
    if (tied.findings.empty()) return "none";
    std::string out;
    const auto say = [&](int n, std::string_view what) {
        if (n > 0) append(out, "{}{} {}", out.empty() ? "" : ", ", n, what);
    };
    say(count[0], count[0] == 1 ? "stops the fly" : "stop the fly");
    say(count[1], "likely trouble");
    say(count[2], count[2] == 1 ? "note" : "notes");
    return out;
}

std::string findings_text(const Pattern& pattern, const Tied& tied, const Terminal& to) {
    if (tied.findings.empty()) return "  none\n";
    std::string out;
    for (const Level level : {Level::stops, Level::likely, Level::note}) {
        for (const Finding& finding : tied.findings) {
            if (finding.level != level) continue;
            const FindingText text = describe(pattern, finding);
            const std::string where =
                finding.step == none ? "whole fly" : fmt::format("step {}", finding.step + 1);
            const auto line = [&](std::string_view what, const std::string& words, Colour colour) {
                if (words.empty()) return;
                append(out, "         {}\n",
                       to.paint(wrapped(fmt::format("{}{}", what, words), to.width, 9), colour));
            };
            append(out, "  {} {}\n",
                   to.paint(fmt::format("{:<6}", name(level)),
                            level_colours[static_cast<std::size_t>(level)]),
                   wrapped(fmt::format("{}, {}: {}", where, name(finding.rule),
                                       printable(text.message)),
                           to.width, 9));
            line("", evidence_words(text.evidence), Colour::faint);
            line("remedy: ", printable(text.remedy), Colour::green);
            line("! ", text.caution, Colour::yellow);
        }
    }
    return out;
}

std::string parts_text(const Pattern& pattern, const Fly& fly, const Terminal& to) {
    using Align = Table::Align;
    Table table({{"part", Align::left},
                 {"material", Align::left},
                 {"count"},
                 {"turns"},
                 {"length mm"},
                 {"mg"},
                 {"low"},
                 {"high"}});
    const Recipe& recipe = pattern.recipe;
    for (const TallyLine& line : tally_by_part(fly.resolved, fly.tied)) {
        const std::string part = line.material == none ? base_words(recipe, line.base)
                                 : line.part == none   ? "joint"
                                                       : part_words(recipe, line.part);
        const auto unless_zero = [](double value, int decimals) {
            return value > 0.0 ? fmt::format("{:.{}f}", value, decimals) : std::string();
        };
        table.add({printable(part),
                   line.material == none ? "" : printable(material_words(recipe, line.material)),
                   unless_zero(line.count, 0), unless_zero(line.turns, 1),
                   unless_zero(in_millimetres(line.length), 0),
                   fmt::format("{:.1f}", in_milligrams(line.mass.value)),
                   fmt::format("{:.1f}", in_milligrams(line.mass.low)),
                   fmt::format("{:.1f}", in_milligrams(line.mass.high))});
    }
    table.add({"whole fly", "", "", "", "",
               fmt::format("{:.1f}", in_milligrams(fly.tied.mass.value)),
               fmt::format("{:.1f}", in_milligrams(fly.tied.mass.low)),
               fmt::format("{:.1f}", in_milligrams(fly.tied.mass.high))},
              Colour::bold);
    return table.text(to);
}

} // namespace wrapwright::cli
