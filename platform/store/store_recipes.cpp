#include "platform/store/store.h"

#include <initializer_list>
#include <string_view>

namespace wrapwright {

namespace {

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) {
        if (!text.empty()) text += ", ";
        text += word;
    }
    return text;
}

/// The words of a recipe that people search by: everything that they wrote.
std::string searched(const Recipe& r) {
    std::string text;
    const auto add = [&](std::initializer_list<std::string_view> words) {
        for (const std::string_view w : words) {
            if (!w.empty()) text.append(w).append("\n");
        }
    };
    const Provenance& p = r.provenance;
    add({r.id, r.name, joined(r.aliases), joined(r.tags), r.fly_class, r.sizes, r.verbatim,
         r.fishing, r.imitates, r.history, r.notes, p.author, p.date, p.source, p.page,
         p.permission, p.credit, p.changes, p.version_of});
    for (const Base& b : r.bases) add({b.kind, b.text});
    for (const RecipeMaterial& m : r.materials) {
        add({name(m.kind), m.text, m.colour, m.size.text, m.instead, m.origin_note});
    }
    for (const Part& part : r.parts) {
        add({part.role, part.text, part.turns.text, part.count.text, part.length.text,
             part.condition});
    }
    for (const Step& s : r.steps) {
        add({s.text, s.landmark, s.tip, s.caution, s.original});
        for (const Action& a : s.actions) add({a.note});
    }
    return text;
}

} // namespace

Error no_such_recipe(std::string_view id) {
    std::string message = "no recipe has the id '";
    message += id;
    message += '\'';
    return {ErrorCode::not_found, std::move(message), "pick one from the list", {}};
}

Result<bool> Store::write_recipe_row(const Recipe& recipe, std::string_view text,
                                     std::string_view note, std::int64_t number, std::int64_t now) {
    Result<Query> row = db_.query(
        "INSERT INTO recipe (id, name, class, sizes, tags, revision) VALUES (?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (id) DO UPDATE SET name = excluded.name, class = excluded.class, "
        "sizes = excluded.sizes, tags = excluded.tags, revision = excluded.revision");
    if (!row.ok()) return row.error();
    const std::string& name = recipe.name.empty() ? recipe.id : recipe.name;
    Result<bool> done = row.value()
                            .bind(recipe.id)
                            .bind(name)
                            .bind(recipe.fly_class)
                            .bind(recipe.sizes)
                            .bind(joined(recipe.tags))
                            .bind(number)
                            .run();
    if (!done.ok()) return done;
    Result<Query> revision =
        db_.query("INSERT INTO revision (recipe, number, text, note, made) VALUES (?, ?, ?, ?, ?)");
    if (!revision.ok()) return revision.error();
    done = revision.value().bind(recipe.id).bind(number).bind(text).bind(note).bind(now).run();
    if (!done.ok()) return done;
    Result<Query> old = db_.query("DELETE FROM words WHERE id = ?");
    if (!old.ok()) return old.error();
    done = old.value().bind(recipe.id).run();
    if (!done.ok()) return done;
    Result<Query> words = db_.query("INSERT INTO words (id, body) VALUES (?, ?)");
    if (!words.ok()) return words.error();
    done = words.value().bind(recipe.id).bind(searched(recipe)).run();
    return done.ok() ? write_weights(recipe) : done;
}

Result<bool> Store::add_recipe(const Recipe& recipe, std::string_view text, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> there = db_.query("SELECT 1 FROM recipe WHERE id = ?");
    if (!there.ok()) return there.error();
    Result<bool> found = there.value().bind(recipe.id).step();
    if (!found.ok()) return found;
    if (found.value()) return false;
    Result<bool> done =
        db_.together([&] { return write_recipe_row(recipe, text, "as it came", 1, now); });
    return done;
}

Result<std::int64_t> Store::save_revision(const Recipe& recipe, std::string_view text,
                                          std::string_view note, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    std::int64_t number = 0;
    const Result<bool> done = db_.together([&]() -> Result<bool> {
        Result<Query> newest = db_.query("SELECT revision FROM recipe WHERE id = ?");
        if (!newest.ok()) return newest.error();
        const Result<bool> there = newest.value().bind(recipe.id).step();
        if (!there.ok()) return there;
        if (!there.value()) {
            return no_such_recipe(recipe.id);
        }
        number = newest.value().whole(0) + 1;
        return write_recipe_row(recipe, text, note, number, now);
    });
    if (!done.ok()) return done.error();
    return number;
}

Result<std::string> Store::recipe_text(std::string_view id) {
    Result<Query> query = db_.query("SELECT text FROM revision JOIN recipe ON id = recipe AND "
                                    "number = revision WHERE id = ?");
    if (!query.ok()) return query.error();
    const Result<bool> row = query.value().bind(id).step();
    if (!row.ok()) return row.error();
    if (!row.value()) {
        return no_such_recipe(id);
    }
    return query.value().text(0);
}

Result<std::string> Store::recipe_text(std::string_view id, std::int64_t revision) {
    Result<Query> query = db_.query("SELECT text FROM revision WHERE recipe = ? AND number = ?");
    if (!query.ok()) return query.error();
    const Result<bool> row = query.value().bind(id).bind(revision).step();
    if (!row.ok()) return row.error();
    if (!row.value()) {
        Error error = no_such_recipe(id);
        error.message += " and a revision " + std::to_string(revision);
        return error;
    }
    return query.value().text(0);
}

Result<std::optional<std::pair<std::string, std::string>>>
Store::find_recipe(std::string_view words) {
    Result<Query> query = db_.query("SELECT id, name FROM recipe WHERE id = ?1 OR "
                                    "name = ?1 COLLATE NOCASE ORDER BY id <> ?1, id LIMIT 1");
    if (!query.ok()) return query.error();
    const Result<bool> row = query.value().bind(words).step();
    if (!row.ok()) return row.error();
    std::optional<std::pair<std::string, std::string>> found;
    if (row.value()) found.emplace(query.value().text(0), query.value().text(1));
    return found;
}

Result<bool> Store::set_favourite(std::string_view id, bool favourite) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> query = db_.query("UPDATE recipe SET favourite = ? WHERE id = ?");
    if (!query.ok()) return query.error();
    return query.value().bind(std::int64_t{favourite}).bind(id).run();
}

} // namespace wrapwright
