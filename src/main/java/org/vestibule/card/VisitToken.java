package org.vestibule.card;

import java.security.SecureRandom;

/**
 * A visit's token: ten characters drawn by chance, 50 bits. It is made of digits and capital
 * letters without I, L, O and U, so that it can be told over a telephone.
 */
public final class VisitToken {

  static final int LENGTH = 10;

  private static final String LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  private VisitToken() {}

  /** Draws a token; the caller sees to it that it is not taken. */
  public static String draw(SecureRandom random) {
    StringBuilder token = new StringBuilder();
    for (int i = 0; i < LENGTH; i++) {
      token.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    return token.toString();
  }

  /** True if a text has the form of a token. */
  public static boolean isToken(String text) {
    return text.length() == LENGTH && text.chars().allMatch(letter -> LETTERS.indexOf(letter) >= 0);
  }
}
