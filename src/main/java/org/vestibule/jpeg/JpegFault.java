package org.vestibule.jpeg;

import org.vestibule.base.Outcome;

/** A reason, found deep inside, why a picture can't be used; the room's edge makes it a refusal. */
final class JpegFault extends Exception {

  private static final long serialVersionUID = 1L;

  private static final String TAKE_ANOTHER =
      "copy it from the phone again, or leave it out if the original is damaged too";

  private final String reason;
  private final String advice;

  private JpegFault(String reason, String advice) {
    super(reason + ": " + advice, null, false, false);
    this.reason = reason;
    this.advice = advice;
  }

  /** The bytes are damaged or incomplete. */
  static JpegFault damaged(String reason) {
    return new JpegFault(reason, TAKE_ANOTHER);
  }

  /** The bytes are sound but of a kind this engine doesn't carry. */
  static JpegFault unsuited(String reason, String advice) {
    return new JpegFault(reason, advice);
  }

  <T> Outcome<T> refusal() {
    return Outcome.refused(reason, advice);
  }
}
