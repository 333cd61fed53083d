// The library: its list, what the stock makes of it, the fly box, recipes as files.

#include "core/recipe/text.h"
#include "core/units/hook_size.h"
#include "platform/app.h"
#include "platform/files.h"

#include <chrono>

namespace wrapwright {

static_assert(static_cast<int>(LibrarySort::newest) == static_cast<int>(RecipeOrder::newest));

namespace {

constexpr int weighed_at_once = 20;

/// The flies that open orders still want of each recipe.
std::map<std::string, int> ordered_flies(const Book& book) {
    std::map<std::string, int> flies;
    for (const OrderLine& line : book.lines) {
        if (line.gone || !open(line.status)) continue;
        flies[line.recipe] += std::max(0, line.flies - book.holdings.finished(line.id));
    }
    return flies;
}

} // namespace

Result<bool> App::list(Model& next) {
    LibraryWork& library = next.library;
    const LibraryAsk& ask = library.ask;
    LibrarySearch wanted;
    wanted.words = next.search;
    wanted.material = ask.material;
    wanted.tag = ask.tag;
    wanted.favourites = ask.favourites;
    wanted.sort = static_cast<LibrarySort>(ask.order);
    wanted.at_least = asked_weight(ask.from, next.settings.inches);
    wanted.at_most = asked_weight(ask.to, next.settings.inches);
    const Result<WrittenHookSize> size = parse_hook_size(ask.size);
    if (!ask.size.empty() && size.ok()) wanted.size = size.value().size;
    const auto found = store_.search(wanted);
    if (!found.ok()) return found.error();
    library.rows.clear();
    library.waiting.clear();
    library_due_ = LibraryDue::nothing;
    for (const StoredRow& row : found.value()) {
        library.rows.push_back(
            {row.id, row.name, row.fly_class, row.sizes, row.tags, row.favourite, {}});
    }
    if ((wanted.at_least || wanted.at_most) && !weighed_ && !next.read_only) {
        library_due_ = LibraryDue::weights;
    }
    if (ask.stock || ask.box) {
        const Result<Book> book = store_.book();
        if (!book.ok()) return book.error();
        if (ask.stock) narrow_to_stock(wanted.size, book.value(), library);
        if (ask.box) return lay_box(book.value(), library);
    }
    return true;
}

void App::narrow_to_stock(std::optional<HookSize> size, const Book& book, LibraryWork& library) {
    std::vector<std::string> ids;
    for (const LibraryRow& row : library.rows) ids.push_back(row.id);
    const int unknown = stock_finder_.want(ids);
    if (unknown > 0) {
        library_due_ = LibraryDue::stock;
        library.waiting = "Looking into " + std::to_string(unknown) + " recipes.";
    }
    const StockNames names(book.items);
    for (LibraryRow& row : library.rows) {
        row.from_stock = stock_finder_.words(row.id, size, book, names);
    }
    std::erase_if(library.rows, [](const LibraryRow& row) { return row.from_stock.empty(); });
}

Result<bool> App::lay_box(const Book& book, LibraryWork& library) {
    const Result<BoxCounts> counts = store_.box();
    if (!counts.ok()) return counts.error();
    std::map<std::string, int> ordered = ordered_flies(book);
    std::vector<BoxPattern> patterns;
    for (const LibraryRow& row : library.rows) {
        patterns.push_back({row.id, row.name, row.sizes, ordered[row.id]});
    }
    library.box = std::make_shared<const BoxGrid>(box_grid(std::move(patterns), counts.value()));
    return true;
}

Result<bool> App::keep_box(const Effect& effect, Model& next) {
    const Result<bool> kept = store_.keep_box(effect.key, effect.text, effect.cell, today());
    return kept.ok() ? list(next) : kept;
}

/// What the list still waits for, a little in each frame.
void App::find_some() {
    if (library_due_ == LibraryDue::nothing || model_.screen != Screen::library) return;
    wake();
    const LibraryDue due = library_due_;
    std::int64_t left = 0;
    if (due == LibraryDue::weights) {
        const Result<std::int64_t> unweighed = store_.weigh_some(weighed_at_once);
        left = unweighed.ok() ? unweighed.value() : 0;
        weighed_ = left == 0;
        model_.library.waiting =
            "Weighing " + std::to_string(left) + " recipes for the first time.";
    } else {
        left = stock_finder_.work(store_,
                                  std::chrono::steady_clock::now() + std::chrono::milliseconds(6));
        model_.library.waiting = "Looking into " + std::to_string(left) + " recipes.";
    }
    if (left > 0) return;
    const Result<bool> listed = list(model_);
    if (!listed.ok()) model_.trouble = listed.error().message + "; " + listed.error().remedy;
}

Result<bool> App::give_recipe(const std::string& id, Model& next) {
    const Result<std::string> text = store_.recipe_text(id);
    if (!text.ok()) return text.error();
    return hand_out(shared_folder(next) / (file_stem(id) + ".json"), text.value(), next);
}

Result<bool> App::duplicate(const std::string& id, Model& next) {
    const Result<std::string> text = store_.recipe_text(id);
    if (!text.ok()) return text.error();
    Result<Recipe> read = read_recipe(text.value());
    if (!read.ok()) return read.error();
    Recipe copy = std::move(read).value();
    copy.provenance.version_of = id;
    copy.name += " (my version)";
    for (int n = 2; n < 1000; ++n) {
        copy.id = id + "-" + std::to_string(n);
        const Result<bool> added = store_.add_recipe(copy, write_recipe(copy), today());
        if (!added.ok()) return added;
        if (!added.value()) continue; // that one is taken
        say(next, "Duplicated as " + copy.name);
        return list(next);
    }
    return Error{
        ErrorCode::duplicate, "'" + id + "' has a thousand versions", "give one a name", {}};
}

} // namespace wrapwright
