package org.vestibule.dicom.net;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;

/**
 * An association that we opened with an archive or a worklist (PS3.8), and the services over it.
 *
 * <p>An {@link Answer} is the other side's word on one request; the association goes on. A refusal
 * means that the association is over (unless {@link #isOpen} says otherwise), with the reason; its
 * kind is BUSY where the same may succeed another time. Not for use by several threads at once.
 */
public final class Association implements AutoCloseable {

  private final Opened opened;
  private boolean open = true;

  private Association(Opened opened) {
    this.opened = opened;
  }

  /**
   * Calls and agrees on what is to be spoken.
   *
   * @param offers at least 1, at most 128; what is offered twice is offered once
   */
  public static Outcome<Association> open(RemoteEntity remote, List<Offer> offers) {
    return open(remote, offers, report -> false);
  }

  /**
   * The same, for storage commitment.
   *
   * @param reports takes each report that comes on this association, while any of its services
   *     waits; true once it is safely kept, false if nobody here asked for it
   */
  public static Outcome<Association> open(
      RemoteEntity remote, List<Offer> offers, Predicate<CommitmentReport> reports) {
    try {
      return Outcome.done(new Association(Opening.open(remote, offers, reports)));
    } catch (NetFailure failure) {
      return failure.outcome();
    }
  }

  /** False after the end, whoever brought it about. */
  public boolean isOpen() {
    return open;
  }

  /** True if the other side takes this service or these objects as they are written. */
  public boolean takes(Offer offer) {
    return offer.transferSyntaxes().stream()
        .anyMatch(
            syntax ->
                opened.exchange().context(offer.abstractSyntax(), Optional.of(syntax)).isPresent());
  }

  /** True if a question for single objects need not name their study and series (PS3.4 C.5.1.1). */
  public boolean isRelational() {
    return opened.relational();
  }

  /** Asks whether the other side is there (C-ECHO, PS3.7 9.1.5). */
  public Outcome<Answer> echo() {
    return run(exchange -> Services.echo(exchange));
  }

  /**
   * Sends one object as it lies on disk (C-STORE, PS3.4 annex B).
   *
   * <p>Memory does not depend on its size.
   */
  public Outcome<Answer> store(Sendable object) {
    return run(exchange -> Services.store(exchange, object));
  }

  /**
   * Asks for what matches (C-FIND, PS3.4 annexes C and K).
   *
   * @param sopClass the kind of query
   * @param question keys to match and keys to return
   * @param most how many answers are kept; where there are more the query is stopped
   */
  public Outcome<Found> find(String sopClass, DataSet question, int most) {
    return run(exchange -> new Finding(exchange, sopClass, most).ask(question));
  }

  /**
   * Asks the archive to take responsibility for objects it was sent (N-ACTION, PS3.4 J.3.2).
   *
   * <p>A success says only that it will report, on this association or on another.
   *
   * @param transactionUid new for each request
   */
  public Outcome<Answer> requestCommitment(
      String transactionUid, List<InstanceReference> instances) {
    return run(exchange -> Services.commit(exchange, transactionUid, instances));
  }

  /** Waits for one storage commitment report or echo at most this long; false if none came. */
  public Outcome<Boolean> serveOne(Duration limit) {
    return run(exchange -> exchange.serveOne(limit));
  }

  /** One step over the association. */
  @FunctionalInterface
  private interface Step<T> {
    T run(Exchange exchange) throws NetFailure;
  }

  private <T> Outcome<T> run(Step<T> step) {
    if (!open) {
      return Outcome.refused("the association is over", "open another one");
    }
    try {
      return Outcome.done(step.run(opened.exchange()));
    } catch (NetFailure failure) {
      if (!failure.isHarmless()) {
        open = false;
        opened.end(failure.abort());
      }
      return failure.outcome();
    }
  }

  /**
   * Ends the association in good order (A-RELEASE, PS3.8 7.2); the refusal says what went wrong.
   */
  public Outcome<Boolean> release() {
    Outcome<Boolean> released =
        run(
            exchange -> {
              opened.release();
              return true;
            });
    open = false;
    return released;
  }

  /** Releases the association if it is still open. */
  @Override
  public void close() {
    if (open) {
      release();
    }
  }

  /** Breaks the association off (A-ABORT, PS3.8 7.3). */
  public void abort() {
    if (open) {
      open = false;
      opened.abort();
    }
  }
}
