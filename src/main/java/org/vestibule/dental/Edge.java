package org.vestibule.dental;

/** A margin of a picture as it lies before the viewer. */
public enum Edge {
  TOP,
  BOTTOM,
  LEFT,
  RIGHT
}
