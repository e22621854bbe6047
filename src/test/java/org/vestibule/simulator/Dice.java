package org.vestibule.simulator;

import java.util.List;
import java.util.Random;

/** Chance from a seed. */
final class Dice {

  private static final long GOLDEN = 0x9E3779B97F4A7C15L;
  private static final String TOKEN_LETTERS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

  private final Random random;

  /** Dice of their own for each purpose, so that one more throw here changes nothing there. */
  Dice(long seed, int purpose) {
    this.random = new Random((seed + 1) * GOLDEN ^ (purpose * 0xD1B54A32D192ED03L));
  }

  /** A whole number, both ends included. */
  int between(int least, int most) {
    return least + random.nextInt(most - least + 1);
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  <T> T pick(List<T> from) {
    return from.get(random.nextInt(from.size()));
  }

  String token() {
    StringBuilder token = new StringBuilder();
    for (int i = 0; i < 16; i++) {
      token.append(TOKEN_LETTERS.charAt(random.nextInt(TOKEN_LETTERS.length())));
    }
    return token.toString();
  }
}
