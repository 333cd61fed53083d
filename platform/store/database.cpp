#include "platform/store/database.h"

#include <map>
#include <sqlite3.h>
#include <utility>

namespace wrapwright {

struct Database::Kept {
    std::map<std::string, sqlite3_stmt*, std::less<>> statements;
};

void Database::Close::operator()(sqlite3* handle) const { sqlite3_close_v2(handle); }

void Database::Drop::operator()(Kept* kept) const {
    for (const auto& [sql, statement] : kept->statements) sqlite3_finalize(statement);
    delete kept;
}

Database::Database(sqlite3* handle, std::filesystem::path file)
    : handle_(handle), kept_(new Kept), file_(std::move(file)) {}

Query::~Query() {
    if (statement_ == nullptr) return;
    sqlite3_reset(statement_);
    sqlite3_clear_bindings(statement_);
}

Query& Query::bind(std::string_view text) {
    // An empty view may point nowhere, which SQLite would take for NULL.
    sqlite3_bind_text64(statement_, ++bound_, text.data() == nullptr ? "" : text.data(),
                        text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
    return *this;
}

Query& Query::bind_bytes(std::string_view bytes) {
    sqlite3_bind_blob64(statement_, ++bound_, bytes.data() == nullptr ? "" : bytes.data(),
                        bytes.size(), SQLITE_TRANSIENT);
    return *this;
}

Query& Query::bind(std::int64_t number) {
    sqlite3_bind_int64(statement_, ++bound_, number);
    return *this;
}

Query& Query::bind(double number) {
    sqlite3_bind_double(statement_, ++bound_, number);
    return *this;
}

Result<bool> Query::step() {
    const int result = sqlite3_step(statement_);
    if (result == SQLITE_ROW) return true;
    if (result == SQLITE_DONE) return false;
    Error error = database_->error();
    sqlite3_reset(statement_); // at once, so that a transaction can be rolled back
    return error;
}

Result<bool> Query::run() {
    for (;;) {
        const Result<bool> row = step();
        if (!row.ok()) return row;
        if (row.value()) continue;
        sqlite3_reset(statement_);
        bound_ = 0;
        return true;
    }
}

std::string Query::text(int column) const {
    const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
    const int size = sqlite3_column_bytes(statement_, column);
    return text == nullptr ? std::string() : std::string(text, static_cast<std::size_t>(size));
}

std::string Query::bytes(int column) const {
    const auto* data = static_cast<const char*>(sqlite3_column_blob(statement_, column));
    const int size = sqlite3_column_bytes(statement_, column);
    return data == nullptr ? std::string() : std::string(data, static_cast<std::size_t>(size));
}

std::int64_t Query::whole(int column) const { return sqlite3_column_int64(statement_, column); }

double Query::number(int column) const { return sqlite3_column_double(statement_, column); }

Result<Database> Database::open(const std::filesystem::path& file, bool read_only) {
    sqlite3* handle = nullptr;
    const int flags = read_only ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    const int result = sqlite3_open_v2(file.c_str(), &handle, flags, nullptr);
    Database database(handle, file); // also where it failed: it must be closed then too
    if (result != SQLITE_OK) return database.error();
    sqlite3_busy_timeout(handle, 2000);
    sqlite3_extended_result_codes(handle, 1);
    return database;
}

Result<Query> Database::query(std::string_view sql) {
    const auto found = kept_->statements.find(sql);
    if (found != kept_->statements.end()) return Query(*this, found->second);
    sqlite3_stmt* statement = nullptr;
    const int result = sqlite3_prepare_v3(handle_.get(), sql.data(), static_cast<int>(sql.size()),
                                          SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
    if (result != SQLITE_OK) return error();
    kept_->statements.emplace(sql, statement);
    return Query(*this, statement);
}

Result<bool> Database::execute(std::string_view sql) {
    const std::string text(sql);
    if (sqlite3_exec(handle_.get(), text.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) {
        return error();
    }
    return true;
}

Result<std::string> Database::value(std::string_view sql) {
    Result<Query> query = this->query(sql);
    if (!query.ok()) return query.error();
    const Result<bool> row = query.value().step();
    if (!row.ok()) return row.error();
    return row.value() ? query.value().text(0) : std::string();
}

Error Database::error() const {
    const int code = sqlite3_errcode(handle_.get()) & 0xFF;
    const std::string said = file_.filename().string() + ": " + sqlite3_errmsg(handle_.get());
    const auto refused = [&](ErrorCode kind, const char* remedy) {
        return Error{kind, said, remedy, {}};
    };
    switch (code) {
    case SQLITE_FULL:
        return refused(ErrorCode::too_large,
                       "free some room on the disk; nothing that was shown is lost");
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return refused(ErrorCode::not_found, "close the other window, or try again");
    case SQLITE_READONLY:
        return refused(ErrorCode::not_found, "check that you may write in that folder");
    case SQLITE_CANTOPEN:
        return refused(ErrorCode::not_found, "check that the folder is there and is yours");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return refused(ErrorCode::malformed, "take a backup: the damaged file is kept");
    case SQLITE_IOERR:
        return refused(ErrorCode::not_found,
                       "check the disk and the room on it; nothing that was shown is lost");
    default: return refused(ErrorCode::malformed, "take a backup, and report this line");
    }
}

} // namespace wrapwright
