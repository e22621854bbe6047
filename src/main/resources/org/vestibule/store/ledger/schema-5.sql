-- The ledger's tables, version 5: what was brought to which archive, and what the archive said. "outgoing" numbers whatever concerns archives in the order in which it happened; each destination has come as far as "delivery_reached" says.

CREATE TABLE outgoing (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('KEPT', 'CORRECTED')), hash TEXT NOT NULL,
  revision INTEGER NOT NULL, sop_uid TEXT)

INSERT INTO outgoing (practice, kind, hash, revision, sop_uid)
SELECT k.practice, 'KEPT', i.hash, i.revision, k.sop_uid FROM kept k
JOIN intent i ON i.practice = k.practice AND i.sop_uid = k.sop_uid
ORDER BY k.at, i.hash, i.revision, i.role DESC

CREATE TRIGGER kept_outgoing AFTER INSERT ON kept
BEGIN INSERT INTO outgoing (practice, kind, hash, revision, sop_uid)
SELECT NEW.practice, 'KEPT', hash, revision, NEW.sop_uid FROM intent
WHERE practice = NEW.practice AND sop_uid = NEW.sop_uid; END

CREATE TRIGGER correction_outgoing AFTER INSERT ON correction
BEGIN INSERT INTO outgoing (practice, kind, hash, revision)
VALUES (NEW.practice, 'CORRECTED', NEW.hash, NEW.revision); END

CREATE TABLE delivery_reached (
  practice TEXT NOT NULL, destination TEXT NOT NULL, number INTEGER NOT NULL,
  PRIMARY KEY (practice, destination))

CREATE TABLE delivery (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, destination TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('PHOTO', 'NOTE')), hash TEXT NOT NULL,
  revision INTEGER NOT NULL, sop_uid TEXT, sop_class TEXT, study_uid TEXT, series_uid TEXT,
  behind INTEGER,
  state TEXT NOT NULL
    CHECK (state IN ('WAITING', 'SENT', 'CONFIRMED', 'REFUSED', 'FAILED', 'WITHDRAWN')),
  perhaps_there INTEGER NOT NULL, taken_back INTEGER NOT NULL, attempts INTEGER NOT NULL,
  asks INTEGER NOT NULL, due_at TEXT, status INTEGER, words TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  UNIQUE (practice, destination, sop_uid))

CREATE UNIQUE INDEX delivery_note ON delivery (practice, destination, hash, revision)
WHERE kind = 'NOTE'

CREATE INDEX delivery_hash ON delivery (practice, hash)

CREATE INDEX delivery_due ON delivery (practice, destination, state, due_at, number)
WHERE due_at IS NOT NULL

CREATE INDEX delivery_ended ON delivery (practice, destination, number)
WHERE due_at IS NULL AND state NOT IN ('CONFIRMED', 'WITHDRAWN')

CREATE INDEX delivery_state ON delivery (practice, destination, state)

CREATE INDEX delivery_behind ON delivery (behind) WHERE behind IS NOT NULL

CREATE TABLE delivery_event (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, delivery INTEGER NOT NULL,
  state TEXT NOT NULL, attempt INTEGER NOT NULL, status INTEGER, words TEXT NOT NULL,
  transaction_uid TEXT, who TEXT NOT NULL, at TEXT NOT NULL,
  FOREIGN KEY (delivery) REFERENCES delivery (number))

CREATE INDEX delivery_event_delivery ON delivery_event (delivery)

CREATE TABLE delivery_coercion (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, delivery INTEGER NOT NULL,
  keyword TEXT NOT NULL, ours TEXT NOT NULL, theirs TEXT NOT NULL, at TEXT NOT NULL,
  UNIQUE (delivery, keyword, theirs),
  FOREIGN KEY (delivery) REFERENCES delivery (number))

CREATE TABLE commitment (
  practice TEXT NOT NULL, transaction_uid TEXT NOT NULL, destination TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (practice, transaction_uid))

CREATE TABLE commitment_item (
  practice TEXT NOT NULL, transaction_uid TEXT NOT NULL, delivery INTEGER NOT NULL,
  PRIMARY KEY (practice, transaction_uid, delivery),
  FOREIGN KEY (practice, transaction_uid) REFERENCES commitment (practice, transaction_uid),
  FOREIGN KEY (delivery) REFERENCES delivery (number))

CREATE TABLE destination_event (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, destination TEXT NOT NULL,
  reached INTEGER NOT NULL, words TEXT NOT NULL, at TEXT NOT NULL)

CREATE INDEX destination_event_destination ON destination_event (practice, destination)

CREATE TABLE source_removed (
  practice TEXT NOT NULL, hash TEXT NOT NULL, name TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, hash, name, at))

CREATE TRIGGER outgoing_no_update BEFORE UPDATE ON outgoing
BEGIN SELECT RAISE(ABORT, 'the history table outgoing is only ever added to'); END

CREATE TRIGGER outgoing_no_delete BEFORE DELETE ON outgoing
BEGIN SELECT RAISE(ABORT, 'the history table outgoing is only ever added to'); END

CREATE TRIGGER delivery_event_no_update BEFORE UPDATE ON delivery_event
BEGIN SELECT RAISE(ABORT, 'the history table delivery_event is only ever added to'); END

CREATE TRIGGER delivery_event_no_delete BEFORE DELETE ON delivery_event
BEGIN SELECT RAISE(ABORT, 'the history table delivery_event is only ever added to'); END

CREATE TRIGGER delivery_coercion_no_update BEFORE UPDATE ON delivery_coercion
BEGIN SELECT RAISE(ABORT, 'the history table delivery_coercion is only ever added to'); END

CREATE TRIGGER delivery_coercion_no_delete BEFORE DELETE ON delivery_coercion
BEGIN SELECT RAISE(ABORT, 'the history table delivery_coercion is only ever added to'); END

CREATE TRIGGER commitment_no_update BEFORE UPDATE ON commitment
BEGIN SELECT RAISE(ABORT, 'the history table commitment is only ever added to'); END

CREATE TRIGGER commitment_no_delete BEFORE DELETE ON commitment
BEGIN SELECT RAISE(ABORT, 'the history table commitment is only ever added to'); END

CREATE TRIGGER commitment_item_no_update BEFORE UPDATE ON commitment_item
BEGIN SELECT RAISE(ABORT, 'the history table commitment_item is only ever added to'); END

CREATE TRIGGER commitment_item_no_delete BEFORE DELETE ON commitment_item
BEGIN SELECT RAISE(ABORT, 'the history table commitment_item is only ever added to'); END

CREATE TRIGGER destination_event_no_update BEFORE UPDATE ON destination_event
BEGIN SELECT RAISE(ABORT, 'the history table destination_event is only ever added to'); END

CREATE TRIGGER destination_event_no_delete BEFORE DELETE ON destination_event
BEGIN SELECT RAISE(ABORT, 'the history table destination_event is only ever added to'); END

CREATE TRIGGER source_removed_no_update BEFORE UPDATE ON source_removed
BEGIN SELECT RAISE(ABORT, 'the history table source_removed is only ever added to'); END

CREATE TRIGGER source_removed_no_delete BEFORE DELETE ON source_removed
BEGIN SELECT RAISE(ABORT, 'the history table source_removed is only ever added to'); END
