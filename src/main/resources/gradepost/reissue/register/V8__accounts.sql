-- Who may use the desk. Of a password only a hash is kept. Sessions that began under an earlier
-- number have ended.
CREATE TABLE account (
  added BIGINT PRIMARY KEY REFERENCES act (id),
  name TEXT NOT NULL UNIQUE,
  role TEXT NOT NULL,
  hash TEXT NOT NULL,
  first INTEGER NOT NULL,
  since TEXT NOT NULL,
  shut INTEGER NOT NULL DEFAULT 0,
  sessions INTEGER NOT NULL DEFAULT 1
);
