package org.vestibule.store.steps;

/** A point on the way of a write that has just been reached. */
public enum WriteStep {
  /** The temporary file of an object exists and is empty. */
  OBJECT_TEMP_CREATED,
  /** Half of an object's bytes are in its temporary file. */
  OBJECT_HALF_WRITTEN,
  /** All of an object's bytes are written, but perhaps not on the disk. */
  OBJECT_WRITTEN,
  /** The temporary file is on the disk. */
  OBJECT_SYNCED,
  /** The object is about to get its name; may be reached again after a sharing violation. */
  OBJECT_NAMING,
  /** The object has its name. */
  OBJECT_NAMED,
  /** The folder's entry is on the disk and the object was read back. */
  OBJECT_PROVED,
  /** A ledger transaction is complete but not committed. */
  LEDGER_COMMITTING,
  /** A ledger transaction is committed. */
  LEDGER_COMMITTED,
  /** The index has applied changes but not committed them. */
  INDEX_COMMITTING,
  /** The index is committed. */
  INDEX_COMMITTED
}
