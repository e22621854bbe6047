package org.vestibule.dental;

/** How a site shows the lower arch seen from above. */
public enum LowerArchShown {
  /** As a dental chart does: incisors at the bottom, patient's right on the viewer's left. */
  INCISORS_DOWN,
  /** Incisors at the top: true-handed, the patient's right is then on the viewer's right. */
  INCISORS_UP
}
