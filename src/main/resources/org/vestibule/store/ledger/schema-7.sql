-- The ledger's tables, version 7: of what kind the reason of a correction is, and the rejection notes that tell an archive of it.

ALTER TABLE decision ADD COLUMN reason TEXT

ALTER TABLE correction ADD COLUMN reason TEXT

CREATE TABLE note (
  practice TEXT NOT NULL, sop_uid TEXT NOT NULL, hash TEXT NOT NULL, revision INTEGER NOT NULL,
  reason TEXT NOT NULL, file_hash TEXT NOT NULL, size INTEGER NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, sop_uid),
  UNIQUE (practice, hash, revision),
  FOREIGN KEY (practice, hash, revision) REFERENCES correction (practice, hash, revision))

CREATE TRIGGER note_no_update BEFORE UPDATE ON note
BEGIN SELECT RAISE(ABORT, 'the history table note is only ever added to'); END

CREATE TRIGGER note_no_delete BEFORE DELETE ON note
BEGIN SELECT RAISE(ABORT, 'the history table note is only ever added to'); END

CREATE TABLE visit_order (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, visit TEXT NOT NULL,
  station TEXT NOT NULL, step TEXT NOT NULL, json TEXT NOT NULL, who TEXT NOT NULL,
  at TEXT NOT NULL)

CREATE INDEX visit_order_visit ON visit_order (practice, visit)

CREATE TRIGGER visit_order_no_update BEFORE UPDATE ON visit_order
BEGIN SELECT RAISE(ABORT, 'the history table visit_order is only ever added to'); END

CREATE TRIGGER visit_order_no_delete BEFORE DELETE ON visit_order
BEGIN SELECT RAISE(ABORT, 'the history table visit_order is only ever added to'); END
