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
