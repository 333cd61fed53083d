// What the model asks of the world, carried out: the store, the clock, the files.

#include "core/recipe/text.h"
#include "core/units/hook_size.h"
#include "platform/app.h"
#include "platform/files.h"
#include "platform/gl/image.h"

namespace wrapwright {

namespace {

std::string list_of(const std::vector<std::string>& names) {
    std::string list;
    for (std::size_t i = 0; i < names.size() && i < 6; ++i) {
        if (!list.empty()) list += ", ";
        list += names[i];
    }
    if (names.size() > 6) list += " and " + std::to_string(names.size() - 6) + " more";
    return list;
}

/// "weirfoot-jig-14"
std::string picture_stem(const Model& model) {
    return file_stem(model.fly->id + "-" + write_hook_size(model.fly->size));
}

} // namespace

Result<bool> App::carry_out(const Effect& effect, Model& next) {
    switch (effect.kind) {
    case EffectKind::begin_sitting: {
        const std::string hook = next.fly->own ? write_hook(*next.fly->own) : "";
        const auto begun = store_.begin_sitting(next.fly->id, write_hook_size(next.fly->size),
                                                effect.event, today(), hook, next.book.tying);
        if (!begun.ok()) return begun.error();
        sitting_ = begun.value();
        return true;
    }
    case EffectKind::append: return store_.append(sitting_, effect.event);
    case EffectKind::open_recipe: return open_recipe(effect.text, next);
    case EffectKind::open_size: return open_size(effect.text, next);
    case EffectKind::duplicate: return duplicate(effect.text, next);
    case EffectKind::favourite: {
        const Result<bool> done = store_.set_favourite(effect.text, effect.number != 0);
        return done.ok() ? list(next) : done;
    }
    case EffectKind::search: return list(next);
    case EffectKind::keep_box: return keep_box(effect, next);
    case EffectKind::save_setting:
        if (next.read_only) return true; // it holds for this window alone
        return store_.set_setting(effect.key, effect.text);
    case EffectKind::keep_fall:
    case EffectKind::drop_fall:
    case EffectKind::keep_weighing: return keep_measure(effect, next);
    case EffectKind::load_book:
    case EffectKind::keep_book:
    case EffectKind::table_in:
    case EffectKind::table_out:
    case EffectKind::order_page:
    case EffectKind::page:
    case EffectKind::tie_line: return carry_out_book(effect, next);
    case EffectKind::rank: to_rank_ = true; return true;
    case EffectKind::pick_file: backend_->pick(static_cast<FileKind>(effect.number)); return true;
    case EffectKind::open_file:
        files_.push_back(effect.text); // opened when this turn is over
        wake();
        return true;
    case EffectKind::give_recipe: return give_recipe(effect.text, next);
    case EffectKind::open_photo: return open_photo_file(effect.text, next);
    case EffectKind::recall_photo: return recall_photo(effect.number, next);
    case EffectKind::give_photo: return give_photo(next);
    case EffectKind::keep_marks:
        if (next.check.photo.id == 0 || next.read_only) return true;
        return store_.set_marks(next.check.photo.id, text_of(next.check.photo.marks));
    case EffectKind::keep_readings: return keep_readings(effect.number, next);
    case EffectKind::drop_reading: return store_.drop_reading(effect.number);
    case EffectKind::open_draft: return open_draft(next);
    case EffectKind::keep_draft: return keep_draft(next);
    case EffectKind::save_recipe: return save_recipe(effect.text, next);
    case EffectKind::new_recipe: {
        if (effect.key.empty()) return new_recipe(effect.text, next);
        Result<Recipe> made = read_recipe(effect.key);
        return made.ok() ? add_and_write(std::move(made).value(), next) : made.error();
    }
    case EffectKind::versions: return list_versions(next);
    case EffectKind::version: return version(effect, next);
    case EffectKind::share: return effect.number == 0 ? preview_shared(next) : take_shared(next);
    case EffectKind::save_frame: {
        const auto file = pictures_folder() / (picture_stem(next) + ".png");
        const Result<bool> saved = save_picture(next, effect.number, file);
        if (saved.ok()) {
            say(next, "Saved as " + told_as(next, file));
            backend_->give(file);
        }
        return saved;
    }
    case EffectKind::save_steps: return save_steps(next);
    case EffectKind::tick: backend_->tick(); return true;
    case EffectKind::back_up: return back_up(effect.text, next);
    case EffectKind::look_into: return look_into(effect.text, next);
    case EffectKind::restore: return restore(next);
    case EffectKind::quit: backend_->close(); return true;
    }
    return true;
}

std::string App::told_as(const Model& model, const std::filesystem::path& file) {
    return (model.picks_files ? file.filename() : file).string();
}

std::filesystem::path App::pictures_folder() const {
    return std::filesystem::path(model_.data_folder) / "pictures";
}

Result<bool> App::save_picture(const Model& model, int moment, const std::filesystem::path& file) {
    std::error_code ignored;
    std::filesystem::create_directories(file.parent_path(), ignored);
    Model of = model;
    of.screen = Screen::film;
    of.film_at = moment;
    WrapsScene wraps;
    Scene scene = wraps.compose(of, {1600, 1000}, 24.0F);
    scene.supersample = 2;
    const Result<GLuint> drawn = scenes_.draw(scene);
    if (!drawn.ok()) return drawn.error();
    pictures_[0] = 0; // the picture on the screen was drawn over
    const std::vector<std::uint8_t> png = png_of(read_pixels(backend_->gl(), scene.size));
    Result<bool> written =
        write_file(file, {reinterpret_cast<const char*>(png.data()), png.size()});
    if (written.ok()) return written;
    return in_file(file.string(), written.error());
}

Result<bool> App::save_steps(Model& next) {
    const std::vector<Moment>& moments = next.fly->tied.moments;
    const auto folder = pictures_folder();
    int saved = 0;
    for (std::size_t i = 0; i < moments.size(); ++i) {
        if (i + 1 < moments.size() && moments[i + 1].step == moments[i].step) continue;
        const int step = moments[i].step + 1;
        std::string number = std::to_string(step);
        if (step < 10) number.insert(0, 1, '0');
        const Result<bool> done = save_picture(
            next, static_cast<int>(i), folder / (picture_stem(next) + "-step" + number + ".png"));
        if (!done.ok()) return done;
        backend_->give(folder / (picture_stem(next) + "-step" + number + ".png"));
        ++saved;
    }
    std::string words = std::to_string(saved) + " pictures saved";
    if (!next.picks_files) words += " in " + folder.string();
    say(next, std::move(words));
    return true;
}

Result<bool> App::back_up(std::filesystem::path to, Model& next) {
    if (to.empty()) to = std::filesystem::temp_directory_path() / "wrapwright-backup.db";
    const Result<bool> done = store_.back_up(to);
    if (!done.ok()) return done;
    say(next, "Backed up to " + told_as(next, to));
    backend_->give(to);
    return true;
}

Result<bool> App::open_recipe(const std::string& id, Model& next) {
    const Result<std::string> text = store_.recipe_text(id);
    if (!text.ok()) return text.error();
    Result<Recipe> recipe = read_recipe(text.value());
    if (!recipe.ok()) return recipe.error();
    const auto fly = open_fly(id, std::move(recipe).value());
    if (!fly.ok()) return fly.error();
    next = with_fly(std::move(next), fly.value());
    next.screen = fly.value()->tied.moments.empty() ? Screen::bench : Screen::lay_out;
    return recall_measures(next);
}

Result<bool> App::open_size(const std::string& size, Model& next) {
    const Result<WrittenHookSize> read = parse_hook_size(size);
    if (!read.ok()) return read.error();
    const auto fly = open_fly(next.fly->id, next.fly->pattern.recipe, &read.value().size);
    if (!fly.ok()) return fly.error();
    next = with_fly(std::move(next), fly.value());
    return recall_measures(next);
}

Result<bool> App::look_into(const std::string& file, Model& next) {
    const Result<RestorePreview> preview = store_.look_into(file);
    if (!preview.ok()) return preview.error();
    const RestorePreview& p = preview.value();
    const auto counts = [](const StoreCount& c) {
        return std::to_string(c.recipes) + " recipes in " + std::to_string(c.revisions) +
               " revisions, " + std::to_string(c.sittings) + " sittings";
    };
    next.restore_preview = "Here: " + counts(p.here) + ".\nThere: " + counts(p.there) + ".";
    if (!p.only_there.empty()) next.restore_preview += "\nNew: " + list_of(p.only_there) + ".";
    if (!p.only_here.empty()) next.restore_preview += "\nGone: " + list_of(p.only_here) + ".";
    next.sheet = Sheet::restore;
    backup_ = file;
    return true;
}

namespace {

/// Removes what earlier restores kept beside the library.
void forget_copies(const std::filesystem::path& newest) {
    std::error_code ignored;
    for (const auto& entry : std::filesystem::directory_iterator(newest.parent_path(), ignored)) {
        const bool copy = entry.path().filename().string().starts_with("before-restore-");
        if (copy && entry.path() != newest) std::filesystem::remove(entry.path(), ignored);
    }
}

} // namespace

Result<bool> App::restore(Model& next) {
    const Result<std::filesystem::path> before = store_.restore(backup_, today());
    if (!before.ok()) return before.error();
    sitting_ = 0;
    stock_finder_.forget_all();
    weighed_ = false;
    const auto rows = store_.library("", 1);
    if (!rows.ok()) return rows.error();
    if (!rows.value().empty()) {
        const Result<bool> opened = open_recipe(rows.value().front().id, next);
        if (!opened.ok()) return opened;
    }
    say(next, "Restored; what was here is in " + told_as(next, before.value()));
    if (next.picks_files) {
        // Handed out, and the last one stays; earlier ones nobody could get at.
        forget_copies(before.value());
        backend_->give(before.value());
    }
    return list(next);
}

} // namespace wrapwright
