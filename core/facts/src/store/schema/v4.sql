-- Layout 4 of survey.db, from layout 3. Frozen: a later layout is a file of its own that starts from this one.
-- user_version 4 is set beside it, in the same transaction; the sums of rows that are there are filled in there too.

-- Every row carries the CRC-32 of what stands in it, so that no bit changes unseen.
ALTER TABLE meta ADD COLUMN sum INTEGER;
ALTER TABLE fact ADD COLUMN sum INTEGER;
ALTER TABLE draft ADD COLUMN sum INTEGER;
ALTER TABLE thumbnail ADD COLUMN sum INTEGER;
-- The sums of all facts added up, so that none goes missing unseen; then that of this row.
ALTER TABLE summary ADD COLUMN total INTEGER;
ALTER TABLE summary ADD COLUMN sum INTEGER;

-- As before; the sum follows what was forgotten.
DROP TRIGGER fact_is_never_changed;
CREATE TRIGGER fact_is_never_changed BEFORE UPDATE ON fact
WHEN NOT (
    NEW.id IS OLD.id AND NEW.act IS OLD.act AND NEW.author IS OLD.author
    AND NEW.subject IS OLD.subject AND NEW.field IS OLD.field
    AND (NEW.value IS NULL AND NEW.extra IS NULL OR NEW.value IS OLD.value AND NEW.extra IS OLD.extra)
)
BEGIN
    SELECT RAISE (ABORT, 'facts are never changed, only forgotten');
END;

-- What files asked to be forgotten here and nobody has agreed to: facts that tell to forget, and facts of which a file
-- holds the frame alone.
CREATE TABLE wish (
    id      BLOB PRIMARY KEY NOT NULL CHECK (length(id) = 16),
    -- The fact that tells to forget, as its line; NULL for a frame.
    line    TEXT,
    -- 1 once somebody said no: it is not asked again.
    refused INTEGER NOT NULL,
    sum     INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
