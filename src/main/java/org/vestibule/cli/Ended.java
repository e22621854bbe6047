package org.vestibule.cli;

/** A sentence with its full stop, unless it ends with a mark of its own. */
final class Ended {

  private Ended() {}

  static String of(String sentence) {
    return sentence.endsWith("?") || sentence.endsWith(".") ? sentence : sentence + ".";
  }
}
