package org.vestibule.cli;

/** A number with its noun. */
final class Counted {

  private Counted() {}

  /** Such as {@code 1 object} or {@code 12 objects}. */
  static String of(int number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }
}
