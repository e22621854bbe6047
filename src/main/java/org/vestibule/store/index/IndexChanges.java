package org.vestibule.store.index;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where the index gets what it has to follow: numbered changes, in order. */
public interface IndexChanges {

  /**
   * A change.
   *
   * @param id of the photograph that changed
   * @param record its whole new description as JSON text, or none if it is to be removed
   * @param mark stands for this change and all before it
   */
  record Change(long sequence, String id, @Nullable String record, String mark) {}

  /** Whose changes these are. */
  String practice();

  /** The last change of all. */
  Optional<Change> last();

  /** The change with this number. */
  Optional<Change> at(long sequence);

  /** The changes after this number, at most so many, in order. */
  List<Change> after(long sequence, int most);
}
