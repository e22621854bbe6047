-- The ledger's tables, version 4: with which secret the ledger was begun, without saying anything about the secret.

CREATE TABLE secret_mark (
  practice TEXT NOT NULL, mark TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice))

CREATE TRIGGER secret_mark_no_update BEFORE UPDATE ON secret_mark
BEGIN SELECT RAISE(ABORT, 'the history table secret_mark is only ever added to'); END

CREATE TRIGGER secret_mark_no_delete BEFORE DELETE ON secret_mark
BEGIN SELECT RAISE(ABORT, 'the history table secret_mark is only ever added to'); END
