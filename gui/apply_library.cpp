// The library: what narrows its list, and the fly box.

#include "gui/answer.h"

namespace wrapwright::detail {

void Answer::ask_library(const std::string& key, const std::string& text) {
    LibraryAsk& ask = model().library.ask;
    model().library.refused.clear();
    if (key == "order") {
        ask.order = static_cast<RecipeOrder>((static_cast<int>(ask.order) + 1) % 3);
    } else if (key == "favourites") {
        ask.favourites = !ask.favourites;
    } else if (key == "stock") {
        ask.stock = !ask.stock;
    } else if (key == "box") {
        ask.box = !ask.box;
    } else if (key == "size") {
        ask.size = text;
    } else if (key == "tag") {
        ask.tag = text;
    } else if (key == "material") {
        ask.material = text;
    } else if (key == "from") {
        ask.from = text;
    } else if (key == "to") {
        ask.to = text;
    }
    effect(EffectKind::search, model().search);
}

void Answer::box_cell(const std::string& recipe, int column, const std::string& text) {
    LibraryWork& library = model().library;
    if (!library.box || column < 0 ||
        static_cast<std::size_t>(column) >= library.box->sizes.size() || !may_write()) {
        return;
    }
    library.refused.clear();
    const Result<BoxCell> cell = read_box_cell(text);
    if (!cell.ok()) {
        library.refused = "Not taken: " + cell.error().message + "; " + cell.error().remedy;
        return;
    }
    const HookSize size = library.box->sizes[static_cast<std::size_t>(column)];
    Effect& e = effect(EffectKind::keep_box, write_hook_size(size));
    e.key = recipe;
    e.cell = cell.value();
}

} // namespace wrapwright::detail
