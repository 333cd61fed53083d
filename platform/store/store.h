#pragma once
// Everything that is kept: recipes with all revisions, hooks, settings, sittings as lists of events.
//
// What a call has answered with success is on the disk: a kill or a pulled plug takes nothing of it
// away. Time is told by the caller, in seconds since 1970.

#include "core/bench/sitting.h"
#include "core/loose/spellings.h"
#include "core/recipe/recipe.h"
#include "core/share/bundle.h"
#include "core/stock/book.h"
#include "core/stock/box.h"
#include "core/water/falls.h"
#include "platform/store/database.h"
#include "platform/store/search.h"

#include <optional>
#include <utility>
#include <vector>

namespace wrapwright {

/// One recipe as the library lists it.
struct StoredRow {
    std::string id, name, fly_class, sizes, tags;
    bool favourite = false;
};

/// A sitting to go on with.
struct StoredSitting {
    std::int64_t id = 0;
    std::string recipe, size;
    std::string hook;        ///< text form of the measured hook; empty where none was used
    std::string recipe_text; ///< of the revision that it began with
    std::int64_t line = 0;   ///< of the order that it is for; 0: none
    std::vector<Event> events{};
};

/// What was measured with a fly of a recipe at one size.
struct StoredMeasures {
    std::vector<std::int64_t> fall_ids{};
    std::vector<Fall> falls{}; ///< in the order that they were timed in
    Estimate<Mass> weighed{};  ///< the newest weighing of the whole fly; 0: none
};

/// Where a measurement or a photo belongs.
struct FlyPlace {
    std::string_view recipe, size;
    std::int64_t sitting = 0; ///< 0: none is on
    int fly = 1;
};

/// What a caliper, a scale or a photo said of one part of one fly.
struct StoredReading {
    std::int64_t id = 0, sitting = 0;
    int fly = 1;
    std::string part{};
    double value = 0.0, low = 0.0, high = 0.0; ///< m, or kg
    bool by_photo = false;
};

/// A photo without its bytes.
struct StoredPhoto {
    std::int64_t id = 0, sitting = 0;
    int fly = 1;
    std::string name{}, marks{};
};

/// How much a store holds.
struct StoreCount {
    std::int64_t recipes = 0, revisions = 0, hooks = 0, sittings = 0, events = 0;
    friend bool operator==(const StoreCount&, const StoreCount&) = default;
};

/// What a backup would bring.
struct RestorePreview {
    StoreCount here, there;
    std::vector<std::string> only_here, only_there; ///< names of recipes
};

/// The one file `wrapwright.db` in a folder, owned by one window at a time.
class Store {
  public:
    /// Opens the store of a folder, and makes both where they are missing.
    ///
    /// Another window that has it leaves this one to look on, as does `look_on`. A damaged file is set aside under a
    /// new name and a new one begun; note() says so.
    /// Fails   not_found where folder or file cannot be used; unknown_version for a file of a newer
    ///         program, which is not touched
    [[nodiscard]] static Result<Store> open(const std::filesystem::path& folder, std::int64_t now,
                                            bool look_on = false);

    [[nodiscard]] bool read_only() const { return lock_ < 0; }
    [[nodiscard]] const std::string& note() const { return note_; }
    [[nodiscard]] std::filesystem::path file() const { return folder_ / "wrapwright.db"; }

    /// Adds a recipe that is not there yet; whether it was new. `text` is its text form.
    [[nodiscard]] Result<bool> add_recipe(const Recipe& recipe, std::string_view text,
                                          std::int64_t now);
    /// A further revision of a recipe that is there; its number.
    [[nodiscard]] Result<std::int64_t> save_revision(const Recipe& recipe, std::string_view text,
                                                     std::string_view note, std::int64_t now);
    /// The text of the newest revision.
    [[nodiscard]] Result<std::string> recipe_text(std::string_view id);
    /// The text of one revision, and how many there are.
    [[nodiscard]] Result<std::string> recipe_text(std::string_view id, std::int64_t revision);
    /// Id and name of the recipe that has this id or, in any letters, this name; nothing for none.
    [[nodiscard]] Result<std::optional<std::pair<std::string, std::string>>>
    find_recipe(std::string_view words);
    [[nodiscard]] Result<bool> set_favourite(std::string_view id, bool favourite);
    /// The revisions of a recipe, newest first.
    [[nodiscard]] Result<std::vector<StoredRevision>> revisions(std::string_view id);
    /// Gives a revision a name of the person's; none for an empty one.
    [[nodiscard]] Result<bool> name_revision(std::string_view id, std::int64_t number,
                                             std::string_view name);
    /// Makes an old revision the newest once more: a revision of its own, so nothing is lost.
    [[nodiscard]] Result<std::int64_t> go_back(std::string_view id, std::int64_t number,
                                               std::int64_t now);

    /// The recipes that have all these words, or words that begin so, favourites first; all for none.
    [[nodiscard]] Result<std::vector<StoredRow>> library(std::string_view words, int most = 20'000);
    /// The recipes for which all of the search holds, favourites first.
    [[nodiscard]] Result<std::vector<StoredRow>> search(const LibrarySearch& wanted);
    /// Words that searches take for one another, from now on.
    void set_spellings(Spellings spellings) { spellings_ = std::move(spellings); }
    /// Weighs up to so many recipes that no weight is known of, as those of an older library; how many
    /// are left. For when nothing else is to do.
    [[nodiscard]] Result<std::int64_t> weigh_some(int most);

    [[nodiscard]] Result<std::int64_t> save_hook(std::string_view text, std::int64_t now);
    [[nodiscard]] Result<std::vector<std::string>> hooks();

    [[nodiscard]] Result<bool> set_setting(std::string_view key, std::string_view text);
    [[nodiscard]] Result<std::vector<std::pair<std::string, std::string>>> settings();

    /// Begins a sitting with the recipe's newest revision, on a measured hook where its text form is
    /// given; its number.
    [[nodiscard]] Result<std::int64_t> begin_sitting(std::string_view recipe, std::string_view size,
                                                     const Event& first, std::int64_t now,
                                                     std::string_view hook = {},
                                                     std::int64_t line = 0);
    /// Keeps one event more of that sitting.
    [[nodiscard]] Result<bool> append(std::int64_t sitting, const Event& event);
    /// The newest sitting of all; nothing where there is none.
    [[nodiscard]] Result<std::optional<StoredSitting>> last_sitting();
    /// The newest sittings with a recipe at a size, newest first.
    [[nodiscard]] Result<std::vector<StoredSitting>> sittings_with(std::string_view recipe,
                                                                   std::string_view size, int most);

    /// Keeps a change of stock and orders, whole or not at all, and gives its rows their ids.
    [[nodiscard]] Result<bool> keep(BookChange& change, std::int64_t now);
    /// Stock and orders as they stand now.
    [[nodiscard]] Result<Book> book();
    /// The lines of the stock alone, without what is on hand.
    [[nodiscard]] Result<std::vector<StockItem>> stock_items();
    /// The entries of one sitting, or of one item, oldest first.
    [[nodiscard]] Result<std::vector<Entry>> entries_of_sitting(std::int64_t sitting);
    [[nodiscard]] Result<std::vector<Entry>> entries_of_item(std::int64_t item, int most);
    /// Keeps what a cell of the fly box says of a recipe at a size.
    [[nodiscard]] Result<bool> keep_box(std::string_view recipe, std::string_view size,
                                        const BoxCell& cell, std::int64_t now);
    /// The fly box as it is: what was counted last, and what sittings finished since.
    [[nodiscard]] Result<BoxCounts> box();

    /// Keeps a timed fall, or a weighing of the whole fly, of a recipe at a size.
    [[nodiscard]] Result<bool> add_fall(std::string_view recipe, std::string_view size,
                                        const Fall& fall, std::int64_t now);
    [[nodiscard]] Result<bool> add_weighing(std::string_view recipe, std::string_view size,
                                            const Estimate<Mass>& mass, std::int64_t now);
    /// Puts a fall, or all weighings of a fly, away: what was measured stays in the file.
    [[nodiscard]] Result<bool> drop_fall(std::int64_t id);
    [[nodiscard]] Result<bool> drop_weighings(std::string_view recipe, std::string_view size);
    [[nodiscard]] Result<StoredMeasures> measures(std::string_view recipe, std::string_view size);

    /// Keeps a reading; its number.
    [[nodiscard]] Result<std::int64_t> add_reading(const FlyPlace& place,
                                                   const StoredReading& reading, std::int64_t now);
    [[nodiscard]] Result<bool> drop_reading(std::int64_t id);
    /// The readings of a recipe at a size, oldest first.
    [[nodiscard]] Result<std::vector<StoredReading>> readings(std::string_view recipe,
                                                              std::string_view size);
    /// Keeps a photo as it came; its number.
    [[nodiscard]] Result<std::int64_t> add_photo(const FlyPlace& place, std::string_view name,
                                                 std::string_view bytes, std::int64_t now);
    [[nodiscard]] Result<bool> set_marks(std::int64_t photo, std::string_view marks);
    /// The photos of a recipe at a size, newest first.
    [[nodiscard]] Result<std::vector<StoredPhoto>> photos(std::string_view recipe,
                                                          std::string_view size);
    [[nodiscard]] Result<std::string> photo_bytes(std::int64_t photo);
    /// All photos of a recipe, as files of a bundle.
    [[nodiscard]] Result<std::vector<BundleFile>> photo_files(std::string_view recipe);
    /// Keeps those of a bundle's photos whose recipes are here, each once; how many were new.
    [[nodiscard]] Result<int> take_photos(const std::vector<BundleFile>& photos, std::int64_t now);

    [[nodiscard]] Result<StoreCount> count();
    /// Looks whether the recipes' texts are sound, which takes longer than opening should: for when
    /// the window stands. What is found damaged is set aside at the next start.
    [[nodiscard]] Result<bool> check_texts();
    /// What SQLite's full check says: "ok", or what is wrong.
    [[nodiscard]] Result<std::string> check();

    /// Writes all of it to a file, whole or not at all.
    [[nodiscard]] Result<bool> back_up(const std::filesystem::path& to);
    [[nodiscard]] Result<RestorePreview> look_into(const std::filesystem::path& backup);
    /// Takes everything from a backup instead, after backing up what is here beside it; where that
    /// went. The store is open on the new content then.
    [[nodiscard]] Result<std::filesystem::path> restore(const std::filesystem::path& backup,
                                                        std::int64_t now);

    Store(Store&& other) noexcept;
    Store& operator=(Store&&) = delete;
    ~Store();

  private:
    Store(std::filesystem::path folder, Database database, int lock)
        : folder_(std::move(folder)), db_(std::move(database)), lock_(lock) {}
    [[nodiscard]] Result<bool> prepare();
    [[nodiscard]] Result<bool> may_write() const;
    [[nodiscard]] Result<bool> read_events(StoredSitting& sitting);
    [[nodiscard]] Result<bool> keep_items(BookChange& change, std::int64_t now);
    [[nodiscard]] Result<bool> keep_lines(BookChange& change, std::int64_t now);
    [[nodiscard]] Result<bool> keep_entries(BookChange& change);
    [[nodiscard]] Result<std::vector<Entry>> read_entries(Query& query);
    [[nodiscard]] Result<bool> write_recipe_row(const Recipe& recipe, std::string_view text,
                                                std::string_view note, std::int64_t number,
                                                std::int64_t now);

    [[nodiscard]] Result<bool> write_weights(const Recipe& recipe);

    std::filesystem::path folder_;
    Database db_;
    Spellings spellings_{};
    int lock_ = -1;
    std::string note_{};
    std::int64_t last_number_ = -1; ///< of the sitting that is being appended to
    std::int64_t last_sitting_ = 0;
};

/// The refusal of an id that no recipe has.
[[nodiscard]] Error no_such_recipe(std::string_view id);

/// Where a person's data goes: $XDG_DATA_HOME/wrapwright, else ~/.local/share/wrapwright.
/// Source  XDG Base Directory Specification 0.8: relative paths in the variable are ignored
[[nodiscard]] std::filesystem::path usual_data_folder(const char* xdg_data_home, const char* home);

} // namespace wrapwright
