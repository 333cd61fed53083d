#pragma once
// What the panels draw with: the model, the colours, the letters, and the wishes that they collect.

#include "gui/grid_place.h"
#include "gui/theme.h"
#include "gui/type_size.h"
#include "gui/wish.h"

#include <imgui.h>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright {

/// Fonts in the sizes of TypeSizes; they belong to whoever made the atlas.
struct Fonts {
    ImFont* small = nullptr;
    ImFont* main = nullptr;
    ImFont* huge = nullptr; ///< digits, colon and point alone
};

/// The text of the field that is typed into, as something outside has edited it: see gui/field.h.
struct OutsideText {
    std::string text{};
    std::size_t from = 0, to = 0; ///< the selection, bytes; the cursor is at its end
};

/// Which way a finger slides, once it does.
enum class Slide : unsigned char { nowhere, sideways, up_or_down };

/// What is being typed, and what a screen remembers while it is open. Not part of the model.
struct Typing {
    std::string words{}; ///< in the sheet that asks for some
    std::string search{};
    std::string backup_file{};
    std::string fall_metres{}, fall_seconds{}, weighed_mg{}; ///< of the fly in the water
    std::string caliper{}, photo_file{}, photo_known{};
    int photo_spot = 0;  ///< the PhotoSpot that is set next
    int photo_drag = -1; ///< the one that is dragged
    bool photo_snap = true;
    float photo_zoom = 1.0F, photo_x = 0.5F, photo_y = 0.5F; ///< of the photo, shares of it
    float drag_x = 0.0F, drag_y = 0.0F;                      ///< where, px of the photo
    float card_left = 0.0F, card_right = 0.0F; ///< handles of the card, dots; 0: as they come
    // While a recipe is written.
    std::string edit_line{}, edit_list{}; ///< a line for the end of that list
    std::string edit_filter{};            ///< letters of the operation that is looked for
    std::string edit_open{};              ///< path of the field whose choices are open
    std::string edit_spot{};              ///< path of the field that had the keys last
    std::string loose{}, loose_file{};    ///< text that is pasted; a file to open instead
    std::string version_name{};           ///< for the revision that is picked
    std::string sized_path{}, sized{};    ///< cell of the table by size that is typed into
    std::string filter_size{}, filter_tag{}, filter_material{}; ///< of the list of recipes
    std::string filter_from{}, filter_to{};
    bool narrowing = false;       ///< what narrows the list is open
    std::string edit_drag{};      ///< row that is dragged
    int edit_focus = -1;          ///< field that gets the keys next
    int edit_op_at = 0;           ///< the operation that enter takes
    bool edit_row_focus = false;  ///< the row that is picked gets the keys next
    bool edit_line_focus = false; ///< the line that adds does
    GridPlace grid{};             ///< of the table that is open
    TableOrder order{};
    std::string filter{}, table_file{};
    std::map<std::string, std::string> fields{}; ///< of settings, while they are typed
    int key_for = -1;                            ///< the command that waits for a key
    int library_at = 0;                          ///< the row that is picked
    bool fresh = true;                           ///< the screen or sheet has just come
    std::optional<OutsideText> outside{};
    Slide slide = Slide::nowhere; ///< of the finger that is at a slider
    float sight_end = 0.0F,
          sight_top = 0.0F; ///< of the line that is typed into, when it was last sought
    std::string press{};    ///< label of a control that is pressed without a pointer
    Screen screen = Screen::bench;
    Sheet sheet = Sheet::closed;
};

/// A rectangle of the window.
struct Box {
    float x = 0.0F, y = 0.0F, width = 0.0F, height = 0.0F;
    [[nodiscard]] float right() const { return x + width; }
    [[nodiscard]] float bottom() const { return y + height; }
    /// The same with a margin left free inside.
    [[nodiscard]] Box inside(float margin) const {
        return {x + margin, y + margin, width - 2.0F * margin, height - 2.0F * margin};
    }
};

/// A control that was drawn: tests press it there, and check that a knuckle can.
struct DrawnControl {
    std::string label;
    Box box;
    bool focused = false; ///< the keys work on it
    bool pressed = true;  ///< something is done by a press alone; a slider is dragged
};

/// Letters that were drawn, and whether all of them found room.
struct DrawnText {
    std::string text;
    float size = 0.0F;
    bool whole = true;
};

/// A field of text that was drawn.
struct DrawnField {
    std::string label{}, text{};
    Box box{};
    bool number = false, many_lines = false;
    bool active = false; ///< it is typed into
    /// Where a finger or a mouse that is down in it puts the caret, in characters, and what it marks;
    /// -1 while none is.
    int caret_from = -1, caret_to = -1;
};

/// One frame at work.
struct Ui {
    const Model& model;
    Typing& typing;
    const Fonts& fonts;
    const TypeSizes sizes;
    const Palette& colours;
    Wishes wishes{};
    std::vector<DrawnControl> controls{};
    std::vector<DrawnText> texts{};
    std::vector<DrawnField> fields{};

    void want(Wish w) { wishes.push_back(std::move(w)); }
    void want(Command c) { wishes.push_back(wish(c)); }
};

[[nodiscard]] ImU32 im(Colour colour, float opacity = 1.0F);
[[nodiscard]] inline ImVec2 corner(const Box& b) { return {b.x, b.y}; }
[[nodiscard]] inline ImVec2 far_corner(const Box& b) { return {b.right(), b.bottom()}; }

/// The grid on which everything stands, and the least size of what is pressed.
inline constexpr float grid = 8.0F;
inline constexpr float least_control = 44.0F;

/// Notes the control that was drawn last.
void note_control(Ui& ui, std::string_view label, const Box& box, bool pressed = true);

/// The least size of words on what is pressed, which is read where a hand reaches, at 0.5 m.
[[nodiscard]] float reach_size(const Ui& ui);

/// Height of a control whose words are small.
[[nodiscard]] float control_height(const Ui& ui);

/// Writes wrapped text from the upper left of a box down; how far down it went. What does not fit
/// is left out by whole lines, with an ellipsis, and noted as not whole. In letters of that size, or of
/// the font's own.
float write(Ui& ui, ImFont* font, Colour colour, const Box& box, std::string_view text,
            float size = 0.0F);

/// Height that a text would take at that width.
[[nodiscard]] float height_of(ImFont* font, std::string_view text, float width);

/// A button with words; whether it was pressed.
bool button(Ui& ui, std::string_view label, const Box& box, bool primary = false);

/// A panel's ground.
void sheet(Ui& ui, const Box& box);

} // namespace wrapwright
