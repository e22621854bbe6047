package org.vestibule.assign;

import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Series;

/**
 * What the visit list plans for a visit.
 *
 * @param series the views that are to be taken; null if none is named
 * @param chair at which it takes place; empty if not said
 */
public record VisitPlan(@Nullable Series series, String chair) {

  /** Nothing is planned. */
  public static final VisitPlan NONE = new VisitPlan(null, "");
}
