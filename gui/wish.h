#pragma once
// What a panel asks for. Panels change nothing: they return wishes, and apply() answers.

#include "gui/model.h"

#include <string>
#include <vector>

namespace wrapwright {

enum class WishKind : unsigned char {
    command,     ///< a key or button of the map: number = Command
    begin,       ///< a sitting: number = flies
    go_to,       ///< a stop of the course: number = its index
    broke,       ///< the thread broke, said for sure
    otherwise,   ///< text = what was done
    spoilt,      ///< text = why
    strip,       ///< said for sure
    tick_off,    ///< an item of the lay-out list: number
    tick_next,   ///< the first that is not ticked
    show,        ///< number = Screen
    sheet,       ///< number = Sheet
    open_recipe, ///< text = id
    open_size,   ///< text = hook size
    duplicate,   ///< text = id
    favourite,   ///< text = id, number = 1 or 0
    search,      ///< text
    set,         ///< a setting: key, text
    set_key,     ///< number = Command, text = key
    flies,       ///< number: for the next sitting
    orbit,       ///< x, y in rad
    roll,        ///< of the fly about its shank, x in rad
    zoom,        ///< x: factor
    shift,       ///< x, y in shares of the picture's height
    view,        ///< number = PictureView
    whole_fly,   ///< the view as it comes
    film_go,     ///< number = moment
    film_play,   ///< or stop
    what_set,    ///< number = Trial, x = value in SI or turns
    what_beside, ///< two turns fewer and two more beside it, or not
    what_keep,
    time_fall,    ///< key = height in m, text = seconds
    drop_fall,    ///< number: of those of this fly
    weigh,        ///< text = mg of the whole fly; empty: it was not weighed
    reach_for,    ///< number = Aim, x = mg, m/s or m
    lead_free,    ///< first, or not
    take_way,     ///< number: of those that were found
    next_rules,   ///< the rule set after this one
    check_view,   ///< number = CheckView
    standard,     ///< the next one that says anything of such a fly
    caliper,      ///< text = "tail 4.6", of fly `number`; 0: of the one that is measured now
    check_fly,    ///< number: whose measures are entered
    drop_reading, ///< number: of those of this fly
    open_photo,   ///< text = file
    recall_photo, ///< number: of those that are kept
    give_photo,   ///< the one that is open, as a file
    mark,         ///< number = PhotoSpot, x, y in px
    unmark,       ///< number = PhotoSpot
    scale_by,     ///< number = ScaleBy
    known,        ///< text = the distance between the two points
    flip_fly,     ///< the point is on the other side in the photo
    rib_choice,   ///< number = RibChoice
    card_edges,   ///< set the card's corners by its edges
    keep_lengths, ///< what the photo says, as measures of this fly
    fold,         ///< number: so many times life size
    calibrate,    ///< hold a card to the screen, or stop
    calibrated,   ///< x = dots per mm
    edit_view,    ///< number = EditView
    edit_row,     ///< text = path of the row that is picked
    edit_set,     ///< key = path, text = words
    edit_add,     ///< key = list, text = a line for its end
    edit_pick,    ///< key = list of actions: choose what comes at its end; none: no more
    edit_op,      ///< number: of what can be done there
    edit_drop,    ///< text = row
    edit_move,    ///< text = row, number = its new place in the list
    edit_undo,
    edit_redo,
    edit_size,    ///< number = -1 or 1: another of the recipe's sizes
    edit_save,    ///< text = a note for the revision
    edit_sized,   ///< key = path, text = words, number = SizeScope: from the size that is shown
    edit_loose,   ///< number = LooseAsk, x = of which, text
    edit_version, ///< number = VersionAsk, x = of which, text
    library_ask,  ///< key = what is asked of the list, text
    box_cell,     ///< of the fly box: key = recipe, number = its column, text
    open_file,    ///< text = file
    open_text,    ///< a file that was dropped or picked: text = what is in it
    help_view,    ///< number = HelpView
    tour,         ///< number = its stop; -1 leaves it
    edit_back,    ///< to the newest revision; what was written since goes into the history
    edit_new,     ///< text = the class of fly
    orders_view,  ///< number = OrdersView
    book_cell,    ///< of row `number`, 0 a new one: key = "stock" or "order", a blank, column; text
    book_remove,  ///< row `number` of key = "stock" or "order"
    pick_row,     ///< row `number` of key = "stock" or "order"
    book_undo,
    book_redo,
    reserve_line, ///< number = line
    release_line, ///< number = line
    tie_line,     ///< number = line: its fly is opened for a sitting
    table_in,     ///< key = "stock" or "order", text = file: shows what it would change
    table_take,   ///< does what was shown, or, number = 0, does not
    table_out,    ///< key = "stock" or "order"
    order_page,   ///< number = line
    page,         ///< of the open fly, for a printer: number = Paper
    people,       ///< key = what is counted, x = how many
    class_clock,  ///< number: 0 start or stop, 1 next step, -1 back, 2 and 3 a hand up or down
    pick_file,    ///< by the system's own dialog: number = FileKind
    give_recipe,  ///< as a file: text = id
    save_frame,   ///< the picture that is shown
    save_steps,   ///< one for each step
    put_away,     ///< the trouble that was read
    back_up,      ///< text = file
    look_into,    ///< a backup: text = file
    restore,      ///< what was looked into
    tick_clock,   ///< time has passed
    quit,
};

struct Wish {
    WishKind kind = WishKind::command;
    int number = 0;
    float x = 0.0F, y = 0.0F;
    std::string key{}, text{};
};
using Wishes = std::vector<Wish>;

/// The wish behind a key.
[[nodiscard]] inline Wish wish(Command command) {
    return {WishKind::command, static_cast<int>(command), 0.0F, 0.0F, {}, {}};
}
[[nodiscard]] inline Wish wish(WishKind kind, int number = 0, std::string text = {}) {
    return {kind, number, 0.0F, 0.0F, {}, std::move(text)};
}

} // namespace wrapwright
