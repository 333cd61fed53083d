#include "platform/app.h"

#include "core/loose/words.h"
#include "core/recipe/text.h"
#include "core/units/hook_size.h"
#include "gui/loose_work.h"
#include "gui/spoken.h"
#include "platform/files.h"

#include <algorithm>
#include <imgui.h>
#include <utility>

namespace wrapwright {

namespace {

/// A fly at a size that is written, or its middle one, on a hook whose text form is given, or on a
/// typical one.
Result<std::shared_ptr<const OpenFly>> fly_at(std::string id, Recipe recipe,
                                              const std::string& size, const std::string& hook) {
    std::optional<Hook> own;
    if (!hook.empty()) {
        Result<Hook> read = read_hook(hook);
        if (!read.ok()) return read.error();
        own = std::move(read).value();
    }
    const Hook* on = own ? &*own : nullptr;
    if (size.empty()) return open_fly(std::move(id), std::move(recipe), nullptr, on);
    const Result<WrittenHookSize> read = parse_hook_size(size);
    if (!read.ok()) return read.error();
    return open_fly(std::move(id), std::move(recipe), &read.value().size, on);
}

} // namespace

Result<App> App::open(Backend& backend, const AppWish& wish) {
    Result<Store> store = Store::open(
        wish.data_folder, static_cast<std::int64_t>(backend.wall_clock().si), wish.look_on);
    if (!store.ok()) return store.error();
    Result<SceneTexture> scenes = SceneTexture::make(backend.gl());
    if (!scenes.ok()) return scenes.error();
    // Not on the stack: g++ 12 warns of its vectors.
    std::unique_ptr<App> app(new App(backend, std::move(store).value(), std::move(scenes).value()));
    const Result<bool> started = app->start(wish);
    if (!started.ok()) return started.error();
    return std::move(*app);
}

Result<bool> App::start(const AppWish& wish) {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
    ImGui::GetStyle().DisabledAlpha = 1.0F;
    model_.now = backend_->wall_clock();
    model_.screen_dots_per_mm = backend_->dots_per_mm();
    model_.screen_name = backend_->screen_name();
    model_.settings = wish.usual;
    model_.picks_files = backend_->picks_files();
    model_.has_camera = backend_->has_camera();
    model_.read_only = store_.read_only();
    model_.trouble = store_.note();
    model_.data_folder = wish.data_folder.string();
    const auto settings = store_.settings();
    if (!settings.ok()) return settings.error();
    for (const auto& [key, text] : settings.value()) {
        (void)take_setting(model_.settings, key, text); // one of a newer program is passed over
    }
    const Result<StoreCount> held = store_.count();
    if (!held.ok()) return held.error();
    if (held.value().recipes == 0 && !model_.read_only) seed(wish.assets);
    model_.first_start = held.value().sittings == 0;
    assets_ = wish.assets;
    load_rules(wish.assets);
    load_stock(wish.assets);
    if (const Result<std::string> list = read_file(assets_ / "words" / "trade.txt"); list.ok()) {
        Result<TradeWords> words = read_trade_words(list.value());
        if (words.ok()) {
            model_.trade_words = std::make_shared<const TradeWords>(std::move(words).value());
        }
    }
    if (const Result<std::string> list = read_file(wish.assets / "words" / "spellings.txt");
        list.ok()) {
        Result<Spellings> spellings = Spellings::read(list.value());
        if (spellings.ok()) store_.set_spellings(std::move(spellings).value());
    }
    Result<bool> opened = open_first(wish);
    if (!opened.ok()) return opened;
    if (const Result<bool> settled = settle_stock(model_); !settled.ok()) return settled;
    return recall_measures(model_);
}

void App::seed(const std::filesystem::path& assets) {
    for (const std::filesystem::path& file : recipe_files(assets / "recipes")) {
        const Result<std::string> text = read_file(file);
        if (!text.ok()) continue;
        const Result<Recipe> recipe = read_recipe(text.value());
        if (!recipe.ok()) continue;
        const Result<bool> added = store_.add_recipe(recipe.value(), text.value(), today());
        if (!added.ok()) model_.trouble = added.error().message + "; " + added.error().remedy;
    }
}

Result<bool> App::open_file(const AppWish& wish) {
    const Result<std::string> text = read_file(wish.recipe);
    if (!text.ok()) return text.error();
    Result<Recipe> recipe = read_recipe(text.value());
    if (!recipe.ok()) return recipe.error();
    if (recipe.value().id.empty()) {
        recipe.value().id = std::filesystem::path(wish.recipe).stem().string();
    }
    const std::string id = recipe.value().id;
    if (!model_.read_only) {
        const Result<bool> added = store_.add_recipe(recipe.value(), text.value(), today());
        if (!added.ok()) return added.error();
        const Result<std::string> held = store_.recipe_text(id);
        if (!held.ok()) return held.error();
        if (held.value() != text.value()) {
            const auto saved =
                store_.save_revision(recipe.value(), text.value(), "from a file", today());
            if (!saved.ok()) return saved.error();
            stock_finder_.forget(id);
        }
    }
    std::string hook;
    if (!wish.hook.empty()) {
        Result<std::string> measured = read_file(wish.hook);
        if (!measured.ok()) return in_file(wish.hook, measured.error());
        hook = std::move(measured).value();
        const Result<Hook> read = read_hook(hook);
        if (!read.ok()) return in_file(wish.hook, read.error());
    }
    const auto fly = fly_at(id, std::move(recipe).value(), wish.size, hook);
    if (!fly.ok()) return fly.error();
    if (!hook.empty() && !model_.read_only) {
        const auto kept = store_.save_hook(hook, today());
        if (!kept.ok()) return kept.error();
    }
    model_ = with_fly(std::move(model_), fly.value());
    model_.screen = Screen::lay_out;
    return true;
}

Result<bool> App::open_first(const AppWish& wish) {
    if (!wish.recipe.empty()) {
        Result<bool> opened = open_file(wish);
        if (!opened.ok()) return in_file(wish.recipe, opened.error());
        return opened;
    }
    const auto last = store_.last_sitting();
    if (!last.ok()) return last.error();
    if (last.value()) {
        const StoredSitting& sitting = *last.value();
        Result<Recipe> recipe = read_recipe(sitting.recipe_text);
        if (recipe.ok()) {
            const auto fly =
                fly_at(sitting.recipe, std::move(recipe).value(), sitting.size, sitting.hook);
            if (fly.ok()) {
                sitting_ = sitting.id;
                model_.book.tying = sitting.line;
                model_ = with_fly(std::move(model_), fly.value(), sitting.events);
                return true;
            }
        }
    }
    if (const Result<bool> opened = open_recipe("weirfoot-jig", model_); opened.ok()) {
        return opened; // the demo to begin with
    }
    const auto rows = store_.library("", 1);
    if (!rows.ok()) return rows.error();
    if (!rows.value().empty()) return open_recipe(rows.value().front().id, model_);
    model_.screen = Screen::library;
    return true;
}

Result<bool> App::prepare_letters(PixelSize size) {
    const TypeSizes sizes = sizes_for(model_, size);
    const float scale = backend_->scale();
    if (lettered_ == sizes && lettered_scale_ == scale) return true; // exact: the same number again
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoPowerOfTwoHeight;
    const std::span<const unsigned char> font = inter_font();
    const auto add = [&](float dots, const ImWchar* ranges) {
        ImFontConfig config;
        config.FontDataOwnedByAtlas = false;
        config.OversampleH = 1;
        config.RasterizerDensity = scale;
        // ImGui takes a plain pointer and, not owning the data, only reads it.
        return atlas.AddFontFromMemoryTTF(const_cast<unsigned char*>(font.data()),
                                          static_cast<int>(font.size()), dots, &config, ranges);
    };
    static constexpr ImWchar latin[] = {0x20, 0x24F, 0x2010, 0x2026, 0};
    static constexpr ImWchar digits[] = {'-', ':', 0};
    fonts_ = {add(sizes.small, latin), add(sizes.main, latin), add(sizes.huge, digits)};
    Result<UiRenderer> made = UiRenderer::make(backend_->gl(), atlas);
    if (!made.ok()) return made.error();
    ui_.emplace(std::move(made).value());
    lettered_ = sizes;
    lettered_scale_ = scale;
    return true;
}

Result<bool> App::draw_wraps(Picture which) {
    const auto i = static_cast<std::size_t>(which);
    const Box& box = shown_.wraps[i];
    if (box.width <= 0.0F || !pictured(model_, which).fly) return true;
    const float scale = ImGui::GetIO().DisplayFramebufferScale.x;
    const PixelSize room{std::max(8, static_cast<int>(box.width * scale)),
                         std::max(8, static_cast<int>(box.height * scale))};
    // Letters over the fly leave it room.
    const float text = std::min(0.75F * lettered_->small * scale,
                                0.06F * static_cast<float>(std::min(room.width, room.height)));
    const Scene& scene = wraps_[i].compose(model_, room, std::max(text, 12.0F), which);
    if (!wraps_[i].changed() && pictures_[i] != 0) return true;
    SceneTexture* scenes = &scenes_;
    if (which != Picture::own) {
        if (!beside_[i]) {
            Result<SceneTexture> made = SceneTexture::make(backend_->gl());
            if (!made.ok()) return made.error();
            beside_[i].emplace(std::move(made).value());
        }
        scenes = &*beside_[i];
    }
    const Result<GLuint> drawn = scenes->draw(scene);
    if (!drawn.ok()) return drawn.error();
    pictures_[i] = drawn.value();
    return true;
}

Result<bool> App::draw(PixelSize size) {
    const Gl& gl = backend_->gl();
    ImDrawData* lists = ImGui::GetDrawData();
    for (std::size_t i = 0; i < picture_count; ++i) {
        const auto which = static_cast<Picture>(i);
        const Result<bool> drawn = draw_wraps(which);
        if (!drawn.ok()) return drawn;
        for (ImDrawList* list : lists->CmdLists) {
            for (ImDrawCmd& command : list->CmdBuffer) {
                if (command.TextureId == reinterpret_cast<ImTextureID>(wraps_image(which))) {
                    command.TextureId = reinterpret_cast<ImTextureID>(std::uintptr_t{pictures_[i]});
                }
            }
        }
    }
    for (ImDrawList* list : lists->CmdLists) {
        for (ImDrawCmd& command : list->CmdBuffer) {
            if (command.TextureId == reinterpret_cast<ImTextureID>(photo_image)) {
                command.TextureId = reinterpret_cast<ImTextureID>(std::uintptr_t{photo_.name()});
            }
        }
    }
    gl.BindFramebuffer(GL_FRAMEBUFFER, backend_->framebuffer());
    gl.Viewport(0, 0, size.width, size.height);
    ui_->draw(*lists);
    return true;
}

void App::catch_up() {
    model_.now = std::max(model_.now, backend_->wall_clock());
    answer(wish(WishKind::tick_clock));
    for (const std::string& file : backend_->dropped()) take_file(file);
    for (const std::string& file : std::exchange(files_, {})) take_file(file);
}

/// Each stop once, while the voice is on.
void App::read_aloud() {
    std::string words = model_.settings.voice ? spoken(model_) : std::string();
    if (words == said_) return;
    said_ = std::move(words);
    backend_->say(said_);
}

Result<bool> App::frame() {
    catch_up();
    Result<bool> shown = show();
    if (shown.ok() && shown.value()) answer_shown();
    if (!shown.ok()) return shown;
    return true;
}

bool App::in_the_middle() const {
    const Typing& t = typing_;
    for (const std::string* words : {&t.fall_metres, &t.fall_seconds, &t.weighed_mg, &t.caliper,
                                     &t.photo_known, &t.edit_line, &t.loose}) {
        if (!words->empty()) return true;
    }
    return ImGui::GetIO().WantTextInput || at_work(model_) || model_.sheet != Sheet::closed ||
           t.grid.editing || (model_.edit.loose && !model_.edit.loose->text.empty());
}

void App::note(std::string words) {
    model_.now =
        std::max(model_.now, backend_->wall_clock()); // it stands as long after a long sleep
    say(model_, std::move(words));
}

void App::usual_theme(Theme theme) {
    const auto settings = store_.settings();
    const auto chosen = [](const auto& setting) { return setting.first == "theme"; };
    if (!settings.ok() || std::any_of(settings.value().begin(), settings.value().end(), chosen)) {
        return;
    }
    // Where nothing is kept, in a tab that looks on, what the person chose is in the model alone.
    if (usual_theme_ && model_.settings.theme != *usual_theme_) return;
    usual_theme_ = model_.settings.theme = theme;
    wake();
}

Result<bool> App::show() {
    const PixelSize dots = backend_->size();
    if (dots.width < 1 || dots.height < 1) return false; // put away
    const float scale = backend_->scale();
    const PixelSize size{static_cast<int>(static_cast<float>(dots.width) / scale),
                         static_cast<int>(static_cast<float>(dots.height) / scale)};
    if (const Result<bool> ready = prepare_letters(size); !ready.ok()) return ready;
    backend_->begin_frame();
    ImGui::NewFrame();
    shown_ = draw_screen(model_, typing_, fonts_, *lettered_);
    ImGui::Render();
    const auto active = [](const DrawnField& f) { return f.active; };
    if (std::none_of(shown_.fields.begin(), shown_.fields.end(), active)) typing_.outside.reset();
    const Result<bool> drawn = draw(dots);
    if (!drawn.ok()) return drawn;
    backend_->present();
    ++frames_;
    if (frames_due_ > 0) --frames_due_;
    read_aloud();
    return true;
}

void App::answer_shown() {
    const Wishes wishes = std::exchange(shown_.wishes, {});
    for (const Wish& w : wishes) answer(w);
    if (!wishes.empty()) wake();
    rank_some();
    find_some();
    if (frames_due_ == 0 && !checked_) check_texts();
}

void App::check_texts() {
    checked_ = true;
    const Result<bool> sound = store_.check_texts();
    if (sound.ok()) return;
    model_.trouble = "The library is damaged (" + sound.error().message +
                     "). Back it up now; at the next start it is set aside, and kept.";
    wake();
}

Duration App::may_sleep() const {
    if (frames_due_ > 0 || typing_.grid.fresh_edit) return {};
    const ImGuiIO& io = ImGui::GetIO();
    if (io.WantTextInput && io.ConfigInputTextCursorBlink) return seconds(0.5);
    return std::max(Duration{}, next_change(model_) - backend_->wall_clock());
}

void App::answer(const Wish& wish) {
    const Duration now = std::max(model_.now, backend_->wall_clock());
    Applied applied = apply(model_, wish, now);
    for (const Effect& effect : applied.effects) {
        const Result<bool> done = carry_out(effect, applied.model);
        if (done.ok()) continue;
        model_.trouble = done.error().message + "; " + done.error().remedy;
        return; // nothing of it is shown
    }
    const bool settled = applied.model.state.fly_state == model_.state.fly_state;
    model_ = std::move(applied.model);
    if (settled) return;
    // The event is kept; where the stock could not follow, it does so at the next start.
    const Result<bool> done = settle_stock(model_);
    if (!done.ok()) model_.trouble = done.error().message + "; " + done.error().remedy;
}

} // namespace wrapwright
