package org.vestibule.search;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexQuery;

/**
 * An understood question.
 *
 * @param must conditions that all hold
 * @param tiers how closely a photograph is about the tooth, closest first; empty without a tooth
 * @param tierWords the tiers in words
 * @param from first day, or any
 * @param to last day, or any
 * @param understood how each part was understood, in words, for the person to see
 */
public record Question(
    List<AnyOf> must,
    List<AnyOf> tiers,
    List<String> tierWords,
    @Nullable LocalDate from,
    @Nullable LocalDate to,
    List<String> understood) {

  public Question {
    must = List.copyOf(must);
    tiers = List.copyOf(tiers);
    tierWords = List.copyOf(tierWords);
    understood = List.copyOf(understood);
  }

  /** The same in the index's terms. */
  public IndexQuery query(int limit) {
    return new IndexQuery(must, tiers, from, to, 0, limit);
  }
}
