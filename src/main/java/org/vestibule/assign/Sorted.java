package org.vestibule.assign;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the cards say about one photograph.
 *
 * @param visit the cards settle or propose; null if they do neither
 * @param settled true if card and time agree, and nothing speaks against it
 * @param facts what that rests on
 * @param reasons why the cards don't settle the visit; none if they do, or if there are no cards
 * @param between the visit whose card stands before and after it, whatever else speaks against
 *     that; null if there is none
 * @param view what a view card says about it
 */
public record Sorted(
    @Nullable Visit visit,
    boolean settled,
    List<String> facts,
    List<WaitReason> reasons,
    @Nullable Visit between,
    SortedView view) {

  /** No card says anything. */
  static final Sorted NONE = new Sorted(null, false, List.of(), List.of(), null, SortedView.NONE);

  public Sorted {
    facts = List.copyOf(facts);
    reasons = List.copyOf(reasons);
  }

  static Sorted waits(@Nullable Visit visit, List<WaitReason> reasons, @Nullable Visit between) {
    return new Sorted(visit, false, List.of(), reasons, between, SortedView.NONE);
  }

  Sorted with(SortedView said) {
    return new Sorted(visit, settled, facts, reasons, between, said);
  }
}
