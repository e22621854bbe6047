package org.vestibule.dental;

import org.vestibule.base.Turn;

/** A margin of a picture as it lies before the viewer. */
public enum Edge {
  TOP(Direction.HEAD),
  BOTTOM(Direction.FEET),
  LEFT(Direction.RIGHT),
  RIGHT(Direction.LEFT);

  private static final PatientOrientation FRONTAL = new PatientOrientation("L", "F");

  /** What lies at this edge of a frontal picture. */
  private final Direction inFrontal;

  Edge(Direction inFrontal) {
    this.inFrontal = inFrontal;
  }

  /** The raw edge that a turn brought to this edge of what was shown. */
  public Edge inRaw(Turn shownWith) {
    return FRONTAL
        .after(shownWith.inverse())
        .edgeOf(inFrontal)
        .orElseThrow(() -> new IllegalStateException("a turned picture lost an edge"));
  }
}
