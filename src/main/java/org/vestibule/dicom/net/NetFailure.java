package org.vestibule.dicom.net;

import org.vestibule.base.Outcome;

/** Carries out of nested steps why an association can't go on; it never leaves the room. */
final class NetFailure extends Exception {

  private static final long serialVersionUID = 1L;

  /** Which A-ABORT the other side is owed, if any (PS3.8 9.3.8). */
  enum Abort {
    NONE(0),
    NOT_SPECIFIED(0),
    UNRECOGNIZED_PDU(1),
    UNEXPECTED_PDU(2),
    INVALID_PARAMETER(6);

    final int reason;

    Abort(int reason) {
      this.reason = reason;
    }
  }

  private final String reason;
  private final String advice;
  private final Outcome.Kind kind;
  private final Abort abort;
  private boolean abortOfPeer;
  private boolean harmless;

  NetFailure(Outcome.Kind kind, Abort abort, String reason, String advice) {
    super(reason, null, false, false);
    this.kind = kind;
    this.abort = abort;
    this.reason = reason;
    this.advice = advice;
  }

  /** The network or the other side failed in a way that may pass. */
  static NetFailure passing(String reason, String advice) {
    return new NetFailure(Outcome.Kind.BUSY, Abort.NONE, reason, advice);
  }

  /** The other side broke the protocol. */
  static NetFailure broken(Abort abort, String reason) {
    return new NetFailure(
        Outcome.Kind.REQUEST,
        abort,
        reason,
        "check that host and port are those of a DICOM archive, and ask its maker");
  }

  /** The other side broke off, and said so. */
  static NetFailure aborted(String reason, String advice) {
    NetFailure failure = passing(reason, advice);
    failure.abortOfPeer = true;
    return failure;
  }

  /** A file here is at fault and nothing was sent yet: the association goes on. */
  static NetFailure here(String reason, String advice) {
    NetFailure failure = new NetFailure(Outcome.Kind.DAMAGE, Abort.NONE, reason, advice);
    failure.harmless = true;
    return failure;
  }

  static NetFailure of(Outcome<?> refused) {
    Outcome.Refused<?> words = (Outcome.Refused<?>) refused;
    return new NetFailure(words.kind(), Abort.NONE, words.reason(), words.advice());
  }

  boolean isAbortOfPeer() {
    return abortOfPeer;
  }

  boolean isHarmless() {
    return harmless;
  }

  Abort abort() {
    return abort;
  }

  <T> Outcome<T> outcome() {
    return Outcome.refused(kind, reason, advice);
  }
}
