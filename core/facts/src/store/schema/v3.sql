-- Layout 3 of survey.db, from layout 2. Frozen: a later layout is a file of its own that starts from this one.
-- user_version 3 is set beside it, in the same transaction.

-- All facts are read at opening and looked up in memory; on the disk nobody asked these, and each edit wrote both.
DROP INDEX fact_by_subject;
DROP INDEX fact_by_act;
