package org.vestibule.dental;

import java.util.Optional;

/**
 * A direction in the patient's body, with its letter of Patient Orientation (PS3.3 C.7.6.1.1.1) and
 * its place on the right-handed axes left, posterior, head.
 */
public enum Direction {
  LEFT('L', "patient's left", 0, 1),
  RIGHT('R', "patient's right", 0, -1),
  POSTERIOR('P', "back", 1, 1),
  ANTERIOR('A', "front", 1, -1),
  HEAD('H', "up", 2, 1),
  FEET('F', "down", 2, -1);

  private final char letter;
  private final String words;
  private final int axis;
  private final int sign;

  Direction(char letter, String words, int axis, int sign) {
    this.letter = letter;
    this.words = words;
    this.axis = axis;
    this.sign = sign;
  }

  /** The direction with this letter. */
  public static Optional<Direction> of(char letter) {
    for (Direction direction : values()) {
      if (direction.letter == letter) {
        return Optional.of(direction);
      }
    }
    return Optional.empty();
  }

  public char letter() {
    return letter;
  }

  /** For people: patient's left, patient's right, front, back, up or down. */
  public String words() {
    return words;
  }

  public Direction opposite() {
    return along(axis, -sign);
  }

  /** 0 for left-right, 1 for front-back, 2 for up-down. */
  int axis() {
    return axis;
  }

  /**
   * The cross product of two directions on different axes, right-handed: left x posterior is head.
   */
  Direction cross(Direction other) {
    int third = 3 - axis - other.axis;
    boolean inOrder = (axis + 1) % 3 == other.axis;
    return along(third, (inOrder ? 1 : -1) * sign * other.sign);
  }

  private static Direction along(int axis, int sign) {
    for (Direction direction : values()) {
      if (direction.axis == axis && direction.sign == sign) {
        return direction;
      }
    }
    throw new IllegalStateException("no direction on axis " + axis);
  }
}
