#include "platform/store/store.h"

#include <algorithm>

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
    std::string text = r.id + '\n' + r.name + '\n' + joined(r.aliases) + '\n' + joined(r.tags) +
                       '\n' + r.fly_class + '\n' + r.sizes + '\n' + r.verbatim + '\n' + r.fishing +
                       '\n' + r.imitates + '\n' + r.history + '\n' + r.notes + '\n' +
                       r.provenance.author + '\n' + r.provenance.source;
    for (const RecipeMaterial& m : r.materials) text += '\n' + m.text + ' ' + m.colour;
    for (const Part& p : r.parts) text += '\n' + p.role + ' ' + p.text;
    for (const Step& s : r.steps) text += '\n' + s.text + ' ' + s.tip;
    return text;
}

/// A search as SQLite's full text reads it: each word quoted, as a beginning.
std::string match(std::string_view words) {
    std::string out;
    std::string word;
    const auto end_word = [&] {
        if (word.empty()) return;
        if (!out.empty()) out += ' ';
        out += '"';
        out += word;
        out += "\"*";
        word.clear();
    };
    for (const char c : words) {
        const bool part = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                          (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
        if (part) {
            word += c;
        } else {
            end_word();
        }
    }
    end_word();
    return out;
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
    return words.value().bind(recipe.id).bind(searched(recipe)).run();
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

Result<std::vector<StoredRow>> Store::library(std::string_view words, int most) {
    const std::string wanted = match(words);
    const bool all = wanted.empty();
    Result<Query> query =
        all ? db_.query("SELECT id, name, class, sizes, tags, favourite FROM recipe "
                        "ORDER BY favourite DESC, name COLLATE NOCASE, id LIMIT ?")
            : db_.query("SELECT recipe.id, name, class, sizes, tags, favourite FROM words "
                        "JOIN recipe ON recipe.id = words.id WHERE words MATCH ? "
                        "ORDER BY favourite DESC, name COLLATE NOCASE, recipe.id LIMIT ?");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    if (!all) q.bind(wanted);
    q.bind(std::int64_t{most});
    std::vector<StoredRow> rows;
    for (;;) {
        const Result<bool> row = q.step();
        if (!row.ok()) return row.error();
        if (!row.value()) return rows;
        rows.push_back({q.text(0), q.text(1), q.text(2), q.text(3), q.text(4), q.whole(5) != 0});
    }
}

} // namespace wrapwright
