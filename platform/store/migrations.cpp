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

// What was measured with a fly of a recipe at a size: a fall in a jar, a weighing.
constexpr std::string_view second = R"sql(
CREATE TABLE measure (
    id     INTEGER PRIMARY KEY,
    recipe TEXT NOT NULL REFERENCES recipe (id),
    size   TEXT NOT NULL,
    kind   TEXT NOT NULL,                   -- fall: m, s, K, jar m, number = 1 from rest, + 2 sea
                                            -- weighing: kg value, low, high
    a      REAL NOT NULL,
    b      REAL NOT NULL,
    c      REAL NOT NULL,
    d      REAL NOT NULL,
    number INTEGER NOT NULL,
    made   INTEGER NOT NULL,                -- seconds since 1970
    gone   INTEGER NOT NULL DEFAULT 0       -- 1: put away by the person; the record stays
) STRICT;
CREATE INDEX measure_by_fly ON measure (recipe, size);
)sql";

// Photos of flies with what is marked on them, and what a caliper, a scale or a photo said.
constexpr std::string_view third = R"sql(
CREATE TABLE photo (
    id      INTEGER PRIMARY KEY,
    recipe  TEXT NOT NULL REFERENCES recipe (id),
    size    TEXT NOT NULL,
    sitting INTEGER NOT NULL,               -- 0: none was on
    fly     INTEGER NOT NULL,
    name    TEXT NOT NULL,
    bytes   BLOB NOT NULL,                  -- the file as it was
    marks   TEXT NOT NULL,
    made    INTEGER NOT NULL,               -- seconds since 1970
    gone    INTEGER NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX photo_by_fly ON photo (recipe, size);

CREATE TABLE reading (
    id      INTEGER PRIMARY KEY,
    recipe  TEXT NOT NULL REFERENCES recipe (id),
    size    TEXT NOT NULL,
    sitting INTEGER NOT NULL,               -- 0: none was on
    fly     INTEGER NOT NULL,
    part    TEXT NOT NULL,                  -- tail, body, thorax, wing, hackle, rib: m; mass: kg
    value   REAL NOT NULL,
    low     REAL NOT NULL,
    high    REAL NOT NULL,
    photo   INTEGER NOT NULL,               -- 1: by a photo
    made    INTEGER NOT NULL,               -- seconds since 1970
    gone    INTEGER NOT NULL DEFAULT 0      -- 1: put away by the person; the record stays
) STRICT;
CREATE INDEX reading_by_fly ON reading (recipe, size);
)sql";

// Stock and orders. A row that is edited gets a further version; the ledger only grows.
constexpr std::string_view fourth = R"sql(
CREATE TABLE stock_line (
    id       INTEGER NOT NULL,
    version  INTEGER NOT NULL,              -- the newest stands
    what     TEXT NOT NULL,
    also     TEXT NOT NULL,
    unit     TEXT NOT NULL,                 -- pieces, metres, grams, flies
    pack     REAL NOT NULL,
    price    INTEGER NOT NULL,              -- of a pack, minor units
    low      REAL NOT NULL,
    place    TEXT NOT NULL,
    opened   TEXT NOT NULL,
    lot      TEXT NOT NULL,
    supplier TEXT NOT NULL,
    origin   TEXT NOT NULL,
    note     TEXT NOT NULL,
    gone     INTEGER NOT NULL,
    made     INTEGER NOT NULL,              -- seconds since 1970
    PRIMARY KEY (id, version)
) STRICT, WITHOUT ROWID;

CREATE TABLE order_line (
    id       INTEGER NOT NULL,
    version  INTEGER NOT NULL,              -- the newest stands
    who      TEXT NOT NULL,
    taken    INTEGER NOT NULL,              -- days since 1970; 0: none
    due      INTEGER NOT NULL,
    recipe   TEXT NOT NULL,                 -- may be gone from the library
    name     TEXT NOT NULL,
    size     TEXT NOT NULL,
    colour   TEXT NOT NULL,
    weight   TEXT NOT NULL,
    flies    INTEGER NOT NULL,
    dozen    INTEGER NOT NULL,              -- price of twelve, minor units
    status   TEXT NOT NULL,
    model    TEXT NOT NULL,
    minutes  REAL NOT NULL,
    note     TEXT NOT NULL,
    gone     INTEGER NOT NULL,
    made     INTEGER NOT NULL,
    PRIMARY KEY (id, version)
) STRICT, WITHOUT ROWID;

CREATE TABLE ledger (
    id      INTEGER PRIMARY KEY,
    item    INTEGER NOT NULL,               -- of stock_line; 0: a fly
    kind    TEXT NOT NULL,
    amount  REAL NOT NULL,
    line    INTEGER NOT NULL,               -- of order_line; 0: none
    sitting INTEGER NOT NULL,               -- 0: none
    fly     INTEGER NOT NULL,
    undoes  INTEGER NOT NULL,               -- id of the entry that holds no more; 0: none
    price   INTEGER NOT NULL,
    note    TEXT NOT NULL,
    made    INTEGER NOT NULL
) STRICT;
CREATE INDEX ledger_by_sitting ON ledger (sitting) WHERE sitting > 0;
CREATE INDEX ledger_by_item ON ledger (item);

ALTER TABLE sitting ADD COLUMN line INTEGER NOT NULL DEFAULT 0; -- of order_line; 0: none
)sql";

// Names for revisions, and what the recipes weigh, for searching.
constexpr std::string_view fifth = R"sql(
ALTER TABLE revision ADD COLUMN name TEXT NOT NULL DEFAULT '';

CREATE TABLE weight (
    recipe TEXT NOT NULL REFERENCES recipe (id),
    size   INTEGER NOT NULL,                -- a hook's number; 1000: none could be tied
    low    REAL NOT NULL,                   -- kg
    value  REAL NOT NULL,
    high   REAL NOT NULL,
    PRIMARY KEY (recipe, size)
) STRICT, WITHOUT ROWID;
)sql";

// The fly box: what was counted and what is wanted; the newest entry of each kind stands.
constexpr std::string_view sixth = R"sql(
CREATE TABLE box (
    id     INTEGER PRIMARY KEY,
    recipe TEXT NOT NULL REFERENCES recipe (id),
    size   TEXT NOT NULL,
    want   INTEGER NOT NULL,                -- 1: so many should be there; 0: so many are
    flies  INTEGER NOT NULL,
    after  INTEGER NOT NULL,                -- the ledger's last entry by then
    made   INTEGER NOT NULL                 -- seconds since 1970
) STRICT;
)sql";

constexpr std::array<std::string_view, 6> all{first, second, third, fourth, fifth, sixth};

} // namespace

std::span<const std::string_view> migrations() { return all; }

} // namespace wrapwright
