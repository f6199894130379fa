-- Files by the digest of their content, for a register that holds its archive itself.
CREATE TABLE content (
  digest TEXT PRIMARY KEY,
  bytes BYTEA NOT NULL
);

-- What each pack rests on, as it was last read: any row may be lost, it is then made again.
CREATE TABLE pack_index (
  pack TEXT PRIMARY KEY,
  format TEXT NOT NULL,
  facts TEXT NOT NULL
);

-- Issues that workers are asked to make, and what became of them.
CREATE TABLE job (
  pack TEXT NOT NULL,
  number INTEGER NOT NULL,
  asked TEXT NOT NULL,
  who TEXT NOT NULL,
  state TEXT NOT NULL,
  begun INTEGER NOT NULL DEFAULT 0,
  failed INTEGER NOT NULL DEFAULT 0,
  told TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (pack, number)
);

-- The table of db-scheduler, as its makers describe it. In SQLite it stays empty.
CREATE TABLE scheduled_tasks (
  task_name TEXT NOT NULL,
  task_instance TEXT NOT NULL,
  task_data BYTEA,
  execution_time TIMESTAMP WITH TIME ZONE NOT NULL,
  picked BOOLEAN NOT NULL,
  picked_by TEXT,
  last_success TIMESTAMP WITH TIME ZONE,
  last_failure TIMESTAMP WITH TIME ZONE,
  consecutive_failures INT,
  last_heartbeat TIMESTAMP WITH TIME ZONE,
  version BIGINT NOT NULL,
  priority SMALLINT,
  PRIMARY KEY (task_name, task_instance)
);
CREATE INDEX execution_time_idx ON scheduled_tasks (execution_time);
CREATE INDEX last_heartbeat_idx ON scheduled_tasks (last_heartbeat);
