package org.vestibule.dental;

import org.vestibule.base.Turn;

/**
 * At which edge of the raw picture the incisors lie. Raw is as the file stores it, before any Exif
 * orientation; what a person sees on a preview is brought back by {@link #inRaw}.
 */
public enum Incisors {
  TOP,
  BOTTOM,
  LEFT,
  RIGHT;

  /** Where the incisors lie in the raw picture if they lie here in what was shown with a turn. */
  public Incisors inRaw(Turn shownWith) {
    return valueOf(Edge.valueOf(name()).inRaw(shownWith).name());
  }
}
