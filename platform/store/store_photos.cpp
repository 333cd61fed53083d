#include "platform/store/store.h"

// What was measured of single flies, and their photos.

#include <algorithm>
#include <set>

namespace wrapwright {

namespace {

/// A part of a path of a bundle; what a name may not have there becomes a dash.
std::string path_part(std::string text) {
    for (char& c : text) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                           (c >= '0' && c <= '9') || c == '.' || c == '_';
        if (!plain) c = '-';
    }
    while (!text.empty() && (text.front() == '.' || text.front() == '-')) text.erase(0, 1);
    if (text.size() > 80) text.erase(0, text.size() - 80);
    return text.empty() ? std::string("photo") : text;
}

/// Where a photo of a bundle belongs: photos/RECIPE/SIZE/NAME, 2/0 being written 2-0.
struct PhotoPath {
    std::string recipe, size, name;
};

PhotoPath read_path(const std::string& path) {
    const std::size_t recipe = std::string_view("photos/").size();
    const std::size_t size = path.find('/', recipe) + 1;
    const std::size_t name = path.find('/', size) + 1;
    PhotoPath out{path.substr(recipe, size - recipe - 1), path.substr(size, name - size - 1),
                  path.substr(name)};
    std::replace(out.size.begin(), out.size.end(), '-', '/');
    return out;
}

} // namespace

Result<std::int64_t> Store::add_reading(const FlyPlace& place, const StoredReading& r,
                                        std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    Result<Query> query = db_.query(
        "INSERT INTO reading (recipe, size, sitting, fly, part, value, low, high, photo, made) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(place.recipe).bind(place.size).bind(place.sitting).bind(std::int64_t{place.fly});
    q.bind(r.part).bind(r.value).bind(r.low).bind(r.high).bind(std::int64_t{r.by_photo ? 1 : 0});
    q.bind(now);
    const Result<bool> row = q.step();
    if (!row.ok()) return row.error();
    const std::int64_t id = q.whole(0);
    if (const Result<bool> done = q.run(); !done.ok()) return done.error();
    return id;
}

Result<bool> Store::drop_reading(std::int64_t id) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> query = db_.query("UPDATE reading SET gone = 1 WHERE id = ?");
    if (!query.ok()) return query.error();
    return query.value().bind(id).run();
}

Result<std::vector<StoredReading>> Store::readings(std::string_view recipe, std::string_view size) {
    Result<Query> query =
        db_.query("SELECT id, sitting, fly, part, value, low, high, photo FROM reading "
                  "WHERE recipe = ? AND size = ? AND gone = 0 ORDER BY id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(recipe).bind(size);
    std::vector<StoredReading> out;
    const Result<bool> all = q.each([&] {
        out.push_back({q.whole(0), q.whole(1), static_cast<int>(q.whole(2)), q.text(3), q.number(4),
                       q.number(5), q.number(6), q.whole(7) != 0});
    });
    if (!all.ok()) return all.error();
    return out;
}

Result<std::int64_t> Store::add_photo(const FlyPlace& place, std::string_view name,
                                      std::string_view bytes, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    Result<Query> query =
        db_.query("INSERT INTO photo (recipe, size, sitting, fly, name, bytes, marks, made) "
                  "VALUES (?, ?, ?, ?, ?, ?, '', ?) RETURNING id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(place.recipe).bind(place.size).bind(place.sitting).bind(std::int64_t{place.fly});
    q.bind(name).bind_bytes(bytes).bind(now);
    const Result<bool> row = q.step();
    if (!row.ok()) return row.error();
    const std::int64_t id = q.whole(0);
    if (const Result<bool> done = q.run(); !done.ok()) return done.error();
    return id;
}

Result<bool> Store::set_marks(std::int64_t photo, std::string_view marks) {
    if (const Result<bool> may = may_write(); !may.ok()) return may;
    Result<Query> query = db_.query("UPDATE photo SET marks = ? WHERE id = ?");
    if (!query.ok()) return query.error();
    return query.value().bind(marks).bind(photo).run();
}

Result<std::vector<StoredPhoto>> Store::photos(std::string_view recipe, std::string_view size) {
    Result<Query> query = db_.query("SELECT id, sitting, fly, name, marks FROM photo "
                                    "WHERE recipe = ? AND size = ? AND gone = 0 ORDER BY id DESC");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(recipe).bind(size);
    std::vector<StoredPhoto> out;
    const Result<bool> all = q.each([&] {
        out.push_back({q.whole(0), q.whole(1), static_cast<int>(q.whole(2)), q.text(3), q.text(4)});
    });
    if (!all.ok()) return all.error();
    return out;
}

Result<std::vector<BundleFile>> Store::photo_files(std::string_view recipe) {
    Result<Query> query = db_.query("SELECT size, name, bytes FROM photo WHERE recipe = ? AND "
                                    "gone = 0 ORDER BY id");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    q.bind(recipe);
    std::vector<BundleFile> files;
    std::set<std::string> there;
    const Result<bool> all = q.each([&] {
        std::string folder("photos/");
        folder.append(recipe).append("/").append(path_part(q.text(0))).append("/");
        const std::string name = path_part(q.text(1));
        std::string path = folder + name;
        for (int n = 2; !there.insert(path).second; ++n) {
            path = folder + std::to_string(n) + "-" + name;
        }
        files.push_back({std::move(path), q.bytes(2)});
    });
    if (!all.ok()) return all.error();
    return files;
}

Result<int> Store::take_photos(const std::vector<BundleFile>& files, std::int64_t now) {
    int taken = 0;
    for (const BundleFile& file : files) {
        const PhotoPath at = read_path(file.path);
        if (!recipe_text(at.recipe).ok()) continue;
        Result<Query> same = db_.query("SELECT 1 FROM photo WHERE recipe = ? AND size = ? AND "
                                       "bytes = ? AND gone = 0 LIMIT 1");
        if (!same.ok()) return same.error();
        const Result<bool> known =
            same.value().bind(at.recipe).bind(at.size).bind_bytes(file.bytes).step();
        if (!known.ok()) return known.error();
        if (known.value()) continue;
        const auto kept = add_photo({at.recipe, at.size}, at.name, file.bytes, now);
        if (!kept.ok()) return kept.error();
        ++taken;
    }
    return taken;
}

Result<std::string> Store::photo_bytes(std::int64_t photo) {
    Result<Query> query = db_.query("SELECT bytes FROM photo WHERE id = ?");
    if (!query.ok()) return query.error();
    Query& q = query.value();
    const Result<bool> row = q.bind(photo).step();
    if (!row.ok()) return row.error();
    if (!row.value()) {
        return Error{ErrorCode::not_found, "that photo is not kept", "open its file again", {}};
    }
    return q.bytes(0);
}

} // namespace wrapwright
