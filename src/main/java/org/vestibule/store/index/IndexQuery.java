package org.vestibule.store.index;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A question in the index's terms. Answers come by tier, the newest first within a tier.
 *
 * @param must every one of these has to be met
 * @param tiers if not empty, one of these has to be met too; the first one that is met ranks the
 *     photograph
 * @param from first day, or any
 * @param to last day, or any
 * @param offset how many answers to pass over
 * @param limit how many answers to give at most, from 1
 */
public record IndexQuery(
    List<AnyOf> must,
    List<AnyOf> tiers,
    @Nullable LocalDate from,
    @Nullable LocalDate to,
    int offset,
    int limit) {

  public IndexQuery {
    must = List.copyOf(must);
    tiers = List.copyOf(tiers);
    if (offset < 0 || limit < 1) {
      throw new IllegalArgumentException(
          "offset must be from 0 and limit from 1 but they were " + offset + " and " + limit);
    }
  }

  /** Everything there is. */
  public static IndexQuery all(int limit) {
    return new IndexQuery(List.of(), List.of(), null, null, 0, limit);
  }
}
