#pragma once
// Everything that the screens show, as one value. Panels read it; only apply() makes the next one.

#include "core/bench/sitting.h"
#include "core/recipe/rule_set.h"
#include "core/water/reach.h"
#include "gui/book_work.h"
#include "gui/check_work.h"
#include "gui/edit_work.h"
#include "gui/library_work.h"
#include "gui/open_fly.h"
#include "gui/picture.h"
#include "gui/settings.h"
#include "gui/what_if.h"

#include <memory>
#include <string>
#include <vector>

namespace wrapwright {

enum class Screen : unsigned char {
    bench,
    lay_out,
    library,
    settings,
    keys,
    film,
    what_if,
    water,
    check,
    edit,
    orders ///< stock and orders
};

/// What is open over the bench and asks for an answer.
enum class Sheet : unsigned char {
    closed,
    thread_broke,
    otherwise,
    spoilt,
    strip,
    restore, ///< what a backup would bring
    caliper, ///< what was measured of the fly in the vise
};

/// What a file is picked for.
enum class FileKind : unsigned char { photo, camera, recipe, backup, table };

/// How fast a fly of the library sinks, without a tippet at 10 degrees.
struct Sinker {
    std::string id, name;
    HookSize size{};
    Speed sink{};
    Mass mass{};
};

/// What the fly that is open should be brought to.
enum class Aim : unsigned char { mass, sink, depth };
struct ReachAsk {
    Aim aim = Aim::mass;
    double mg = 0.0;     ///< 0: what the fly weighs
    double m_s = 0.3;    ///< on the tippet
    double deep_m = 0.8; ///< after 4 m
    bool lead_free = true;
    friend bool operator==(const ReachAsk&, const ReachAsk&) = default;
};

/// How the wraps are looked at.
struct WrapsView {
    PictureView view = PictureView::side;
    float turn = 0.0F;                    ///< of the fly about its shank, rad
    float yaw = 0.0F, elevation = 0.0F;   ///< beside those of the view, rad
    float zoom = 1.0F;                    ///< 1: the whole fly
    float shift_x = 0.0F, shift_y = 0.0F; ///< of the middle, shares of the picture's height
    friend bool operator==(const WrapsView&, const WrapsView&) = default;
};

/// What the screen for help shows.
enum class HelpView : unsigned char { keys, words, tour };

struct TradeWords; ///< the words that loose text is read by

struct Model {
    std::shared_ptr<const OpenFly> fly{}; ///< nothing only until the first recipe is open
    std::vector<Event> events{};          ///< of the sitting; empty before it begins
    std::vector<Stop> course{};
    SittingState state{};
    int flies = 1; ///< that the next sitting is for

    Settings settings{};
    Screen screen = Screen::bench;
    Sheet sheet = Sheet::closed;
    bool more_words = false;
    WrapsView wraps{};
    std::vector<bool> laid_out{}; ///< items of the lay-out list that are ticked

    Duration now{};        ///< the person's clock
    Duration stop_since{}; ///< when this stop was reached
    bool counting = false; ///< turns count by themselves
    Duration next_turn{};  ///< when the next one is counted
    std::string notice{};  ///< said softly, gone by itself
    Duration notice_until{};

    int film_at = 0; ///< the moment that the film shows
    bool film_playing = false;
    Duration film_next{}; ///< when the next moment comes
    Trials trials{};      ///< of the what-if
    std::shared_ptr<const OpenFly> tried{};
    bool beside = false; ///< what is tried stands between two turns fewer and two more
    std::shared_ptr<const OpenFly> fewer{}, more{};

    std::vector<Fall> falls{};               ///< timed with this recipe at this size
    Estimate<Mass> weighed{};                ///< the whole fly; 0: it was not
    std::shared_ptr<const InWater> dipped{}; ///< while the screen for it is open
    std::string not_dipped{};                ///< why there is nothing of it
    std::vector<Sinker> sinkers{};           ///< of the library, slowest first
    ReachStock stock{};                      ///< beads and ballast to choose from
    ReachAsk ask{};
    std::shared_ptr<const ReachFound> reached{}; ///< nothing until something was asked
    std::vector<RuleSet> rule_sets{};            ///< that came along or lie in the data folder

    CheckWork check{};
    EditWork edit{};
    std::shared_ptr<const TradeWords> trade_words{}; ///< that loose text is read by
    HelpView help_view = HelpView::keys;
    int tour = -1; ///< its stop; -1: it is not taken
    BookWork book{};

    LibraryWork library{};
    std::string search{};
    double screen_dots_per_mm = 0.0; ///< as the screen tells; 0 where it does not
    std::string screen_name{};       ///< of the screen, for what is measured on it
    bool read_only = false;          ///< another window has the library
    std::string trouble{};           ///< what the store could not do; stays until it is put away
    std::string restore_preview{};   ///< what the backup that was picked would bring
    std::string data_folder{};
    bool kept_for_good = false; ///< a browser's promise not to clear what is kept there
    bool picks_files = false; ///< by the system's own dialogs, which hand out copies; else by name
    bool has_camera = false;
    bool first_start = false;
};

/// Where and how the person fishes, by the settings, with what was measured of this fly.
[[nodiscard]] Fishing fishing_of(const Model& model);

/// The rule set that the settings name, else the first; nothing where there is none.
[[nodiscard]] const RuleSet* rules_of(const Model& model);

/// The standard that the fly is held against: the one that the settings name where it says anything of
/// such a fly, else the first; empty where none does.
[[nodiscard]] std::string standard_of(const Model& model);

/// Dots for each millimetre of this screen: as the person measured, as it tells, or as is usual.
[[nodiscard]] double dots_per_mm(const Model& model);

/// Puts a notice over the screen, for so long.
void say(Model& model, std::string words, Duration stays = seconds(4.0));

/// Whether a sitting is on, with a stop to stand at.
[[nodiscard]] bool at_work(const Model& model);

/// Which of the pictures: the only one, or one beside what is tried.
enum class Picture : unsigned char { own, fewer, more };
inline constexpr std::size_t picture_count = 3;

/// The fly and the moment that the picture shows: the film's, the one that is tried, or the
/// sitting's. Nothing for a recipe of words alone.
struct Pictured {
    std::shared_ptr<const OpenFly> fly{};
    int moment = none;
};
[[nodiscard]] Pictured pictured(const Model& model, Picture which = Picture::own);

/// The moment where the person stands; the last one when all is done. none without a record.
[[nodiscard]] int moment_of(const Model& model);

/// The windings whose turns are counted at a moment: those of the strand that it winds, as indices
/// into Tied::windings, first and one past the last. Thread turns that go with it are not counted,
/// unless the moment winds nothing else.
struct Counted {
    int first = 0, last = 0;
    double turns = 0.0; ///< in all
};
[[nodiscard]] Counted counted_at(const OpenFly& fly, int moment);

/// How long the coat or the wait of a moment takes; 0 where there is nothing to wait for.
[[nodiscard]] Duration wait_at(const OpenFly& fly, int moment);

/// The time at which something on the screen changes by itself; nothing that does: far away.
[[nodiscard]] Duration next_change(const Model& model);

} // namespace wrapwright
