-- The ledger's tables, version 1. Statements are separated by empty lines. Times are ISO 8601 in UTC. Tables named in a trigger below are history: rows are only ever added.

CREATE TABLE identity (
  practice TEXT NOT NULL PRIMARY KEY, created_at TEXT NOT NULL)

CREATE TABLE arrival (
  practice TEXT NOT NULL, hash TEXT NOT NULL, name TEXT NOT NULL, size INTEGER NOT NULL,
  modified TEXT NOT NULL, seen_at TEXT NOT NULL,
  PRIMARY KEY (practice, hash, name))

CREATE INDEX arrival_name ON arrival (practice, name)

CREATE TABLE facts (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, hash TEXT NOT NULL,
  kind TEXT NOT NULL, json TEXT NOT NULL, recorded_at TEXT NOT NULL)

CREATE INDEX facts_hash ON facts (practice, hash, kind)

CREATE INDEX facts_shot ON facts (practice, json) WHERE kind = 'shot'

CREATE TABLE photo (
  practice TEXT NOT NULL, hash TEXT NOT NULL, size INTEGER NOT NULL, first_seen_at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('SEEN', 'WAITING', 'INTENDED', 'KEPT', 'REJECTED')),
  PRIMARY KEY (practice, hash))

CREATE INDEX photo_state ON photo (practice, state)

CREATE TABLE patient (
  practice TEXT NOT NULL, issuer TEXT NOT NULL, id TEXT NOT NULL, name TEXT NOT NULL,
  birth_date TEXT, sex TEXT, details TEXT NOT NULL,
  PRIMARY KEY (practice, issuer, id))

CREATE TABLE patient_history (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, issuer TEXT NOT NULL,
  id TEXT NOT NULL, name TEXT NOT NULL, birth_date TEXT, sex TEXT, details TEXT NOT NULL,
  who TEXT NOT NULL, at TEXT NOT NULL)

CREATE TABLE visit (
  practice TEXT NOT NULL, key TEXT NOT NULL, issuer TEXT NOT NULL, patient_id TEXT NOT NULL,
  starts TEXT NOT NULL, ends TEXT NOT NULL, zone TEXT NOT NULL, accession TEXT, referrer TEXT,
  dentist TEXT, details TEXT NOT NULL,
  PRIMARY KEY (practice, key),
  FOREIGN KEY (practice, issuer, patient_id) REFERENCES patient (practice, issuer, id))

CREATE TABLE visit_history (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, key TEXT NOT NULL,
  issuer TEXT NOT NULL, patient_id TEXT NOT NULL, starts TEXT NOT NULL, ends TEXT NOT NULL,
  zone TEXT NOT NULL, accession TEXT, referrer TEXT, dentist TEXT, details TEXT NOT NULL,
  who TEXT NOT NULL, at TEXT NOT NULL)

CREATE TABLE decision (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, id TEXT NOT NULL,
  hash TEXT NOT NULL, json TEXT NOT NULL, decided_by TEXT NOT NULL, source TEXT NOT NULL,
  why TEXT NOT NULL, decided_at TEXT NOT NULL,
  UNIQUE (practice, id),
  FOREIGN KEY (practice, hash) REFERENCES photo (practice, hash))

CREATE INDEX decision_hash ON decision (practice, hash)

CREATE TABLE waiting (
  practice TEXT NOT NULL, hash TEXT NOT NULL, reasons TEXT NOT NULL, proposal TEXT NOT NULL,
  since TEXT NOT NULL, changed_at TEXT NOT NULL,
  PRIMARY KEY (practice, hash),
  FOREIGN KEY (practice, hash) REFERENCES photo (practice, hash))

CREATE TABLE waiting_history (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, hash TEXT NOT NULL,
  reasons TEXT, proposal TEXT, at TEXT NOT NULL)

CREATE TABLE study (
  practice TEXT NOT NULL, issuer TEXT NOT NULL, patient_id TEXT NOT NULL, visit TEXT NOT NULL,
  study_uid TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, issuer, patient_id, visit))

CREATE TABLE series (
  practice TEXT NOT NULL, series_uid TEXT NOT NULL, study_uid TEXT NOT NULL,
  number INTEGER NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, series_uid),
  UNIQUE (practice, study_uid, number))

CREATE TABLE intent (
  practice TEXT NOT NULL, sop_uid TEXT NOT NULL, hash TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('FRAME', 'CROP')), decision TEXT NOT NULL,
  revision INTEGER NOT NULL, recipe TEXT NOT NULL, study_uid TEXT NOT NULL,
  series_uid TEXT NOT NULL, instance_number INTEGER NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, sop_uid),
  UNIQUE (practice, hash, role, revision),
  UNIQUE (practice, series_uid, instance_number),
  FOREIGN KEY (practice, decision) REFERENCES decision (practice, id),
  FOREIGN KEY (practice, series_uid) REFERENCES series (practice, series_uid))

CREATE TABLE abandoned (
  practice TEXT NOT NULL, sop_uid TEXT NOT NULL, who TEXT NOT NULL, why TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (practice, sop_uid),
  FOREIGN KEY (practice, sop_uid) REFERENCES intent (practice, sop_uid))

CREATE TABLE kept (
  practice TEXT NOT NULL, sop_uid TEXT NOT NULL, file_hash TEXT NOT NULL,
  pixel_hash TEXT NOT NULL, size INTEGER NOT NULL, trimmed_columns INTEGER NOT NULL,
  trimmed_rows INTEGER NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, sop_uid),
  FOREIGN KEY (practice, sop_uid) REFERENCES intent (practice, sop_uid))

CREATE TABLE correction (
  practice TEXT NOT NULL, hash TEXT NOT NULL, revision INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('REJECTED', 'REPLACED')), new_revision INTEGER,
  who TEXT NOT NULL, why TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, hash, revision))

CREATE TABLE event (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, who TEXT NOT NULL,
  what TEXT NOT NULL, hash TEXT, details TEXT NOT NULL, at TEXT NOT NULL)

CREATE INDEX event_hash ON event (practice, hash)

CREATE TABLE change (
  sequence INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, id TEXT NOT NULL,
  record TEXT, mark TEXT NOT NULL, at TEXT NOT NULL)

CREATE INDEX change_id ON change (practice, id, sequence)

CREATE TRIGGER identity_no_update BEFORE UPDATE ON identity
BEGIN SELECT RAISE(ABORT, 'the history table identity is only ever added to'); END

CREATE TRIGGER identity_no_delete BEFORE DELETE ON identity
BEGIN SELECT RAISE(ABORT, 'the history table identity is only ever added to'); END

CREATE TRIGGER arrival_no_update BEFORE UPDATE ON arrival
BEGIN SELECT RAISE(ABORT, 'the history table arrival is only ever added to'); END

CREATE TRIGGER arrival_no_delete BEFORE DELETE ON arrival
BEGIN SELECT RAISE(ABORT, 'the history table arrival is only ever added to'); END

CREATE TRIGGER facts_no_update BEFORE UPDATE ON facts
BEGIN SELECT RAISE(ABORT, 'the history table facts is only ever added to'); END

CREATE TRIGGER facts_no_delete BEFORE DELETE ON facts
BEGIN SELECT RAISE(ABORT, 'the history table facts is only ever added to'); END

CREATE TRIGGER patient_history_no_update BEFORE UPDATE ON patient_history
BEGIN SELECT RAISE(ABORT, 'the history table patient_history is only ever added to'); END

CREATE TRIGGER patient_history_no_delete BEFORE DELETE ON patient_history
BEGIN SELECT RAISE(ABORT, 'the history table patient_history is only ever added to'); END

CREATE TRIGGER visit_history_no_update BEFORE UPDATE ON visit_history
BEGIN SELECT RAISE(ABORT, 'the history table visit_history is only ever added to'); END

CREATE TRIGGER visit_history_no_delete BEFORE DELETE ON visit_history
BEGIN SELECT RAISE(ABORT, 'the history table visit_history is only ever added to'); END

CREATE TRIGGER decision_no_update BEFORE UPDATE ON decision
BEGIN SELECT RAISE(ABORT, 'the history table decision is only ever added to'); END

CREATE TRIGGER decision_no_delete BEFORE DELETE ON decision
BEGIN SELECT RAISE(ABORT, 'the history table decision is only ever added to'); END

CREATE TRIGGER waiting_history_no_update BEFORE UPDATE ON waiting_history
BEGIN SELECT RAISE(ABORT, 'the history table waiting_history is only ever added to'); END

CREATE TRIGGER waiting_history_no_delete BEFORE DELETE ON waiting_history
BEGIN SELECT RAISE(ABORT, 'the history table waiting_history is only ever added to'); END

CREATE TRIGGER study_no_update BEFORE UPDATE ON study
BEGIN SELECT RAISE(ABORT, 'the history table study is only ever added to'); END

CREATE TRIGGER study_no_delete BEFORE DELETE ON study
BEGIN SELECT RAISE(ABORT, 'the history table study is only ever added to'); END

CREATE TRIGGER series_no_update BEFORE UPDATE ON series
BEGIN SELECT RAISE(ABORT, 'the history table series is only ever added to'); END

CREATE TRIGGER series_no_delete BEFORE DELETE ON series
BEGIN SELECT RAISE(ABORT, 'the history table series is only ever added to'); END

CREATE TRIGGER intent_no_update BEFORE UPDATE ON intent
BEGIN SELECT RAISE(ABORT, 'the history table intent is only ever added to'); END

CREATE TRIGGER intent_no_delete BEFORE DELETE ON intent
BEGIN SELECT RAISE(ABORT, 'the history table intent is only ever added to'); END

CREATE TRIGGER abandoned_no_update BEFORE UPDATE ON abandoned
BEGIN SELECT RAISE(ABORT, 'the history table abandoned is only ever added to'); END

CREATE TRIGGER abandoned_no_delete BEFORE DELETE ON abandoned
BEGIN SELECT RAISE(ABORT, 'the history table abandoned is only ever added to'); END

CREATE TRIGGER kept_no_update BEFORE UPDATE ON kept
BEGIN SELECT RAISE(ABORT, 'the history table kept is only ever added to'); END

CREATE TRIGGER kept_no_delete BEFORE DELETE ON kept
BEGIN SELECT RAISE(ABORT, 'the history table kept is only ever added to'); END

CREATE TRIGGER correction_no_update BEFORE UPDATE ON correction
BEGIN SELECT RAISE(ABORT, 'the history table correction is only ever added to'); END

CREATE TRIGGER correction_no_delete BEFORE DELETE ON correction
BEGIN SELECT RAISE(ABORT, 'the history table correction is only ever added to'); END

CREATE TRIGGER event_no_update BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'the history table event is only ever added to'); END

CREATE TRIGGER event_no_delete BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'the history table event is only ever added to'); END

CREATE TRIGGER change_no_update BEFORE UPDATE ON change
BEGIN SELECT RAISE(ABORT, 'the history table change is only ever added to'); END

CREATE TRIGGER change_no_delete BEFORE DELETE ON change
BEGIN SELECT RAISE(ABORT, 'the history table change is only ever added to'); END

CREATE TRIGGER photo_no_delete BEFORE DELETE ON photo
BEGIN SELECT RAISE(ABORT, 'rows of photo are never deleted'); END

CREATE TRIGGER patient_no_delete BEFORE DELETE ON patient
BEGIN SELECT RAISE(ABORT, 'rows of patient are never deleted'); END

CREATE TRIGGER visit_no_delete BEFORE DELETE ON visit
BEGIN SELECT RAISE(ABORT, 'rows of visit are never deleted'); END
