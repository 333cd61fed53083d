#pragma once
// Controls that several panels use.

#include "gui/icons.h"
#include "gui/ui.h"

#include <optional>

namespace wrapwright {

/// A part of a panel that scrolls: open it, draw rows into what it gives, close it.
class Scroll {
  public:
    Scroll(Ui& ui, const char* name, const Box& box);
    Scroll(const Scroll&) = delete;
    Scroll& operator=(const Scroll&) = delete;
    ~Scroll();
    /// The next row of that height, as wide as there is room.
    [[nodiscard]] Box row(float height);
    /// The rows end there, whatever was asked for.
    void end_at(float y) { y_ = y; }

  private:
    Box box_;
    float y_;
};

/// A button that says whether it is on; whether it was pressed.
bool toggle(Ui& ui, std::string_view label, bool on, const Box& box);

/// A row with words, a value between two buttons; -1, 0 or 1 for what was pressed.
int stepper(Ui& ui, std::string_view label, std::string_view value, const Box& box);

/// A row that can be pressed, with words at its left and softer ones at its right. A higher row has
/// room for more lines of words.
bool row_button(Ui& ui, std::string_view label, std::string_view aside, bool picked, const Box& box,
                const Icon* icon = nullptr, bool faint = false);

/// A slider over the whole box; where it was moved to, by drag or, when it has the focus, by arrows.
std::optional<float> slider(Ui& ui, std::string_view label, float value, float least, float most,
                            const Box& box);

/// Words in the middle of a box's height, over as many lines as it has room for; in a narrow window in
/// letters that an arm's length allows, before any is cut.
void words_in(Ui& ui, std::string_view words, Colour colour, const Box& box);

/// A line to type in. Whether it was ended with enter.
bool line_edit(Ui& ui, const char* name, const char* hint, std::string& text, const Box& box,
               bool number = false);

/// Several lines to type in. Whether anything was changed.
bool text_edit(Ui& ui, const char* name, std::string& text, const Box& box);

/// A heading within a panel; how high it is.
float heading(Ui& ui, const Box& box, std::string_view text);

} // namespace wrapwright
