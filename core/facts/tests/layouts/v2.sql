-- A survey as layout 2 kept it, with rows: a dump that never changes. The house and its people are invented.
-- Layout 1 of survey.db. Frozen: a later layout is a file of its own that starts from this one.
-- application_id 0x4C67776B ("Lgwk") and user_version 1 are set beside it, in the same transaction.

-- What holds for the whole survey: 'survey' is its id.
CREATE TABLE meta (
    key   TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- The log. Ids are the 16 bytes of a UUID, so the key's order is the order of time.
CREATE TABLE fact (
    id      BLOB PRIMARY KEY NOT NULL CHECK (length(id) = 16),
    act     BLOB NOT NULL CHECK (length(act) = 16),
    author  BLOB NOT NULL CHECK (length(author) = 16),
    subject BLOB NOT NULL CHECK (length(subject) = 16),
    field   TEXT NOT NULL CHECK (length(field) BETWEEN 1 AND 64),
    -- Canonical JSON (RFC 8785); NULL once forgotten.
    value   TEXT CHECK (length(CAST(value AS BLOB)) <= 8192),
    -- Canonical JSON object of the members that the writing release did not know; NULL if there are none.
    extra   TEXT CHECK (length(CAST(extra AS BLOB)) <= 8192)
) STRICT, WITHOUT ROWID;

CREATE INDEX fact_by_subject ON fact (subject, field);
CREATE INDEX fact_by_act ON fact (act);

-- Which facts a fact replaces.
CREATE TABLE fact_over (
    fact     BLOB NOT NULL REFERENCES fact (id),
    replaced BLOB NOT NULL REFERENCES fact (id),
    PRIMARY KEY (fact, replaced)
) STRICT, WITHOUT ROWID;

-- Append-only, whoever asks. The one change that a row may ever see is that what it said is dropped.
CREATE TRIGGER fact_is_kept BEFORE DELETE ON fact
BEGIN
    SELECT RAISE (ABORT, 'facts are never deleted');
END;

CREATE TRIGGER fact_is_never_changed BEFORE UPDATE ON fact
WHEN NOT (
    NEW.id IS OLD.id AND NEW.act IS OLD.act AND NEW.author IS OLD.author
    AND NEW.subject IS OLD.subject AND NEW.field IS OLD.field
    AND NEW.value IS NULL AND NEW.extra IS NULL
)
BEGIN
    SELECT RAISE (ABORT, 'facts are never changed, only forgotten');
END;

CREATE TRIGGER fact_over_is_kept BEFORE DELETE ON fact_over
BEGIN
    SELECT RAISE (ABORT, 'facts are never deleted');
END;

CREATE TRIGGER fact_over_is_never_changed BEFORE UPDATE ON fact_over
BEGIN
    SELECT RAISE (ABORT, 'facts are never changed');
END;

-- Half-typed input. Belongs to this device, is never exported, and goes when it becomes a fact.
CREATE TABLE draft (
    subject  BLOB NOT NULL CHECK (length(subject) = 16),
    field    TEXT NOT NULL CHECK (length(field) BETWEEN 1 AND 64),
    text     TEXT NOT NULL CHECK (length(CAST(text AS BLOB)) <= 65536),
    saved_ms INTEGER NOT NULL,
    PRIMARY KEY (subject, field)
) STRICT, WITHOUT ROWID;


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

PRAGMA application_id = 1281849195;
PRAGMA user_version = 2;
INSERT INTO meta (key, value) VALUES ('survey', '00000000-0000-4000-8000-0000000000d1');
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270017cc398c4dc0c0c070001', x'000000000000400080000000000000a1', x'000000000000400080000000000000b1', x'000000000000400080000000000000d1', 'name', '"House"', NULL);
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270027cc398c4dc0c0c070002', x'000000000000400080000000000000a2', x'000000000000400080000000000000b1', x'000000000000400080000000000000d1', 'name', '"Invented house"', NULL);
INSERT INTO fact_over (fact, replaced) VALUES (x'017f22e270027cc398c4dc0c0c070002', x'017f22e270017cc398c4dc0c0c070001');
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270037cc398c4dc0c0c070003', x'000000000000400080000000000000a2', x'000000000000400080000000000000b1', x'000000000000400080000000000000d1', 'place', NULL, NULL);
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270047cc398c4dc0c0c070004', x'000000000000400080000000000000a3', x'000000000000400080000000000000b1', x'000000000000400080000000000000d1', 'place', '"1 Nowhere Lane"', NULL);
INSERT INTO fact_over (fact, replaced) VALUES (x'017f22e270047cc398c4dc0c0c070004', x'017f22e270037cc398c4dc0c0c070003');
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270057cc398c4dc0c0c070005', x'000000000000400080000000000000a4', x'000000000000400080000000000000b1', x'000000000000400080000000000000c1', 'is', '"part"', '{"colour":["later"]}');
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270067cc398c4dc0c0c070006', x'000000000000400080000000000000a5', x'000000000000400080000000000000b1', x'000000000000400080000000000000c1', 'tag', '"S1"', NULL);
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270077cc398c4dc0c0c070007', x'000000000000400080000000000000a6', x'000000000000400080000000000000b1', x'000000000000400080000000000000c1', 'tag', '"S2"', NULL);
INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (x'017f22e270087cc398c4dc0c0c070008', x'000000000000400080000000000000a7', x'000000000000400080000000000000b1', x'000000000000400080000000000000c1', 'tag', '"S3"', NULL);
INSERT INTO fact_over (fact, replaced) VALUES (x'017f22e270087cc398c4dc0c0c070008', x'017f22e270067cc398c4dc0c0c070006');
INSERT INTO fact_over (fact, replaced) VALUES (x'017f22e270087cc398c4dc0c0c070008', x'017f22e270077cc398c4dc0c0c070007');
INSERT INTO draft (subject, field, text, saved_ms) VALUES (x'000000000000400080000000000000c1', 'text', 'half ty', 1700000000000);
INSERT INTO thumbnail (photo, jpeg) VALUES (x'abababababababababababababababababababababababababababababababab', x'ffd8ffd9');
INSERT INTO summary (only_row, facts, newest, name, place, rooms, parts, runs, photos, notes, readings) VALUES (1, 8, x'017f22e270087cc398c4dc0c0c070008', 'Invented house', '1 Nowhere Lane', 0, 1, 0, 0, 0, 0);
