-- The ledger's tables, version 2: consents and copies that left the house. All of them are history: rows are only ever added.

CREATE TABLE consent (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, issuer TEXT NOT NULL,
  patient_id TEXT NOT NULL, purpose TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('GIVEN', 'WITHDRAWN')), given_on TEXT NOT NULL,
  expires TEXT, face INTEGER NOT NULL, form TEXT NOT NULL, guardian TEXT NOT NULL,
  of_age_on TEXT, who TEXT NOT NULL, at TEXT NOT NULL,
  FOREIGN KEY (practice, issuer, patient_id) REFERENCES patient (practice, issuer, id))

CREATE INDEX consent_patient ON consent (practice, issuer, patient_id, purpose)

CREATE TABLE release (
  practice TEXT NOT NULL, id TEXT NOT NULL, purpose TEXT NOT NULL, recipient TEXT NOT NULL,
  why TEXT NOT NULL, asked_by TEXT NOT NULL, who TEXT NOT NULL, made_on TEXT NOT NULL,
  request TEXT NOT NULL, manifest_hash TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, id))

CREATE TABLE release_item (
  practice TEXT NOT NULL, release TEXT NOT NULL, sop_uid TEXT NOT NULL, hash TEXT NOT NULL,
  issuer TEXT NOT NULL, patient_id TEXT NOT NULL, pseudonym TEXT NOT NULL,
  copy_uid TEXT NOT NULL, name TEXT NOT NULL,
  PRIMARY KEY (practice, release, sop_uid),
  FOREIGN KEY (practice, release) REFERENCES release (practice, id))

CREATE INDEX release_item_patient ON release_item (practice, issuer, patient_id)

CREATE TABLE release_attestation (
  practice TEXT NOT NULL, release TEXT NOT NULL, sop_uid TEXT NOT NULL, option TEXT NOT NULL,
  person TEXT NOT NULL, said_on TEXT NOT NULL,
  PRIMARY KEY (practice, release, sop_uid, option),
  FOREIGN KEY (practice, release) REFERENCES release (practice, id))

CREATE TABLE release_withdrawal (
  practice TEXT NOT NULL, release TEXT NOT NULL, who TEXT NOT NULL, why TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (practice, release),
  FOREIGN KEY (practice, release) REFERENCES release (practice, id))

CREATE TRIGGER consent_no_update BEFORE UPDATE ON consent
BEGIN SELECT RAISE(ABORT, 'the history table consent is only ever added to'); END

CREATE TRIGGER consent_no_delete BEFORE DELETE ON consent
BEGIN SELECT RAISE(ABORT, 'the history table consent is only ever added to'); END

CREATE TRIGGER release_no_update BEFORE UPDATE ON release
BEGIN SELECT RAISE(ABORT, 'the history table release is only ever added to'); END

CREATE TRIGGER release_no_delete BEFORE DELETE ON release
BEGIN SELECT RAISE(ABORT, 'the history table release is only ever added to'); END

CREATE TRIGGER release_item_no_update BEFORE UPDATE ON release_item
BEGIN SELECT RAISE(ABORT, 'the history table release_item is only ever added to'); END

CREATE TRIGGER release_item_no_delete BEFORE DELETE ON release_item
BEGIN SELECT RAISE(ABORT, 'the history table release_item is only ever added to'); END

CREATE TRIGGER release_attestation_no_update BEFORE UPDATE ON release_attestation
BEGIN SELECT RAISE(ABORT, 'the history table release_attestation is only ever added to'); END

CREATE TRIGGER release_attestation_no_delete BEFORE DELETE ON release_attestation
BEGIN SELECT RAISE(ABORT, 'the history table release_attestation is only ever added to'); END

CREATE TRIGGER release_withdrawal_no_update BEFORE UPDATE ON release_withdrawal
BEGIN SELECT RAISE(ABORT, 'the history table release_withdrawal is only ever added to'); END

CREATE TRIGGER release_withdrawal_no_delete BEFORE DELETE ON release_withdrawal
BEGIN SELECT RAISE(ABORT, 'the history table release_withdrawal is only ever added to'); END
