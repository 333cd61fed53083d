#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "core/units/scan.h"
#include "platform/store/store.h"

#include <algorithm>

namespace wrapwright {

namespace {

constexpr std::size_t most_words = 16; ///< that are looked for; nobody types more

/// The words of what was typed.
std::vector<std::string> words_of(std::string_view typed) {
    std::vector<std::string> words(1);
    for (const char c : typed) {
        const bool part =
            detail::is_letter(c) || detail::is_digit(c) || static_cast<unsigned char>(c) >= 0x80;
        if (part) words.back() += c;
        if (!part && !words.back().empty()) words.emplace_back();
    }
    if (words.back().empty()) words.pop_back();
    if (words.size() > most_words) words.resize(most_words);
    return words;
}

/// A search as SQLite's full text reads it: each word quoted, as a beginning, with those alike.
std::string match(std::string_view typed, const Spellings& spellings) {
    std::string out;
    for (const std::string& word : words_of(typed)) {
        if (!out.empty()) out += " AND ";
        out += '(';
        bool first = true;
        for (const std::string& alike : spellings.alike(word)) {
            if (!first) out += " OR ";
            first = false;
            out.append("\"").append(alike).append("\"*");
        }
        out += ')';
    }
    return out;
}

std::string like(std::string_view words) {
    std::string pattern = "%";
    for (const char c : words) {
        if (c == '%' || c == '_' || c == '\\') pattern += '\\';
        pattern += c;
    }
    return pattern + '%';
}

bool has_size(const std::string& sizes, HookSize size) {
    const Result<WrittenHookSizes> read = parse_hook_sizes(sizes);
    if (!read.ok()) return false;
    const std::vector<HookSize>& all = read.value().sizes;
    return std::find(all.begin(), all.end(), size) != all.end();
}

/// The statement of a search and what is bound to it, in order.
struct Statement {
    std::string sql{};
    std::vector<std::string> texts{};
};

Statement statement_of(const LibrarySearch& wanted, const Spellings& spellings) {
    Statement s;
    std::string where;
    const auto also = [&](const char* condition, std::string text) {
        where.append(where.empty() ? " WHERE " : " AND ").append(condition);
        s.texts.push_back(std::move(text));
    };
    // The words of a material are among all words: that leaves few recipes to look into.
    const std::string found = match(wanted.words + ' ' + wanted.material, spellings);
    s.sql = "SELECT recipe.id, recipe.name, class, sizes, tags, favourite FROM ";
    s.sql += found.empty() ? "recipe" : "words JOIN recipe ON recipe.id = words.id";
    if (!found.empty()) also("words MATCH ?", found);
    for (const std::string& word : words_of(wanted.material)) {
        std::string any;
        std::vector<std::string> alike = spellings.alike(word);
        for (std::size_t i = 0; i < alike.size(); ++i) {
            any.append(i == 0 ? "" : " OR ");
            any +=
                "m.value ->> 'text' LIKE ? ESCAPE '\\' OR m.value ->> 'instead' LIKE ? ESCAPE '\\'";
        }
        where.append(where.empty() ? " WHERE " : " AND ");
        where += "EXISTS (SELECT 1 FROM revision AS r, json_each(r.text, '$.materials') AS m WHERE "
                 "r.recipe = recipe.id AND r.number = recipe.revision AND (" +
                 any + "))";
        for (const std::string& a : alike) {
            s.texts.push_back(like(a));
            s.texts.push_back(like(a));
        }
    }
    if (!wanted.tag.empty()) {
        also("', ' || tags || ',' LIKE ? ESCAPE '\\'", like(", " + wanted.tag + ","));
    }
    if (!wanted.fly_class.empty()) also("class = ? COLLATE NOCASE", wanted.fly_class);
    if (wanted.favourites)
        where.append(where.empty() ? " WHERE " : " AND ").append("favourite = 1");
    if (wanted.at_least || wanted.at_most) {
        where.append(where.empty() ? " WHERE " : " AND ");
        where += "EXISTS (SELECT 1 FROM weight WHERE weight.recipe = recipe.id AND value > 0";
        if (wanted.size) where += " AND size = " + std::to_string(wanted.size->number);
        where += " AND high >= ? AND low <= ?)";
    }
    s.sql += where + " ORDER BY favourite DESC, ";
    if (wanted.sort == LibrarySort::fly_class) s.sql += "class COLLATE NOCASE, ";
    if (wanted.sort == LibrarySort::newest) {
        s.sql += "(SELECT max(made) FROM revision WHERE revision.recipe = recipe.id) DESC, ";
    }
    s.sql += "recipe.name COLLATE NOCASE, recipe.id";
    return s;
}

} // namespace

Result<std::vector<StoredRow>> Store::library(std::string_view words, int most) {
    LibrarySearch wanted;
    wanted.words = words;
    wanted.most = most;
    return search(wanted);
}

Result<std::vector<StoredRow>> Store::search(const LibrarySearch& wanted) {
    const Statement statement = statement_of(wanted, spellings_);
    Result<Query> query = db_.query(statement.sql);
    if (!query.ok()) return query.error();
    Query& q = query.value();
    for (const std::string& text : statement.texts) q.bind(text);
    if (wanted.at_least || wanted.at_most) {
        q.bind(wanted.at_least.value_or(Mass{}).si);
        q.bind(wanted.at_most.value_or(Mass{1e9}).si);
    }
    std::vector<StoredRow> rows;
    while (static_cast<int>(rows.size()) < wanted.most) {
        const Result<bool> row = q.step();
        if (!row.ok()) return row.error();
        if (!row.value()) break;
        if (wanted.size && !has_size(q.text(3), *wanted.size)) continue;
        rows.push_back({q.text(0), q.text(1), q.text(2), q.text(3), q.text(4), q.whole(5) != 0});
    }
    return rows;
}

Result<bool> Store::write_weights(const Recipe& recipe) {
    Result<Query> old = db_.query("DELETE FROM weight WHERE recipe = ?");
    if (!old.ok()) return old.error();
    Result<bool> done = old.value().bind(recipe.id).run();
    if (!done.ok()) return done;
    const auto put = [&](std::int64_t size, const Estimate<Mass>& mass) {
        Result<Query> row =
            db_.query("INSERT INTO weight (recipe, size, low, value, high) VALUES (?, ?, ?, ?, ?)");
        if (!row.ok()) return Result<bool>(row.error());
        return row.value()
            .bind(recipe.id)
            .bind(size)
            .bind(mass.low.si)
            .bind(mass.value.si)
            .bind(mass.high.si)
            .run();
    };
    bool any = false;
    Result<Pattern> pattern = link(recipe);
    if (pattern.ok() && !pattern.value().actions.empty()) {
        for (const HookSize size : recipe.size_list) {
            const Result<Tied> tied = tie_once(pattern.value(), size);
            if (!tied.ok()) continue;
            done = put(size.number, tied.value().mass);
            if (!done.ok()) return done;
            any = true;
        }
    }
    return any ? done : put(1000, {}); // so that it is not tried again and again
}

Result<std::int64_t> Store::weigh_some(int most) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    std::vector<std::string> texts;
    {
        Result<Query> query = db_.query(
            "SELECT text FROM recipe JOIN revision ON recipe = id AND number = revision WHERE NOT "
            "EXISTS (SELECT 1 FROM weight WHERE weight.recipe = recipe.id) LIMIT ?");
        if (!query.ok()) return query.error();
        Query& q = query.value().bind(std::int64_t{most});
        const Result<bool> all = q.each([&] { texts.push_back(q.text(0)); });
        if (!all.ok()) return all.error();
    }
    const Result<bool> done = db_.together([&]() -> Result<bool> {
        for (const std::string& text : texts) {
            const Result<Recipe> recipe = read_recipe(text);
            if (!recipe.ok()) continue;
            const Result<bool> written = write_weights(recipe.value());
            if (!written.ok()) return written;
        }
        return true;
    });
    if (!done.ok()) return done.error();
    const Result<std::string> left = db_.value(
        "SELECT count(*) FROM recipe WHERE NOT EXISTS (SELECT 1 FROM weight WHERE recipe = id)");
    if (!left.ok()) return left.error();
    return std::stoll("0" + left.value());
}

} // namespace wrapwright
