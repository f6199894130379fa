-- In which format the text was written whose digest a sheet has; the first one had no number.
ALTER TABLE sheet ADD COLUMN format INTEGER NOT NULL DEFAULT 1;
