-- People and copies. What is taken back stays, with the act that took it back.
ALTER TABLE act ADD COLUMN depot TEXT NOT NULL DEFAULT '';
ALTER TABLE act ADD COLUMN undone BIGINT REFERENCES act (id);

-- An issue that nobody but its preparer has checked is a draft. Those entered before are none.
ALTER TABLE issue ADD COLUMN draft INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issue ADD COLUMN checker TEXT NOT NULL DEFAULT '';

CREATE TABLE staff_entry (
  joined BIGINT PRIMARY KEY REFERENCES act (id),
  name TEXT NOT NULL,
  depot TEXT NOT NULL,
  gone BIGINT REFERENCES act (id)
);

-- What was taken back may be entered again: an entry is known by its act, and what stands is a view.
CREATE TABLE copy_entry (
  handed_out BIGINT PRIMARY KEY REFERENCES act (id),
  issue BIGINT NOT NULL REFERENCES issue (id),
  number TEXT NOT NULL,
  holder TEXT NOT NULL,
  returned BIGINT REFERENCES act (id)
);
INSERT INTO copy_entry (handed_out, issue, number, holder, returned)
  SELECT handed_out, issue, number, holder, returned FROM copy;
DROP TABLE copy;

CREATE TABLE acknowledgement_entry (
  act BIGINT PRIMARY KEY REFERENCES act (id),
  issue BIGINT NOT NULL REFERENCES issue (id),
  person TEXT NOT NULL
);
INSERT INTO acknowledgement_entry (act, issue, person)
  SELECT act, issue, person FROM acknowledgement;
DROP TABLE acknowledgement;

CREATE TABLE recall_entry (
  issue BIGINT NOT NULL REFERENCES issue (id),
  act BIGINT NOT NULL REFERENCES act (id),
  reason TEXT NOT NULL,
  effective TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (issue, act)
);
INSERT INTO recall_entry (issue, act, reason, effective)
  SELECT issue, act, reason, effective FROM recall;
DROP TABLE recall;

ALTER TABLE sign_off RENAME TO sign_off_entry;

CREATE VIEW copy AS
  SELECT c.issue, c.number, c.holder, c.handed_out,
    CASE WHEN b.undone IS NULL THEN c.returned END AS returned
  FROM copy_entry c JOIN act a ON a.id = c.handed_out LEFT JOIN act b ON b.id = c.returned
  WHERE a.undone IS NULL;

CREATE VIEW acknowledgement AS
  SELECT e.issue, e.person, e.act
  FROM acknowledgement_entry e JOIN act a ON a.id = e.act WHERE a.undone IS NULL;

-- An issue can be recalled for two reasons: the one counts that takes effect first.
CREATE VIEW recall AS
  SELECT e.issue, e.reason, e.act, e.effective
  FROM recall_entry e JOIN act a ON a.id = e.act
  WHERE a.undone IS NULL AND NOT EXISTS (
    SELECT 1 FROM recall_entry o JOIN act b ON b.id = o.act
    WHERE b.undone IS NULL AND o.issue = e.issue AND (o.effective < e.effective
      OR (o.effective = e.effective AND o.act < e.act)));

CREATE VIEW sign_off AS
  SELECT e.id, e.issue, e.person, e.direction, e.formation, e.assessor, e.signed, e.lapses,
    e.score, e.paper, e.conditions, e.act
  FROM sign_off_entry e JOIN act a ON a.id = e.act WHERE a.undone IS NULL;

CREATE VIEW staff AS
  SELECT s.name, s.depot, s.joined
  FROM staff_entry s JOIN act a ON a.id = s.joined LEFT JOIN act b ON b.id = s.gone
  WHERE a.undone IS NULL AND (s.gone IS NULL OR b.undone IS NOT NULL);
