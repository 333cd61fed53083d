#include "core/recipe/text.h"
#include "platform/store/store.h"

namespace wrapwright {

Result<std::vector<StoredRevision>> Store::revisions(std::string_view id) {
    Result<Query> query = db_.query(
        "SELECT number, made, name, note FROM revision WHERE recipe = ? ORDER BY number DESC");
    if (!query.ok()) return query.error();
    Query& q = query.value().bind(id);
    std::vector<StoredRevision> list;
    const Result<bool> all =
        q.each([&] { list.push_back({q.whole(0), q.whole(1), q.text(2), q.text(3)}); });
    if (!all.ok()) return all.error();
    if (list.empty()) return no_such_recipe(id);
    return list;
}

Result<bool> Store::name_revision(std::string_view id, std::int64_t number, std::string_view name) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    const Result<std::string> there = recipe_text(id, number);
    if (!there.ok()) return there.error();
    Result<Query> query = db_.query("UPDATE revision SET name = ? WHERE recipe = ? AND number = ?");
    if (!query.ok()) return query.error();
    return query.value().bind(name).bind(id).bind(number).run();
}

Result<std::int64_t> Store::go_back(std::string_view id, std::int64_t number, std::int64_t now) {
    const Result<std::string> text = recipe_text(id, number);
    if (!text.ok()) return text.error();
    const Result<Recipe> recipe = read_recipe(text.value());
    if (!recipe.ok()) return recipe.error();
    return save_revision(recipe.value(), text.value(), "back to revision " + std::to_string(number),
                         now);
}

} // namespace wrapwright
