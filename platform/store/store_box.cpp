#include "platform/store/store.h"

// The fly box: counts that are said, and flies that sittings finished.

namespace wrapwright {

Result<bool> Store::keep_box(std::string_view recipe, std::string_view size, const BoxCell& cell,
                             std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    return db_.together([&]() -> Result<bool> {
        for (const bool want : {false, true}) {
            const std::optional<int> flies = want ? cell.want : cell.have;
            if (!flies) continue;
            Result<Query> query =
                db_.query("INSERT INTO box (recipe, size, want, flies, after, made) VALUES "
                          "(?, ?, ?, ?, (SELECT ifnull(max(id), 0) FROM ledger), ?)");
            if (!query.ok()) return query.error();
            Query& q = query.value();
            q.bind(recipe).bind(size).bind(std::int64_t{want ? 1 : 0}).bind(std::int64_t{*flies});
            if (const Result<bool> done = q.bind(now).run(); !done.ok()) return done;
        }
        return true;
    });
}

Result<BoxCounts> Store::box() {
    std::vector<BoxEntry> said;
    {
        Result<Query> query =
            db_.query("SELECT recipe, size, want, flies, after FROM box ORDER BY id");
        if (!query.ok()) return query.error();
        Query& q = query.value();
        const Result<bool> all = q.each([&] {
            said.push_back(
                {q.text(0), q.text(1), q.whole(2) != 0, static_cast<int>(q.whole(3)), q.whole(4)});
        });
        if (!all.ok()) return all.error();
    }
    // A fly that turned out not to be finished has its entry undone; nothing undoes that again.
    std::vector<BoxFly> finished;
    Result<Query> query = db_.query(
        "SELECT sitting.recipe, sitting.size, ledger.id FROM ledger JOIN sitting ON sitting.id = "
        "ledger.sitting WHERE kind = 'finished' AND ledger.line = 0 AND ledger.id NOT IN "
        "(SELECT undoes FROM ledger WHERE undoes > 0) ORDER BY ledger.id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    const Result<bool> all =
        q.each([&] { finished.push_back({q.text(0), q.text(1), q.whole(2)}); });
    if (!all.ok()) return all.error();
    return count_box(said, finished);
}

} // namespace wrapwright
