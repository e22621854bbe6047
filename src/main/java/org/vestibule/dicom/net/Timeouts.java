package org.vestibule.dicom.net;

import java.time.Duration;

/**
 * How long each wait may last.
 *
 * @param connect name look-up, TCP connection and TLS handshake together
 * @param association from our request for an association to the answer
 * @param answer from the end of a request to its whole answer
 * @param silence how long a single write may stand still, and a called listener waits for a message
 * @param release from our request to end the association to the answer
 */
public record Timeouts(
    Duration connect, Duration association, Duration answer, Duration silence, Duration release) {

  /** Our own choice: long enough for an archive that writes to tape, short enough for a night. */
  public static final Timeouts DEFAULT =
      new Timeouts(
          Duration.ofSeconds(15),
          Duration.ofSeconds(30),
          Duration.ofSeconds(120),
          Duration.ofSeconds(60),
          Duration.ofSeconds(10));

  /** A question with several answers may take so many times as long as one with one. */
  private static final int SEVERAL = 10;

  /** From the end of a question to the last of its answers. */
  Duration allAnswers() {
    return answer.multipliedBy(SEVERAL);
  }

  /** How long a caller may stay, however often it moves. */
  Duration stay() {
    return silence.multipliedBy(SEVERAL);
  }

  public Timeouts {
    for (Duration each : new Duration[] {connect, association, answer, silence, release}) {
      if (each.isNegative() || each.isZero() || each.compareTo(Duration.ofDays(1)) > 0) {
        throw new IllegalArgumentException("a wait lasts more than 0 and at most a day: " + each);
      }
    }
  }
}
