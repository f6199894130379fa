-- From when an issue is recalled: one that a later issue supersedes stays in force until that is
-- valid. Those that were entered before are recalled from the moment of their entry.
ALTER TABLE recall ADD COLUMN effective TEXT NOT NULL DEFAULT '';
