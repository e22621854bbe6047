package org.vestibule.card;

/**
 * The check at the end of a card's text: the text read as a number in base 45 (the QR code's
 * alphanumeric characters, ISO/IEC 18004 table 5, from memory), modulo the largest prime below
 * 2^20, as four characters of 5 bits.
 *
 * <p>It finds every change that stays within three characters next to each other, and every two
 * characters that changed places; of other changes it misses one in a million.
 */
final class CheckLetters {

  static final int LENGTH = 4;

  /** The characters of a QR code's alphanumeric mode, in the order of their values. */
  private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

  private static final int PRIME = 1_048_573;
  private static final int BITS = 5;

  private CheckLetters() {}

  /** True if a QR code can hold the text in its alphanumeric mode. */
  static boolean canHold(String text) {
    return text.chars().allMatch(letter -> ALPHABET.indexOf(letter) >= 0);
  }

  /** The text with its check. */
  static String added(String text) {
    return text + of(text);
  }

  /** True if the text ends with the check of what stands before it. */
  static boolean holds(String text) {
    int end = text.length() - LENGTH;
    return end >= 0 && canHold(text) && text.substring(end).equals(of(text.substring(0, end)));
  }

  private static String of(String text) {
    int rest = 0;
    for (int i = 0; i < text.length(); i++) {
      rest = (int) (((long) rest * ALPHABET.length() + ALPHABET.indexOf(text.charAt(i))) % PRIME);
    }
    char[] letters = new char[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      letters[i] = ALPHABET.charAt((rest >> (BITS * (LENGTH - 1 - i))) & ((1 << BITS) - 1));
    }
    return new String(letters);
  }
}
