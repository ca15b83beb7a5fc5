-- Layout 2 of survey.db, from layout 1. Frozen: a later layout is a file of its own that starts from this one.
-- user_version 2 is set beside it, in the same transaction.

-- Derived, can be made again from the photos: small pictures to show in lists.
CREATE TABLE thumbnail (
    -- SHA-256 of the photo's bytes.
    photo BLOB PRIMARY KEY NOT NULL CHECK (length(photo) = 32),
    jpeg  BLOB NOT NULL CHECK (length(jpeg) <= 65536)
) STRICT, WITHOUT ROWID;

-- Derived, can be made again from the facts: what a list of surveys shows, so that none need be opened for it.
CREATE TABLE summary (
    only_row INTEGER PRIMARY KEY NOT NULL CHECK (only_row = 1),
    -- How many facts were counted, and the newest: it tells whether the row is up to date.
    facts    INTEGER NOT NULL,
    newest   BLOB CHECK (length(newest) = 16),
    name     TEXT,
    place    TEXT,
    -- What is there and not removed.
    rooms    INTEGER NOT NULL,
    parts    INTEGER NOT NULL,
    runs     INTEGER NOT NULL,
    photos   INTEGER NOT NULL,
    notes    INTEGER NOT NULL,
    readings INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
