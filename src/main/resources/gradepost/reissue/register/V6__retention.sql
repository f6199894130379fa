-- By which act the name was removed from an act, with what was kept of somebody who left.
ALTER TABLE act ADD COLUMN forgotten BIGINT REFERENCES act (id);
