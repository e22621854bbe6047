package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Turn;

/**
 * What is to be done to a picture without loss.
 *
 * @param turn the turn from the stored to the displayed picture
 * @param crop the part of the displayed picture to keep, or null for all of it
 * @param mayTrim true if edge samples that can't be turned may be dropped
 */
public record TranscodePlan(Turn turn, @Nullable CropBox crop, boolean mayTrim) {

  /** No turn, no crop, no trimming. */
  public static final TranscodePlan AS_IS = new TranscodePlan(Turn.NONE, null, false);

  /** The whole picture, turned. */
  public static TranscodePlan turned(Turn turn) {
    return new TranscodePlan(turn, null, false);
  }
}
