// Files that came in by a drop or a dialog: what each of them is.

#include "platform/app.h"

#include "core/recipe/text.h"
#include "core/share/bundle.h"
#include "platform/files.h"

#include <memory>
#include <utility>

namespace wrapwright {

/// A file is what its name ends in: a recipe, a bundle, a text, a backup of a library, a table, else a
/// photo.
void App::take_file(const std::string& file) {
    const std::string kind = std::filesystem::path(file).extension().string();
    if (kind == ".db") return answer(wish(WishKind::look_into, 0, file));
    if (kind == ".csv" || kind == ".tsv") return take_table(file);
    const bool text = kind == ".json" || kind == ".txt" || kind == ".md" || kind == ".text";
    if (!text) return answer(wish(WishKind::open_photo, 0, file));
    Result<std::string> read = read_file(file, most_bundle_bytes);
    Result<bool> done = true;
    if (!read.ok()) {
        done = read.error();
    } else if (kind == ".json") {
        done = open_plainly(file, read.value());
    } else {
        done = false;
    }
    if (done.ok() && !done.value()) {
        answer(wish(WishKind::open_text, 0, std::move(read).value()));
    }
    if (done.ok()) return;
    const Error error = in_file(file, done.error());
    model_.trouble = error.message + "; " + error.remedy;
}

Result<bool> App::open_plainly(const std::string& file, std::string_view text) {
    if (is_bundle(text)) return false;
    const Result<OpenedRecipe> opened = wrapwright::open_recipe(text);
    if (!opened.ok()) return opened.error();
    if (!opened.value().newer.empty()) return false;
    std::string id = opened.value().recipe.id;
    if (id.empty()) id = std::filesystem::path(file).stem().string();
    // One that differs from the person's own is looked at first.
    const Result<std::string> here = store_.recipe_text(id);
    if (here.ok() && here.value() != text) return false;
    const auto named = std::make_unique<AppWish>(); // not on the stack: g++ 12 warns of its vectors
    named->recipe = file;
    const Result<bool> done = open_file(*named);
    return done.ok() ? recall_measures(model_) : done;
}

/// Into the stock or the orders, whichever is open.
void App::take_table(const std::string& file) {
    const bool stock = model_.book.view == OrdersView::stock;
    if (model_.screen != Screen::orders || (!stock && model_.book.view != OrdersView::lines)) {
        model_.trouble =
            std::filesystem::path(file).filename().string() +
            " is a table; open Orders or Stock, whichever it is for, and take it again";
        return;
    }
    Wish w = wish(WishKind::table_in, 0, file);
    w.key = stock ? "stock" : "order";
    answer(w);
}

} // namespace wrapwright
