#include "gui/panels.h"
#include "gui/step_words.h"
#include "gui/widgets.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 4> spoilt_reasons{
    "out of proportion", "point bent or broken", "came loose", "head crowded"};
constexpr std::array<std::string_view, 3> usual_changes{"another material", "more turns",
                                                        "fewer turns"};

std::string joined(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words) {
        if (!list.empty()) list += ", ";
        list += word;
    }
    return list;
}

/// The sheet's own place, with a foot for the answer.
struct Frame {
    Ui& ui;
    Box in;
    Box foot;

    Frame(Ui& u, const Box& window) : ui(u) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        list.AddRectFilled(corner(window), far_corner(window), im(ui.colours.ground, 0.8F));
        const float wide = std::min(window.width - 4.0F * grid, 34.0F * ui.sizes.small);
        const bool picks = ui.model.sheet == Sheet::spoilt || ui.model.sheet == Sheet::otherwise;
        const float tall =
            std::min(window.height - 4.0F * grid, (picks ? 20.0F : 16.0F) * ui.sizes.small);
        const Box box{window.x + 0.5F * (window.width - wide),
                      window.y + 0.5F * (window.height - tall), wide, tall};
        sheet(ui, box);
        in = box.inside(3.0F * grid);
        const float high = control_height(ui);
        foot = {in.x, in.bottom() - high, in.width, high};
        in.height -= high + 2.0F * grid;
    }
    void text(ImFont* font, Colour colour, std::string_view words) {
        const float high = write(ui, font, colour, in, words) + grid;
        in.y += high;
        in.height -= high;
    }
    /// Yes at the left, no at the right; whether yes was pressed.
    bool answer(std::string_view yes, std::string_view no) {
        const float half = 0.5F * (foot.width - grid);
        if (button(ui, no, {foot.x + half + grid, foot.y, half, foot.height})) {
            ui.want(Command::close);
        }
        return button(ui, yes, {foot.x, foot.y, half, foot.height}, true);
    }
    /// A line to type in, and usual answers to press; what was said, or nothing.
    template <std::size_t N>
    std::string say(const char* hint, const std::array<std::string_view, N>& usual,
                    std::string_view yes) {
        const float high = control_height(ui);
        if (ui.typing.fresh) {
            ui.typing.words.clear();
            ImGui::SetKeyboardFocusHere();
        }
        std::string said;
        if (line_edit(ui, "##words", hint, ui.typing.words, {in.x, in.y, in.width, high})) {
            said = ui.typing.words;
        }
        float y = in.y + high + grid;
        for (const std::string_view one : usual) {
            if (y + high > in.bottom()) break;
            if (button(ui, one, {in.x, y, in.width, high})) said = one;
            y += high + grid;
        }
        if (answer(yes, "Leave it")) said = ui.typing.words;
        return said;
    }
};

void thread_broke(Frame& frame) {
    Ui& ui = frame.ui;
    const BreakWords words = break_words(ui.model);
    frame.text(ui.fonts.main, ui.colours.ink, "The thread broke");
    if (!words.stands.empty()) {
        frame.text(ui.fonts.small, ui.colours.ink,
                   "Still on the hook: " + joined(words.stands) + ".");
    }
    frame.text(ui.fonts.small, ui.colours.ink, "Begin again with: " + words.back_to + ".");
    if (!words.again.empty()) {
        frame.text(ui.fonts.small, ui.colours.soft, "Done again: " + joined(words.again) + ".");
    }
    frame.text(ui.fonts.small, ui.colours.soft,
               "Hold what stands, start new thread over it, and unwind what came loose.");
    if (frame.answer("Go back there", "It did not")) ui.want(wish(WishKind::broke));
}

} // namespace

void panel_sheet(Ui& ui, const Box& window) {
    if (ui.model.sheet == Sheet::closed) return;
    Frame frame(ui, window);
    const Palette& c = ui.colours;
    switch (ui.model.sheet) {
    case Sheet::closed: break;
    case Sheet::thread_broke: thread_broke(frame); break;
    case Sheet::otherwise: {
        frame.text(ui.fonts.main, c.ink, "What was different?");
        const std::string said = frame.say("material, count, note", usual_changes, "Note it");
        if (!said.empty()) ui.want(wish(WishKind::otherwise, 0, said));
        break;
    }
    case Sheet::spoilt: {
        frame.text(ui.fonts.main, c.ink, "Why is it spoilt?");
        const std::string said = frame.say("in a word", spoilt_reasons, "Spoilt");
        if (!said.empty()) ui.want(wish(WishKind::spoilt, 0, said));
        break;
    }
    case Sheet::strip:
        frame.text(ui.fonts.main, c.ink, "Strip the hook?");
        frame.text(ui.fonts.small, c.ink,
                   "This fly starts again from its first action. Undo takes it back.");
        frame.text(ui.fonts.small, c.warn,
                   "Blades: cut along the far side of the shank, away from you.");
        if (frame.answer("Start again", "Leave it")) ui.want(wish(WishKind::strip));
        break;
    case Sheet::caliper: {
        frame.text(ui.fonts.main, c.ink, "What did you measure?");
        panel_caliper(ui, frame.in);
        const Box& foot = frame.foot;
        if (button(ui, "Back to the bench", foot)) ui.want(Command::close);
        break;
    }
    case Sheet::restore:
        frame.text(ui.fonts.main, c.ink, "Take this backup?");
        frame.text(ui.fonts.small, c.ink, ui.model.restore_preview);
        frame.text(ui.fonts.small, c.soft, "What is here now is backed up beside it first.");
        if (frame.answer("Restore", "Leave it")) ui.want(wish(WishKind::restore));
        break;
    }
}

} // namespace wrapwright
