#include "gui/spoken.h"

#include "core/tying/words.h"
#include "core/units/hook_size.h"
#include "gui/step_words.h"
#include "gui/tally_rows.h"
#include "gui/tour.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

class Page {
  public:
    void heading(std::string text) { add(OutlineKind::heading, std::move(text)); }
    void text(std::string text) { add(OutlineKind::text, std::move(text)); }
    void live(std::string text) { add(OutlineKind::live, std::move(text)); }
    void add(OutlineKind kind, std::string text, int control = -1) {
        if (!text.empty()) rows.push_back({kind, std::move(text), control});
    }
    std::vector<OutlineRow> rows{};
};

std::string count_words(const Model& m) {
    if (!at_work(m)) return {};
    const double all = std::round(counted_at(*m.fly, moment_of(m)).turns);
    if (all < 1.0 || !m.settings.count_turns) return {};
    const auto whole = [](double x) { return std::to_string(std::lround(x)); };
    const double left = std::max(0.0, all - m.state.turns);
    std::string words = whole(m.state.turns) + " of " + whole(all) + " turns, ";
    words += left > 0.0 ? whole(left) + " left" : "all counted";
    if (m.counting) words += ", by itself";
    return words;
}

/// How long until what was put on is hard, in steps that leave a voice time to read them.
std::string wait_words(const Model& m) {
    if (!at_work(m)) return {};
    const Duration wait = wait_at(*m.fly, moment_of(m));
    if (wait.si <= 0.0) return {};
    const double left = in_seconds(wait - (m.now - m.stop_since));
    if (left <= 0.0) return "It should be hard";
    const auto up_to = [&](double step) { return std::lround(step * std::ceil(left / step)); };
    if (left > 60.0) return std::to_string(up_to(60.0) / 60) + " minutes until it is hard";
    return std::to_string(up_to(15.0)) + " seconds until it is hard";
}

void step(Page& page, const Model& m) {
    const StepWords words = step_words(m);
    page.heading(words.place.empty() ? "Step" : words.place);
    page.text(words.fly);
    page.text(words.time);
    if (words.again) page.text("Once more, after the break");
    page.live(words.what);
    page.text(words.spacing);
    for (const std::string& fact : words.facts) page.text(fact);
    if (words.restore_point) page.text("A broken thread falls back to here");
    page.text(words.step);
    if (!words.landmark.empty()) page.text("Look for: " + words.landmark);
    if (!words.tip.empty()) page.text("Tip: " + words.tip);
    if (!words.original.empty()) page.text("As written: " + words.original);
    if (!words.next.empty()) page.text("Then: " + words.next);
    // There before they say something: a text that comes with its element is not read by itself.
    const std::string count = count_words(m), wait = wait_words(m);
    if (!count.empty()) page.heading("Count");
    page.rows.push_back({OutlineKind::live, count});
    if (!wait.empty()) page.heading("Wait");
    page.rows.push_back({OutlineKind::live, wait});
    if (!words.cautions.empty() || !words.findings.empty()) page.heading("Cautions and findings");
    for (const std::string& caution : words.cautions) page.live("Caution: " + caution);
    for (const std::string& finding : words.findings) page.live("Finding: " + finding);
}

void tally(Page& page, const Model& m) {
    const std::vector<TallyRow> rows = tally_rows(m);
    if (rows.empty()) return;
    page.heading("Tally");
    for (const TallyRow& row : rows) {
        const auto drawn = [&](const Drawn& d) { return drawn_words(row, d, m.settings.inches); };
        page.live(row.part + ", " + row.material + ": used " + drawn(row.used) + "; in this step " +
                  drawn(row.now) + "; to come " + drawn(row.to_come));
    }
}

/// The words on a control; the whole step is one that moves on.
std::string control_words(const std::string& label) {
    if (label == "on") return "On: the next action, or one more turn";
    if (label.starts_with("wraps") || label == "photo" || label == "cell") return {};
    const std::size_t mark = label.find("##");
    if (mark == 1 && label[0] == '-') return "Less: " + control_words(label.substr(3));
    if (mark == 1 && label[0] == '+') return "More: " + control_words(label.substr(3));
    // A control without words of its own is named by what tells it apart.
    return mark == 0 ? label.substr(2) : label.substr(0, mark);
}

} // namespace

std::string spoken(const Model& model) {
    if (model.screen != Screen::bench || !model.fly) return {};
    const StepWords words = step_words(model);
    std::string text = words.what;
    const auto add = [&](const std::string& more) {
        if (!more.empty()) text.append(". ").append(more);
    };
    // Beside the counter on the screen.
    const double all =
        at_work(model) ? std::round(counted_at(*model.fly, moment_of(model)).turns) : 0.0;
    if (all >= 1.0 && model.settings.count_turns) {
        add(counted(all, "turn", "turns") + (words.spacing.empty() ? "" : ", ") + words.spacing);
    }
    for (const std::string& fact : words.facts) add(fact);
    add(words.step);
    for (const std::string& caution : words.cautions) add("Caution: " + caution);
    for (const std::string& finding : words.findings) add("Finding: " + finding);
    return text;
}

std::vector<OutlineRow> outline(const Model& m, const Shown& shown) {
    Page page;
    std::string title = "Wrapwright";
    if (m.fly) {
        const Recipe& recipe = m.fly->pattern.recipe;
        title = recipe.name.empty() ? recipe.id : recipe.name;
        title += ", hook size " + write_hook_size(m.fly->size);
    }
    page.add(OutlineKind::title, std::move(title));
    if (m.read_only) page.text("Looking on: another window keeps the library");
    // There before they say something: a text that comes with its element is not read by itself.
    page.rows.push_back({OutlineKind::live, m.trouble});
    page.rows.push_back({OutlineKind::live, m.notice});
    if (m.screen == Screen::bench && m.sheet == Sheet::closed && m.fly) {
        step(page, m);
        tally(page, m);
        const auto stops = tour_stops();
        if (m.tour >= 0 && m.tour < static_cast<int>(stops.size())) {
            page.heading("Tour");
            page.text(std::string(stops[static_cast<std::size_t>(m.tour)].words));
        }
    } else {
        page.heading("On the screen");
        for (const DrawnText& text : shown.texts) page.text(text.text);
    }
    page.heading("What can be done");
    for (std::size_t i = 0; i < shown.controls.size(); ++i) {
        if (!shown.controls[i].pressed) continue;
        page.add(OutlineKind::control, control_words(shown.controls[i].label), static_cast<int>(i));
    }
    return std::move(page.rows);
}

} // namespace wrapwright
