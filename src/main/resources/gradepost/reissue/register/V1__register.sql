-- The register of issues. One schema for SQLite and PostgreSQL: plain types, ids counted here.
CREATE TABLE counter (
  name TEXT PRIMARY KEY,
  taken BIGINT NOT NULL
);
INSERT INTO counter (name, taken) VALUES ('id', 0);

CREATE TABLE act (
  id BIGINT PRIMARY KEY,
  moment TEXT NOT NULL,
  who TEXT NOT NULL,
  what TEXT NOT NULL,
  subject TEXT NOT NULL
);

CREATE TABLE issue (
  id BIGINT PRIMARY KEY,
  pack TEXT NOT NULL,
  number INTEGER NOT NULL,
  fingerprint TEXT NOT NULL,
  maker TEXT NOT NULL,
  issued TEXT NOT NULL,
  valid_from TEXT NOT NULL,
  valid_to TEXT NOT NULL,
  base BIGINT REFERENCES issue (id),
  notice TEXT NOT NULL,
  urgent INTEGER NOT NULL,
  delivered INTEGER NOT NULL,
  act BIGINT NOT NULL REFERENCES act (id),
  UNIQUE (pack, number)
);

CREATE TABLE issue_file (
  issue BIGINT NOT NULL REFERENCES issue (id),
  role TEXT NOT NULL,
  place INTEGER NOT NULL,
  name TEXT NOT NULL,
  digest TEXT NOT NULL,
  PRIMARY KEY (issue, role, name)
);

CREATE TABLE sheet (
  issue BIGINT NOT NULL REFERENCES issue (id),
  paper TEXT NOT NULL,
  place INTEGER NOT NULL,
  sheet TEXT NOT NULL,
  title TEXT NOT NULL,
  digest TEXT NOT NULL,
  since INTEGER NOT NULL,
  PRIMARY KEY (issue, paper, sheet)
);

CREATE TABLE copy (
  issue BIGINT NOT NULL REFERENCES issue (id),
  number TEXT NOT NULL,
  holder TEXT NOT NULL,
  handed_out BIGINT NOT NULL REFERENCES act (id),
  returned BIGINT REFERENCES act (id),
  PRIMARY KEY (issue, number)
);

CREATE TABLE acknowledgement (
  issue BIGINT NOT NULL REFERENCES issue (id),
  person TEXT NOT NULL,
  act BIGINT NOT NULL REFERENCES act (id),
  PRIMARY KEY (issue, person)
);

CREATE TABLE sign_off (
  id BIGINT PRIMARY KEY,
  issue BIGINT NOT NULL REFERENCES issue (id),
  person TEXT NOT NULL,
  direction TEXT NOT NULL,
  assessor TEXT NOT NULL,
  signed TEXT NOT NULL,
  lapses TEXT NOT NULL,
  act BIGINT NOT NULL REFERENCES act (id)
);

CREATE TABLE recall (
  issue BIGINT PRIMARY KEY REFERENCES issue (id),
  reason TEXT NOT NULL,
  act BIGINT NOT NULL REFERENCES act (id)
);
