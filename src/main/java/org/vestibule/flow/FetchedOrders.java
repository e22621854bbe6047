package org.vestibule.flow;

import java.time.LocalDate;
import java.util.List;

/**
 * What came of asking the worklist for a day.
 *
 * @param added keys of visits that are new
 * @param known how many orders were known and are as they were
 * @param changed what is otherwise than before and was taken over, each a sentence
 * @param concerns what was not taken over, and why, each a sentence
 * @param notes anything else, each a sentence
 */
public record FetchedOrders(
    LocalDate day,
    List<String> added,
    int known,
    List<String> changed,
    List<String> concerns,
    List<String> notes) {
  public FetchedOrders {
    added = List.copyOf(added);
    changed = List.copyOf(changed);
    concerns = List.copyOf(concerns);
    notes = List.copyOf(notes);
  }
}
