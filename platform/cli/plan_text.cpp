#include "platform/cli/text.h"

#include "core/tying/step_text.h"
#include "core/tying/words.h"
#include "platform/cli/failure.h"
#include "platform/cli/water_json.h"

namespace wrapwright::cli {

namespace {

constexpr int step_indent = 5;

std::string title(const Recipe& recipe, std::string_view size, const Terminal& to) {
    std::string out;
    append(out, "{}  {}\n", to.paint(printable(recipe.name), Colour::bold),
           to.paint(size, Colour::cyan));
    const auto say = [&](std::string_view what, const std::string& text) {
        if (text.empty()) return;
        append(out, "  {} {}\n", to.paint(what, Colour::faint),
               wrapped(printable(text), to.width, 3 + columns(what)));
    };
    say("class:", recipe.fly_class);
    say("imitates:", recipe.imitates);
    say("fishing:", recipe.fishing);
    say("notes:", recipe.notes);
    return out;
}

std::string spread(const Estimate<Length>& length) {
    const double value = in_millimetres(length.value);
    const double half = 0.5 * in_millimetres(length.high - length.low);
    if (half < 0.005) return fmt::format("{:.2f} mm", value);
    return fmt::format("{:.2f} mm ±{:.0f} %", value, 100.0 * half / value);
}

std::string hooks_text(const Pattern& pattern, const Tied& tied, const Terminal& to) {
    std::string out;
    for (std::size_t b = 0; b < tied.bases.size(); ++b) {
        const Hook& hook = tied.bases[b].hook;
        const bool measured = hook.shank.origin == Origin::measured;
        const std::string& said = pattern.recipe.bases[b].text;
        append(out, "\n{}  {}\n",
               to.paint(base_words(pattern.recipe, static_cast<int>(b)), Colour::bold),
               printable(measured || said.empty() ? hook.label : said));
        append(out, "  shank {}, gape {}, wire {}, eye {:.2f} mm: {}\n", spread(hook.shank),
               spread(hook.gape), spread(hook.wire), in_millimetres(hook.eye_length.value),
               name(hook.shank.origin));
    }
    return out;
}

/// Pictures mirror for the other hand and words do not; what turns about is said once, here.
std::string hand_text(Hand hand, const Terminal& to) {
    const bool left = hand == Hand::left;
    const std::string text = fmt::format(
        "{}-handed: seen from the eye, \"over the top, away from you\" runs {}; to lay thread "
        "flat, spin the bobbin {} as seen from above.",
        left ? "left" : "right", left ? "counter-clockwise" : "clockwise",
        left ? "clockwise" : "counter-clockwise");
    return fmt::format("  {}\n", to.paint(wrapped(text, to.width, 2), Colour::faint));
}

/// One line of a step: a word in colour, then text that hangs behind it.
void add_line(std::string& out, const Terminal& to, std::string_view what, std::string_view words,
              Colour colour) {
    if (words.empty()) return;
    append(out, "{:{}}{} {}\n", "", step_indent, to.paint(what, colour),
           wrapped(printable(words), to.width, step_indent + 1 + columns(what)));
}

/// The cautions of a step: in full where they come up first, then by their word alone.
void add_cautions(std::string& out, const Pattern& pattern, const Fly& fly, int step, Caution& told,
                  const Terminal& to) {
    add_line(out, to, "!", pattern.recipe.steps[static_cast<std::size_t>(step)].caution,
             Colour::yellow);
    std::string again;
    for (const Caution one : each_of(step_cautions(pattern, fly.resolved, step))) {
        if (has(told, one)) {
            append(again, "{}{}", again.empty() ? "as before: " : ", ", caution_word(one));
        } else {
            add_line(out, to, "!", caution_text(one), Colour::yellow);
            told = told | one;
        }
    }
    add_line(out, to, "!", again, Colour::yellow);
}

std::string step_text(const Pattern& pattern, const Fly& fly, int step, Caution& told,
                      const Terminal& to) {
    const Step& said = pattern.recipe.steps[static_cast<std::size_t>(step)];
    std::string out;
    append(out, "\n{} {}\n", to.paint(fmt::format("{:>3}.", step + 1), Colour::bold),
           wrapped(printable(said.text), to.width, step_indent));
    if (said.batch != BatchStage::each) {
        add_line(out, to, "batch:",
                 said.batch == BatchStage::all_first ? "do this for all flies before the next step"
                                                     : "do this for all flies when they are tied",
                 Colour::cyan);
    }
    add_line(out, to, "look for:", said.landmark, Colour::green);
    add_line(out, to, "tip:", said.tip, Colour::green);
    for (std::size_t m = 0; m < fly.tied.moments.size(); ++m) {
        if (fly.tied.moments[m].step != step) continue;
        add_line(out, to, "-", action_text(pattern, fly.resolved, fly.tied, static_cast<int>(m)),
                 Colour::faint);
    }
    add_cautions(out, pattern, fly, step, told, to);
    if (said.restore_point) {
        add_line(out, to, "restore point:", "a broken thread falls back to here", Colour::cyan);
    }
    return out;
}

std::string windings_text(const Pattern& pattern, const Fly& fly, const Terminal& to) {
    using Align = Table::Align;
    const bool several = pattern.recipe.bases.size() > 1;
    Table table({{"step"},
                 {"on", Align::left},
                 {"winding", Align::left},
                 {"from"},
                 {"to"},
                 {"turns"},
                 {"pitch"},
                 {"strand"},
                 {"core"},
                 {"length"},
                 {"mg"},
                 {"way", Align::left}});
    const auto mm = [](Length x) { return fmt::format("{:.2f}", in_millimetres(x)); };
    for (const Winding& w : fly.tied.windings) {
        const bool is_thread = fly.resolved.materials[static_cast<std::size_t>(w.material)].kind ==
                               MaterialKind::thread;
        table.add({std::to_string(w.step + 1),
                   several ? pattern.recipe.bases[static_cast<std::size_t>(w.base)].id : "",
                   w.part == none ? "thread" : printable(part_words(pattern.recipe, w.part)),
                   mm(w.from), mm(w.to), fmt::format("{:.1f}", w.turns), mm(w.pitch), mm(w.width),
                   mm(w.core), fmt::format("{:.0f}", in_millimetres(w.length)),
                   fmt::format("{:.2f}", in_milligrams(w.mass)),
                   w.against_thread ? "towards" : "away"},
                  is_thread ? Colour::faint : Colour::plain);
    }
    if (table.is_empty()) return {};
    return fmt::format("\n{}  (mm; places are behind the eye; way: over the top, away from or "
                       "towards you)\n{}",
                       to.paint("Windings", Colour::bold), table.text(to));
}

} // namespace

std::string words_text(const Recipe& recipe, const Terminal& to) {
    std::string out = title(recipe, {}, to);
    std::string line;
    for (const char c : recipe.verbatim) { // keep the author's own lines
        if (c == '\n') {
            append(out, "\n{:{}}{}", "", line.empty() ? 0 : 2,
                   wrapped(printable(line), to.width, 2));
            line.clear();
        } else {
            line += c;
        }
    }
    append(out, "\n{}{}\n", line.empty() ? "" : "  ", wrapped(printable(line), to.width, 2));
    return out;
}

std::string plan_text(const Loaded& loaded, const Fly& fly, Hand hand, const Terminal& to) {
    const Pattern& pattern = loaded.pattern;
    std::string out = title(pattern.recipe, size_words(fly.tied.size), to);
    out += hooks_text(pattern, fly.tied, to);
    out += hand_text(hand, to);
    append(out, "  weighs {}; findings: {}\n\n{}\n", mass_words(fly.tied.mass),
           findings_count(fly.tied), to.paint("Steps", Colour::bold));
    Caution told = Caution::quiet;
    for (std::size_t s = 0; s < pattern.recipe.steps.size(); ++s) {
        out += step_text(pattern, fly, static_cast<int>(s), told, to);
    }
    append(out, "{}\n{}\n{}\n{}", windings_text(pattern, fly, to), to.paint("Parts", Colour::bold),
           parts_text(pattern, fly, to), to.paint("In water", Colour::bold));
    const Result<InWater> water = in_water(pattern, fly.resolved, fly.tied, {});
    append(out, "  (10 °C; wrapwright water says more)\n");
    if (water.ok()) out += water_text(pattern, water.value(), {}, to);
    append(out, "\n{}\n{}", to.paint("Findings", Colour::bold),
           findings_text(pattern, fly.tied, to));
    return out;
}

} // namespace wrapwright::cli
