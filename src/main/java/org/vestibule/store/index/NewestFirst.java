package org.vestibule.store.index;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.search.IndexSortSortedNumericDocValuesRangeQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.jspecify.annotations.Nullable;

/**
 * The order that every segment of the index lies in, and that answers come in: the newest first,
 * what has no date last. It is one number for each photograph: the second in which it was taken,
 * and below it the first digits of its hash, so that two of one second keep their order when the
 * index is made again. Because answers are asked for in the order in which they lie, the search may
 * stop at the last that is wanted, and a span of days is a stretch of each segment.
 */
final class NewestFirst {

  /** The field of the number. */
  static final String FIELD = "when";

  /** Larger numbers first. */
  static final Sort ORDER = new Sort(new SortField(FIELD, SortField.Type.LONG, true));

  private static final int HASH_DIGITS = 6;
  private static final int HASH_BITS = 4 * HASH_DIGITS;
  private static final int HEXADECIMAL = 16;
  private static final long HASH_MASK = (1L << HASH_BITS) - 1;

  /** Seconds from 1970 that have room above the hash: some 17,400 years both ways. */
  private static final long LAST_SECOND = (1L << (Long.SIZE - 1 - HASH_BITS)) - 1;

  private NewestFirst() {}

  /**
   * The number of a photograph.
   *
   * @param time local time as if it were UTC: only its order counts; none if there is no date
   * @param hash content hash, hexadecimal
   */
  static long number(@Nullable LocalDateTime time, String hash) {
    long digits = Long.parseLong(hash.substring(0, HASH_DIGITS), HEXADECIMAL);
    // The smaller hash comes first, so it has the larger number.
    return first(time) + (HASH_MASK - digits);
  }

  /** The least number of a second; what has no date is before all seconds. */
  private static long first(@Nullable LocalDateTime time) {
    long second = time == null ? -LAST_SECOND - 1 : time.toEpochSecond(ZoneOffset.UTC);
    long within = time == null ? second : Math.max(-LAST_SECOND, Math.min(LAST_SECOND, second));
    return within << HASH_BITS;
  }

  /** What was taken in a span of days, both of them included; what has no date never is. */
  static Query days(@Nullable LocalDate from, @Nullable LocalDate to) {
    long least = from == null ? -LAST_SECOND << HASH_BITS : first(from.atStartOfDay());
    long most = to == null ? Long.MAX_VALUE : first(to.plusDays(1).atStartOfDay()) - 1;
    // The second question answers for a segment that is not in order; there is none in this index.
    return new IndexSortSortedNumericDocValuesRangeQuery(
        FIELD, least, most, NumericDocValuesField.newSlowRangeQuery(FIELD, least, most));
  }
}
