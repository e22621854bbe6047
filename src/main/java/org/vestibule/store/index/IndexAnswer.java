package org.vestibule.store.index;

import java.util.List;

/**
 * What was found.
 *
 * @param total how many photographs answer the question, whatever the limit
 */
public record IndexAnswer(List<Hit> hits, int total) {

  public IndexAnswer {
    hits = List.copyOf(hits);
  }

  /**
   * A photograph that answers.
   *
   * @param tier which of the question's tiers it met, from 0; 0 if there were none
   */
  public record Hit(IndexRecord record, int tier) {}
}
