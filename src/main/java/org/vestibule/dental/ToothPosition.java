package org.vestibule.dental;

/** A tooth's place in the mouth and what stands there. */
public record ToothPosition(Tooth tooth, Occupant occupant) {

  public static ToothPosition of(Tooth tooth) {
    return new ToothPosition(tooth, Occupant.TOOTH);
  }

  /**
   * Such as {@code upper right first molar (16)} or {@code implant at lower left first molar (36)}.
   */
  public String words() {
    return occupant == Occupant.TOOTH
        ? tooth.wordsAndNumber()
        : occupant.words() + " at " + tooth.wordsAndNumber();
  }
}
