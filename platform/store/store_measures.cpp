#include "platform/store/store.h"

// What was measured with a fly: timed falls and weighings.

namespace wrapwright {

namespace {

/// One row of the table, whatever its kind.
struct Row {
    std::string_view kind;
    double a = 0.0, b = 0.0, c = 0.0, d = 0.0;
    std::int64_t number = 0;
};

Result<bool> add(Database& db, std::string_view recipe, std::string_view size, const Row& row,
                 std::int64_t now) {
    Result<Query> query =
        db.query("INSERT INTO measure (recipe, size, kind, a, b, c, d, number, made) "
                 "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (!query.ok()) return query.error();
    return query.value()
        .bind(recipe)
        .bind(size)
        .bind(row.kind)
        .bind(row.a)
        .bind(row.b)
        .bind(row.c)
        .bind(row.d)
        .bind(row.number)
        .bind(now)
        .run();
}

} // namespace

Result<bool> Store::add_fall(std::string_view recipe, std::string_view size, const Fall& fall,
                             std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    const std::int64_t flags = (fall.from_rest ? 1 : 0) + (fall.kind == WaterKind::sea ? 2 : 0);
    return add(db_, recipe, size,
               {"fall", fall.height.si, fall.time.si, fall.temperature.si, fall.jar.si, flags},
               now);
}

Result<bool> Store::add_weighing(std::string_view recipe, std::string_view size,
                                 const Estimate<Mass>& mass, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    return add(db_, recipe, size, {"weighing", mass.value.si, mass.low.si, mass.high.si, 0.0, 0},
               now);
}

Result<bool> Store::drop_fall(std::int64_t id) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> query = db_.query("UPDATE measure SET gone = 1 WHERE id = ? AND kind = 'fall'");
    if (!query.ok()) return query.error();
    return query.value().bind(id).run();
}

Result<bool> Store::drop_weighings(std::string_view recipe, std::string_view size) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> query = db_.query(
        "UPDATE measure SET gone = 1 WHERE recipe = ? AND size = ? AND kind = 'weighing'");
    if (!query.ok()) return query.error();
    return query.value().bind(recipe).bind(size).run();
}

Result<StoredMeasures> Store::measures(std::string_view recipe, std::string_view size) {
    Result<Query> query = db_.query("SELECT id, kind, a, b, c, d, number FROM measure "
                                    "WHERE recipe = ? AND size = ? AND gone = 0 ORDER BY id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(recipe).bind(size);
    StoredMeasures out;
    const Result<bool> all = q.each([&] {
        if (q.text(1) == "weighing") {
            out.weighed = {Mass{q.number(2)}, Mass{q.number(3)}, Mass{q.number(4)},
                           Origin::measured};
            return;
        }
        Fall fall;
        fall.height = {q.number(2)};
        fall.time = {q.number(3)};
        fall.temperature = {q.number(4)};
        fall.jar = {q.number(5)};
        fall.from_rest = (q.whole(6) & 1) != 0;
        fall.kind = (q.whole(6) & 2) != 0 ? WaterKind::sea : WaterKind::fresh;
        out.fall_ids.push_back(q.whole(0));
        out.falls.push_back(fall);
    });
    if (!all.ok()) return all.error();
    return out;
}

} // namespace wrapwright
