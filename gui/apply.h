#pragma once
// The one place where the model changes.

#include "gui/wish.h"

namespace wrapwright {

/// What the outside world has to do for a wish.
enum class EffectKind : unsigned char {
    begin_sitting, ///< number = flies; event = its first
    append,        ///< event
    open_recipe,   ///< text = id
    open_size,     ///< text = hook size, of the recipe that is open
    duplicate,     ///< text = id
    favourite,     ///< text = id, number
    search,        ///< text
    keep_box, ///< key = recipe, text = size, number and event.number = have and want; -1: not said
    save_setting,  ///< key, text
    keep_fall,     ///< the model's last
    drop_fall,     ///< number
    keep_weighing, ///< the model's; where it has none, those of this fly are put away
    pick_file,     ///< number = FileKind
    open_file,     ///< text = file: a recipe, a bundle, a text, a photo, a backup
    give_recipe,   ///< as a file: text = id
    open_photo,    ///< text = file
    recall_photo,  ///< number = its id
    give_photo,    ///< the one that is open, as a file
    keep_marks,    ///< of the photo that is open
    keep_readings, ///< the model's last `number`
    drop_reading,  ///< number = its id
    open_draft,    ///< of the recipe that is open
    keep_draft,    ///< the model's
    save_recipe,   ///< the draft as a revision: text = a note
    new_recipe,    ///< text = the class of fly
    versions,      ///< the revisions of the recipe that is written, into the model
    version,       ///< number = VersionAsk of the revision `event.number`, text
    share,         ///< number = ShareAsk, text
    load_book,     ///< stock and orders, and what they come to
    keep_book,     ///< change; number: 0 new, 1 an undoing, 2 a redoing
    table_in,      ///< key, text = file
    table_out,     ///< key
    order_page,    ///< number = line
    page,          ///< number = Paper
    tie_line,      ///< number = line
    rank,          ///< how fast the library's flies sink
    save_frame,    ///< the picture of `number`, a moment
    save_steps,    ///< the pictures after each step
    tick,          ///< the sound of one
    back_up,       ///< text = file
    look_into,     ///< text = file
    restore,
    quit,
};

struct Effect {
    EffectKind kind = EffectKind::append;
    Event event{};
    int number = 0;
    std::string key{}, text{};
    BookChange change{};
    BoxCell cell{};
};

/// The next model, and what must be done for it before it is shown.
struct Applied {
    Model model{};
    std::vector<Effect> effects{};
};

/// Answers one wish.
///
/// Pure: the same model, wish and time give the same answer. Whoever calls it carries out the
/// effects first and shows the model then; where the store refuses, the model before stays and
/// `trouble` says why.
/// Valid   now is not before model.now
[[nodiscard]] Applied apply(const Model& model, const Wish& wish, Duration now);

/// Reckons what the water does to the fly that is open, into `model`; nothing for words alone.
void dip(Model& model);

/// Targets, readings and the photo's measures anew, for the fly that is open.
void check_again(Model& model);

/// What a way takes: "tungsten bead 2.8 mm, slotted, 7 turns of lead-free wire .015 in".
[[nodiscard]] std::string way_words(const ReachStock& stock, const ReachWay& way);

/// The model with another fly open; a sitting whose events are given goes on where it was.
[[nodiscard]] Model with_fly(Model model, std::shared_ptr<const OpenFly> fly,
                             std::vector<Event> events = {});

} // namespace wrapwright
