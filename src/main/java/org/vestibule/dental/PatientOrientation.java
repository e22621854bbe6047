package org.vestibule.dental;

import java.util.Optional;
import org.vestibule.base.Turn;

/**
 * Where a picture's row and column run in the patient: (0020,0020), PS3.3 C.7.6.1.1.1.
 *
 * @param right the direction towards the picture's right margin, one to three letters of A P R L H
 *     F, strongest first
 * @param down the direction towards its bottom margin, likewise
 */
public record PatientOrientation(String right, String down) {

  /** What lies at the four margins, in words for people. */
  public record Edges(String left, String right, String top, String bottom) {}

  public PatientOrientation {
    if (main(right).axis() == main(down).axis()) {
      throw new IllegalArgumentException(
          "row and column must run along different axes but were " + right + " and " + down);
    }
    requireLetters(right);
    requireLetters(down);
  }

  /** Reads {@code L\F}, or {@code L/F} where a backslash is awkward. */
  public static Optional<PatientOrientation> parse(String text) {
    String[] parts = text.split("[\\\\/]", -1);
    if (parts.length != 2) {
      return Optional.empty();
    }
    try {
      return Optional.of(new PatientOrientation(parts[0], parts[1]));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** The orientation of the same picture after it was turned. */
  public PatientOrientation after(Turn turn) {
    String newRight = turn.swapsAxes() ? down : right;
    String newDown = turn.swapsAxes() ? right : down;
    return new PatientOrientation(
        turn.flipsHorizontally() ? opposite(newRight) : newRight,
        turn.flipsVertically() ? opposite(newDown) : newDown);
  }

  /** The direction in which a camera that made this true-handed picture looked. */
  public Direction looking() {
    return main(right).cross(main(down));
  }

  /**
   * True if a camera looking that way sees this picture; false if this is its mirror image or
   * another view.
   */
  public boolean handednessFits(Direction looking) {
    return looking() == looking;
  }

  /** The margin at which a direction lies, if it runs along a row or a column. */
  public Optional<Edge> edgeOf(Direction direction) {
    if (main(right) == direction) {
      return Optional.of(Edge.RIGHT);
    }
    if (main(right) == direction.opposite()) {
      return Optional.of(Edge.LEFT);
    }
    if (main(down) == direction) {
      return Optional.of(Edge.BOTTOM);
    }
    return main(down) == direction.opposite() ? Optional.of(Edge.TOP) : Optional.empty();
  }

  /** Words for the margins, always derived from the orientation. */
  public Edges edges() {
    return new Edges(
        main(opposite(right)).words(),
        main(right).words(),
        main(opposite(down)).words(),
        main(down).words());
  }

  /** The attribute's value, {@code right\down}. */
  public String text() {
    return right + "\\" + down;
  }

  private static Direction main(String letters) {
    return Optional.of(letters)
        .filter(text -> !text.isEmpty())
        .flatMap(text -> Direction.of(text.charAt(0)))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "a direction must begin with one of A P R L H F but was \"" + letters + "\""));
  }

  private static void requireLetters(String letters) {
    if (!letters.matches("[APRLHF]{1,3}")
        || letters.chars().map(c -> main(Character.toString(c)).axis()).distinct().count()
            != letters.length()) {
      throw new IllegalArgumentException(
          "a direction must be one to three of A P R L H F, one for each axis, but was \""
              + letters
              + "\"");
    }
  }

  private static String opposite(String letters) {
    StringBuilder turned = new StringBuilder();
    letters.chars().forEach(c -> turned.append(main(Character.toString(c)).opposite().letter()));
    return turned.toString();
  }
}
