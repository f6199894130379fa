-- What a signature covers and rests on; those that were entered before say nothing of it.
ALTER TABLE sign_off ADD COLUMN formation TEXT NOT NULL DEFAULT '';
ALTER TABLE sign_off ADD COLUMN score TEXT NOT NULL DEFAULT '';
ALTER TABLE sign_off ADD COLUMN paper TEXT NOT NULL DEFAULT '';
ALTER TABLE sign_off ADD COLUMN conditions TEXT NOT NULL DEFAULT '';
