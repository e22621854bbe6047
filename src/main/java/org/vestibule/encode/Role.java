package org.vestibule.encode;

/** What a stored object shows of the photograph. */
public enum Role {
  /** The whole picture, upright and true-handed. */
  FRAME,
  /** The part a person chose; the frame is kept beside it and stays in the practice. */
  CROP
}
