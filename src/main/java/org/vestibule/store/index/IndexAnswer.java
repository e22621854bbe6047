package org.vestibule.store.index;

import java.util.List;

/**
 * What was found.
 *
 * @param total how many photographs answer the question, whatever the limit
 * @param more true if there are more than the total, which was then not counted to its end
 */
public record IndexAnswer(List<Hit> hits, int total, boolean more) {

  /** So many are counted one by one; nobody looks at more. */
  public static final int COUNTED = 1_000;

  /** Nothing answers. */
  public static final IndexAnswer NONE = new IndexAnswer(List.of(), 0, false);

  public IndexAnswer {
    hits = List.copyOf(hits);
  }

  /**
   * A photograph that answers.
   *
   * @param tier which of the question's tiers it met first, from 0; 0 if there were none
   */
  public record Hit(IndexRecord record, int tier) {}
}
