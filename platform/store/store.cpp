#include "platform/store/store.h"

#include "platform/store/migrations.h"

#include <array>
#include <ctime>
#include <sqlite3.h>

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

namespace wrapwright {

namespace fs = std::filesystem;

namespace {

Error refused(std::string message, std::string remedy) {
    return {ErrorCode::not_found, std::move(message), std::move(remedy), {}};
}

/// A lock on the folder that the system lets go when the program ends, however it ends; -1 where
/// another has it.
int take_lock(const fs::path& folder) {
    const int file =
        ::open((folder / "wrapwright.lock").c_str(), O_CREAT | O_RDWR | O_CLOEXEC, 0600);
    if (file >= 0 && ::flock(file, LOCK_EX | LOCK_NB) != 0) {
        ::close(file);
        return -1;
    }
    return file;
}

bool is_damaged(const Error& error) { return error.code == ErrorCode::malformed; }

/// A file that was found damaged while it was open is marked so by this one beside it.
fs::path mark_of(const fs::path& file) { return file.string() + ".damaged"; }

/// The file and what SQLite keeps beside it, under a name that says since when.
fs::path set_aside(const fs::path& file, std::int64_t now) {
    const std::time_t when = now;
    std::tm utc{};
    gmtime_r(&when, &utc);
    std::array<char, 32> stamp{};
    std::strftime(stamp.data(), stamp.size(), "%Y%m%d-%H%M%S", &utc);
    const fs::path stem = file.parent_path() / ("wrapwright.damaged-" + std::string(stamp.data()));
    fs::path to = stem.string() + ".db";
    std::error_code error;
    for (int n = 2; fs::exists(to, error); ++n)
        to = stem.string() + "-" + std::to_string(n) + ".db";
    fs::rename(file, to, error);
    fs::remove(mark_of(file), error);
    for (const char* beside : {"-wal", "-shm"}) {
        fs::rename(file.string() + beside, to.string() + beside, error);
    }
    return to;
}

Error unsound(const fs::path& file, const std::string& why) {
    return {ErrorCode::malformed,
            file.filename().string() + ": " + why,
            "take a backup: the damaged file is kept",
            {}};
}

Result<bool> is_sound(Database& database, const fs::path& file, std::string_view table) {
    const Result<std::string> there = database.value(
        "SELECT count(*) FROM sqlite_schema WHERE name = '" + std::string(table) + "'");
    if (!there.ok()) return there.error();
    if (there.value() == "0") return true;
    const Result<std::string> said =
        database.value("PRAGMA quick_check('" + std::string(table) + "')");
    if (!said.ok()) return said.error();
    if (said.value() != "ok") return unsound(file, said.value());
    return true;
}

/// Opens the file and looks whether it is sound, but for the long texts: see check_texts().
Result<Database> open_sound(const fs::path& file, bool read_only) {
    std::error_code error;
    if (!read_only && fs::exists(mark_of(file), error))
        return unsound(file, "found damaged before");
    Result<Database> database = Database::open(file, read_only);
    if (!database.ok()) return database;
    for (const char* table : {"recipe", "setting", "hook", "sitting", "event"}) {
        const Result<bool> sound = is_sound(database.value(), file, table);
        if (!sound.ok()) return sound.error();
    }
    return database;
}

} // namespace

Store::Store(Store&& other) noexcept
    : folder_(std::move(other.folder_)), db_(std::move(other.db_)), lock_(other.lock_),
      note_(std::move(other.note_)), last_number_(other.last_number_),
      last_sitting_(other.last_sitting_) {
    other.lock_ = -1;
}

Store::~Store() {
    if (lock_ >= 0) ::close(lock_);
}

Result<Store> Store::open(const fs::path& folder, std::int64_t now, bool look_on) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (!fs::is_directory(folder)) {
        return refused(folder.string() + ": no folder, and none can be made there",
                       "name another one with --data");
    }
    const fs::path file = folder / "wrapwright.db";
    const int lock = look_on ? -1 : take_lock(folder);
    const bool read_only = lock < 0;
    if (read_only && !fs::exists(file)) {
        return refused(folder.string() + ": cannot be written",
                       "check the rights, or name another folder with --data");
    }
    std::string note;
    Result<Database> database = open_sound(file, read_only);
    if (!database.ok() && is_damaged(database.error()) && !read_only) {
        const fs::path aside = set_aside(file, now);
        note = "The library was damaged (" + database.error().message + "). It is kept as " +
               aside.string() + "; a new one was begun. Restore a backup if you have one.";
        database = open_sound(file, read_only);
    }
    if (!database.ok()) {
        if (lock >= 0) ::close(lock);
        return database.error();
    }
    Store store(folder, std::move(database).value(), lock);
    store.note_ = std::move(note);
    const Result<bool> ready = store.prepare();
    if (!ready.ok()) return ready.error();
    if (read_only) store.note_ = "Another window has this library; this one only looks on.";
    return store;
}

Result<bool> Store::prepare() {
    const Result<std::string> said = db_.value("PRAGMA user_version");
    if (!said.ok()) return said.error();
    const auto version = static_cast<std::size_t>(std::stoul("0" + said.value()));
    const auto steps = migrations();
    if (version > steps.size()) {
        return Error{ErrorCode::unknown_version,
                     file().string() + ": written by a newer program (version " + said.value() +
                         ")",
                     "take the newer program; the file was not touched",
                     {}};
    }
    if (read_only()) return true;
    // A log that stays and is written over, never cut short, costs one sync for each event.
    const Result<std::string> journal = db_.value("PRAGMA journal_mode = WAL");
    if (!journal.ok()) return journal.error();
    for (const char* pragma : {"PRAGMA synchronous = FULL", "PRAGMA foreign_keys = ON",
                               "PRAGMA journal_size_limit = -1"}) {
        if (const Result<bool> done = db_.execute(pragma); !done.ok()) return done;
    }
    int keep = 1;
    sqlite3_file_control(db_.handle(), "main", SQLITE_FCNTL_PERSIST_WAL, &keep);
    for (std::size_t i = version; i < steps.size(); ++i) {
        const Result<bool> done = db_.together([&] {
            const Result<bool> made = db_.execute(steps[i]);
            if (!made.ok()) return made;
            return db_.execute("PRAGMA user_version = " + std::to_string(i + 1));
        });
        if (!done.ok()) return done;
    }
    if (version > 0 || journal.value() != "wal") return true; // the web's SQLite has no such log
    // The log is grown once, to the length at which it starts over.
    const Result<bool> grown = db_.together([&] {
        const Result<bool> filled = db_.execute(
            "CREATE TABLE room (bytes BLOB); INSERT INTO room VALUES (zeroblob(4300000))");
        return filled.ok() ? db_.execute("DROP TABLE room") : filled;
    });
    if (!grown.ok()) return grown;
    return db_.execute("PRAGMA wal_checkpoint(RESTART); VACUUM; PRAGMA wal_checkpoint(RESTART)");
}

Result<bool> Store::may_write() const {
    if (!read_only()) return true;
    return refused("another window has this library", "close that one; this one only looks on");
}

Result<StoreCount> Store::count() {
    StoreCount count;
    const std::pair<const char*, std::int64_t*> counts[] = {
        {"SELECT count(*) FROM recipe", &count.recipes},
        {"SELECT count(*) FROM revision", &count.revisions},
        {"SELECT count(*) FROM hook", &count.hooks},
        {"SELECT count(*) FROM sitting", &count.sittings},
        {"SELECT count(*) FROM event", &count.events}};
    for (const auto& [sql, number] : counts) {
        Result<Query> query = db_.query(sql);
        if (!query.ok()) return query.error();
        const Result<bool> row = query.value().step();
        if (!row.ok()) return row.error();
        *number = query.value().whole(0);
    }
    return count;
}

Result<bool> Store::check_texts() {
    Result<bool> sound = is_sound(db_, file(), "revision");
    if (!sound.ok() && is_damaged(sound.error()) && !read_only()) {
        const int mark = ::open(mark_of(file()).c_str(), O_CREAT | O_WRONLY | O_CLOEXEC, 0600);
        if (mark >= 0) ::close(mark);
    }
    return sound;
}

Result<std::string> Store::check() { return db_.value("PRAGMA integrity_check"); }

fs::path usual_data_folder(const char* xdg_data_home, const char* home) {
    if (xdg_data_home != nullptr && xdg_data_home[0] == '/') {
        return fs::path(xdg_data_home) / "wrapwright";
    }
    return fs::path(home != nullptr ? home : ".") / ".local/share/wrapwright";
}

} // namespace wrapwright
