package org.vestibule.store.index;

import java.io.IOException;
import java.util.Set;
import java.util.function.Consumer;

/** Answers questions about photographs; follows the ledger when told to. */
public interface PhotoIndex {

  /**
   * Applies what the index has not seen yet, in one commit, unless another process is at it. An
   * index that does not fit the changes (another practice, layout or history) or is damaged is made
   * again from them.
   */
  CaughtUp follow(IndexChanges changes) throws IOException;

  /** Throws the index away and makes it again; says BUSY if another process is writing it. */
  CaughtUp rebuild(IndexChanges changes) throws IOException;

  /** The number of the last change that the index has seen; 0 if it is empty or damaged. */
  long sequence() throws IOException;

  /** True if some byte of it is not what was written; reads all of it. */
  boolean isDamaged() throws IOException;

  IndexAnswer search(IndexQuery query) throws IOException;

  /** How many photographs it describes. */
  int size() throws IOException;

  /** Gives every description to somebody, one after another, in no order. */
  void each(Consumer<IndexRecord> somebody) throws IOException;

  /** True if some photograph has this value. */
  boolean has(IndexTerm term) throws IOException;

  /** Every value that some photograph has in this field. */
  Set<String> values(IndexField field) throws IOException;
}
