package org.vestibule.dental;

/** Whether the picture in the file is a mirror image, as a person stated it. */
public enum Mirror {
  /** Taken directly, without a mirror. */
  NONE,
  /** Taken in a mirror; the file still shows the mirror image. */
  AS_SHOT,
  /** Taken in a mirror; somebody already flipped it, so the file is true-handed. */
  CORRECTED,
  /** Nobody said: handedness is not known, and the photograph waits. */
  UNKNOWN
}
