package org.vestibule.store.index;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What each commit of the index says about itself.
 *
 * @param mark stands for the change with this number and all before it; empty before the first
 */
record Stamp(String practice, long sequence, String mark) {

  /** Layout of the documents; another number means that the index is made again. */
  private static final String LAYOUT = "4";

  Map<String, String> data() {
    Map<String, String> data = new HashMap<>();
    data.put("layout", LAYOUT);
    data.put("practice", practice);
    data.put("sequence", Long.toString(sequence));
    data.put("mark", mark);
    return data;
  }

  /** The stamp of a commit with this layout. */
  static Optional<Stamp> of(Map<String, String> data) {
    String sequence = data.getOrDefault("sequence", "");
    if (!LAYOUT.equals(data.get("layout")) || !sequence.matches("[0-9]{1,18}")) {
      return Optional.empty();
    }
    return Optional.of(
        new Stamp(
            data.getOrDefault("practice", ""),
            Long.parseLong(sequence),
            data.getOrDefault("mark", "")));
  }

  /**
   * Why the changes don't continue this stamp, or empty if they do.
   *
   * @param last the last of the changes
   */
  String misfit(IndexChanges changes, Optional<IndexChanges.Change> last) {
    if (!practice.equals(changes.practice())) {
      return "it belongs to another practice";
    }
    if (sequence == 0) {
      return "";
    }
    if (last.isEmpty() || last.get().sequence() < sequence) {
      return "it is ahead of the ledger";
    }
    // Most often nothing has changed since, and the last one is the one.
    Optional<IndexChanges.Change> stamped =
        last.get().sequence() == sequence ? last : changes.at(sequence);
    return stamped.filter(change -> change.mark().equals(mark)).isPresent()
        ? ""
        : "it followed another ledger";
  }
}
