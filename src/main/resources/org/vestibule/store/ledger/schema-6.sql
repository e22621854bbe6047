-- The ledger's tables, version 6: who may use the pages, and their sessions. A session's secret is never kept, only its hash.

CREATE TABLE account (
  practice TEXT NOT NULL, name TEXT NOT NULL, role TEXT NOT NULL, password TEXT NOT NULL,
  added_by TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, name))

CREATE TABLE session (
  practice TEXT NOT NULL, mark TEXT NOT NULL, account TEXT NOT NULL, role TEXT NOT NULL,
  scope TEXT NOT NULL, person TEXT NOT NULL, begun_at TEXT NOT NULL, seen_at TEXT NOT NULL, ends_at TEXT NOT NULL,
  PRIMARY KEY (practice, mark))
