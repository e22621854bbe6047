package org.vestibule.quality;

import java.util.Set;
import org.vestibule.dental.View;

/** What a photograph shows, as far as it matters for what can be measured. */
public enum Subject {
  /** Nobody knows yet. */
  UNKNOWN,
  /** A face: too little of the teeth. */
  FACE,
  /** Teeth from the front, both sides of the midline, in a row that is shown level. */
  LEVEL_ROW,
  /** Anything else of the mouth. */
  MOUTH;

  /**
   * The views from the front whose row of teeth is framed level and around the midline (common
   * practice, no source).
   */
  static final Set<String> LEVEL_ROWS =
      Set.of("frontal", "frontal-apart", "upper-anterior", "lower-anterior");

  /** What a view shows. */
  public static Subject of(View view) {
    if (view.showsFace()) {
      return FACE;
    }
    return LEVEL_ROWS.contains(view.key()) ? LEVEL_ROW : MOUTH;
  }
}
