-- The ledger's tables, version 6: who may use the pages, and their sessions; what phones were let in for and what they brought; what was shared, and when it was opened. Of a secret only its hash is kept.

CREATE TABLE account (
  practice TEXT NOT NULL, name TEXT NOT NULL, role TEXT NOT NULL, password TEXT NOT NULL,
  added_by TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, name))

CREATE TABLE session (
  practice TEXT NOT NULL, mark TEXT NOT NULL, account TEXT NOT NULL, role TEXT NOT NULL,
  scope TEXT NOT NULL, person TEXT NOT NULL, begun_at TEXT NOT NULL, seen_at TEXT NOT NULL, ends_at TEXT NOT NULL,
  PRIMARY KEY (practice, mark))

CREATE TABLE phone_link (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, mark TEXT NOT NULL,
  visit TEXT NOT NULL, series TEXT NOT NULL, who TEXT NOT NULL, at TEXT NOT NULL,
  ends_at TEXT NOT NULL,
  UNIQUE (practice, mark))

CREATE TABLE phone_link_end (
  practice TEXT NOT NULL, link INTEGER NOT NULL, who TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, link),
  FOREIGN KEY (link) REFERENCES phone_link (number))

CREATE TABLE upload_begun (
  practice TEXT NOT NULL, id TEXT NOT NULL, link INTEGER NOT NULL, name TEXT NOT NULL,
  size INTEGER NOT NULL, view TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, id),
  FOREIGN KEY (link) REFERENCES phone_link (number))

CREATE INDEX upload_begun_link ON upload_begun (link)

CREATE TABLE upload (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, id TEXT NOT NULL,
  hash TEXT NOT NULL, arrived_as TEXT NOT NULL, confirmed INTEGER NOT NULL, at TEXT NOT NULL,
  UNIQUE (practice, id),
  UNIQUE (practice, arrived_as),
  FOREIGN KEY (practice, id) REFERENCES upload_begun (practice, id))

CREATE INDEX upload_hash ON upload (practice, hash)

CREATE TABLE share (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, mark TEXT NOT NULL,
  release TEXT NOT NULL, secret TEXT NOT NULL, who TEXT NOT NULL, at TEXT NOT NULL,
  ends_at TEXT NOT NULL,
  UNIQUE (practice, mark),
  FOREIGN KEY (practice, release) REFERENCES release (practice, id))

CREATE TABLE share_photo (
  practice TEXT NOT NULL, share INTEGER NOT NULL, name TEXT NOT NULL, who TEXT NOT NULL,
  taken TEXT NOT NULL, view TEXT NOT NULL, teeth TEXT NOT NULL, row_runs TEXT NOT NULL,
  column_runs TEXT NOT NULL, file_hash TEXT NOT NULL,
  PRIMARY KEY (practice, share, name),
  FOREIGN KEY (share) REFERENCES share (number))

CREATE TABLE share_end (
  practice TEXT NOT NULL, share INTEGER NOT NULL, who TEXT NOT NULL, why TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (practice, share),
  FOREIGN KEY (share) REFERENCES share (number))

CREATE TABLE share_opening (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, share INTEGER NOT NULL,
  what TEXT NOT NULL CHECK (what IN ('OPENED', 'WRONG SECRET')), client TEXT NOT NULL,
  at TEXT NOT NULL,
  FOREIGN KEY (share) REFERENCES share (number))

CREATE INDEX share_opening_share ON share_opening (share)

CREATE TRIGGER phone_link_no_update BEFORE UPDATE ON phone_link
BEGIN SELECT RAISE(ABORT, 'the history table phone_link is only ever added to'); END

CREATE TRIGGER phone_link_no_delete BEFORE DELETE ON phone_link
BEGIN SELECT RAISE(ABORT, 'the history table phone_link is only ever added to'); END

CREATE TRIGGER phone_link_end_no_update BEFORE UPDATE ON phone_link_end
BEGIN SELECT RAISE(ABORT, 'the history table phone_link_end is only ever added to'); END

CREATE TRIGGER phone_link_end_no_delete BEFORE DELETE ON phone_link_end
BEGIN SELECT RAISE(ABORT, 'the history table phone_link_end is only ever added to'); END

CREATE TRIGGER upload_begun_no_update BEFORE UPDATE ON upload_begun
BEGIN SELECT RAISE(ABORT, 'the history table upload_begun is only ever added to'); END

CREATE TRIGGER upload_begun_no_delete BEFORE DELETE ON upload_begun
BEGIN SELECT RAISE(ABORT, 'the history table upload_begun is only ever added to'); END

CREATE TRIGGER upload_no_update BEFORE UPDATE ON upload
BEGIN SELECT RAISE(ABORT, 'the history table upload is only ever added to'); END

CREATE TRIGGER upload_no_delete BEFORE DELETE ON upload
BEGIN SELECT RAISE(ABORT, 'the history table upload is only ever added to'); END

CREATE TRIGGER share_no_update BEFORE UPDATE ON share
BEGIN SELECT RAISE(ABORT, 'the history table share is only ever added to'); END

CREATE TRIGGER share_no_delete BEFORE DELETE ON share
BEGIN SELECT RAISE(ABORT, 'the history table share is only ever added to'); END

CREATE TRIGGER share_photo_no_update BEFORE UPDATE ON share_photo
BEGIN SELECT RAISE(ABORT, 'the history table share_photo is only ever added to'); END

CREATE TRIGGER share_photo_no_delete BEFORE DELETE ON share_photo
BEGIN SELECT RAISE(ABORT, 'the history table share_photo is only ever added to'); END

CREATE TRIGGER share_end_no_update BEFORE UPDATE ON share_end
BEGIN SELECT RAISE(ABORT, 'the history table share_end is only ever added to'); END

CREATE TRIGGER share_end_no_delete BEFORE DELETE ON share_end
BEGIN SELECT RAISE(ABORT, 'the history table share_end is only ever added to'); END

CREATE TRIGGER share_opening_no_update BEFORE UPDATE ON share_opening
BEGIN SELECT RAISE(ABORT, 'the history table share_opening is only ever added to'); END

CREATE TRIGGER share_opening_no_delete BEFORE DELETE ON share_opening
BEGIN SELECT RAISE(ABORT, 'the history table share_opening is only ever added to'); END
