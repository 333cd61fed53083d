#pragma once
// The bench at work: the model, the store and the window, and the loop's one turn.

#include "gui/apply.h"
#include "gui/screen.h"
#include "gui/wraps.h"
#include "platform/backend.h"
#include "platform/gl/scene_texture.h"
#include "platform/order_facts.h"
#include "platform/stock_finder.h"
#include "platform/store/store.h"

#include <array>
#include <filesystem>
#include <optional>

namespace wrapwright {

/// What the program was started with.
struct AppWish {
    std::filesystem::path data_folder;
    std::filesystem::path assets; ///< recipes to begin with
    std::string recipe{};         ///< a file to open; empty: where the person was
    std::string size{};
    std::string hook{};   ///< file of a measured hook, for the recipe that is opened first
    Settings usual{};     ///< what holds until the person sets otherwise
    bool look_on = false; ///< another window has the library
};

/// One bench in one window. The Backend must outlive it; an ImGui context must be current.
class App {
  public:
    /// Fails   as Store::open, SceneTexture::make and UiRenderer::make do
    [[nodiscard]] static Result<App> open(Backend& backend, const AppWish& wish);
    App(App&&) noexcept = default;
    App& operator=(App&&) = delete;
    ~App() = default;

    /// Answers what came by itself: time that passed, files that were dropped or picked. frame()
    /// begins with it; a program that has to wait for its storage calls it before.
    void catch_up();
    /// Draws and shows one frame, and answers what it asked for.
    ///
    /// What the person did is in the store before the frame that shows it.
    /// Fails   when the driver refuses letters or pictures
    [[nodiscard]] Result<bool> frame();
    /// frame() in its two halves, for a program that tells others what it shows: nothing that is
    /// asked for is done before show() has ended. show() gives false where there is no window to see.
    [[nodiscard]] Result<bool> show();
    void answer_shown();
    /// How long nothing changes by itself; 0 while frames still follow on the last input.
    [[nodiscard]] Duration may_sleep() const;
    /// Input came: some frames follow, until what was pressed and released has been seen.
    void wake() { frames_due_ = settle_frames; }

    /// What something outside wrote into the field that is typed into.
    void take_text(OutsideText text) { typing_.outside = std::move(text); }
    /// Presses the control of that label in the next frame, wherever it is.
    void press(std::string label) { typing_.press = std::move(label); }
    /// Whether the program ended now would lose something: a sitting, words that are in no store yet.
    [[nodiscard]] bool in_the_middle() const;
    /// Says what went wrong, until it is put away.
    void trouble(std::string words) { model_.trouble = std::move(words); }
    /// Says something that goes by itself.
    void note(std::string words);
    /// The theme that holds while the person has chosen none.
    void usual_theme(Theme theme);
    /// Whether the storage is kept for good, or may be cleared when room gets short.
    void keeps_for_good(bool promised) { model_.kept_for_good = promised; }

    [[nodiscard]] const Model& model() const { return model_; }
    [[nodiscard]] const Shown& shown() const { return shown_; }
    [[nodiscard]] long frames() const { return frames_; }

  private:
    /// ImGui sees a press in one frame and a release in the next, and answers in the third.
    static constexpr int settle_frames = 3;

    App(Backend& backend, Store store, SceneTexture scenes)
        : backend_(&backend), store_(std::move(store)), scenes_(std::move(scenes)) {}
    [[nodiscard]] Result<bool> start(const AppWish& wish);
    [[nodiscard]] Result<bool> open_first(const AppWish& wish);
    [[nodiscard]] Result<bool> open_file(const AppWish& wish);
    void seed(const std::filesystem::path& assets);
    void check_texts();
    [[nodiscard]] Result<bool> prepare_letters(PixelSize size);
    [[nodiscard]] Result<bool> draw(PixelSize size);
    [[nodiscard]] Result<bool> draw_wraps(Picture which);

    void answer(const Wish& wish);
    /// Does what an effect asks, and completes the model that will be shown.
    [[nodiscard]] Result<bool> carry_out(const Effect& effect, Model& next);
    [[nodiscard]] Result<bool> open_recipe(const std::string& id, Model& next);
    [[nodiscard]] Result<bool> open_size(const std::string& size, Model& next);
    [[nodiscard]] Result<bool> duplicate(const std::string& id, Model& next);
    [[nodiscard]] Result<bool> list(Model& next);
    void narrow_to_stock(std::optional<HookSize> size, const Book& book, LibraryWork& library);
    [[nodiscard]] Result<bool> lay_box(const Book& book, LibraryWork& library);
    [[nodiscard]] Result<bool> keep_box(const Effect& effect, Model& next);
    void find_some();
    /// Draws the fly as it is after a moment, large and from where it is looked at, into a PNG.
    [[nodiscard]] Result<bool> save_picture(const Model& model, int moment,
                                            const std::filesystem::path& file);
    [[nodiscard]] Result<bool> save_steps(Model& next);
    [[nodiscard]] Result<bool> give_recipe(const std::string& id, Model& next);
    [[nodiscard]] Result<bool> back_up(std::filesystem::path to, Model& next);
    void take_file(const std::string& file);
    void take_table(const std::string& file);
    /// Opens a recipe's file where nothing has to be asked; whether that was so.
    [[nodiscard]] Result<bool> open_plainly(const std::string& file, std::string_view text);
    [[nodiscard]] Result<bool> share_file(bool with_photos, Model& next);
    void read_aloud();
    [[nodiscard]] std::filesystem::path pictures_folder() const;
    [[nodiscard]] Result<bool> keep_measure(const Effect& effect, Model& next);
    /// What was measured of the fly that is open, from the store into the model.
    [[nodiscard]] Result<bool> recall_measures(Model& next);
    void load_rules(const std::filesystem::path& assets);
    void load_stock(const std::filesystem::path& assets);
    void rank_some();
    [[nodiscard]] Result<bool> open_photo_file(const std::string& file, Model& next);
    [[nodiscard]] Result<bool> recall_photo(std::int64_t id, Model& next);
    [[nodiscard]] Result<bool> give_photo(Model& next);
    [[nodiscard]] Result<bool> show_photo(std::string_view bytes, Model& next);
    [[nodiscard]] Result<bool> keep_readings(int count, Model& next);
    [[nodiscard]] Result<bool> recall_readings(Model& next);
    [[nodiscard]] Result<bool> open_draft(Model& next);
    [[nodiscard]] Result<bool> keep_draft(const Model& next);
    [[nodiscard]] Result<bool> save_recipe(const std::string& note, Model& next);
    [[nodiscard]] Result<bool> new_recipe(const std::string& fly_class, Model& next);
    [[nodiscard]] Result<bool> add_and_write(Recipe recipe, Model& next);
    [[nodiscard]] Result<bool> list_versions(Model& next);
    [[nodiscard]] Result<bool> pick_version(int number, Model& next);
    [[nodiscard]] Result<bool> version(const Effect& effect, Model& next);
    [[nodiscard]] Result<bool> preview_shared(Model& next);
    [[nodiscard]] Result<bool> take_shared(Model& next);
    [[nodiscard]] Result<bool> look_into(const std::string& file, Model& next);
    [[nodiscard]] Result<bool> restore(Model& next);
    /// Stock and orders from the store into the model, with what they come to.
    [[nodiscard]] Result<bool> load_book(Model& next, bool history_alone);
    [[nodiscard]] Result<bool> keep_book(const Effect& effect, Model& next);
    /// Brings the ledger to what the sitting says.
    [[nodiscard]] Result<bool> settle_stock(Model& next);
    [[nodiscard]] Result<bool> look_into_table(const Effect& effect, Model& next);
    /// How a file that was written is called: by its name alone where a copy of it is handed out.
    [[nodiscard]] static std::filesystem::path shared_folder(const Model& model);
    [[nodiscard]] static std::string told_as(const Model& model, const std::filesystem::path& file);
    /// Writes a file for the person, says so, and gives it to the system to hand on.
    [[nodiscard]] Result<bool> hand_out(const std::filesystem::path& file, std::string_view bytes,
                                        Model& next, std::string_view more = {});
    [[nodiscard]] Result<bool> write_book_table(const std::string& key, Model& next);
    [[nodiscard]] Result<bool> write_order_page(std::int64_t line, Model& next);
    [[nodiscard]] Result<bool> write_recipe_page(Paper which, Model& next);
    [[nodiscard]] Result<bool> tie_line(std::int64_t id, Model& next);
    /// What an effect on stock and orders asks.
    [[nodiscard]] Result<bool> carry_out_book(const Effect& effect, Model& next);
    [[nodiscard]] std::int64_t today() const {
        return static_cast<std::int64_t>(backend_->wall_clock().si);
    }

    Backend* backend_;
    std::filesystem::path assets_{};
    Store store_;
    SceneTexture scenes_; ///< of the only picture, and of those that are saved
    std::array<std::optional<SceneTexture>, picture_count> beside_{}; ///< of further ones
    Model model_{};
    Typing typing_{};
    std::optional<Theme> usual_theme_{}; ///< the last that came from outside
    std::array<WrapsScene, picture_count> wraps_{};
    Shown shown_{};
    std::int64_t sitting_ = 0;
    std::filesystem::path backup_{};                                ///< that was looked into
    std::vector<std::int64_t> fall_ids_{};                          ///< of the model's falls
    std::vector<std::pair<std::string, std::string>> rank_queue_{}; ///< id and name, last first
    std::vector<Sinker> ranked_{};
    bool to_rank_ = false, ranking_ = false;
    FactFinder facts_{};
    StockFinder stock_finder_{};
    /// What the list of recipes waits for.
    enum class LibraryDue : unsigned char { nothing, weights, stock };
    LibraryDue library_due_ = LibraryDue::nothing;
    bool weighed_ = false; ///< every recipe was
    std::optional<UiRenderer> ui_{};
    std::optional<TypeSizes> lettered_{};
    float lettered_scale_ = 1.0F;
    std::string said_{}; ///< aloud, last
    Fonts fonts_{};
    std::array<GLuint, picture_count> pictures_{};
    GlTexture photo_{}; ///< that is open
    int frames_due_ = settle_frames;
    long frames_ = 0;
    bool checked_ = false;             ///< the store's long texts
    std::vector<std::string> files_{}; ///< that were named in a field, to be opened
};

} // namespace wrapwright
