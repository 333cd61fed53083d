#include "platform/store/store.h"

#include <algorithm>
#include <array>

namespace wrapwright {

namespace {

constexpr std::array<std::string_view, 10> kinds{
    "begin",        "next",           "back",       "turn",  "go to",
    "thread broke", "done otherwise", "fly spoilt", "strip", "undo"};
static_assert(kinds.size() == static_cast<std::size_t>(EventKind::undo) + 1);

} // namespace

Result<std::int64_t> Store::begin_sitting(std::string_view recipe, std::string_view size,
                                          const Event& first, std::int64_t now,
                                          std::string_view hook, std::int64_t line) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    std::int64_t id = 0;
    const Result<bool> done = db_.together([&]() -> Result<bool> {
        Result<Query> sitting =
            db_.query("INSERT INTO sitting (recipe, revision, size, hook, begun, line) "
                      "SELECT id, revision, ?, ?, ?, ? FROM recipe WHERE id = ? RETURNING id");
        if (!sitting.ok()) return sitting.error();
        {
            Query& q = sitting.value();
            const Result<bool> row =
                q.bind(size).bind(hook).bind(now).bind(line).bind(recipe).step();
            if (!row.ok()) return row;
            if (!row.value()) {
                return no_such_recipe(recipe);
            }
            id = q.whole(0);
            if (const Result<bool> end = q.run(); !end.ok()) return end;
        }
        Result<Query> event = db_.query("INSERT INTO event VALUES (?, 0, ?, ?, ?, ?)");
        if (!event.ok()) return event.error();
        return event.value()
            .bind(id)
            .bind(kinds[static_cast<std::size_t>(first.kind)])
            .bind(first.at.si)
            .bind(std::int64_t{first.number})
            .bind(first.text)
            .run();
    });
    if (!done.ok()) return done.error();
    last_sitting_ = id;
    last_number_ = 0;
    return id;
}

Result<bool> Store::append(std::int64_t sitting, const Event& event) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    if (sitting != last_sitting_ || last_number_ < 0) {
        Result<Query> query = db_.query("SELECT max(number) FROM event WHERE sitting = ?");
        if (!query.ok()) return query.error();
        const Result<bool> row = query.value().bind(sitting).step();
        if (!row.ok()) return row;
        last_number_ = query.value().whole(0);
        last_sitting_ = sitting;
    }
    // One statement is one transaction: on the disk when it returns.
    Result<Query> query = db_.query("INSERT INTO event VALUES (?, ?, ?, ?, ?, ?)");
    if (!query.ok()) return query.error();
    const Result<bool> done = query.value()
                                  .bind(sitting)
                                  .bind(last_number_ + 1)
                                  .bind(kinds[static_cast<std::size_t>(event.kind)])
                                  .bind(event.at.si)
                                  .bind(std::int64_t{event.number})
                                  .bind(event.text)
                                  .run();
    if (done.ok()) ++last_number_;
    return done;
}

Result<bool> Store::read_events(StoredSitting& sitting) {
    Result<Query> query =
        db_.query("SELECT kind, at, value, text FROM event WHERE sitting = ? ORDER BY number");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(sitting.id);
    return q.each([&] {
        const auto kind = std::find(kinds.begin(), kinds.end(), q.text(0));
        if (kind == kinds.end()) return; // of a newer program: it does not stand in the way
        sitting.events.push_back({static_cast<EventKind>(kind - kinds.begin()),
                                  seconds(q.number(1)), static_cast<int>(q.whole(2)), q.text(3)});
    });
}

Result<std::optional<StoredSitting>> Store::last_sitting() {
    StoredSitting found;
    {
        Result<Query> query = db_.query(
            "SELECT sitting.id, sitting.recipe, size, hook, text, line FROM sitting "
            "JOIN revision ON revision.recipe = sitting.recipe AND number = sitting.revision "
            "ORDER BY sitting.id DESC LIMIT 1");
        if (!query.ok()) return query.error();
        Query& q = query.value();
        const Result<bool> row = q.step();
        if (!row.ok()) return row.error();
        if (!row.value()) return std::optional<StoredSitting>();
        found = {q.whole(0), q.text(1), q.text(2), q.text(3), q.text(4), q.whole(5), {}};
    }
    if (const Result<bool> read = read_events(found); !read.ok()) return read.error();
    return std::optional<StoredSitting>(std::move(found));
}

Result<std::vector<StoredSitting>> Store::sittings_with(std::string_view recipe,
                                                        std::string_view size, int most) {
    std::vector<StoredSitting> out;
    {
        Result<Query> query = db_.query(
            "SELECT sitting.id, sitting.recipe, size, hook, text, line FROM sitting "
            "JOIN revision ON revision.recipe = sitting.recipe AND number = sitting.revision "
            "WHERE sitting.recipe = ? AND size = ? ORDER BY sitting.id DESC LIMIT ?");
        if (!query.ok()) return query.error();
        Query& q = query.value();
        q.bind(recipe).bind(size).bind(std::int64_t{most});
        const Result<bool> all = q.each([&] {
            out.push_back({q.whole(0), q.text(1), q.text(2), q.text(3), q.text(4), q.whole(5), {}});
        });
        if (!all.ok()) return all.error();
    }
    for (StoredSitting& sitting : out) {
        if (const Result<bool> read = read_events(sitting); !read.ok()) return read.error();
    }
    return out;
}

Result<std::int64_t> Store::save_hook(std::string_view text, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    Result<Query> query = db_.query("INSERT INTO hook (text, made) VALUES (?, ?) RETURNING id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    const Result<bool> row = q.bind(text).bind(now).step();
    if (!row.ok()) return row.error();
    const std::int64_t id = q.whole(0);
    if (const Result<bool> end = q.run(); !end.ok()) return end.error();
    return id;
}

Result<std::vector<std::string>> Store::hooks() {
    Result<Query> query = db_.query("SELECT text FROM hook ORDER BY id");
    if (!query.ok()) return query.error();
    std::vector<std::string> texts;
    for (;;) {
        const Result<bool> row = query.value().step();
        if (!row.ok()) return row.error();
        if (!row.value()) return texts;
        texts.push_back(query.value().text(0));
    }
}

Result<bool> Store::set_setting(std::string_view key, std::string_view text) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> query = db_.query("INSERT INTO setting VALUES (?, ?) ON CONFLICT (key) DO UPDATE "
                                    "SET text = excluded.text");
    if (!query.ok()) return query.error();
    return query.value().bind(key).bind(text).run();
}

Result<std::vector<std::pair<std::string, std::string>>> Store::settings() {
    Result<Query> query = db_.query("SELECT key, text FROM setting ORDER BY key");
    if (!query.ok()) return query.error();
    std::vector<std::pair<std::string, std::string>> settings;
    for (;;) {
        const Result<bool> row = query.value().step();
        if (!row.ok()) return row.error();
        if (!row.value()) return settings;
        settings.emplace_back(query.value().text(0), query.value().text(1));
    }
}

} // namespace wrapwright
