-- The ledger's tables, version 8: digests of every other table's rows, by which a changed bit is told. What is sealed follows from the schema itself: tables with a trigger <name>_no_update are history, all others stand for now.

CREATE TABLE seal (
  practice TEXT NOT NULL, sealed_table TEXT NOT NULL, row_count INTEGER NOT NULL,
  last_row INTEGER NOT NULL, digest TEXT NOT NULL,
  PRIMARY KEY (practice, sealed_table))

CREATE TABLE seal_mark (
  practice TEXT NOT NULL, sealed_table TEXT NOT NULL, row_count INTEGER NOT NULL,
  digest TEXT NOT NULL,
  PRIMARY KEY (practice, sealed_table, row_count))

CREATE TABLE seal_row (
  practice TEXT NOT NULL, sealed_table TEXT NOT NULL, row_number INTEGER NOT NULL,
  digest TEXT NOT NULL,
  PRIMARY KEY (practice, sealed_table, row_number))
