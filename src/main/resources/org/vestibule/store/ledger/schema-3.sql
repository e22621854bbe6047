-- The ledger's tables, version 3: visit cards that were drawn, and marks by which photographs are found.

CREATE TABLE visit_card (
  practice TEXT NOT NULL, token TEXT NOT NULL, visit TEXT NOT NULL, issuer TEXT NOT NULL,
  patient_id TEXT NOT NULL, day TEXT NOT NULL, who TEXT NOT NULL, at TEXT NOT NULL,
  PRIMARY KEY (practice, token))

CREATE INDEX visit_card_visit ON visit_card (practice, visit)

CREATE INDEX visit_card_day ON visit_card (practice, day)

CREATE TRIGGER visit_card_no_update BEFORE UPDATE ON visit_card
BEGIN SELECT RAISE(ABORT, 'the history table visit_card is only ever added to'); END

CREATE TRIGGER visit_card_no_delete BEFORE DELETE ON visit_card
BEGIN SELECT RAISE(ABORT, 'the history table visit_card is only ever added to'); END

CREATE TABLE photo_mark (
  number INTEGER PRIMARY KEY AUTOINCREMENT, practice TEXT NOT NULL, kind TEXT NOT NULL,
  value TEXT NOT NULL, hash TEXT NOT NULL,
  UNIQUE (practice, kind, value, hash),
  FOREIGN KEY (practice, hash) REFERENCES photo (practice, hash))

INSERT INTO photo_mark (practice, kind, value, hash)
SELECT practice, kind, json, hash FROM facts WHERE kind = 'shot' GROUP BY practice, json, hash
ORDER BY MIN(number)

INSERT OR IGNORE INTO photo_mark (practice, kind, value, hash)
SELECT practice, 'visit', json_extract(json, '$.visit'), hash FROM decision ORDER BY number

DROP INDEX facts_shot

CREATE TRIGGER photo_mark_no_update BEFORE UPDATE ON photo_mark
BEGIN SELECT RAISE(ABORT, 'the history table photo_mark is only ever added to'); END

CREATE TRIGGER photo_mark_no_delete BEFORE DELETE ON photo_mark
BEGIN SELECT RAISE(ABORT, 'the history table photo_mark is only ever added to'); END
