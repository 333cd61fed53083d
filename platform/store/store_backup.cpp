#include "platform/store/store.h"

#include "platform/store/migrations.h"

#include <algorithm>
#include <sqlite3.h>

#include <fcntl.h>
#include <unistd.h>

namespace wrapwright {

namespace fs = std::filesystem;

namespace {

Error refused(ErrorCode code, std::string message, std::string remedy) {
    return {code, std::move(message), std::move(remedy), {}};
}

Result<bool> copy(Database& from, Database& to) {
    sqlite3_backup* work = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (work == nullptr) return to.error();
    sqlite3_backup_step(work, -1);
    if (sqlite3_backup_finish(work) != SQLITE_OK) return to.error();
    return true;
}

/// Makes sure that a file, or a new name in a folder, is on the disk.
void sync(const fs::path& path) {
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0) return;
    ::fsync(file);
    ::close(file);
}

Result<std::vector<std::string>> names(Database& database) {
    Result<Query> query = database.query("SELECT name FROM recipe ORDER BY id");
    if (!query.ok()) return query.error();
    std::vector<std::string> list;
    for (;;) {
        const Result<bool> row = query.value().step();
        if (!row.ok()) return row.error();
        if (!row.value()) break;
        list.push_back(query.value().text(0));
    }
    std::sort(list.begin(), list.end());
    return list;
}

/// A backup that this program can read.
Result<Database> open_backup(const fs::path& file) {
    std::error_code error;
    if (!fs::is_regular_file(file, error)) {
        return refused(ErrorCode::not_found, file.string() + ": no such file",
                       "check the name and the folder");
    }
    Result<Database> database = Database::open(file, true);
    if (!database.ok()) return database;
    const Result<std::string> sound = database.value().value("PRAGMA quick_check(1)");
    if (!sound.ok()) return sound.error();
    const Result<std::string> version = database.value().value("PRAGMA user_version");
    if (!version.ok()) return version.error();
    const Result<std::string> ours =
        database.value().value("SELECT count(*) FROM sqlite_schema WHERE name = 'recipe'");
    if (!ours.ok()) return ours.error();
    if (sound.value() != "ok" || ours.value() != "1") {
        return refused(ErrorCode::malformed, file.string() + ": no backup of a library",
                       "name a file that was made by a backup");
    }
    if (std::stoul("0" + version.value()) > migrations().size()) {
        return refused(ErrorCode::unknown_version, file.string() + ": made by a newer program",
                       "take the newer program");
    }
    return database;
}

} // namespace

Result<bool> Store::back_up(const fs::path& to) {
    std::error_code error;
    if (fs::is_directory(to, error)) {
        return refused(ErrorCode::malformed, to.string() + ": a folder, not a file",
                       "name a file in it");
    }
    if (fs::exists(to, error) && fs::equivalent(to, file(), error)) {
        return refused(ErrorCode::malformed, to.string() + ": the library itself",
                       "name another file");
    }
    const fs::path part = to.string() + ".part" + std::to_string(::getpid());
    fs::remove(part, error);
    Result<bool> done = true;
    {
        Result<Database> copy_of = Database::open(part, false);
        if (!copy_of.ok()) return copy_of.error();
        done = copy(db_, copy_of.value());
        // A backup is one file, which can be carried about.
        if (done.ok()) done = copy_of.value().execute("PRAGMA journal_mode = DELETE");
    }
    if (done.ok()) {
        sync(part);
        fs::rename(part, to, error);
        if (error) {
            done = refused(ErrorCode::not_found, to.string() + ": " + error.message(),
                           "check the folder and the room on the disk");
        }
    }
    if (!done.ok()) {
        fs::remove(part, error);
        return done;
    }
    sync(to.has_parent_path() ? to.parent_path() : fs::path("."));
    return true;
}

Result<RestorePreview> Store::look_into(const fs::path& backup) {
    Result<Database> there = open_backup(backup);
    if (!there.ok()) return there.error();
    RestorePreview preview;
    Result<StoreCount> here = count();
    if (!here.ok()) return here.error();
    preview.here = here.value();
    Store other(backup.parent_path(), std::move(there).value(), -1);
    Result<StoreCount> counted = other.count();
    if (!counted.ok()) return counted.error();
    preview.there = counted.value();
    const Result<std::vector<std::string>> ours = names(db_);
    if (!ours.ok()) return ours.error();
    const Result<std::vector<std::string>> theirs = names(other.db_);
    if (!theirs.ok()) return theirs.error();
    std::set_difference(ours.value().begin(), ours.value().end(), theirs.value().begin(),
                        theirs.value().end(), std::back_inserter(preview.only_here));
    std::set_difference(theirs.value().begin(), theirs.value().end(), ours.value().begin(),
                        ours.value().end(), std::back_inserter(preview.only_there));
    return preview;
}

Result<fs::path> Store::restore(const fs::path& backup, std::int64_t now) {
    if (const Result<bool> may = may_write(); !may.ok()) return may.error();
    Result<Database> there = open_backup(backup);
    if (!there.ok()) return there.error();
    const fs::path before = folder_ / ("before-restore-" + std::to_string(now) + ".db");
    if (const Result<bool> kept = back_up(before); !kept.ok()) return kept.error();
    // SQLite copies within one transaction: what is here stays, or all of the backup is here.
    const Result<bool> copied = copy(there.value(), db_);
    if (!copied.ok()) return copied.error();
    last_number_ = -1;
    const Result<bool> ready = prepare();
    if (!ready.ok()) return ready.error();
    return before;
}

} // namespace wrapwright
