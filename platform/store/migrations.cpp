#include "platform/store/migrations.h"

#include <array>

namespace wrapwright {

namespace {

constexpr std::string_view first = R"sql(
CREATE TABLE recipe (
    id        TEXT PRIMARY KEY,
    name      TEXT NOT NULL,
    class     TEXT NOT NULL,
    sizes     TEXT NOT NULL,
    tags      TEXT NOT NULL,
    favourite INTEGER NOT NULL DEFAULT 0,
    revision  INTEGER NOT NULL              -- the newest
) STRICT, WITHOUT ROWID;
CREATE INDEX recipe_by_name ON recipe (name COLLATE NOCASE, id);

CREATE TABLE revision (
    recipe TEXT NOT NULL REFERENCES recipe (id),
    number INTEGER NOT NULL,
    text   TEXT NOT NULL,                   -- the recipe's text form, whole
    note   TEXT NOT NULL,
    made   INTEGER NOT NULL,                -- seconds since 1970
    PRIMARY KEY (recipe, number)
) STRICT;

CREATE VIRTUAL TABLE words USING fts5 (
    id UNINDEXED, body, tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

CREATE TABLE hook (
    id   INTEGER PRIMARY KEY,
    text TEXT NOT NULL,                     -- the hook's text form
    made INTEGER NOT NULL
) STRICT;

CREATE TABLE setting (
    key  TEXT PRIMARY KEY,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE sitting (
    id       INTEGER PRIMARY KEY,
    recipe   TEXT NOT NULL,
    revision INTEGER NOT NULL,
    size     TEXT NOT NULL,
    hook     TEXT NOT NULL,                 -- the measured hook's text form; empty: a typical one
    begun    INTEGER NOT NULL,
    FOREIGN KEY (recipe, revision) REFERENCES revision (recipe, number)
) STRICT;

CREATE TABLE event (
    sitting INTEGER NOT NULL REFERENCES sitting (id),
    number  INTEGER NOT NULL,
    kind    TEXT NOT NULL,
    at      REAL NOT NULL,                  -- seconds since 1970
    value   INTEGER NOT NULL,
    text    TEXT NOT NULL,
    PRIMARY KEY (sitting, number)
) STRICT, WITHOUT ROWID;
)sql";

constexpr std::array<std::string_view, 1> all{first};

} // namespace

std::span<const std::string_view> migrations() { return all; }

} // namespace wrapwright
