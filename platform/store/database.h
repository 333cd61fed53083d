#pragma once
// One SQLite file: statements and transactions, with refusals in plain words.

#include "core/result.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace wrapwright {

class Database;

/// A prepared statement at work: bind, step, read, and it is ready again when this goes.
class Query {
  public:
    Query(Database& database, sqlite3_stmt* statement)
        : database_(&database), statement_(statement) {}
    Query(Query&& other) noexcept
        : database_(other.database_), statement_(other.statement_), bound_(other.bound_) {
        other.statement_ = nullptr;
    }
    Query& operator=(Query&&) = delete;
    ~Query();

    Query& bind(std::string_view text);
    Query& bind_bytes(std::string_view bytes);
    Query& bind(std::int64_t number);
    Query& bind(double number);

    /// Whether there is a row.
    [[nodiscard]] Result<bool> step();
    /// Takes each row to come in its turn, up to the last.
    template <class F>
    [[nodiscard]] Result<bool> each(F take) {
        for (;;) {
            const Result<bool> row = step();
            if (!row.ok()) return row;
            if (!row.value()) return true;
            take();
        }
    }
    /// Runs it to its end; it can be bound anew then.
    [[nodiscard]] Result<bool> run();
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] std::string bytes(int column) const;
    [[nodiscard]] std::int64_t whole(int column) const;
    [[nodiscard]] double number(int column) const;

  private:
    Database* database_;
    sqlite3_stmt* statement_;
    int bound_ = 0;
};

/// An open file. It and what it made belong to one thread.
class Database {
  public:
    /// Opens or makes the file.
    ///
    /// Fails   not_found where it cannot be opened or made
    [[nodiscard]] static Result<Database> open(const std::filesystem::path& file, bool read_only);

    /// A statement, prepared once and kept.
    /// Valid   SQL of ours that the schema can run
    /// Fails   as error() says
    [[nodiscard]] Result<Query> query(std::string_view sql);
    /// Several statements without values.
    [[nodiscard]] Result<bool> execute(std::string_view sql);
    /// The first column of the first row, as text; empty without rows.
    [[nodiscard]] Result<std::string> value(std::string_view sql);
    /// What SQLite says last, with its remedy.
    [[nodiscard]] Error error() const;
    [[nodiscard]] sqlite3* handle() const { return handle_.get(); }

    /// Runs something as one transaction: whole, or not at all.
    template <class F>
    [[nodiscard]] Result<bool> together(F work) {
        if (Result<bool> begun = execute("BEGIN IMMEDIATE"); !begun.ok()) return begun;
        Result<bool> done = work();
        if (done.ok()) done = execute("COMMIT");
        if (!done.ok()) (void)execute("ROLLBACK");
        return done;
    }

  private:
    struct Close {
        void operator()(sqlite3* handle) const;
    };
    struct Kept;
    struct Drop {
        void operator()(Kept* kept) const;
    };
    explicit Database(sqlite3* handle, std::filesystem::path file);

    std::unique_ptr<sqlite3, Close> handle_;
    std::unique_ptr<Kept, Drop> kept_; // goes before the handle
    std::filesystem::path file_;
};

} // namespace wrapwright
