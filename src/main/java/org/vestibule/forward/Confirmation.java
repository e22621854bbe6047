package org.vestibule.forward;

import java.math.BigInteger;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.store.ledger.Deliveries;
import org.vestibule.store.ledger.DeliveryChange;
import org.vestibule.store.ledger.DeliveryRow;

/**
 * Asks a destination whether it keeps what it took: by storage commitment, asked for twice, then by
 * a query; or by a query alone.
 */
final class Confirmation {

  /** After so many unanswered requests a query takes their place. */
  private static final int COMMITMENT_ASKS = 2;

  /** How often a query may miss an object before it is sent again. */
  private static final int QUERIES = 4;

  /** For so many of those that are not shown the archive's other studies are looked through. */
  private static final int MOST_SOUGHT = 20;

  /** A question that got no answer is asked again after the second pause, twice the first. */
  private static final int UNANSWERED_PAUSE = 2;

  /** How long a session is held open for a report; a later one comes on its own association. */
  private static final Duration HOLD = Duration.ofSeconds(30);

  private final DestinationRules rules;
  private final Deliveries deliveries;
  private final Changes changes;
  private final RetryPauses pauses;
  private final Coercions coercions;
  private final RandomGenerator random;
  private final String who;

  Confirmation(
      DestinationRules rules,
      Deliveries deliveries,
      Changes changes,
      RetryPauses pauses,
      Coercions coercions,
      RandomGenerator random,
      String who) {
    this.rules = rules;
    this.deliveries = deliveries;
    this.changes = changes;
    this.pauses = pauses;
    this.coercions = coercions;
    this.random = random;
    this.who = who;
  }

  /**
   * What asking came to.
   *
   * @param sessionOver true if the session can't be used any more
   * @param answered false if the archive broke off before it answered
   * @param trouble why a query got no answer; empty if every one got one
   */
  record Asked(boolean sessionOver, boolean answered, String trouble) {
    private static final Asked BROKEN = new Asked(true, false, "");

    private static Asked well(ArchiveSession session) {
      return new Asked(session.isOver(), true, "");
    }
  }

  /** Asks about these. */
  Asked ask(ArchiveSession session, List<DeliveryRow> rows) {
    List<DeliveryRow> toCommit = rows.stream().filter(this::byCommitment).toList();
    List<DeliveryRow> toQuery = rows.stream().filter(row -> !byCommitment(row)).toList();
    if (!toCommit.isEmpty() && !commit(session, toCommit)) {
      return Asked.BROKEN;
    }
    // Whoever reports later may hang up once it was asked.
    return toQuery.isEmpty() || session.isOver() ? Asked.well(session) : query(session, toQuery);
  }

  private boolean byCommitment(DeliveryRow row) {
    return rules.confirm() == Confirm.COMMITMENT && row.asks() < COMMITMENT_ASKS;
  }

  private boolean commit(ArchiveSession session, List<DeliveryRow> rows) {
    String transaction = transactionUid();
    deliveries.commitments().begin(transaction, rules.name(), rows);
    // Written before it is asked, since the report may be faster than the answer to the request.
    deliveries.record(
        rows.stream()
            .map(
                row ->
                    changes.unconfirmed(
                        row,
                        row.asks() + 1,
                        rules.reportWait(),
                        "storage commitment asked for",
                        transaction))
            .toList(),
        who);
    CommitmentAnswer answer =
        session.requestCommitment(transaction, rows.stream().map(Confirmation::instance).toList());
    if (answer instanceof CommitmentAnswer.Refused refused) {
      again(rows, COMMITMENT_ASKS, Duration.ZERO, "no storage commitment: " + refused.words());
      return true;
    }
    if (answer instanceof CommitmentAnswer.Failed failed) {
      again(rows, 1, pauses.after(1), failed.words());
      return !failed.sessionOver();
    }
    Duration hold = rules.reportWait().compareTo(HOLD) < 0 ? rules.reportWait() : HOLD;
    session.awaitReports(hold);
    return true;
  }

  private void again(List<DeliveryRow> rows, int more, Duration wait, String words) {
    deliveries.record(
        rows.stream()
            .map(row -> changes.unconfirmed(row, row.asks() + more, wait, words, null))
            .toList(),
        who);
  }

  private Asked query(ArchiveSession session, List<DeliveryRow> rows) {
    PresenceAnswer answer = session.ask(rows.stream().map(Confirmation::instance).toList());
    if (answer instanceof PresenceAnswer.Failed failed) {
      deliveries.record(
          rows.stream()
              .map(
                  row ->
                      failed.open().contains(row.sopUid())
                          ? unanswered(row, failed.words())
                          : answered(row, failed.found()))
              .toList(),
          who);
      return new Asked(failed.sessionOver(), !failed.sessionOver(), failed.words());
    }
    Map<String, Map<String, String>> found =
        new HashMap<>(((PresenceAnswer.Answered) answer).found());
    List<Sought> sought =
        rows.stream()
            .filter(row -> !found.containsKey(row.sopUid()))
            .limit(MOST_SOUGHT)
            .map(row -> coercions.sought(instance(row)))
            .flatMap(Optional::stream)
            .toList();
    if (!sought.isEmpty()) {
      found.putAll(session.lookElsewhere(sought));
    }
    deliveries.record(rows.stream().map(row -> answered(row, found)).toList(), who);
    return Asked.well(session);
  }

  private DeliveryChange answered(DeliveryRow row, Map<String, Map<String, String>> found) {
    Map<String, String> shown = found.get(row.sopUid());
    return shown == null
        ? missed(row)
        : changes.confirmed(
            row, "shown when asked", null, coercions.of(instance(row).sopInstanceUid(), shown));
  }

  /** It is asked again, and not counted: the archive said nothing about this object. */
  private DeliveryChange unanswered(DeliveryRow row, String words) {
    Duration wait = row.takenBack() ? null : pauses.after(UNANSWERED_PAUSE);
    return changes.unconfirmed(row, row.asks(), wait, "sent, but not confirmed: " + words, null);
  }

  /** An archive may need a while until it shows what it took; then the object is sent again. */
  private DeliveryChange missed(DeliveryRow row) {
    int asks = row.asks() + 1;
    String words = "the archive took it but does not show it";
    return queries(asks) < QUERIES || row.takenBack()
        ? changes.unconfirmed(
            row, asks, row.takenBack() ? null : pauses.after(queries(asks)), words, null)
        : changes.failed(row, row.attempts(), true, StoreAnswer.NO_STATUS, words);
  }

  private int queries(int asks) {
    return rules.confirm() == Confirm.COMMITMENT ? asks - COMMITMENT_ASKS : asks;
  }

  private static Instance instance(DeliveryRow row) {
    String sopUid = row.sopUid();
    String sopClass = row.sopClass();
    String study = row.studyUid();
    String series = row.seriesUid();
    if (sopUid == null || sopClass == null || study == null || series == null) {
      throw new IllegalStateException("delivery " + row.number() + " was never looked into");
    }
    return new Instance(sopClass, sopUid, study, series);
  }

  /** 2.25 and a random number of 128 bits (PS3.5 B.2). */
  private String transactionUid() {
    return "2.25." + new BigInteger(1, bytes());
  }

  private byte[] bytes() {
    byte[] bytes = new byte[16];
    random.nextBytes(bytes);
    bytes[6] = (byte) ((bytes[6] & 0x0F) | 0x40);
    bytes[8] = (byte) ((bytes[8] & 0x3F) | 0x80);
    return bytes;
  }
}
