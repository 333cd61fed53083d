// Files that came in by a drop or a dialog: what each of them is.

#include "platform/app.h"

#include "core/share/bundle.h"
#include "gui/loose_work.h"
#include "platform/files.h"

#include <utility>

namespace wrapwright {

/// A file is what its name ends in: a recipe, a bundle, a text, a backup of a library, a table, else a
/// photo.
void App::take_file(const std::string& file) {
    const std::string kind = std::filesystem::path(file).extension().string();
    if (kind == ".db") return answer(wish(WishKind::look_into, 0, file));
    if (kind == ".csv" || kind == ".tsv") return take_table(file);
    if (kind != ".json" && kind != ".txt") return answer(wish(WishKind::open_photo, 0, file));
    if (Result<std::string> text = read_file(file, most_bundle_bytes);
        text.ok() && (kind == ".txt" || is_bundle(text.value()))) {
        return take_text_of_file(std::move(text).value());
    }
    const Result<bool> opened = open_file({.data_folder = {}, .assets = {}, .recipe = file});
    const Result<bool> recalled = opened.ok() ? recall_measures(model_) : opened;
    if (recalled.ok()) return;
    const Error error = in_file(file, recalled.error());
    model_.trouble = error.message + "; " + error.remedy;
}

/// A bundle or a text is read as what is pasted is: first it is shown what it would do.
void App::take_text_of_file(std::string text) {
    if (model_.screen != Screen::edit) answer(wish(Command::write));
    answer(wish(WishKind::edit_view, static_cast<int>(EditView::loose)));
    typing_.loose = text;
    answer(wish(WishKind::edit_loose, static_cast<int>(LooseAsk::text), std::move(text)));
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
